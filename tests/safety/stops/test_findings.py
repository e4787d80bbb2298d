"""Which finding a STOP hangs on, and which all-clear where there is none."""

from __future__ import annotations

from tests.safety.stops.little_rules import (
    CLEAR,
    CRACK,
    KNOWN,
    LEAK,
    LOOK,
    ONE,
    ROOF,
    TWO,
    concluded,
    finding,
    fired,
    said,
    visit,
)
from troubleshoot.reasoning.chaining.on_record import ON_RECORD
from troubleshoot.safety.stops.lifting import finding_of
from troubleshoot.safety.stops.parts import is_all_clear
from troubleshoot.safety.stops.record import StopMet


def test_a_stop_hangs_on_the_place_where_the_outcome_was_found() -> None:
    state = visit(said("look", "worse", ONE), said("look", "bad", TWO))
    assert finding(state, "leak") == ("look", TWO)
    state = visit(said("room", "bad"), said("look", "bad", TWO), said("look", "normal", ONE))
    assert finding(state, "leak") == ("look", TWO)


def test_a_sign_that_was_seen_is_a_finding_too() -> None:
    state = visit(said("look", "bad", TWO))
    for atom in ("possible:look:bad", "seen:look:bad"):
        assert finding_of(KNOWN, state, concluded(state), fired(LEAK, atom)) == ("look", TWO)
    assert finding_of(KNOWN, state, concluded(state), fired(LEAK, "fault:look:bad")) is None


def test_a_finding_that_is_gone_is_the_one_that_the_visit_met() -> None:
    met = StopMet("leak", 0, ("look", ONE))
    assert finding(visit(stops=(met,)), "leak") == ("look", ONE)
    bare = StopMet("bare", 0)
    assert finding(visit(stops=(bare,)), "bare") is None
    assert finding(visit(stops=(StopMet("smell", 0),)), "smell") == ("all-clear", None)


def test_of_the_times_that_it_was_met_the_last_that_stands_says_what_shows_it() -> None:
    """Found and reported, say: then each needs its own fresh finding."""
    stops = (StopMet("leak", 0, ("look", ONE)), StopMet("leak", 0, ("look", TWO), "oil"))
    assert finding(visit(stops=stops), "leak") == ("look", TWO)
    assert finding(visit(said("look", "normal", TWO), stops=stops), "leak") == ("look", ONE)
    assert finding(visit(said("look", "normal", ONE), stops=stops), "leak") == ("look", TWO)


def test_without_a_finding_the_all_clear_is_the_complaints_or_else_the_hazards() -> None:
    for complaint, spot in (("smells", ("all-clear", None)), ("cold", None), (None, None)):
        state = visit(stops=(StopMet("bare", 0),), complaint=complaint)
        assert finding(state, "bare") == spot
    state = visit(said("room", "normal"), complaint="smells")
    gone = fired(CRACK, "possible:room:bad")
    assert finding_of(KNOWN, state, concluded(state), gone) is None, "a finding is no complaint"


def test_what_stands_by_the_record_alone_has_no_finding() -> None:
    state = visit(said("look", "bad", ONE), complaint="smells")
    assert (
        finding_of(KNOWN, state, concluded(state), fired(LEAK, ON_RECORD, "possible:look:bad"))
        is None
    )


def test_an_all_clear_is_a_step_that_is_none_of_ours() -> None:
    assert is_all_clear(CLEAR)
    assert not is_all_clear(ROOF) and not is_all_clear(LOOK)
