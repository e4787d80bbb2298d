"""The debrief says what it was, what each test was worth, what was missed, and what to read."""

from __future__ import annotations

from tests.practice.playing import TO_OPEN_AND_RUN, do_steps, path_of, session_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.debrief import WORTH, debrief, to_read, worth
from troubleshoot.practice.expecting import Band, judge
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, score_of
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.places import Place

TRUE = TrueFault("low-charge-from-leak", Place("circuit", 1))


def told(session: Session, call: Call) -> str:
    path = path_of(session.knowledge, session.scenario.id)
    score = score_of(session, call, path)
    guess = judge(session.knowledge.tests["subcooling"], "30", Band(8.0, 12.0, "F"))
    return "\n".join(debrief(session, call, score, path, [guess]))


def test_a_wrong_call_is_answered_with_the_evidence(shipped: Knowledge) -> None:
    session = session_of(shipped, "gas-added-in-june")
    session.choose(shipped.tests["visit-history"], None)
    do_steps(session, *TO_OPEN_AND_RUN, "gauges-on")
    session.choose(shipped.tests["subcooling"], Place("circuit", 1))
    wrong = TrueFault("overcharge", Place("circuit", 1))
    text = told(session, Call((wrong,)))
    assert text.startswith(("Wrong.", "Partly right."))
    assert f"It was: {shipped.faults[TRUE.fault].name}" in text
    assert "What decides it:" in text and "Against" in text
    assert f"{shipped.tests['visit-history'].name}: could" in text
    assert f"{shipped.tests['subcooling'].name}: could" in text
    assert "you said 30; it is 8 to 12 F" in text
    assert "Your call does not explain:" in text
    assert f"Read: troubleshoot rules explain {TRUE.fault}" in text
    assert "The expert's way, with" in text
    assert f"To take home: {session.scenario.teaches}" in text


def test_a_failed_play_says_what_could_have_hurt_and_where_to_read(shipped: Knowledge) -> None:
    session = session_of(shipped, "gas-added-in-june")
    session.choose(shipped.tests["air-filters"], None)
    text = told(session, Call((TRUE,)))
    assert text.startswith("FAILED ON SAFETY")
    assert "could have hurt someone" in text
    read = text.rpartition("rules explain ")[2].splitlines()[0]
    assert read in shipped.hazards


def test_an_obeyed_stop_is_told_and_nothing_is_left_unexplained(shipped: Knowledge) -> None:
    session = session_of(shipped, "somebody-can-smell-gas")
    session.declare_stop()
    text = told(session, Call())
    assert text.startswith("Right.") and "You stopped." in text
    assert "Your call does not explain:" not in text


def test_a_sound_unit_is_said_to_be_sound(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-room-spring-round")
    text = told(session, Call())
    assert "Nothing was wrong with this unit." in text
    assert "Every reading lies where a sound unit's does." in text


def test_what_there_is_to_read_can_be_read(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-room-spring-round")
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
