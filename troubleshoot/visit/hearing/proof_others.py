"""What is told at a proof and read by another test: gas in the air, a path to ground.

The number is judged by that test's limits, whatever the proof is of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof, Test
from troubleshoot.quantities.typed import Expected, read
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.safety.steps import ROOM_AIR
from troubleshoot.safety.stops.numbers_shown import numbers_in, own_units
from troubleshoot.safety.stops.shown import sweep_in

OF_INSULATION: Final = "Mohm"
"""The unit that only a test to ground is read in."""
_GROUNDED: Final = "grounded"
_TO_GROUND: Final = re.compile(
    r"\bto (?:the |bare )*(?:ground|earth|frame|shell|casing|case|cabinet|copper)\b"
    r"|\bmegg?(?:er|ers|ed|ered)\b(?: (?:reads?|reading|shows?))?",
    re.IGNORECASE,
)
_ENDLESS: Final = re.compile(
    r"\W*(?:(?:is|are|all|reads?) )*(?:o\.?l\b|open|inf|nothing|none|clear)", re.IGNORECASE
)
_CLAUSE: Final = re.compile(r"[,;]|\band (?=\w+ (?:to|at)\b)|\bbut\b", re.IGNORECASE)
_CARBON_MONOXIDE: Final = re.compile(r"\b(?:co|carbon monoxide)\b", re.IGNORECASE)
_NOT_OF_THE_ROOM: Final = re.compile(r"\b(?:flue|stack|vent|air[- ]free)\b", re.IGNORECASE)


def bad_of_others(
    knowledge: Knowledge, values: Values, proof: Proof, typed: str
) -> Iterator[tuple[Test, str]]:
    """Each number that another test reads and that is not sound by it, with that test."""
    for test, number in (*_in_air(knowledge, proof, typed), *_to_ground(knowledge, proof, typed)):
        places = dict.fromkeys((None, *values.unit.layout.places(test.per)))
        answer = Answer(test.id, text=number, places=(None,))
        seen = {o for at in places for o in outcomes_of(knowledge, answer, at, values)}
        if not seen <= _right(knowledge, test):
            yield test, number


def is_of(test: Test, proof: Proof, knowledge: Knowledge) -> bool:
    """Whether what a test found at a proof is of the proof's own part, or of the air."""
    own = knowledge.read_by(proof)
    return OF_INSULATION not in own_units(knowledge, test) or (
        own is not None and own.area == test.area
    )


def _right(knowledge: Knowledge, test: Test) -> set[str]:
    """What is sound of a test, or taken for right after some repair."""
    found = (proof.finding for fault in knowledge.faults.values() for proof in fault.proof)
    taken = (each.outcomes for each in found if each is not None and each.test == test.id)
    return {*test.healthy, *(outcome for outcomes in taken for outcome in outcomes)}


def _in_air(knowledge: Knowledge, proof: Proof, typed: str) -> Iterator[tuple[Test, str]]:
    """Gas in the air by its own unit, and carbon monoxide by its name."""
    own = () if proof.finding is None else own_units(knowledge, knowledge.tests[proof.finding.test])
    for share in ("percent-LEL", "percent-LFL"):
        test = sweep_in(knowledge, share)
        if test is not None:
            yield from ((test, number) for number, _ in numbers_in(typed, (share,)))
    of_room = _CARBON_MONOXIDE.search(typed) and not _NOT_OF_THE_ROOM.search(typed)
    if of_room and "ppm" not in own and not _NOT_OF_THE_ROOM.search(proof.text):
        room = knowledge.tests.get(ROOM_AIR)
        if room is not None:
            yield from ((room, number) for number, _ in numbers_in(typed, ("ppm",)))


def _to_ground(knowledge: Knowledge, proof: Proof, typed: str) -> Iterator[tuple[Test, str]]:
    """A resistance to ground, where no such path is right."""
    if proof.finding is None:
        return
    own = knowledge.tests[proof.finding.test]
    tests = (t for t in knowledge.tests.values() if OF_INSULATION in own_units(knowledge, t))
    test = next(tests, None)
    grounded = {o.id for o in own.outcomes if _GROUNDED in o.id.split("-")}
    is_bad = bool(grounded - {*proof.finding.outcomes})
    if test is None or own.id == test.id or not (is_bad or own.area == test.area):
        return
    yield from ((test, number) for number in to_ground(typed))


def to_ground(typed: str) -> tuple[str, ...]:
    """The resistances that are told to ground, or in the unit of insulation itself."""
    return tuple(dict.fromkeys((*_beside_ground(typed), *_in_megohms(typed))))


def _beside_ground(typed: str) -> Iterator[str]:
    """The number behind what says to ground, else the one in front of it."""
    for clause in _CLAUSE.split(typed):
        for found in _TO_GROUND.finditer(clause):
            behind = _ohms(clause[found.end() :])
            before = () if _ENDLESS.match(clause, found.end()) else _ohms(clause[: found.start()])
            yield from behind[:1] or before[-1:]


def _in_megohms(typed: str) -> Iterator[str]:
    """The numbers that are told in the unit of insulation itself."""
    for number in _ohms(typed):
        if read(number, Expected(OF_INSULATION)).values[0].typed_unit == OF_INSULATION:
            yield number


def _ohms(text: str) -> tuple[str, ...]:
    return tuple(number for number, _ in numbers_in(text, (OF_INSULATION,)))
