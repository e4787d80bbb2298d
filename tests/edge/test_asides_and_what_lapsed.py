"""What is asked or told in between changes neither what has lapsed nor where things are."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock
from tests.edge.visits import begin, lead_to, task

CAPACITANCE = "Test: Capacitance, leads lifted"


def test_after_a_question_in_between_nothing_is_shown_that_may_have_lapsed(
    data: Path, clock: Clock
) -> None:
    """Found by the long walk: behind the question a test stood again, an hour after the roof."""
    with begin(data, clock) as person:
        person.types("do air-filters")
        lead_to(person, "Test: ")
        person.types("note the lady downstairs has gone pale")
        assert "in danger now?" in person.last
        clock.pass_minutes(80)
        person.types("n")
        assert "Test:" not in person.last and "Step:" not in person.last, person.last


def test_again_at_a_place_that_the_unit_has_no_more_is_no_traceback(
    data: Path, clock: Clock
) -> None:
    """Found by the long walk: the only reading was at a capacitor of a motor told anew."""
    with begin(data, clock) as person:
        person.types("do capacitance-out-of-circuit at capacitor condenser fan 1")
        lead_to(person, CAPACITANCE)
        person.types("7.4 uF", "unit condenser-fan-phase three", "again")
        assert person.running, person.said[-2000:]
        assert "capacitor condenser fan" not in task(person)
