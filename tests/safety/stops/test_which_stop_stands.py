"""Which STOP stands over a visit, and which of several is told of."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.stops.little_rules import (
    CRACK,
    KNOWN,
    LEAK,
    ONE,
    concluded,
    said,
    standing,
    visit,
)
from troubleshoot.knowledge.model import Stop
from troubleshoot.reasoning.conclude import FiredHazard
from troubleshoot.safety.stops.lifting import MET, standing_stop
from troubleshoot.safety.stops.record import StopMet


def test_a_stop_that_has_to_be_handed_over_is_told_of_before_one_that_need_not_be() -> None:
    leak = said("look", "bad", ONE)
    state = visit(said("room", "bad"), leak, stops=(StopMet("bare", 2),))
    found = concluded(state)
    assert [f.hazard.id for f in found.standing_stops] == ["crack", "leak", "bare"]
    told = standing_stop(KNOWN, state, found)
    assert told is not None and told.hazard.id == "crack"
    met = StopMet("crack", 1, ("room", None), reopened=True)
    state = visit(said("room", "bad"), leak, stops=(met, StopMet("bare", 2)))
    told = standing_stop(KNOWN, state, concluded(state))
    assert told is not None and told.hazard.id == "bare", "nothing may lift it here"
    state = visit(said("room", "bad"), leak, stops=(met,))
    told = standing_stop(KNOWN, state, concluded(state))
    assert told is not None and told.hazard.id == "crack", "the first of those that may be lifted"
    assert standing_stop(KNOWN, visit(), concluded(visit())) is None


def test_a_stop_that_was_met_stands_though_nothing_calls_it_up_beside_what_else_is_known() -> None:
    odd = said("room", "odd")
    alone = concluded(visit(odd))
    state = visit(odd, stops=(StopMet("leak", 1, ("look", ONE)),))
    found = concluded(state)
    assert [f.hazard.id for f in found.hazards] == ["this-one", "leak"]
    assert found.hazards[0] == alone.hazards[0]
    assert found.hazards[1] == FiredHazard(LEAK, (1, 2), (MET,), found=True)
    assert MET == "met"


def test_a_stop_that_is_called_up_as_well_stands_once_and_by_its_finding() -> None:
    state = visit(said("look", "bad", ONE), stops=(StopMet("leak", 1, ("look", ONE)),))
    (only,) = concluded(state).hazards
    assert only.because == ("possible:look:bad",)


@pytest.mark.parametrize(
    ("name", "stop"),
    [
        ("heard-of", Stop("until-made-safe", "heard-of")),
        ("this-one", Stop("until-made-safe", "what this-one covers")),
        ("leak", LEAK.stop),
        ("crack", CRACK.stop),
    ],
)
def test_a_danger_reported_in_words_halts_whatever_its_scope(name: str, stop: Stop) -> None:
    state = visit(said("room", "odd"), stops=(StopMet(name, 0, None, "watch out"),))
    assert standing(state)[name].hazard == replace(KNOWN.hazards[name], stop=stop)
    assert [f.hazard.id for f in concluded(state).hazards].count(name) == 1
