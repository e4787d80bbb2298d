"""Plain data -> fault cards."""

from __future__ import annotations

from typing import Any

from troubleshoot.knowledge.building.conditions import (
    build_evidence,
    build_facts,
    build_findings,
    build_given,
    build_source,
)
from troubleshoot.knowledge.model import Example, Fault, Picture, Proof, Repair


def build_fault(data: Any) -> Fault:
    """Build the fault of one card."""
    get = data.get
    return Fault(
        id=data["fault"],
        name=data["name"],
        subsystem=data["subsystem"],
        is_effect=data["is"] == "effect",
        how_common=data["how-common"],
        evidence=build_evidence(data["evidence"]),
        repair=_build_repair(data["repair"]),
        per=get("per"),
        exists_when=build_facts(get("exists-when")),
        overrides=tuple(_build_picture(item) for item in get("overrides", ())),
        pictures=tuple(_build_picture(item) for item in get("pictures", ())),
        given=build_given(get("given", ())),
        if_left=get("if-left", ""),
        why=get("why", ""),
        behind=tuple(get("behind", ())),
        proof=tuple(_build_proof(item) for item in get("proof", ())),
        look_alikes=tuple(get("look-alikes", ())),
        examples=tuple(_build_example(item) for item in get("examples", ())),
        status=get("status", "draft"),
        source=build_source(data),
    )


def _build_repair(data: Any) -> Repair:
    ((rule, who),) = data["who"].items()
    return Repair(
        what=data["what"],
        minutes=data["minutes"],
        part_cost=data["part-cost"],
        who=tuple(who),
        who_rule=rule,
        hand_over=data.get("hand-over", False),
    )


def _build_picture(data: Any) -> Picture:
    return Picture(
        name=data.get("name", ""),
        evidence=build_evidence(data.get("evidence", {})),
        given=build_given(data.get("given", ())),
        when=build_facts(data.get("when")),
    )


def _build_proof(data: Any) -> Proof:
    finding = data.get("finding")
    return Proof(data["text"], build_findings(finding)[0] if finding else None)


def _build_example(data: Any) -> Example:
    return Example(
        name=data["name"],
        readings=tuple(data["readings"]),
        names_it=data["names-it"],
        unit=data.get("unit", {}),
        conditions=data.get("conditions", {}),
        complaint=data.get("complaint"),
    )
