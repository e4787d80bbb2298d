"""Two pressures read out as one, the higher first: 222 over 71 is asked about before it is taken.

The low side is said first as a rule, and half of those who read gauges out say the high one first.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import Back, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.visit.hearing.read_out import ReadOut

_LOW, _HIGH = "suction-pressure", "head-pressure"
LEAST: Final = 2
"""Readings that make up such a pair."""


def as_they_stand(
    listener: Listener, knowledge: Knowledge, told: tuple[ReadOut, ...]
) -> Talk[tuple[ReadOut, ...]]:
    """The readings of a line, with the two sides changed over where that is meant.

    Raises Leave, DangerCalled.
    """
    for n, (low, high) in enumerate(pairwise(told)):
        if not _are_turned(knowledge, low, high):
            continue
        try:
            turned = yield from yes_or_no(
                listener, YesNo(f"Head {low.text}, suction {high.text}: is that meant?")
            )
        except Back:
            turned = False
        if turned:
            pair = replace(low, text=high.text), replace(high, text=low.text)
            told = (*told[:n], *pair, *told[n + LEAST :])
    return told


def _are_turned(knowledge: Knowledge, low: ReadOut, high: ReadOut) -> bool:
    """Whether a suction is told over a head that is lower: no unit reads so."""
    sides = [[test.id for test in one.tests] for one in (low, high)]
    if sides != [[_LOW], [_HIGH]] or low.at != high.at:
        return False
    try:
        lower, higher = (
            read_text(one.tests[0], one.text, knowledge).values[0].value for one in (low, high)
        )
    except NotUnderstood:
        return False
    return lower > higher
