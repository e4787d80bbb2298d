"""Which STOP stands over a visit, and which of several is told of."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.stops.little_rules import (
    CRACK,
    KNOWN,
    LEAK,
    ONE,
    TWO,
    concluded,
    fired,
    said,
    standing,
    visit,
)
from troubleshoot.knowledge.model import Stop
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.stops.lifting import MET, is_news, standing_stop, words_reported
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.visit.state import VisitState


def told_of(state: VisitState) -> str:
    told = standing_stop(KNOWN, state, concluded(state))
    assert told is not None
    return told.hazard.id


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


FIRST, SECOND = StopMet("crack", 0, ("room", None)), StopMet("smell", 0, ("all-clear", None))


@pytest.mark.parametrize(
    ("stops", "told"),
    [
        ((FIRST, SECOND), "smell"),
        ((SECOND, FIRST), "crack"),
        ((FIRST, SECOND, FIRST), "crack"),
        ((SECOND, FIRST, SECOND), "smell"),
    ],
)
def test_of_those_to_be_handed_over_the_last_met_is_told(
    stops: tuple[StopMet, ...], told: str
) -> None:
    assert told_of(visit(stops=stops)) == told


@pytest.mark.parametrize("bad", [said("room", "bad"), said("look", "bad", ONE)])
def test_one_that_was_found_just_now_is_told_before_those_that_were_met(bad: Answer) -> None:
    """Of those to be handed over; one that may be lifted here waits for them."""
    assert told_of(visit(bad, stops=(SECOND,))) == ("crack" if bad.test == "room" else "smell")


def test_of_those_that_may_be_lifted_here_one_reported_just_now_is_told_else_the_first() -> None:
    leak = said("look", "bad", ONE)
    found = StopMet("leak", 1, ("look", ONE))
    bare = StopMet("bare", 1, ("room", None))
    reported = replace(bare, reported="it drips on the board")
    assert told_of(visit(leak, stops=(found, reported))) == "bare"
    assert told_of(visit(leak, stops=(found, bare))) == "leak"
    assert told_of(visit(leak, stops=(reported, found))) == "leak", "that was before"
    assert told_of(visit(leak)) == "leak"


AT_ONE, ROOF = ("look", ONE), ("roof-conditions", None)
BAD_AT_ONE, STORMY = said("look", "bad", ONE), said("roof-conditions", "lightning")


def test_one_that_is_found_on_the_way_to_lifting_another_is_told_first() -> None:
    met = StopMet("leak", 1, AT_ONE)
    on_the_way = visit(BAD_AT_ONE, STORMY, stops=(met,), fresh=AT_ONE)
    assert [*standing(on_the_way)] == ["leak", "storm"] and told_of(on_the_way) == "storm"
    halted = replace(on_the_way, stops=(met, StopMet("storm", 2, ROOF)))
    assert told_of(halted) == "leak", "it has halted"
    assert told_of(replace(on_the_way, fresh=None)) == "leak", "nothing is taken afresh"


@pytest.mark.parametrize(
    ("stops", "fresh", "news"),
    [
        ((), ROOF, True), ((), AT_ONE, False), ((), None, False),
        ((StopMet("leak", 0, AT_ONE),), ROOF, False),
        ((StopMet("leak", 0, ("look", TWO)),), ROOF, True),
    ],
    ids=["found", "its own is taken", "none is taken", "met", "met elsewhere, and lifted"],
)  # fmt: skip
def test_a_stop_is_news_until_it_has_halted_and_where_its_own_finding_is_not_on_its_way(
    stops: tuple[StopMet, ...], fresh: Spot | None, news: bool
) -> None:
    state = visit(said("look", "normal", TWO), BAD_AT_ONE, STORMY, stops=stops, fresh=fresh)
    assert is_news(KNOWN, state, concluded(state), standing(state)["leak"]) is news


LEAKED = StopMet("leak", 0, ("look", TWO))
OILY, HISSING = replace(LEAKED, reported="oil"), replace(LEAKED, reported="it hisses")


@pytest.mark.parametrize(
    ("stops", "words"),
    [
        ((), None),
        ((LEAKED,), None),
        ((OILY,), "oil"),
        ((OILY, HISSING), "it hisses"),
        ((HISSING, OILY), "oil"),
        ((OILY, LEAKED), "oil"),
        ((OILY, replace(LEAKED, hazard="bare"), LEAKED), "oil"),
        ((LEAKED, replace(OILY, hazard="bare")), None),
        ((replace(OILY, spot=("look", ONE)), LEAKED), None),
    ],
    ids=["never met", "only found", "reported", "twice", "twice otherwise", "met again",
         "met again after another", "another was reported", "lifted since"],
)  # fmt: skip
def test_a_stop_is_told_in_the_words_of_its_last_report_that_nothing_lifted(
    stops: tuple[StopMet, ...], words: str | None
) -> None:
    state = visit(said("look", "normal", ONE), stops=stops)
    assert words_reported(KNOWN, state, concluded(state), fired(LEAK, MET)) == words


@pytest.mark.parametrize(
    ("stops", "words"),
    [((), None), ((OILY, LEAKED), None), ((LEAKED, OILY), "oil"), ((OILY,), "oil")],
)
def test_one_that_was_found_since_its_report_is_told_as_found(
    stops: tuple[StopMet, ...], words: str | None
) -> None:
    state = visit(said("look", "bad", TWO), stops=stops)
    for because in (("possible:look:bad",), ("complaint:smells", "possible:look:bad")):
        assert words_reported(KNOWN, state, concluded(state), fired(LEAK, *because)) == words
