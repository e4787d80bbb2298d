"""Plain data -> tests with their outcomes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from troubleshoot.knowledge.building.conditions import (
    build_facts,
    build_limit_line,
    build_signatures,
    build_source,
)
from troubleshoot.knowledge.model import Outcome, Read, Test


def build_tests(data: Any) -> Iterator[Test]:
    """Yield the tests of one file of tests."""
    area = data["area"]
    for item in data["tests"]:
        yield _build_test(item, area)


def _build_test(data: Any, area: str) -> Test:
    get = data.get
    return Test(
        id=data["id"],
        name=data["name"],
        area=area,
        kind=data["kind"],
        outcomes=tuple(_build_outcome(item) for item in data["outcomes"]),
        how=tuple(get("how", ())),
        instrument=get("instrument", ""),
        meter=get("meter"),
        per=get("per"),
        choose=get("choose", "one"),
        healthy=tuple(get("healthy", ())),
        severity=tuple(tuple(chain) for chain in get("severity", ())),
        background=get("background", {}),
        reads=tuple(
            Read(item["quantity"], item.get("legs"), item.get("unit")) for item in get("reads", ())
        ),
        work_state=get("work-state", "any"),
        needs_state=tuple(get("needs-state", ())),
        exposes=get("exposes", "none"),
        after=tuple(get("after", ())),
        invalid_when=tuple(get("invalid-when", ())),
        hazards=tuple(get("hazards", ())),
        minutes=get("minutes", 1.0),
        wait_minutes=get("wait-minutes", 0.0),
        exists_when=build_facts(get("exists-when")),
        who=tuple(get("who", ())),
        signed=build_signatures(data),
        source=build_source(data),
    )


def _build_outcome(data: Any) -> Outcome:
    return Outcome(
        id=data["id"],
        means=data.get("means", ""),
        limits=tuple(build_limit_line(line) for line in data.get("limits", ())),
        exists_when=build_facts(data.get("exists-when")),
        words=tuple(data.get("words", ())),
        source=build_source(data),
    )
