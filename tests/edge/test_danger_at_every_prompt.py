"""A danger in a person's own words is heard whatever the prompt asks for, and nothing is lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, begin, events_of, lead_to, takes_over, task

GAS, FIRE, HURT = "gas utility", "fire service", "medical"


@pytest.mark.parametrize(
    ("before", "typed", "who"),
    [
        ([], "i smell gas", GAS),
        ([], "my mate collapsed", HURT),
        (["RTU-7"], "got zapped", HURT),
        (["RTU-7"], "flames out of the front", "gas"),
        (["RTU-7"], "panel gave me a shock", HURT),
        (["RTU-7"], "sparks in the disconnect", FIRE),
        (["RTU-7"], "rollout popped", "gas"),
        (["RTU-7"], "soot round the flue", "gas"),
        (["RTU-7"], "wire melted", "electri"),
        (["RTU-7", "weak noise"], "mate collapsed", HURT),
        (["RTU-7", "no-cooling"], "smoke coming out", FIRE),
        (["RTU-7", "no-cooling", "3"], "he's not breathing", HURT),
    ],
)
def test_at_each_prompt_of_the_beginning(
    before: list[str], typed: str, who: str, data: Path, clock: Clock
) -> None:
    with Person(data, clock=clock) as person:
        person.types(*before)
        said = person.types(typed)
        assert "- STOP" in said and who in takes_over(person)
    assert f'"words": "{typed}"' in events_of(data)


@pytest.mark.parametrize(
    ("typed", "complaint", "who"),
    [
        ("strong smell of gas", "gas-smell", GAS),
        ("tenants smell rotten eggs", "gas-smell", GAS),
        ("the refrigerant alarm is on", "refrigerant-alarm", "refrigerant"),
        ("CO alarm is going off", "carbon-monoxide-alarm", FIRE),
    ],
)
def test_a_caller_who_speaks_of_a_danger_makes_that_call(
    typed: str, complaint: str, who: str, data: Path, clock: Clock
) -> None:
    """It used to become a routine round after two Enters, and the words were lost."""
    with Person(data, clock=clock) as person:
        person.types("RTU-7", typed)
        assert "- STOP" in person.last and "Who is asking" in person.last
        person.types(ALL)
        for _ in range(12):
            if "over, or q" in person.types(""):
                break
        assert "- STOP" in person.said and who in person.said
    kept = events_of(data)
    assert f'"complaint": "{complaint}"' in kept and f'"words": "{typed}"' in kept


def test_words_that_led_to_no_complaint_are_kept_with_the_round(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-7", "wibble wobble", "strange noise", "", "", ALL)
    assert '"words": "wibble wobble; strange noise"' in events_of(data)


def test_at_the_question_to_go_on(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("q")
    with Person(data, clock=clock) as person:
        assert "- STOP" in person.types("not breathing, he collapsed")
        assert HURT in takes_over(person)


def test_after_a_long_silence(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Test for dead")
        clock.pass_minutes(120)
        assert "- STOP" in person.types("disconnect buzzes and smokes")


def test_in_a_note(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        assert "STOP" not in person.types("note no smoke, fan is fine")
        assert "Noted." in person.last and "If somebody" not in person.last
        assert "STOP" not in person.types("note burnt wire found and replaced by the other crew")
        assert "If somebody is in danger" in person.last
        assert "- STOP" in person.types("note smoke")


def test_a_second_danger_at_a_stop_is_told_and_both_are_kept(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("i smell gas")
        assert GAS in takes_over(person)
        assert "- STOP" not in person.types("still smell gas")
        assert "- STOP" in person.types("my mate collapsed")
        assert HURT in takes_over(person)
        assert "- STOP" in person.types("danger thunder")
    kept = events_of(data)
    assert all(h in kept for h in ("gas-odour", "somebody-hurt", "lightning"))


@pytest.mark.parametrize("said", [["smell of gas and he fell off the ladder"],
                                  ["danger he fell off the ladder and smell of gas"]])  # fmt: skip
def test_of_two_in_one_line_the_graver_is_told_and_both_are_kept(
    said: list[str], data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        assert "- STOP" in person.types(*said)
        assert HURT in takes_over(person)
    assert '"hazard": "gas-odour"' in events_of(data)


def test_while_the_hand_over_is_written_down(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("i smell gas", "over")
        assert "Who was told" in person.last
        assert "- STOP" in person.types("mate is on the floor")
        assert HURT in takes_over(person)
        person.types("over")
        person.types(
            "the fire service and the gas company, just now, gas smell told", "ambulance, just now"
        )
        assert "closed as stopped" in person.last


def test_while_a_visit_is_taken_back(data: Path, clock: Clock) -> None:
    """It was lost there: the visit stayed closed, and nothing was said of the danger."""
    with begin(data, clock) as person:
        person.types("i smell gas", "over", "the gas company, just now")
    for answers, who in (
        (["smoke coming out"], FIRE),
        ([ALL, "mate collapsed"], HURT),
        ([ALL, "danger thunder"], "supervisor"),
        ([ALL, "1", "soot everywhere"], "gas"),
    ):
        clock.pass_minutes(40)  # thunder is waited out by the clock
        with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
            person.types(*answers)
            assert "- STOP" in person.last and who in takes_over(person)
            person.types("over", "the office and them, just now", "")
            assert "closed as stopped" in person.last
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types(ALL, "1", "1")
        assert "- STOP" not in person.last


def test_whoever_leaves_at_what_is_wrong_leaves_a_stop(data: Path, clock: Clock) -> None:
    """A walk found a traceback there, while a visit was taken back."""
    with begin(data, clock) as person:
        person.types("i smell gas", "over", "the gas company, just now")
    clock.pass_minutes(40)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types(ALL, "danger", "q")
        assert "Traceback" not in person.said and "is kept" in person.said
    with Person(data, clock=clock) as person:
        assert "DANGER - STOP" in person.types("n", "RTU-7")


def test_help_is_the_command_and_names_the_call(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        assert "danger WORDS" in person.types("help")


def test_how_a_danger_is_called_is_said_once_and_where_it_may_be_one(
    data: Path, clock: Clock
) -> None:
    """Said at every misfit it was no longer read; said once only, a second cry was refused."""
    hint = "If somebody is in danger: danger and what is wrong."

    def told(person: Person, typed: str) -> bool:
        return hint in " ".join(person.types(typed).split())

    def asked(person: Person) -> bool:
        is_asked = "danger now? (y/n)" in person.last
        person.types("n")
        return is_asked

    with Person(data, clock=clock) as person:
        person.types("RTU-7")
        assert told(person, "wibble") and not told(person, "gizmo")
        assert not told(person, "an odd shock of hair") and asked(person)
        person.types("no-cooling")
        assert told(person, "zebra") and not told(person, "zebra")
    with begin(data, clock) as person:
        assert told(person, "zebra zebra") and not told(person, "zebra zebra")
        assert not told(person, "it is bleeding blue paint") and asked(person)
        assert not told(person, "99") and not told(person, "48 gallons")


@pytest.mark.parametrize("typed", ["stoped", "stopepd", "stoppped"])
def test_a_long_word_with_one_letter_wrong_is_asked_about_and_no_cry(
    typed: str, data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Stop the unit by its controls")
        asked = task(person)
        said = person.types(typed)
        assert 'Is "stopped" meant?' in said and "- STOP" not in said
        person.types("stopped")
        assert task(person) != asked


@pytest.mark.parametrize("typed", ["al stopped", "stoppwd"])
def test_an_answer_with_one_letter_wrong_is_asked_about(
    typed: str, data: Path, clock: Clock
) -> None:
    """Regression: "stoped" was taken for a cry for help, and there was no way back."""
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Stop the unit by its controls")
        asked = task(person)
        said = person.types(typed)
        assert "stopped" in said.partition("Is ")[2] and "STOP" not in said
        assert task(person) in ("", asked)
        person.types("stopped")
        assert task(person) != asked


def test_a_word_that_is_an_answer_stays_one(data: Path, clock: Clock) -> None:
    """At the step whose word is "stopped", stop is an order and not a call for help."""
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Stop the unit by its controls")
        asked = task(person)
        assert 'Is "stopped" meant?' in person.types("stop")
        assert "What is wrong?" not in person.last
        person.types("stopped")
        assert task(person) != asked


def test_a_danger_reported_after_one_was_lifted_has_its_own_tag(data: Path, clock: Clock) -> None:
    """Regression: it said that what was dangerous had been put right, and that it is safe now."""
    said = "ladder is gone and wasps in the unit"
    with begin(data, clock) as person:
        person.types("danger the ladder slipped", "again", "1")
        person.types("put right", f"danger {said}")
        tag = " ".join(person.last.split())
        assert f'hatch not guarded. Reported: "{said}".' in tag
        assert "Found:" not in tag and "safe now" not in tag
