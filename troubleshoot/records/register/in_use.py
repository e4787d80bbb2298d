"""Which instruments a visit is read with, and which of them are out of their proof."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final

from troubleshoot.quantities.instruments import INSTRUMENTS
from troubleshoot.reasoning.readings.meters import Listed, at_worst
from troubleshoot.records.register.instruments import Instruments, OnHand, accuracy_in_numbers
from troubleshoot.visit.kept.on_record import Recorded

A_YEAR: Final = timedelta(days=366)
"""How long a proof holds where nothing says until when (common practice, no source)."""


def in_use(instruments: Instruments, today: date) -> Recorded:
    """The instruments that say how far they err, and what is told of them at a visit's start.

    One that is out of its proof is no better than its kind.
    """
    own = [each for each in instruments.kept if each.accuracy]
    out = [each for each in own if not is_proved(each, today)]
    listed = tuple(_listed(each, is_out=each in out) for each in own)
    return Recorded(says=(*instruments.problems, *_says(own, out)), instruments=listed)


def is_proved(each: OnHand, today: date) -> bool:
    """Whether the proof of an instrument still holds; one that was never proved is not."""
    if not each.proved:
        return False
    until = date.fromisoformat(each.due) if each.due else date.fromisoformat(each.proved) + A_YEAR
    return today <= until


def _listed(each: OnHand, *, is_out: bool) -> Listed:
    own = Listed(each.name, each.kind, *accuracy_in_numbers(each))
    if not is_out:
        return own
    worst = at_worst(INSTRUMENTS[each.kind], (own,), and_its_kind=True)
    return Listed(each.name, each.kind, worst.percent, worst.counts, worst.fixed)


def _says(own: list[OnHand], out: list[OnHand]) -> Iterator[str]:
    if own:
        names = ", ".join(each.name for each in own)
        yield f"Readings are judged by the accuracy of the listed instruments: {names}."
    for each in out:
        since = f"last proved {each.proved}" if each.proved else "no proof on record"
        yield f"{each.name} is out of its proof ({since}): it counts as no better than its kind."
