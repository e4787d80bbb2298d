"""Readings that come to something else than they did: which, before and now, in a sentence.

A reading changes when the same thing is read again, when what it is computed from is, and when what
the plate says of it is corrected. The later one counts. One taken after a repair contradicts
nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.visit.telling.as_read import as_computed


def contradictions(before: Conclusions, after: Conclusions) -> Iterator[str]:
    """A sentence for every reading that comes to something else than before."""
    once = counting(before)
    for key, now in counting(after).items():
        was = once.get(key)
        if was is None or set(was.seen) & set(now.seen):
            continue
        if now.after_repair and not was.after_repair:
            continue
        yield (
            f"{named(after, now)} was {_said(before, was)}, and is now {_said(after, now)}. The "
            "later one counts."
        )


def judged_anew(before: Conclusions, after: Conclusions) -> Iterator[str]:
    """The same where nothing was read: another plate judges what was read before."""
    once = counting(before)
    for key, now in counting(after).items():
        was = once.get(key)
        if was is None or set(was.seen) != set(now.seen):
            old = f"was {_said(before, was)}, and is" if was else "is"
            yield f"Judged anew: {named(after, now)} {old} now {_said(after, now)}."
    for key in once.keys() - counting(after).keys():
        yield (
            f"Not judged any more, for want of something: {named(before, once[key])}, "
            f"{_said(before, once[key])}."
        )


def computed_since(before: Conclusions, after: Conclusions) -> Iterator[Reading]:
    """What follows in numbers now and did not before, or followed otherwise."""
    once = counting(before)
    for key, now in counting(after).items():
        was = once.get(key)
        if now.computed and now.classified is not None and not (was and _same(was, now)):
            yield now


def _same(was: Reading, now: Reading) -> bool:
    return was.computed and was.classified is not None and was.classified == now.classified


def counting(found: Conclusions) -> dict[tuple[str, Place | None], Reading]:
    """The reading that counts of each test at each place, of those that come to anything."""
    found_here: dict[tuple[str, Place | None], Reading] = {}
    for reading in found.readings:
        if reading.valid and reading.seen:
            found_here.setdefault((reading.test, reading.at), reading)
    return found_here


def named(found: Conclusions, reading: Reading) -> str:
    test = found.hypotheses.knowledge.tests[reading.test]
    return with_place(test.name, found.case.unit.layout.shown(test.per, reading.at))


def _said(found: Conclusions, reading: Reading) -> str:
    test = found.hypotheses.knowledge.tests[reading.test]
    seen = ", ".join(map(test.spoken, reading.seen))
    if reading.text:
        return f"{seen} ({reading.text})"
    if not reading.computed or reading.classified is None:
        return seen
    quantity = found.hypotheses.knowledge.quantities[reading.classified.quantity]
    unit = quantity.unit.removesuffix("-diff")
    return f"{seen} (computed: {as_computed(reading.classified.value)} {unit})"
