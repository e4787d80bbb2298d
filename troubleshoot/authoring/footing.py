"""What an example rests on, as one mark: while the mark stays, so does what the example comes to.

The case is read and its readings are judged by the rules as they are; that takes a twentieth of
ranking its causes. Into the mark go the case and those readings, the rules that every case goes by,
and of each card that the unit can have what it says of the call and of the tests that were read,
with whatever its statements join to them. Texts, hazards and what is said of other tests stay out.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Set
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from typing import Any, Final

from troubleshoot.authoring.trial import case_data
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import (
    Evidence,
    Example,
    Fault,
    Finding,
    Given,
    Knowledge,
    Picture,
)
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.visit.cases.file import read_case

_BY_CASE: Final = ("tests", "faults", "complaints")
_IN_THE_CASE: Final = (
    "words", "alike", "place_words", "idle", "loose", "manner", "as_it_should_be", "aliases",
)  # fmt: skip
"""How things are called: once the case is read, it holds what came of that."""
_RANKS_NOTHING: Final = (
    "hazards", "hazard_kinds", "round_points", "drift_alarms", "sources", "days", "relations",
    "typical_units", "retired", "signed", "packs", "digest",
    "changed_since_signed", "copies",
)  # fmt: skip


@frozen
class _Card:
    """A card as an example may rest on it. `parts`: tests that its statements join -> what it says
    of them; a test is in one part."""

    fault: Fault
    head: str
    parts: Mapping[frozenset[str], str]


class Footing:
    """What the examples of one rule base rest on. `program`: the state of the program's files."""

    def __init__(self, knowledge: Knowledge, program: str = "") -> None:
        self._knowledge = knowledge
        left_out = {*_BY_CASE, *_IN_THE_CASE, *_RANKS_NOTHING}
        common = {f.name: getattr(knowledge, f.name) for f in fields(knowledge)}
        kept = [_said((name, held)) for name, held in common.items() if name not in left_out]
        self._common = _hash([program, *kept])
        self._cards = [_card(fault) for fault in knowledge.faults.values()]
        self._tests = {test.id: _hash([_said(test)]) for test in knowledge.tests.values()}

    def mark(self, fault: Fault, example: Example) -> str:
        """The mark of one example of a card; empty where the example cannot be read."""
        try:
            case = read_case(self._knowledge, case_data(example))
        except InputRefused:
            return ""
        wanted = _said((fault.id, fault.is_effect, example.names_it, example.at_least))
        readings, _ = take_readings(self._knowledge, case)
        read = frozenset(reading.test for reading in readings)
        judged = (_said(case), _said(readings))
        return _hash([self._common, wanted, *judged, *self._of_cards(case, read)])

    def _of_cards(self, case: Case, read: Set[str]) -> Iterator[str]:
        """What the cards that the unit can have say, and the tests that this joins."""
        unit = case.unit
        cards = [
            card
            for card in self._cards
            if unit.allows(card.fault.exists_when) and unit.layout.places(card.fault.per)
        ]
        joined = set(read)
        for card in cards:
            yield card.head
            for tests, told in card.parts.items():
                if not tests.isdisjoint(read):
                    joined |= tests
                    yield told
        yield from (self._tests[test] for test in sorted(joined))
        call = self._knowledge.complaints.get(case.complaint or "")
        if call is not None:
            here = {card.fault.id for card in cards}
            brought = {name: grade for name, grade in call.brought_by.items() if name in here}
            yield _said(replace(call, brought_by=brought))


def _card(fault: Fault) -> _Card:
    """A card with its statements by the tests that they join, each with its layer."""
    layers: tuple[Picture, ...] = (*fault.overrides, *fault.pictures)
    stated = [(fault.evidence, fault.given), *((each.evidence, each.given) for each in layers)]
    head = (
        fault.id, fault.is_effect, fault.how_common, fault.per, fault.exists_when, fault.subsystem,
        len(fault.overrides), [(layer.name, layer.when) for layer in layers],
    )  # fmt: skip
    parts: dict[frozenset[str], str] = {}
    for number, (evidence, given) in enumerate(stated):
        items: tuple[Evidence | Given, ...] = (*evidence, *given)
        for item in items:
            tests = frozenset(finding.test for finding in _findings(item))
            touching = [each for each in parts if not each.isdisjoint(tests)]
            told = [*(parts.pop(each) for each in touching), _said((number, item))]
            parts[tests.union(*touching)] = "\n".join(told)
    return _Card(fault, _said(head), parts)


def _findings(item: Evidence | Given) -> tuple[Finding, ...]:
    return item.findings if isinstance(item, Evidence) else (item.finding, *item.given)


def _said(value: Any) -> str:
    """A value spelt out the same on every run: a set has no order of its own."""
    if is_dataclass(value) and not isinstance(value, type):
        told = ((f.name, getattr(value, f.name)) for f in fields(value))
        return f"{type(value).__name__}({_row(told)})"
    if isinstance(value, Mapping):
        return f"{{{_row(value.items())}}}"
    if isinstance(value, Set):
        return f"{{{','.join(sorted(map(_said, value)))}}}"
    if isinstance(value, list | tuple):
        return f"[{_row(value)}]"
    return repr(value.value if isinstance(value, Enum) else value)


def _row(values: Iterable[Any]) -> str:
    return ",".join(map(_said, values))


def _hash(told: Iterable[str]) -> str:
    hashed = hashlib.sha256()
    for each in told:
        hashed.update(f"{len(each)}\0{each}".encode())
    return hashed.hexdigest()[:32]
