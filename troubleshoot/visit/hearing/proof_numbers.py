"""The numbers that were typed for a proof: in which units it is read, and what each comes to."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof, Test
from troubleshoot.quantities.typed import Expected, read
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.classify import classify
from troubleshoot.reasoning.readings.measuring import reads
from troubleshoot.reasoning.readings.not_judged import missing_for
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.numbers_shown import is_in, numbers_in, own_units
from troubleshoot.visit.hearing.legs_read import legs_in, pairs_missing
from troubleshoot.visit.hearing.proof_others import OF_INSULATION, to_ground
from troubleshoot.visit.hearing.proof_words import SAYS_NOTHING, bare_reading

NOT_JUDGED: Final = "not judged: it lies in none of its limits, so read it again"

_OFF_A_METER: Final = frozenset({
    "voltage", "current", "capacitance", "resistance", "gauge pressure", "pressure difference",
})  # fmt: skip
"""What nobody tells without the number that a meter or gauge shows."""


def units_of(knowledge: Knowledge, proof: Proof) -> tuple[str, ...]:
    """The units in which a proof is read: those of its test, else those its text names."""
    if proof.finding is not None and knowledge.tests[proof.finding.test].reads:
        own = own_units(knowledge, knowledge.tests[proof.finding.test])
        computed = computed_for(knowledge, proof)
        return own if computed is None else (*own, knowledge.quantities[computed].unit)
    words = proof.text.replace(",", " ").split()
    named = [f"1 {word}" for word in words if word not in SAYS_NOTHING]
    return tuple(u for u in _all_units(knowledge) if any(is_in(text, u) for text in named))


def computed_for(knowledge: Knowledge, proof: Proof) -> str | None:
    """The quantity that a proof names, where its test reads another and computes it from that."""
    if proof.finding is None:
        return None
    test = knowledge.tests[proof.finding.test]
    own = {word for one in test.reads for word in knowledge.quantities[one.quantity].spoken.split()}
    bounds = (b for outcome in test.outcomes for line in outcome.limits for b in line.bounds)
    for name in dict.fromkeys(bound.quantity for bound in bounds):
        quantity = knowledge.quantities[name]
        first = quantity.spoken.split()[0]
        if quantity.computed and first not in own and proof.text.lower().startswith(first):
            return name
    return None


def why_not_judged(knowledge: Knowledge, values: Values, proof: Proof) -> str:
    """What is missing to judge a number that was read for a proof."""
    missing = missing_of(knowledge, values, proof)
    return f"not judged, for want of: {', '.join(missing)}" if missing else NOT_JUDGED


def missing_of(knowledge: Knowledge, values: Values, proof: Proof) -> tuple[str, ...]:
    """What would judge a proof besides its own number, in words."""
    test = knowledge.read_by(proof)
    return missing_for(test, values) if test is not None and test.reads else ()


def wants_a_number(knowledge: Knowledge, proof: Proof) -> bool:
    """Whether a proof is right by the limits of a meter or gauge alone, so that words say nothing.

    Where it is right that there is none, words may say so.
    """
    if proof.finding is None or "none" in proof.finding.outcomes:
        return False
    outcomes = knowledge.tests[proof.finding.test].outcomes
    sound = (outcome for outcome in outcomes if outcome.id in proof.finding.outcomes)
    by_limits = any(outcome.limits for outcome in sound)
    return by_limits and any(unit(each).kind in _OFF_A_METER for each in units_of(knowledge, proof))


def judged(
    knowledge: Knowledge, values: Values, proof: Proof, typed: str, per: str | None = None
) -> Iterator[bool | None]:
    """Whether each number in the proof's own units is right; None where too little is known.

    Where the rules know what is right in words alone, a number that tells nothing bad is.
    `per`: the kind of place that was repaired.
    """
    test = knowledge.read_by(proof)
    if test is None or not test.reads:
        yield from _judged_by_its_text(knowledge, values, proof, typed)
    else:
        yield from (
            is_right for _, is_right in judged_readings(knowledge, values, proof, typed, per)
        )


def judged_readings(
    knowledge: Knowledge, values: Values, proof: Proof, typed: str, per: str | None = None
) -> Iterator[tuple[str, bool | None]]:
    """The same with each reading as it was told, of a proof whose test reads numbers."""
    assert proof.finding is not None
    units, test = units_of(knowledge, proof), knowledge.tests[proof.finding.test]
    of_another = is_of_other_units(knowledge, proof, typed)
    bare = None if of_another else bare_reading(knowledge, proof, typed)
    computed = computed_for(knowledge, proof)
    texts = _pairs(knowledge, values, proof, typed)
    if texts is None:
        texts = _texts(knowledge, test, typed, units, bare)
    sound, places = {*proof.finding.outcomes}, _places(values, test, per)
    is_by_words = not any(o.limits for o in test.outcomes if o.id in sound)
    for text in texts:
        if computed is not None and (text == bare or not reads(test, text, knowledge)):
            seen = _computed(values, test, places, computed, text)
        else:
            seen = _seen(values, test, places, text)
        if not seen and is_by_words:
            yield text, True
        elif not seen or ({True, False} <= {each <= sound for each in seen}):
            yield text, None
        else:
            yield text, all(each <= sound for each in seen)


def _pairs(knowledge: Knowledge, values: Values, proof: Proof, typed: str) -> list[str] | None:
    """The pairs of a winding as one reading, without what stands around; None where it has none.

    One that is open is told in an answer that the test reads as it stands.
    """
    legs = legs_in(knowledge, values.unit, proof, typed)
    if math.inf in legs or not pairs_missing(knowledge, proof, ()):
        return None
    return [f"{'/'.join(f'{leg:g}' for leg in legs)} ohm"] if legs else []


def _texts(
    knowledge: Knowledge, test: Test, typed: str, units: tuple[str, ...], bare: str | None
) -> list[str]:
    """The readings that are told: the whole answer, or each number that stands in it."""
    if bare is not None and bare == typed.strip():
        return [bare]
    if reads(test, typed, knowledge):
        return [typed]
    if OF_INSULATION in units and (grounds := to_ground(typed)):
        return [*grounds]
    return [number for number, _ in numbers_in(typed, units)] or ([] if bare is None else [bare])


def _judged_by_its_text(
    knowledge: Knowledge, values: Values, proof: Proof, typed: str
) -> Iterator[bool | None]:
    """The same of a proof that no test reads in numbers."""
    legs = legs_in(knowledge, values.unit, proof, typed)
    if proof.finding is not None and "none" in proof.finding.outcomes:
        yield from (_is_nought(number) for number, _ in numbers_in(typed, _all_units(knowledge)))
    elif len(legs) > 1:
        yield True
    else:
        yield from (True for _ in numbers_in(typed, units_of(knowledge, proof)))


def _seen(
    values: Values, test: Test, places: tuple[Place | None, ...], text: str
) -> tuple[frozenset[str], ...]:
    """What a number comes to wherever on the unit it may have been read and can be judged."""
    answer = Answer(test.id, text=text, places=(None,))
    found = (frozenset(outcomes_of(values.knowledge, answer, place, values)) for place in places)
    return tuple(dict.fromkeys(each for each in found if each))


def _computed(
    values: Values, test: Test, places: tuple[Place | None, ...], name: str, text: str
) -> tuple[frozenset[str], ...]:
    """The same of a number that was worked out where it was read, and is told as it came out."""
    quantity = values.knowledge.quantities[name]
    value = Value(read(text, Expected(quantity.unit)).values[0].value)
    found = (
        classify(test, at, values.with_typed({(name, values.place_for(quantity.per, at)): value}))
        for at in places
    )
    return tuple(dict.fromkeys(frozenset(each.seen) for each in found if each is not None))


def _places(values: Values, test: Test, per: str | None) -> tuple[Place | None, ...]:
    """Where it may have been read: nowhere in particular, or at what was repaired.

    A new capacitor of the blower is not held against the plate of the compressor's.
    """
    layout = values.unit.layout
    own = [at for at in layout.places(test.per) if at is not None and at.kind == per]
    return tuple(dict.fromkeys((None, *(own or layout.places(test.per)))))


def _is_nought(number: str) -> bool:
    """Whether a number is plainly none of what was looked for."""
    return re.fullmatch(r"0+(?:\.0+)?(?:\D.*)?", number) is not None


def is_of_other_units(knowledge: Knowledge, proof: Proof, typed: str) -> bool:
    """Whether the only numbers are in units of another quantity, where a reading is wanted."""
    units = units_of(knowledge, proof)
    others = tuple(each for each in _all_units(knowledge) if each not in units)
    return bool(units) and any(True for _ in numbers_in(typed, others))


def _all_units(knowledge: Knowledge) -> tuple[str, ...]:
    """Every unit in which people give a number of something; counts have none."""
    known = dict.fromkeys(quantity.unit for quantity in knowledge.quantities.values())
    return tuple(each for each in known if unit(each).spoken)
