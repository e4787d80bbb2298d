"""The debrief says what it was, what each test was worth, what was missed, and what to read."""

from __future__ import annotations

import math
import re
import textwrap

import pytest

from tests.practice.players import put_back
from tests.practice.playing import (
    TO_OPEN_AND_RUN,
    do_steps,
    follow,
    lead_to,
    path_of,
    session_of,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.debrief import debrief, to_read
from troubleshoot.practice.debrief_work import WORTH, worth
from troubleshoot.practice.expecting import Band, judge
from troubleshoot.practice.loading import scenario_paths
from troubleshoot.practice.question import question_of
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, score_of
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.telling.explain import strength

TRUE = TrueFault("low-charge-from-leak", Place("circuit", 1))


def told(session: Session, call: Call) -> str:
    path = path_of(session.knowledge, session.scenario.id)
    score = score_of(session, call, path)
    guess = judge(session.knowledge.tests["subcooling"], "30", Band(8.0, 12.0, "F"))
    return "\n".join(debrief(session, call, score, path, [guess]))


def test_a_wrong_call_is_answered_with_the_evidence(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    session.choose(shipped.tests["visit-history"], None)
    lead_to(session, "subcooling")
    session.choose(shipped.tests["subcooling"], Place("circuit", 1))
    wrong = TrueFault("overcharge", Place("circuit", 1))
    text = told(session, Call((wrong,)))
    assert text.startswith(("Wrong.", "Partly right."))
    assert f"It was: {shipped.faults[TRUE.fault].name}" in text
    assert "What decides it:" in text and "Against" in text
    worths = text.partition("What your tests could have changed:\n")[2]
    assert shipped.tests["visit-history"].name in worths.partition("What a sound unit reads")[0]
    assert shipped.tests["subcooling"].name in worths.partition("What a sound unit reads")[0]
    assert "you said 30; it is 8 to 12 F" in text
    assert "Your call does not explain:" in text
    assert f"Read: troubleshoot rules explain {TRUE.fault}" in text
    assert "The expert's way, with" in text
    assert f"To take home: {session.scenario.teaches}" in text


def test_a_failed_play_says_what_could_have_hurt_and_where_to_read(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    session.choose(shipped.tests["air-filters"], None)
    first = told(session, Call((TRUE,)))
    assert "Why: Filters, without" in first
    assert "half the points. The same again fails a play." in first
    session.choose(shipped.tests["air-filters"], None)
    text = told(session, Call((TRUE,)))
    assert text.startswith("FAILED ON SAFETY") and "half the points" not in text
    assert "it could have hurt someone:\n  Filters, without the power switched off" in text
    hazard, case = (part.split()[0] for part in text.split("rules explain ")[1:])
    assert f"Read first, of what was stopped: troubleshoot rules explain {hazard}" in text
    assert hazard in shipped.hazards and case in shipped.faults


def test_an_obeyed_stop_is_told_and_nothing_is_left_unexplained(shipped: Knowledge) -> None:
    session = session_of(shipped, "church-field")
    session.declare_stop()
    text = told(session, Call())
    assert text.startswith("Right.") and "A STOP ended this job, and you stopped." in text
    assert "Your call does not explain:" not in text


def test_a_sound_unit_is_said_to_be_sound(shipped: Knowledge) -> None:
    session = session_of(shipped, "spa-terrace")
    text = told(session, Call())
    assert "Nothing was wrong with this unit." in text
    assert "Every reading lies where a sound unit's does." in text


def test_what_there_is_to_read_can_be_read(shipped: Knowledge) -> None:
    session = session_of(shipped, "spa-terrace")
    path = path_of(shipped, session.scenario.id)
    for call in (Call(), Call((TRUE,))):
        name = to_read(session, call, score_of(session, call, path))
        assert name in {*shipped.faults, *shipped.hazards, *shipped.complaints}, name


def test_a_greater_gain_is_never_said_to_be_less() -> None:
    words = [said for _, said in reversed(WORTH)]
    gains = [step / 100 for step in range(120)]
    places = [words.index(worth(gain)) for gain in gains]
    assert places == sorted(places)
    assert set(places) == set(range(len(WORTH)))


def test_what_was_not_said_is_not_called_wrong(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    session.choose(shipped.tests["visit-history"], None)
    text = told(session, Call((TRUE,), (), None, TRUE.fault))
    assert "Right on: the proof\nWrong on: the cause behind\nNot said: the repair" in text
    assert "You called:" not in text


@pytest.mark.parametrize("name", sorted(scenario_paths()))
def test_no_question_is_asked_of_what_is_there(name: str, shipped: Knowledge) -> None:
    """Regression: old-quay asked what the acid behind it would have shown, and had it as none."""
    session = session_of(shipped, name)
    truth = session.scenario.truth
    there = (*truth.faults, *(TrueFault(behind) for behind in truth.behind))
    question = question_of(session, there)
    assert question is None or question.rival.id not in {fault.fault for fault in there}


@pytest.mark.parametrize("name", sorted(scenario_paths()))
def test_a_debrief_opens_with_result_why_and_one_thing_to_do_otherwise(
    name: str, shipped: Knowledge
) -> None:
    """Who reads a debrief on a phone reads its first lines."""
    session = session_of(shipped, name)
    truth = session.scenario.truth
    for call in (Call(), Call((TRUE,)), Call(truth.faults, truth.behind, TRUE.fault, TRUE.fault)):
        result, why, otherwise, blank, *_ = told(session, call).splitlines()
        assert re.match(r"(Right|Partly right|Wrong)\b.* points of 100\.$", result)
        assert why.startswith("Why: ") and otherwise.startswith("Next time: ")
        assert blank == "" and max(len(why), len(otherwise)) <= 200


def test_what_to_do_otherwise_is_what_cost_most(shipped: Knowledge) -> None:
    session = session_of(shipped, "mill-lane")
    path = path_of(shipped, "mill-lane")
    follow(session, path)
    truth = session.scenario.truth
    own = truth.faults[0].fault
    left = told(session, Call(truth.faults, (), own, own))
    assert "Next time: put the unit back before the call. (20 points)" in left
    put_back(session)
    assert "Next time: the same again." in told(session, Call(truth.faults, (), own, own))
    missed = told(session, Call(truth.faults, (), own, "blower-capacitor-weak"))
    assert "Next time: prove it by what read wrong, the way it was read. (10 points)" in missed
    assert "Points lost: the proof 10." in missed
    blind = told(session_of(shipped, "mill-lane"), Call((TRUE,)))
    named = re.search(r"Next time: take (.+) before the call\.", blind)
    assert named and named[1] in {shipped.tests[move.test].name for move in path.tests}


def test_a_near_miss_is_told_as_such(shipped: Knowledge) -> None:
    session = session_of(shipped, "mill-lane")
    truth = session.scenario.truth.faults
    text = told(
        session, Call(truth, (), "compressor-run-capacitor-weak", "compressor-run-capacitor-weak")
    )
    alike = shipped.faults["compressor-run-capacitor-weak"].name
    assert f"A near miss, the repair: it is of {alike}, which is easily taken for it." in text
    assert "A near miss, the proof: it is of" in text
    assert "A near miss" not in told(session, Call(truth, (), "gas-valve-failed", truth[0].fault))


def test_a_proof_that_reads_so_anyway_is_told_to_prove_nothing(shipped: Knowledge) -> None:
    """The fan has its volts with a weak capacitor as well."""
    session = session_of(shipped, "mill-lane")
    truth = session.scenario.truth.faults
    text = told(session, Call(truth, (), truth[0].fault, "condenser-fan-no-supply"))
    volts = shipped.tests["condenser-fan-volts"].name
    assert f"{volts} reads so with the fault there as well: that proves nothing." in text


def test_against_a_wrong_call_stands_what_its_own_card_rules_out(shipped: Knowledge) -> None:
    """Regression: the gas was on, and nothing against the call that it was shut said so."""
    session = session_of(shipped, "long-meadow")
    text = told(session, Call((TrueFault("gas-shut-off-or-tank-empty"),)))
    against = text.partition("Against Gas cock or meter shut, or the tank empty:\n")[2]
    assert f"{shipped.tests['gas-supply-look'].name}: " in against.partition("\nBehind")[0]


@pytest.mark.parametrize("name", ["mill-lane", "quarry-road", "tram-street", "church-field"])
def test_the_points_lost_make_a_hundred_with_those_left(name: str, shipped: Knowledge) -> None:
    truth = session_of(shipped, name).scenario.truth
    for behind in (None, truth.behind, ("supply-voltage-high",)):
        for part in (None, truth.faults[0].fault, "gas-valve-failed"):
            session = session_of(shipped, name)
            follow(session, path_of(shipped, name))
            session.declare_stop()
            session.hint()
            session.extra_minutes += 40
            call = Call(truth.faults, behind, part, part)
            score = score_of(session, call, path_of(shipped, name))
            assert score.reasoned and score.verdict == "right"
            assert score.points + sum(points for _, points in score.lost) == 100


def test_a_guess_is_called_a_guess(shipped: Knowledge) -> None:
    session = session_of(shipped, "drovers-yard")
    text = told(session, Call())
    assert text.startswith("Right, but a guess that came off. 14 points of 100.")


def test_nothing_wrong_called_on_a_faulty_unit_is_told(shipped: Knowledge) -> None:
    text = told(session_of(shipped, "quarry-road"), Call())
    assert text.startswith("Wrong.") and "You called: nothing wrong" in text


def test_that_nothing_lies_behind_is_told(shipped: Knowledge) -> None:
    session = session_of(shipped, "mill-lane")
    text = told(session, Call(session.scenario.truth.faults, ("supply-voltage-high",)))
    assert "Behind it: nothing that was found here" in text
    assert "Wrong on: the cause behind" in text


def test_a_doubted_reading_is_not_told_as_a_test_that_nobody_took(shipped: Knowledge) -> None:
    session = session_of(shipped, "mill-lane")
    do_steps(session, *TO_OPEN_AND_RUN)
    session.choose(shipped.tests["condenser-fan-amps"], Place("condenser-fan", 1))
    assert session.doubt("the clamp was not closed")
    text = told(session, Call(session.scenario.truth.faults))
    assert shipped.tests["repeat-reading"].name not in text


def test_a_reading_that_misleads_is_told_with_its_reason(shipped: Knowledge) -> None:
    lie = "Suction line temperature, 65.7 F: The jaw sat over paint on a fitting, in the sun, "
    session = session_of(shipped, "elm-parade")
    text = told(session, Call(session.scenario.truth.faults))
    assert f"What misled:\n  {lie}not insulated.\n" in text
    lead_to(session, "suction-line-temperature")
    session.choose(shipped.tests["suction-line-temperature"], Place("circuit", 1))
    assert f"{lie}not insulated. You let it count." in told(session, Call())
    session.doubt("one against four")
    session.choose(shipped.tests["suction-line-temperature"], Place("circuit", 1))
    assert f"{lie}not insulated. You doubted it." in told(session, Call())


def test_what_was_tried_twice_is_told_once_with_how_often(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    for _ in range(3):
        session.choose(shipped.tests["air-filters"], None)
        session.choose(shipped.tests["visit-history"], None)
    text = told(session, Call((TRUE,)))
    assert text.count("  Filters, without") == 1 and "tagged (3 times)" in text
    assert f"{shipped.tests['visit-history'].name} (" in text


def test_a_stop_that_was_not_obeyed_is_told_in_full_and_an_obeyed_one_is_not(
    shipped: Knowledge,
) -> None:
    asks = shipped.hazards["gas-odour"].what_to_do
    session = session_of(shipped, "church-field")
    text = told(session, Call())
    assert f"\n\nDANGER - STOP: {asks}" in text and text.count(asks) == 1
    assert "Why: a STOP ended this job, and you went on." in text
    assert "and you did not stop." in text
    session.declare_stop()
    assert asks not in told(session, Call())


@pytest.mark.parametrize("name", ["drovers-yard", "lock-house"])
def test_a_debrief_fits_three_screens_of_a_phone(shipped: Knowledge, name: str) -> None:
    """A screen of a phone is taken for 30 lines of 40 columns (common practice, no source)."""
    session = session_of(shipped, name)
    session.choose(shipped.tests["visit-history"], None)
    lines = told(session, Call((TRUE,))).splitlines()
    shown = [part for line in lines for part in textwrap.wrap(line, 38) or [""]]
    assert len(shown) <= 90
    assert sum(line.endswith("more ...") for line in lines) <= 1


def test_findings_that_hardly_count_are_not_told_against_a_wrong_call(shipped: Knowledge) -> None:
    session = session_of(shipped, "lock-house")
    session.choose(shipped.tests["visit-history"], None)
    against = told(session, Call((TRUE,))).partition("Against Low charge from a leak:\n")[2]
    assert against.startswith("  strongly") and "hardly" not in against.partition("You:")[0]


def test_a_weight_is_told_in_two_figures() -> None:
    times = [strength(math.log(odds)).partition("(")[2] for odds in (1366.7, 26.5, 9.96, 1.23)]
    assert times == ["x1400)", "x26)", "x10)", "x1.2)"]
