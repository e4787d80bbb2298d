"""A danger that a person reports at any prompt stops the visit at once, in their own words."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, lead_to, task

TYPED_ANYWHERE = {
    "danger gas": "gas utility",
    "danger smoke": "fire service",
    "DANGER: water in the switch": "licensed electrician",
    "danger somebody is hurt": "medical",
    "danger lightning": "supervisor",
    "danger the ladder slipped": "supervisor",
    "danger:fire": "fire service",
    "danger, the ladder slipped": "supervisor",
    "dangerous wire is arcing": "fire service",
    "danger something that nobody ever thought of": "supervisor",
    "i smell gas": "gas utility",
    "smoke": "fire service",
    "someone is hurt": "medical",
    "it is burning": "fire service",
}
"""What is typed -> a word of whom the job goes to."""


@pytest.mark.parametrize("typed", TYPED_ANYWHERE)
def test_a_report_stops_the_visit_and_says_who_takes_over(
    typed: str, tmp_path: Path, clock: Clock
) -> None:
    with begin(tmp_path / "data", clock) as person:
        said = " ".join(person.types(typed).split())
        assert " - STOP" in said and TYPED_ANYWHERE[typed] in said.partition("Hand over to:")[2]
        assert not task(person)
        person.types("q")
    with Person(tmp_path / "data", clock=clock) as person:
        person.types("y", "3")
        assert " - STOP" in person.last and not task(person)


@pytest.mark.parametrize(
    "before",
    [[], ["RTU-7"], ["RTU-7", "no-cooling"], ["RTU-7", "no-cooling", "3"],
     ["RTU-7", "no-cooling", "3", ""]],
)  # fmt: skip
def test_it_is_heard_from_the_first_prompt_on(
    before: list[str], tmp_path: Path, clock: Clock
) -> None:
    with Person(tmp_path / "data", clock=clock) as person:
        person.types(*before)
        assert "DANGER - STOP" in person.types("danger gas")
        person.types("q")
    with Person(tmp_path / "data", clock=clock) as person:
        assert "DANGER - STOP" in person.types("y", "")


def test_it_is_heard_at_a_safety_step_and_at_the_question_to_go_on(
    tmp_path: Path, clock: Clock
) -> None:
    with begin(tmp_path / "data", clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Tell the people inside")
        assert "DANGER - STOP" in person.types("i smell gas")
        person.types("q")
    with Person(tmp_path / "data", clock=clock) as person:
        assert "DANGER - STOP" in person.types("danger smoke")


def test_what_denies_a_danger_is_none(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path / "data", clock) as person:
        asked = task(person)
        for typed in ("no smoke", "there is no gas smell", "not burning"):
            assert "STOP" not in person.types(typed)
        person.types("s")
        assert task(person) != asked


def test_a_lesser_danger_is_gone_once_its_finding_is_sound(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path / "data", clock) as person:
        assert "- STOP" in person.types("danger the ladder slipped")
        assert "type again to do" in " ".join(person.last.split())
        person.types("again", "1", "safe")
        assert "has been put right" in person.last


def test_one_that_is_still_there_stands_and_is_shown_again(tmp_path: Path, clock: Clock) -> None:
    """Regression: the bad word at an all-clear called up no hazard of its own."""
    with begin(tmp_path / "data", clock) as person:
        assert "- STOP" in person.types("danger the ladder slipped")
        done = "1"
        said = person.types("again", done, "safe", "still there")
        assert "- STOP" in said and "ladder" in said.lower() and "type again to do" in said
        assert "somebody has reported a danger" not in said
        assert "- STOP" not in person.types("again", done, "safe", "put right")
