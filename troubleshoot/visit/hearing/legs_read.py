"""The legs that are told for a proof, each beside the others, whatever the plate says of them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.legs import SPREAD_OF_LEGS, unbalance
from troubleshoot.reasoning.readings.measuring import LEG_NAMES
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.stops.numbers_shown import own_units

LEAST_OF_A_LEG: Final = 0.5
"""A leg under this part of the largest one is gone, stray current or not (common practice, no
source)."""
MOST_APART: Final = 10.0
"""Per cent by which the legs of one motor or heater may differ from their average where its proof
names no figure of its own (common practice, no source)."""

MOST_LEGS: Final = 3

_OF_LEGS: Final = re.compile(
    r"\b(?:legs?|pairs|(?:every|each) (?:fuse|pole|pair))\b", re.IGNORECASE
)
_ONE_ON_SINGLE_PHASE: Final = re.compile(r"\b(?:every|each) (?:pole|pair)\b", re.IGNORECASE)
_WITHIN: Final = re.compile(r"\bwithin ([0-9.]+) %")
_COUNTS: Final = ((re.compile(r"\bthree (?:legs|pairs)\b", re.IGNORECASE), 3),
                  (re.compile(r"\bboth legs\b", re.IGNORECASE), 2))  # fmt: skip
_ALL_ALIKE: Final = re.compile(r"\b(?:each|every|all|both|alike)\b", re.IGNORECASE)
_DIGITS: Final = ".0123456789"
_NOTHING: Final = r"zero|nothing|none|nil|dead|gone"
_LEG: Final = (
    r"(?<![\w.,])(?:[LT][123] ?[:=]? ?)?"
    rf"(?P<n>[0-9]+(?:\.[0-9]+)?|\.[0-9]+|{_NOTHING})(?!\.?[0-9]| ?%| ?(?:meg|kilo|[gkm] ?)ohm)"
    r"(?: ?(?:a(?:mps?)?|v(?:olts?)?|ohms?)\b)?"
)
_ONE: Final = re.compile(_LEG, re.IGNORECASE)
_BARE: Final = _LEG.replace("?P<n>", "?:")
_RUNS: Final = tuple(
    re.compile(rf"{_BARE}(?:{between}{_BARE})+", re.IGNORECASE)
    for between in (" ?/ ?", " ?(?:, |; ?|& ?|and ){1,2}", " +")
)
"""Two numbers or more beside one another: between slashes, then commas, then blanks alone."""


def legs_in(knowledge: Knowledge, on: Unit, proof: Proof, typed: str) -> tuple[float, ...]:
    """The legs that were told for a proof that is read leg by leg; empty where it is not."""
    measured_in = _unit_of_legs(knowledge, proof)
    if measured_in is None:
        return ()
    names = LEG_NAMES[unit(measured_in).kind]
    try:
        expected = Expected(
            measured_in, legs=True, names=names, allow_over_range=measured_in == "ohm"
        )
        told = [leg.value for leg in read(typed, expected).values]
    except NotUnderstood:
        told = _among_words(typed)
    if len(told) == 1 and _is_spread(knowledge, proof):
        return ()
    if len(told) == 1 and _ALL_ALIKE.search(typed):
        told *= MOST_LEGS if measured_in == "ohm" else _wanted(on, proof)
    return tuple(told[:MOST_LEGS])


def is_leg_gone(knowledge: Knowledge, proof: Proof, legs: Sequence[float]) -> bool:
    """Whether one leg carries next to no current while another does."""
    return (
        _unit_of_legs(knowledge, proof) == "A"
        and len(legs) > 1
        and min(legs) < LEAST_OF_A_LEG * max(legs)
    )


def outcomes_of_gone(
    knowledge: Knowledge, on: Unit, proof: Proof, legs: Sequence[float]
) -> tuple[str, ...]:
    """What the proof's own test makes of legs of which those that are gone read nothing."""
    assert proof.finding is not None
    kept = (f"{leg:g}" if leg >= LEAST_OF_A_LEG * max(legs) else "0" for leg in legs)
    answer = Answer(proof.finding.test, text=f"{'/'.join(kept)} A")
    return outcomes_of(knowledge, answer, None, Values(knowledge, on, {}))


def are_apart(knowledge: Knowledge, proof: Proof, legs: Sequence[float]) -> bool:
    """Whether the legs differ by more than their proof says, from their average (NEMA MG 1)."""
    found, most = unbalance(legs) if legs else None, _most_apart(proof)
    if most is None and _unit_of_legs(knowledge, proof) == "A":
        most = MOST_APART
    return found is not None and most is not None and found > most


def are_judged_by_its_text(proof: Proof, legs: Sequence[float]) -> bool:
    """Whether what a proof asks for is how its legs stand to each other, and they were told."""
    return len(legs) > 1 and _most_apart(proof) is not None


def legs_missing(on: Unit, proof: Proof, legs: Sequence[float]) -> bool:
    """Whether fewer legs were told than the proof asks for."""
    return bool(legs) and bool(_OF_LEGS.search(proof.text)) and len(legs) < _wanted(on, proof)


def pairs_missing(knowledge: Knowledge, proof: Proof, legs: Sequence[float]) -> bool:
    """Whether fewer pairs of a winding were told than the three that it has."""
    return _unit_of_legs(knowledge, proof) == "ohm" and len(legs) < MOST_LEGS


def _wanted(on: Unit, proof: Proof) -> int:
    """How many legs there are to read."""
    told = next((count for words, count in _COUNTS if words.search(proof.text)), None)
    single = on.facts.get("supply-phase") == "single"
    if single and _ONE_ON_SINGLE_PHASE.search(proof.text):
        return 1
    return told or (2 if single or "supply-phase" not in on.facts else 3)


def _most_apart(proof: Proof) -> float | None:
    """The per cent that a proof of legs names itself."""
    found = _WITHIN.search(proof.text) if _OF_LEGS.search(proof.text) else None
    return None if found is None else float(found[1])


def _unit_of_legs(knowledge: Knowledge, proof: Proof) -> str | None:
    """The unit that a proof is read in leg by leg; None where it is not."""
    if proof.finding is None:
        return None
    test = knowledge.tests[proof.finding.test]
    if not test.reads:
        return "A" if _OF_LEGS.search(proof.text) else None
    units = {each for each in own_units(knowledge, test) if each in ("A", "V")}
    by_legs = any(one.legs is not None for one in test.reads)
    if by_legs and "A" in units:
        return "A"
    if any(one.legs == "count-open" for one in test.reads):
        return "ohm"
    return "V" if by_legs and "V" in units and _OF_LEGS.search(proof.text) else None


def _is_spread(knowledge: Knowledge, proof: Proof) -> bool:
    """Whether one bare number is how far the legs are apart, and not a leg."""
    reads = () if proof.finding is None else knowledge.tests[proof.finding.test].reads
    return bool(reads) and reads[0].legs in SPREAD_OF_LEGS


def _among_words(typed: str) -> list[float]:
    """The legs that stand side by side among other words, or the only number that there is."""
    for run in _RUNS:
        if found := run.search(typed):
            return [_number(each["n"]) for each in _ONE.finditer(found[0])]
    numbers = [each["n"] for each in _ONE.finditer(typed) if each["n"][0] in _DIGITS]
    return [_number(numbers[0])] if len(numbers) == 1 else []


def _number(typed: str) -> float:
    return float(typed) if typed[0] in _DIGITS else 0.0
