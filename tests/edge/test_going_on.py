"""Going on with an open visit: what counts as yes, the STOP that stands, and dangers told there."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import begin


def left_open(data: Path, clock: Clock, unit: str) -> None:
    with begin(data, clock, unit=unit) as person:
        person.types("q")


def visits(data: Path) -> list[str]:
    return sorted(path.stem for path in (data / "visits").glob("*.journal"))


def test_what_is_neither_yes_nor_no_is_asked_again(data: Path, clock: Clock) -> None:
    """Regression: the name of another unit was taken for yes."""
    left_open(data, clock, "RTU-7")
    with Person(data, clock=clock) as person:
        assert "is open" in person.last
        said = person.types("RTU5")
        assert "Who is asking" not in said and "Go on with it?" in said
        assert "Who is asking" in person.types("y")


def test_a_units_name_means_the_open_visit_of_that_unit(data: Path, clock: Clock) -> None:
    left_open(data, clock, "RTU-7")
    left_open(data, clock, "RTU-8")
    with Person(data, clock=clock) as person:
        assert "2026-11-26-2 is open" in person.last
        assert "Who is asking" in person.types("rtu 7")
        person.types("", "note seen by name")
    assert "seen by name" in (data / "visits" / "2026-11-26-1.journal").read_text("utf-8")


def test_the_stop_that_stands_is_shown_before_it_is_asked_who_is_there(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("danger gas", "q")
    with Person(data, clock=clock) as person:
        assert "A STOP stands over it: " in person.last, "before anybody goes on with it"
        said = person.types("y")
        assert "- STOP" in said and said.index("- STOP") < said.index("Who is asking")


def test_a_danger_told_there_belongs_to_the_open_visit(data: Path, clock: Clock) -> None:
    """Regression: it opened a second visit, of no unit."""
    left_open(data, clock, "RTU-7")
    for words in ("danger gas", "i smell gas"):
        with Person(data, clock=clock) as person:
            assert "- STOP" in person.types(words)
        assert visits(data) == ["2026-11-26-1"]


@pytest.mark.parametrize("typed", ["boss 3:10", "y", "the one over the kitchen that hums"])
def test_what_is_hardly_a_name_is_asked_back_once(typed: str, data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        said = " ".join(person.types(typed).split())
        assert "hardly a unit's name" in said and "caller say" not in said
        assert "caller say" in person.types("RTU-7")
    with Person(data, "diagnose", clock=clock) as person:
        person.types("n")
        assert "caller say" in person.types("RTU 3")


def test_a_name_at_the_hand_over_is_asked_back_too(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types("", "danger gas", "over")
        assert "Which unit is it" in person.last
        assert "hardly a unit's name" in " ".join(person.types("boss 3:10").split())
        assert "Who was told" in person.types("RTU-7")


def test_all_that_is_open_is_listed_and_gone_on_with_by_number(data: Path, clock: Clock) -> None:
    """Regression: only the newest was offered, and an older one could not be gone back to."""
    for unit in ("RTU-7", "RTU-8", "RTU-9"):
        left_open(data, clock, unit)
    with Person(data, clock=clock) as person:
        said = person.last
        assert [said.index(unit) for unit in ("1 Visit 2026-11-26-3 to RTU-9", "3 Visit")]
        assert "Who is asking" in person.types("3")
        person.types("", "note the eldest of three")
    assert "the eldest of three" in (data / "visits" / "2026-11-26-1.journal").read_text("utf-8")


def test_naming_a_unit_whose_visit_is_open_offers_it(data: Path, clock: Clock) -> None:
    """Regression: a new visit was begun beside the one that stood open on the same unit."""
    left_open(data, clock, "RTU-7")
    left_open(data, clock, "RTU-8")
    with Person(data, clock=clock) as person:
        person.types("n")
        assert "Visit 2026-11-26-1 to RTU-7" in person.types("rtu 07")
        assert "Who is asking" in person.types("y")
    with Person(data, clock=clock) as person:
        person.types("n", "rtu 07")
        assert "caller say" in person.types("n")
        person.types("no-cooling", "3", "q")
    with Person(data, "diagnose", "RTU-8", clock=clock) as person:
        assert "Visit 2026-11-26-2 is open. Go on with it?" in person.last


def test_what_visits_and_reopen_say_goes_on_with_it(data: Path, clock: Clock) -> None:
    """Regression: reopen said "go on with it by: troubleshoot", which did not offer it."""
    left_open(data, clock, "RTU-7")
    left_open(data, clock, "RTU-8")
    refused = started(data, "reopen", "2026-11-26-1").stderr.decode()
    assert "by: troubleshoot, and there its name" in refused
    assert "there the visit's name" in started(data, "visits").stdout.decode()
    with Person(data, clock=clock) as person:
        assert "Who is asking" in person.types("2026-11-26-1")


def test_leaving_at_the_callers_words_leaves_no_visit_behind(data: Path, clock: Clock) -> None:
    """Regression: an empty visit stayed open, and stood in the list as a PM."""
    with Person(data, clock=clock) as person:
        person.types("RTU-7", "q")
        assert "No visit was begun." in person.last
    assert "No visit is kept" in started(data, "visits").stdout.decode()
    with Person(data, clock=clock) as person:
        assert "Which unit" in person.last
