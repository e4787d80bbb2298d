"""Every call comes to an ending, however the unit answers, and nothing is asked a third time.

A rotation through calls, units and answers, so that each call is played in each run of the tests;
every other goes on after a repair that did not help. `tests/bench/endings.py` plays all of them.
"""

from __future__ import annotations

from collections import Counter

import pytest

from tests.dialogue.constant import MODES, ConstantVisit
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.prompts import Settled
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge

CALLS = tuple(load_shipped().complaints)
UNITS = tuple(load_shipped().typical_units)
MOST_PROMPTS = 250
SPLIT = "air-temperature-split"
REFRIGERANT = ("suction-pressure", "head-pressure", "superheat", "subcooling")


def objections(visit: ConstantVisit) -> list[str]:
    """What is wrong with a visit that has come to its end."""
    asked = Counter(visit.asked)
    said = [f"{test} at {at} asked {n} times" for (test, at), n in asked.items() if n > 2]
    tests = visit.knowledge.tests
    computed = {t for t, _ in visit.asked if tests[t].kind == "computed" and not tests[t].reads}
    said += [f"{test} is computed, and was asked" for test in sorted(computed)]
    said += [f"{test} cannot be done in the known state" for test in sorted({*visit.cannot})]
    said += [f"{test} is in hand, and not on record" for test in visit.unrecorded]
    if visit.prompts > MOST_PROMPTS:
        said.append(f"{visit.prompts} prompts")
    bad_split = any(
        a.test == SPLIT and not {*a.outcomes} & {*visit.knowledge.tests[SPLIT].healthy}
        for a in visit.state.answers
    )
    tried = {test for test, _ in visit.asked}
    if bad_split and isinstance(visit.end, Settled) and not tried & {*REFRIGERANT}:
        said.append("a failed split, and no refrigerant reading")
    return said


@pytest.mark.parametrize("number", range(len(CALLS)))
def test_every_call_comes_to_an_ending(number: int, shipped: Knowledge) -> None:
    name, mode = UNITS[number % len(UNITS)], MODES[number // len(UNITS) % len(MODES)]
    unit = shipped.typical_units[name].unit
    mends = number % 2 == 0
    visit = ConstantVisit(reasoner_of(shipped), unit, CALLS[number], mode, mends=mends)
    visit.drive()
    assert visit.end is not None
    assert objections(visit) == []
