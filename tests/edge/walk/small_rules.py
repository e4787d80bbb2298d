"""The shipped rules, thinned: every danger and every kind of test, but only a dozen faults.

A turn costs what the faults and tests cost that are weighed in it. What keeps people safe does not
hang on how many there are, so the long walks go on fewer: all safety steps and hazards, every test
that any hazard speaks of, one test of each kind of need, and what a dozen faults speak of.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any

from troubleshoot.knowledge.model import Fault, Finding, Knowledge, Proof, Test

FAULTS = (
    "gas-leak-at-unit", "heat-exchanger-cracked", "rollout-switch-tripped", "low-charge-from-leak",
    "condenser-fan-capacitor-weak", "compressor-winding-grounded", "contactor-coil-open",
    "jumper-left-on-safety", "smoke-detector-interlock", "gas-inlet-pressure-too-high",
    "heater-contactor-welded", "filters-loaded",
)  # fmt: skip


def small(knowledge: Knowledge) -> Knowledge:
    """A rule base that holds together, with the dangers of the whole."""
    faults = {name: knowledge.faults[name] for name in FAULTS}
    kept = set(_tests_kept(knowledge, faults))
    tests = {name: test for name, test in knowledge.tests.items() if name in kept}
    return replace(
        knowledge,
        tests=tests,
        faults={
            n: replace(f, behind=_of(f.behind, faults), proof=_proved_by(f, kept))
            for n, f in faults.items()
        },
        procedures={
            n: p for n, p in knowledge.procedures.items() if set(_named(p, knowledge)) <= kept
        },
        complaints={
            n: replace(
                c,
                brought_by={f: grade for f, grade in c.brought_by.items() if f in faults},
                first_tests=_of(c.first_tests, tests),
                pointless_tests=_of(c.pointless_tests, tests),
            )
            for n, c in knowledge.complaints.items()
        },
        hazards={
            n: replace(h, triggers=tuple(t for t in h.triggers if t.fault in (None, *faults)))
            for n, h in knowledge.hazards.items()
        },
        relations={
            n: replace(r, read_so_by=_of(r.read_so_by, faults))
            for n, r in knowledge.relations.items()
        },
        round_points={n: p for n, p in knowledge.round_points.items() if set(p.tests) <= kept},
        digest=f"{knowledge.digest}-small",
    )


def _proved_by(fault: Fault, kept: set[str]) -> tuple[Proof, ...]:
    """What proves a repair, in words alone where its test is none of these."""
    return tuple(
        replace(p, finding=None) if p.finding and p.finding.test not in kept else p
        for p in fault.proof
    )


def _tests_kept(knowledge: Knowledge, faults: dict[str, Fault]) -> Iterator[str]:
    yield from (n for n, t in knowledge.tests.items() if t.kind == "step")
    for hazard in knowledge.hazards.values():
        parts = (t.findings for t in hazard.triggers)
        yield from _named((hazard.all_clear, *parts, hazard.forbids), knowledge)
    for fault in faults.values():
        yield from _named((fault.evidence, fault.pictures, fault.given), knowledge)
    kinds: dict[object, str] = {}
    for name, test in knowledge.tests.items():
        kinds.setdefault(_kind(test), name)
    yield from kinds.values()


def _kind(test: Test) -> tuple[object, ...]:
    return test.work_state, test.exposes, test.kind, test.needs_state, test.who


def _named(thing: Any, knowledge: Knowledge) -> Iterator[str]:
    """Every test that an entry speaks of, however deep."""
    if isinstance(thing, str):
        if thing in knowledge.tests:
            yield thing
    elif isinstance(thing, Finding):
        yield thing.test
    elif is_dataclass(thing):
        for field in fields(thing):
            yield from _named(getattr(thing, field.name), knowledge)
    elif isinstance(thing, tuple):
        for each in thing:
            yield from _named(each, knowledge)


def _of(names: tuple[str, ...], known: dict[str, Any]) -> tuple[str, ...]:
    return tuple(name for name in names if name in known)
