"""Plain data -> when / then rules and hazards."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from troubleshoot.knowledge.building.conditions import (
    build_condition,
    build_facts,
    build_findings,
    build_signatures,
    build_source,
)
from troubleshoot.knowledge.model import Ban, Hazard, Procedure, Stop, Trigger, Void


def build_procedures(data: Any) -> Iterator[Procedure]:
    """Yield the rules of one file of procedures."""
    for item in data["procedures"]:
        then = item["then"]
        yield Procedure(
            id=item["id"],
            when=build_condition(item["when"]),
            reason=item["reason"],
            derives=then.get("derives"),
            look_first=tuple(then.get("look-first", ())),
            void=_build_void(then["void"]) if "void" in then else None,
            save_before_power_cut=tuple(then.get("save-before-power-cut", ())),
            source=build_source(item),
        )


def _build_void(data: Any) -> Void:
    return Void(
        tests=tuple(data["tests"]),
        for_faults=tuple(data.get("for-faults", ())),
        for_subsystems=tuple(data.get("for-subsystems", ())),
    )


def build_hazards(data: Any) -> Iterator[Hazard]:
    """Yield the hazards of one file of hazards."""
    for item in data["hazards"]:
        stop = item.get("stop")
        yield Hazard(
            id=item["id"],
            signal=item["signal"],
            what_to_do=item["what-to-do"],
            triggers=tuple(_build_trigger(trigger) for trigger in item.get("when", ())),
            stop=Stop(stop["scope"], stop["covers"]) if stop else None,
            defer_to=item.get("defer-to", ""),
            words=tuple(item.get("words", ())),
            cleared_by=tuple(item.get("cleared-by", ())),
            all_clear=item.get("all-clear"),
            tag=item.get("tag", ""),
            signed=build_signatures(item),
            forbids=tuple(_build_ban(ban) for ban in item.get("forbids", ())),
            source=build_source(item),
        )


def _build_trigger(data: Any) -> Trigger:
    return Trigger(
        findings=build_findings(data.get("findings", {})),
        as_taken=data.get("as-taken", False),
        complaint=data.get("complaint"),
        fault=data.get("fault"),
        test=data.get("test"),
        work_state=data.get("work-state"),
        exposes=data.get("exposes"),
        profile=data.get("profile"),
        equipment=build_facts(data.get("equipment")),
    )


def _build_ban(data: Any) -> Ban:
    return Ban(
        areas=tuple(data.get("areas", ())),
        work_states=tuple(data.get("work-states", ())),
        places=tuple(data.get("places", ())),
        tests=tuple(data.get("tests", ())),
        at=data.get("at", "unit"),
        until=build_findings(data.get("until", {})),
    )
