"""A STOP is longer than a small screen: what to do first is still there at the prompt."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from troubleshoot.knowledge.load import load_shipped

WIDE, HIGH = 40, 20
KNOWLEDGE = load_shipped()


def on_screen(person: Person) -> str:
    """The last lines that fit the screen, as one line of text."""
    return " ".join(" ".join(person.said.splitlines()[-HIGH:]).split())


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("i smell gas", "gas-odour"),
        ("my mate collapsed", "somebody-hurt"),
        ("thunder", "lightning"),
        ("smoke", "smoke-or-heat-now"),
        ("the ladder fell", "ladder-and-hatch"),
    ],
)
def test_when_the_prompt_appears_and_after_a_reply(typed: str, hazard: str, tmp_path: Path) -> None:
    first = KNOWLEDGE.hazards[hazard].what_to_do.partition(". ")[0]
    with Person(tmp_path / "data", clock=Clock(tmp_path), columns=WIDE, lines=HIGH) as person:
        person.types("RTU-7", "no-cooling")
        person.types(typed)
        assert first in on_screen(person)
        for _ in range(6):
            person.types("what now")
            assert first in on_screen(person)
        person.types("over")
        assert "Who was told" in on_screen(person) and first in on_screen(person)
        person.types("the office manager, just now", "")  # those it is for do not know yet
        assert "closed as stopped" in person.last and f"First: {first}" not in person.last


def test_at_a_call_that_is_a_stop_and_at_what_stands_over_the_unit(tmp_path: Path) -> None:
    first = KNOWLEDGE.hazards["gas-odour"].what_to_do.partition(". ")[0]
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, columns=WIDE, lines=HIGH) as person:
        person.types("RTU-7", "strong smell of gas")
        assert "Who is asking" in person.last and first in on_screen(person)
        for _ in range(12):
            if "over, or q" in person.types(""):
                break
        person.types("over", "the gas company, just now")
    with Person(tmp_path / "data", clock=clock, columns=WIDE, lines=HIGH) as person:
        person.types("RTU-7")
        assert not person.running and first in on_screen(person)


def test_on_a_large_screen_nothing_is_said_twice(tmp_path: Path) -> None:
    first = KNOWLEDGE.hazards["gas-odour"].what_to_do.partition(". ")[0]
    with Person(tmp_path / "data", clock=Clock(tmp_path), columns=100, lines=60) as person:
        person.types("RTU-7", "no-cooling", "i smell gas")
        assert person.said.count(first) == 1
