"""What a play teaches: what readings told in numbers, when it was decided, what to answer after."""

from __future__ import annotations

import pytest

from tests.practice.playing import do_steps, lead_to, scenario_named, session_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.alike import cases_alike
from troubleshoot.practice.debrief_readings import readings_told
from troubleshoot.practice.lessons import decided, invited_belief, told_by_readings
from troubleshoot.practice.question import question_of
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place


def at_the_gauges(shipped: Knowledge) -> Session:
    session = session_of(shipped, "quarry-road")
    do_steps(session, "roof-conditions", "combustible-gas-sweep")  # what it finds is told as well
    lead_to(session, "subcooling")
    for name in ("visit-history", "subcooling", "sight-glass", "lines-by-hand"):
        test = shipped.tests[name]
        lead_to(session, name)
        session.choose(test, session.places(test)[0])
    return session


def test_each_reading_is_told_in_numbers_before_and_after(shipped: Knowledge) -> None:
    told = list(told_by_readings(at_the_gauges(shipped)))
    assert [each.done.test.id for each in told][:2] == ["visit-history", "subcooling"]
    assert all(0 <= each.before <= 1 and 0 <= each.after <= 1 for each in told)
    # A step on the way, such as each start, tells a little too.
    after, before = [a.after for a in told[:-1]], [b.before for b in told[1:]]
    assert after == pytest.approx(before, abs=0.01)
    subcooling = told[1]
    assert subcooling.after > subcooling.before and subcooling.much


def test_the_case_is_decided_where_its_rivals_are_left_behind(shipped: Knowledge) -> None:
    session = at_the_gauges(shipped)
    moment = decided(session)
    assert moment is not None and moment.done.test.id == "sight-glass"
    assert moment.tests_after == 1 and 0 < moment.minutes < session.minutes
    lines = "\n".join(readings_told(session))
    assert "Decided by Sight glass" in lines and "1 test after it." in lines
    kind = shipped.complaints[session.scenario.complaint].says
    assert f'Behind calls of the kind "{kind}", before a word more: ' in lines and " % to " in lines


def test_what_was_never_decided_is_told(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    session.choose(shipped.tests["visit-history"], None)
    assert decided(session) is None
    assert "Nothing that you read had decided it." in readings_told(session)


def test_the_belief_that_the_call_invites_is_a_wrong_one(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    belief = invited_belief(session)
    assert belief is not None and belief.fault.id != "low-charge-from-leak"
    assert belief.probability == max(
        cause.probability
        for cause in session.start.causes
        if cause.fault.id != "low-charge-from-leak"
    )


def test_the_question_is_about_what_was_wrongly_called(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    question = question_of(session, [TrueFault("overcharge", Place("circuit", 1))])
    assert question is not None and question.rival.id == "overcharge"
    assert question.answer in question.outcomes and len(question.outcomes) > 1
    alike = question_of(session, [])
    assert alike is not None
    assert alike.rival.id in shipped.faults["low-charge-from-leak"].look_alikes


def test_of_a_sound_unit_nothing_is_asked(shipped: Knowledge) -> None:
    assert question_of(session_of(shipped, "drovers-yard"), []) is None


def test_two_cases_alike_are_chosen_by_their_calls_unplayed_ones_first(shipped: Knowledge) -> None:
    names = ("quarry-road", "beech-hill", "tram-street", "church-field", "ferry-green")
    own, *others = (scenario_named(shipped, name) for name in names)
    near = cases_alike(shipped, own, others, set())
    assert {case.id for case in near} == {"beech-hill", "tram-street"}
    after = cases_alike(shipped, own, others, {"beech-hill"})
    assert after[0].id == "tram-street" and after[1].id != "beech-hill"
