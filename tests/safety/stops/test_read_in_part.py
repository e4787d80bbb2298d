"""A STOP of which part has been read afresh: what is wanted next, and whether the way goes on."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, test_of, unit_of
from tests.safety.stops.little_rules import ROOM, concluded, fired, hazard, said
from troubleshoot.knowledge.model import Finding, Hazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.stops.lifting import MET, is_under_way, lifting_finding
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.visit.state import VisitState

SWEEP = test_of("sweep", "gas", kind="measurement")
DEAD = test_of("verified-dead", "live", kind="step")
PROOF = test_of("tester-proof", "failed", kind="step")
GAS = hazard("gas", "whole-job", Finding("sweep", ("gas",)), Finding("room", ("bad",)),
             all_clear="sweep")  # fmt: skip
LIVE = hazard("live", "until-made-safe", Finding("verified-dead", ("live",)),
              all_clear="verified-dead")  # fmt: skip
RULES = base((SWEEP, ROOM, DEAD, PROOF), hazards=(GAS, LIVE))

AT_ROOM: Spot = ("room", None)
AT_SWEEP: Spot = ("sweep", None)
AT_DEAD: Spot = ("verified-dead", None)
GIVEN_BACK = StopMet("gas", 1, AT_ROOM, reopened=True)
"""Gas was found in the room by a look, the first answer: the sweep comes before that look now."""
HELD_LIVE = StopMet("live", 1, AT_DEAD)
ROOM_BAD, ROOM_GOOD = said("room", "bad"), said("room", "normal")
SWEPT, GAS_READ = said("sweep", "normal"), said("sweep", "gas")
STILL_LIVE, FOUND_DEAD = said("verified-dead", "live"), said("verified-dead", "normal")
PROVED = said("tester-proof", "normal")


def visit(*answers: Answer, stops: tuple[StopMet, ...], **more: Any) -> VisitState:
    """A visit on its way to a finding, gone for after the first answer."""
    on_the_way: dict[str, Any] = {"fresh_read": True, "fresh_since": 1}
    unit = unit_of(RULES)
    return VisitState(unit=unit, answers=answers, stops=stops, **(on_the_way | more))


def stands(state: VisitState) -> set[str]:
    return {each.hazard.id for each in concluded(state, RULES).standing_stops}


def wanted(state: VisitState, which: Hazard) -> Spot | None:
    """The finding that may be taken afresh for a STOP that stands."""
    found = concluded(state, RULES)
    stop = next(each for each in found.standing_stops if each.hazard.id == which.id)
    return lifting_finding(RULES, state, found, stop)


def under_way(state: VisitState, which: Hazard, finding: Spot) -> bool:
    return is_under_way(RULES, state, concluded(state, RULES), fired(which, MET), finding)


def test_once_the_air_was_read_the_way_goes_on_to_the_look() -> None:
    state = visit(ROOM_BAD, SWEPT, stops=(GIVEN_BACK,))
    assert wanted(state, GAS) == AT_ROOM and under_way(state, GAS, AT_ROOM)
    assert not under_way(replace(state, fresh_read=False), GAS, AT_ROOM), "after a break"
    assert not under_way(replace(state, fresh_since=2), GAS, AT_ROOM), "gone for anew since"


def test_who_looks_before_the_air_was_read_is_on_no_way_to_it() -> None:
    state = visit(ROOM_BAD, ROOM_GOOD, stops=(GIVEN_BACK,))
    assert wanted(state, GAS) == AT_SWEEP and not under_way(state, GAS, AT_SWEEP)


@pytest.mark.parametrize("doubted", [SWEPT, ROOM_GOOD])
def test_of_two_findings_neither_may_be_old_or_doubted(doubted: Answer) -> None:
    """A sweep before the job was given back, or one that does not count, is no half of it."""
    sound = [ROOM_BAD, SWEPT, ROOM_GOOD]
    assert stands(visit(*sound, stops=(GIVEN_BACK,))) == set()
    spoilt = [replace(each, valid=False) if each is doubted else each for each in sound]
    assert stands(visit(*spoilt, stops=(GIVEN_BACK,))) == {"gas"}
    before = visit(ROOM_BAD, SWEPT, ROOM_GOOD, stops=(replace(GIVEN_BACK, answers=2),))
    assert stands(before) == {"gas"}


def test_where_the_first_of_two_was_not_sound_it_is_handed_over_and_no_second_is_read() -> None:
    state = visit(ROOM_BAD, replace(SWEPT, valid=False), stops=(GIVEN_BACK,))
    assert wanted(state, GAS) is None


def test_what_else_was_found_before_the_hand_over_is_looked_at_after_the_reopening() -> None:
    """The sweep had stopped the job, and was read sound; the look from before still says gas."""
    back = StopMet("gas", 2, AT_SWEEP, reopened=True)
    assert wanted(visit(ROOM_BAD, GAS_READ, SWEPT, stops=(back,)), GAS) == AT_ROOM
    again = (GAS_READ, SWEPT, ROOM_BAD, GAS_READ, SWEPT)
    twice = (replace(back, answers=1), replace(back, answers=4))
    assert wanted(visit(*again, stops=twice), GAS) == AT_ROOM, "it was given back since that look"


def test_a_test_for_dead_counts_once_the_meter_was_proved_and_the_way_goes_on_to_that() -> None:
    """NFPA 70E 120.5: the meter is proved after the test for dead too."""
    state = visit(STILL_LIVE, FOUND_DEAD, stops=(HELD_LIVE,))
    assert stands(state) == {"live"} and under_way(state, LIVE, AT_DEAD)
    proved = replace(state, answers=(*state.answers, PROVED))
    assert stands(proved) == set() and not under_way(proved, LIVE, AT_DEAD)


def test_no_way_goes_on_from_what_is_live_again_or_from_no_stop() -> None:
    live = visit(STILL_LIVE, STILL_LIVE, stops=(HELD_LIVE,))
    assert stands(live) == {"live"} and not under_way(live, LIVE, AT_DEAD)
    assert not under_way(visit(STILL_LIVE, FOUND_DEAD, stops=()), LIVE, AT_DEAD)
