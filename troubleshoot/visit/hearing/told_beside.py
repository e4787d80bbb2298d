"""What judges the reading of a proof and is told in the same line: 28 ppm air-free at 8 % O2."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof, Test
from troubleshoot.quantities.typed import Expected, read
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.safety.stops.numbers_shown import numbers_in
from troubleshoot.visit.hearing.proof_numbers import units_of

_BARE: Final = re.compile(r"(?<=[a-z0-9] )[0-9]+(?:\.[0-9]+)?(?![\w.]| ?(?:%|ppm\b|percent\b))")


def told_beside(
    knowledge: Knowledge, values: Values, proof: Proof, typed: str
) -> tuple[Values, str]:
    """The values with what stands beside the reading by its name, and the line without that.

    Only what the limits of the proof's test speak of, in a unit that the proof is not read in, or
    in none, right behind its name: O2 7.5.
    """
    test = knowledge.read_by(proof)
    if test is None:
        return values, typed
    own = units_of(knowledge, proof)
    bounds = (b for outcome in test.outcomes for line in outcome.limits for b in line.bounds)
    for name in dict.fromkeys(bound.quantity for bound in bounds):
        quantity = knowledge.quantities.get(name)
        reads = _input_of(knowledge, name)
        if quantity is None or reads is None or quantity.unit in own:
            continue
        numbers = [number for number, _ in numbers_in(typed, (quantity.unit,))]
        for number in numbers or _BARE.findall(typed):
            beside = _named(reads, number, typed)
            if beside:
                value = Value(read(number, Expected(quantity.unit)).values[0].value)
                values = values.with_typed({(name, values.place_for(quantity.per, None)): value})
                typed = typed.replace(beside, "").strip(" ,")
    return values, typed


def _input_of(knowledge: Knowledge, quantity: str) -> Test | None:
    """The input, of the whole unit, that reads a quantity alone."""
    inputs = (test for test in knowledge.tests.values() if test.kind == "input" and not test.per)
    return next((t for t in inputs if [one.quantity for one in t.reads] == [quantity]), None)


def _named(reads: Test, number: str, typed: str) -> str:
    """A number with the name of what it is behind it or before it, as it stands; else nothing."""
    words = sorted((w for short in reads.short_words for w in short.words), key=len, reverse=True)
    name, told = "|".join(map(re.escape, words)), re.escape(number)
    text = rf"(?:\bat )?(?:{told} (?:of )?(?:{name})\b|\b(?:{name}) (?:is |of )?{told})"
    found = re.search(text, typed, re.IGNORECASE) if words else None
    return found[0] if found else ""
