"""No more pages than what is said needs: each is one more Enter in gloves."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import PAGE, Clock, Person
from tests.edge.visits import ALL, careful

HIGH = 20
RESTART = "Step: Call for the unit and watch it"


def test_what_is_longer_than_a_page_begins_where_the_page_stands(tmp_path: Path) -> None:
    """Regression: a page held "WARNING as before: rotating parts." alone, and two more the step."""
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, columns=40, lines=HIGH, reads=False) as person:
        person.types("RTU-7", "weak air", ALL)
        while RESTART not in person.last:
            typed = "" if person.last.endswith(PAGE) else careful(person)
            person.types(typed or ("" if person.last.endswith(PAGE) else "s"))
        assert "rotating parts" in " ".join(person.last.split()), person.last
        assert len(person.last.splitlines()) == HIGH
        assert not person.types("").endswith(PAGE), person.last
