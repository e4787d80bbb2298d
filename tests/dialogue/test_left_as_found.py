"""What is said of the unit where a visit closes: the control back as found, and only what is so."""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from troubleshoot.dialogue.closing import AS_IT_WAS, CONTROL_BACK, close
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.steps import RESTART, STOP_BY_CONTROLS, TELL_OCCUPANTS, Step
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Answered, Closing, Event, Started, StepDone

START: Event = Started(complaint="no-heat", unit={"heat": "gas", "fuel": "natural-gas"})


def said_at_the_end(knowledge: Knowledge, *steps: tuple[str, str]) -> str:
    done = [StepDone.of(Step(step), (outcome,)) for step, outcome in steps]
    book, voice = book_of(knowledge, [START, *done, Closing()]), Voice()
    close(book, voice, Decision("ending"), conclude_visit(Reasoner(knowledge), book.state))
    return str(voice.heard())


def test_who_turned_the_control_puts_it_back_and_nobody_else_is_asked(shipped: Knowledge) -> None:
    """Regression: a call was made or taken away in nearly every visit, and nobody said so."""
    for step in ((STOP_BY_CONTROLS, "stopped"), (RESTART, "runs")):
        said = said_at_the_end(shipped, step)
        assert CONTROL_BACK in said and AS_IT_WAS in said
    said = said_at_the_end(shipped, (TELL_OCCUPANTS, "told"))
    assert CONTROL_BACK not in said and AS_IT_WAS in said


@pytest.mark.parametrize(
    ("outcome", "means"),
    [
        ("does-not-start", "a fan or compressor does not come on"),
        ("struggles", "it hums, trips or turns the wrong way"),
    ],
)
def test_a_unit_that_did_not_start_well_is_not_back_as_it_was(
    outcome: str, means: str, shipped: Knowledge
) -> None:
    said = said_at_the_end(shipped, (RESTART, outcome))
    assert AS_IT_WAS not in said and means in said
    again = said_at_the_end(shipped, (RESTART, outcome), (RESTART, "runs"))
    assert AS_IT_WAS in again and means not in again


def test_the_tag_of_a_part_that_stays_off_says_which_part_of_which_unit(
    shipped: Knowledge,
) -> None:
    """The other circuit may run."""
    unit = {"heat": "gas", "refrigerant": "R-410A", "circuits": "2"}
    start = Started(name="RTU-7", complaint="no-cooling", unit=unit)
    stuck = Answered("low-pressure-switch", ("circuit 2",), ("stuck",))
    book, voice = book_of(shipped, [start, stuck, Closing()]), Voice()
    close(book, voice, Decision("ending"), conclude_visit(Reasoner(shipped), book.state))
    assert "Do not start circuit 2 of RTU-7. " in str(voice.heard())


def test_a_plug_that_could_not_be_tested_is_told_where_the_visit_closes(
    shipped: Knowledge,
) -> None:
    said = said_at_the_end(shipped, ("plug-under-gas", "cannot"))
    assert AS_IT_WAS not in said and "has not been tested under gas" in said
