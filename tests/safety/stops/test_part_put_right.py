"""A part that stopped the work is seen sound before anything runs, though its danger has gone.

A can that swelled and is bled bursts in somebody's face at the next call; so does one of two that
nobody looked at.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, measured, test_of, unit_of
from tests.safety.stops.little_rules import LOOK, ONE, ROOM, TWO, VOLTS, hazard, said
from troubleshoot.knowledge.model import Finding, Knowledge, Read
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import conclude_visit, lifted_stops
from troubleshoot.safety.stops.put_right import to_see_put_right, with_not_put_right
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.state import VisitState

HISS, QUIET = test_of("hiss", "bad", per="circuit"), test_of("quiet", "bad")
ON_TXV = test_of("on-txv", "bad", exists_when={"metering": ("txv",)})
RUN, OPEN_RUN, LIVE, LOCKED, SHUT, ANY = (
    test_of(f"reads-{state}", "bad", work_state=state)
    for state in (
        "running", "running-open", "energised-open", "locked-out", "locked-closed", "any",
    )
)  # fmt: skip
CAN = hazard(
    "can", "until-made-safe", Finding("hiss", ("bad",)), all_clear="quiet",
    put_right=(Finding("look", ("normal",)),),
)  # fmt: skip
BLADE = replace(
    hazard("blade", "this-step", Finding("room", ("bad",))),
    put_right=(Finding("room", ("normal", "odd")),),
)
KNOWN = base(
    [LOOK, ROOM, HISS, QUIET, ON_TXV, RUN, OPEN_RUN, LIVE, LOCKED, SHUT, ANY],
    hazards=[CAN, BLADE], quantities=[VOLTS],
)  # fmt: skip
BOTH = [("look", ONE), ("look", TWO)]
SOUND_ONE, SOUND_TWO = said("look", "normal", ONE), said("look", "normal", TWO)


def visit(*answers: Answer, stops: tuple[StopMet, ...], **facts: object) -> VisitState:
    unit = unit_of(KNOWN, circuits=2, **facts)
    return VisitState(unit=unit, answers=answers, stops=stops)


def after(state: VisitState, *lifted: StopMet, knowledge: Knowledge = KNOWN) -> Conclusions:
    """What is concluded where the STOPs given are lifted."""
    return with_not_put_right(knowledge, state, Reasoner(knowledge).conclude(state.case), lifted)


def standing(found: Conclusions, name: str = "can") -> list[FiredHazard]:
    return [fired for fired in found.hazards if fired.hazard.id == name]


def to_see(state: VisitState, *lifted: StopMet, knowledge: Knowledge = KNOWN) -> list[Spot]:
    return list(to_see_put_right(knowledge, state, after(state, *lifted, knowledge=knowledge)))


@pytest.mark.parametrize(
    ("spot", "before", "since", "left"),
    [
        (("hiss", ONE), (), (), [("look", ONE)]),
        (("hiss", TWO), (), (), [("look", TWO)]),
        (("quiet", None), (), (), BOTH),
        (None, (), (), BOTH),
        (("fan", Place("condenser-fan", 1)), (), (), BOTH),
        (("hiss", ONE), (), (SOUND_ONE,), []),
        (("hiss", TWO), (), (SOUND_ONE, SOUND_TWO), []),
        (("hiss", ONE), (), (SOUND_TWO,), [("look", ONE)]),
        (("quiet", None), (), (SOUND_TWO,), [("look", ONE)]),
        (("quiet", None), (), (SOUND_ONE, SOUND_TWO), []),
        (("hiss", ONE), (SOUND_ONE,), (), [("look", ONE)]),
        (("hiss", ONE), (SOUND_ONE,), (said("look", "worse", ONE),), [("look", ONE)]),
        (("hiss", ONE), (said("look", "worse", ONE),), (SOUND_ONE,), []),
        (("hiss", ONE), (), (said("look", "worse", ONE), SOUND_TWO), [("look", ONE)]),
        (("hiss", ONE), (), (said("look", "normal", ONE, valid=False),), [("look", ONE)]),
        (("hiss", ONE), (), (said("room", "normal"),), [("look", ONE)]),
        (("hiss", ONE), (), (said("hiss", "normal", ONE),), [("look", ONE)]),
        (("hiss", ONE), (), (said("look", "normal", None),), [("look", ONE)]),
    ],
    ids=[
        "nothing read", "at the second", "of no one place", "no finding", "at no such place",
        "read there", "both read", "read elsewhere", "one of two read", "every one read",
        "read before the STOP", "worse since", "sound since", "worse there, sound elsewhere",
        "a reading that does not count", "another part", "only the danger itself",
        "nobody said of which",
    ],
)  # fmt: skip
def test_a_part_keeps_all_off_until_it_was_read_sound_where_it_stopped_the_work(
    spot: Spot | None, before: tuple[Answer, ...], since: tuple[Answer, ...], left: list[Spot]
) -> None:
    met = StopMet("can", len(before), spot)
    state = visit(*before, *since, stops=(met,))
    assert to_see(state, met) == left
    assert bool(standing(after(state, met))) is bool(left)


def test_whoever_calls_for_the_unit_is_told_what_has_to_be_seen_first() -> None:
    met = StopMet("can", 0, ("hiss", ONE))
    (fired,) = standing(after(visit(stops=(met,)), met))
    assert fired.found and not fired.stops, "the danger at hand has gone: nobody is sent away"
    assert fired.circuits == (1, 2)
    said_of_it = fired.hazard.what_to_do
    assert "what it came from has not been seen put right" in said_of_it
    assert "Nothing here is switched on or called" in said_of_it and "locked out" in said_of_it


def test_nothing_live_is_read_at_it_and_what_is_locked_out_may_be() -> None:
    met = StopMet("can", 0, ("hiss", ONE))
    forbidden = Forbidden(after(visit(stops=(met,)), met))
    for test in (RUN, OPEN_RUN, LIVE):
        by = forbidden.by(test, None)
        assert by is not None and by.id == "can", test.work_state
    for test in (LOCKED, SHUT, ANY, LOOK):
        assert forbidden.by(test, None) is None, test.work_state


def test_a_stop_that_stands_again_says_more_and_leads_nobody_to_the_part() -> None:
    """While it hisses, hands stay off: nobody is led to look at it."""
    met = StopMet("can", 0, ("hiss", ONE))
    state = visit(said("hiss", "bad", ONE), stops=(met,))
    (fired,) = standing(after(state, met))
    assert fired.stops and fired.hazard.what_to_do == CAN.what_to_do
    assert to_see(state, met) == []


def test_a_stop_not_lifted_leads_to_no_part_though_another_is_lifted() -> None:
    blade, can = StopMet("blade", 0, ("room", None)), StopMet("can", 0, ("hiss", ONE))
    assert to_see(visit(stops=(can, blade)), blade) == [("room", None)]
    assert to_see(visit(stops=(can, blade)), blade, can) == [("look", ONE), ("room", None)]


def test_a_hazard_stands_once_though_what_halts_only_a_step_was_found_again() -> None:
    """Said twice, with two orders, it would be read as two dangers."""
    met = StopMet("blade", 0, ("room", None))
    state = visit(said("room", "bad"), stops=(met,))
    (fired,) = standing(after(state, met), "blade")
    assert not fired.stops and "seen put right" in fired.hazard.what_to_do


def test_a_part_met_twice_is_seen_once() -> None:
    met = StopMet("can", 0, ("hiss", ONE))
    assert to_see(visit(stops=(met, met)), met, met) == [("look", ONE)]


@pytest.mark.parametrize(("outcome", "left"), [("normal", []), ("odd", []), ("bad", ["room"])])
def test_any_outcome_that_is_named_shows_it_put_right(outcome: str, left: list[str]) -> None:
    met = StopMet("blade", 0, ("room", None))
    seen = to_see(visit(said("room", outcome), stops=(met,)), met)
    assert [test for test, _ in seen] == left


@pytest.mark.parametrize(("metering", "left"), [("txv", ["on-txv"]), ("fixed-orifice", [])])
def test_a_part_that_this_unit_has_not_is_not_waited_for(metering: str, left: list[str]) -> None:
    """Nor does it hide the next part that is: that one is still seen."""
    for also in ((), (Finding("room", ("normal",)),)):
        own = replace(CAN, put_right=(Finding("on-txv", ("normal",)), *also))
        knowledge = replace(KNOWN, hazards={**KNOWN.hazards, "can": own})
        met = StopMet("can", 0, ("quiet", None))
        state = visit(stops=(met,), metering=metering)
        wanted = [*left, *(finding.test for finding in also)]
        assert [test for test, _ in to_see(state, met, knowledge=knowledge)] == wanted


@pytest.mark.parametrize(("typed", "left"), [("3 V", []), ("5 V", ["volts"]), ("900 V", ["volts"])])
def test_a_number_at_its_limit_or_of_no_outcome_shows_nothing_put_right(
    typed: str, left: list[str]
) -> None:
    """By the meter 5 V may be more than the 5 V that are sound; of 900 V nothing is known."""
    bands = {"normal": {"at_most": 5}, "high": {"above": 5, "at_most": 50}}
    volts = measured("volts", bands, reads=(Read("volts"),))
    own = replace(CAN, put_right=(Finding("volts", ("normal",)),))
    knowledge = replace(
        KNOWN, hazards={**KNOWN.hazards, "can": own}, tests={**KNOWN.tests, "volts": volts}
    )
    met = StopMet("can", 0, ("quiet", None))
    state = visit(Answer("volts", (), typed), stops=(met,))
    assert [test for test, _ in to_see(state, met, knowledge=knowledge)] == left


@pytest.mark.parametrize(
    ("name", "answers", "lifted"),
    [
        ("can", (said("quiet", "normal"),), True),
        ("can", (said("quiet", "bad"),), False),
        ("can", (), False),
        ("lost-by-now", (said("quiet", "normal"),), False),
    ],
)
def test_only_a_stop_that_its_finding_lifted_leaves_its_part_to_be_seen(
    name: str, answers: tuple[Answer, ...], lifted: bool
) -> None:
    """One that today's rules have lost stands by itself: nothing lifts it here."""
    met = StopMet(name, 0, ("quiet", None))
    state = visit(*answers, stops=(met,))
    found = Reasoner(KNOWN).conclude(state.case)
    assert lifted_stops(KNOWN, state, found) == ((met,) if lifted else ())


def test_a_can_that_cooled_down_keeps_the_whole_visit_from_the_power_until_it_was_seen() -> None:
    met = StopMet("can", 0, ("quiet", None))
    for seen, live in (((), False), ((SOUND_ONE,), False), ((SOUND_ONE, SOUND_TWO), True)):
        found = conclude_visit(Reasoner(KNOWN), visit(said("quiet", "normal"), *seen, stops=(met,)))
        assert not found.standing_stops
        assert (Forbidden(found).by(LIVE, None) is None) is live, seen
