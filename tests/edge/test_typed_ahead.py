"""What is typed before its question stands there answers nothing: it is told, and heard."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, DEAD_WORK, begin, events_of


def flat(text: str) -> str:
    return " ".join(text.split())


def test_no_prompt_takes_what_was_typed_ahead_the_first_ones_included(tmp_path: Path) -> None:
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.pastes("RTU-7\nno heat\n")
        assert "What does the caller say?" in person.last, person.said
        assert 'It was "no heat".' in flat(person.said)


def test_who_is_asking_is_never_typed_ahead(tmp_path: Path) -> None:
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.types("RTU-7")
        person.pastes(f"no heat\n{ALL}\n")
        assert "Who is asking" in person.last
        assert f'type it again. It was "{ALL}".' in flat(person.last)


def test_an_empty_line_typed_ahead_names_no_call(tmp_path: Path) -> None:
    """Enter there is a PM: a key pressed twice is none."""
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        assert "What does the caller say?" in person.pastes("RTU-7\n\n")


def test_a_fact_of_the_unit_is_not_typed_ahead(tmp_path: Path) -> None:
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.types("RTU-7", "no heat")
        person.pastes(f"{ALL}\n2\n")
        assert "What heat does it have?" in person.last
        assert 'It was "2".' in flat(person.last)


def test_a_step_that_is_typed_ahead_is_quoted_and_not_done(tmp_path: Path) -> None:
    data = tmp_path / "data"
    with begin(data, Clock(tmp_path)) as person:
        person.types(DEAD_WORK)
        person.pastes("?\ntold\nsafe\n")
        assert 'type them again. They were "told", "safe".' in flat(person.said)
        assert '"event": "step"' not in events_of(data)


def test_a_danger_typed_ahead_stops_the_job(tmp_path: Path) -> None:
    """Regression: it was thrown away with all else that was typed before its question."""
    data = tmp_path / "data"
    with begin(data, Clock(tmp_path)) as person:
        person.types(DEAD_WORK)
        person.pastes("?\nok\ni smell gas\n")
        assert "- STOP" in person.said, person.said[-2000:]
        assert '"event": "danger"' in events_of(data)
