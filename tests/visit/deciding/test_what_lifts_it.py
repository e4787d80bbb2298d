"""After a repair what lifts the danger over a motor is led to, and named where it is not read."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.visit.deciding.test_danger_after_a_repair import next_of
from troubleshoot.dialogue.closing import NOT_TRIED, prove
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.left_off import left_off_at, what_lifts
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    Closing,
    Event,
    ProofRead,
    Repaired,
    Skipped,
    Started,
    StepDone,
    replay,
)  # fmt: skip

UNIT = {"circuits": 1, "supply-phase": "three", "condenser-fan-phase": "single",
        "compressor-phase": "three", "refrigerant": "R-410A", "heat": "gas", "condenser-fans": 1,
        "line-volts-class": "480-volt", "metering": "txv", "contactor-opens": "every-leg",
        "blower-motor": "three-phase", "variable-speed-drive": "not-fitted",
        "duct-smoke-detector": "not-fitted"}  # fmt: skip
BURNT = [
    Started(complaint="no-cooling", unit=UNIT, profiles=("electrical", "refrigerant", "gas")),
    Answered("compressor-start-attempt", "compressor 1", ("hums-and-trips",)),
    Answered("contactor-contacts", "contactor 1", ("pole-burnt-away",)),
    Repaired("contactor-pole-burnt-away"),
    Closing(),
]


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def goes_on(decider: Decider, found: dict[str, str]) -> tuple[list[Event], list[str]]:
    """The visit to its end, and the tests that were asked; what is not `found` is skipped."""
    events: list[Event] = [*BURNT]
    asked: list[str] = []
    for _ in range(80):
        decision = next_of(decider, events)
        if decision.test is None or decision.kind == "ending":
            return events, asked
        at = str(decision.at) if decision.at else None
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        elif decision.proof is not None:
            events.append(ProofRead(decision.proof.text, ""))
        else:
            asked.append(decision.test.id)
            outcome = found.get(decision.test.id)
            left = Skipped(decision.test.id, at)
            events.append(Answered(decision.test.id, at, (outcome,)) if outcome else left)
    raise AssertionError(asked)


SOUND = {"compressor-windings": "normal", "contactor-contacts": "clean"}


def test_what_lifts_it_is_led_to_before_it_is_closed_as_staying_off(decider: Decider) -> None:
    """Regression: windings were asked for, the line volts were not, and it stayed off.

    Nothing is read live before the contacts of the new contactor were seen.
    """
    _, asked = goes_on(decider, {"contactor-contacts": "clean"})
    assert asked[:3] == ["compressor-windings", "contactor-contacts", "line-volts-idle"]


def test_all_of_it_read_sound_it_may_be_called(decider: Decider) -> None:
    events, _ = goes_on(decider, {**SOUND, "line-volts-idle": "normal"})
    state = replay(decider.knowledge, events)
    found = conclude_visit(decider.reasoner, state)
    assert not left_off_at(decider.knowledge, state, found).all
    assert state.work.power == "on"


def test_what_is_missing_is_named(decider: Decider) -> None:
    """Regression: "compressor hums stands in the way", and not which reading was wanted."""
    events, _ = goes_on(decider, SOUND)
    state = replay(decider.knowledge, events)
    found = conclude_visit(decider.reasoner, state)
    off = left_off_at(decider.knowledge, state, found)
    name = decider.knowledge.tests["line-volts-idle"].name
    assert what_lifts(decider.knowledge, found, off) == (f"To take that away, read sound: {name}.",)


def test_a_unit_that_stays_off_is_not_asked_for_its_complaint(decider: Decider) -> None:
    events, _ = goes_on(decider, SOUND)
    book = book_of(decider.knowledge, events)
    terminal = Lines()
    held(
        decider.knowledge,
        terminal,
        lambda voice: prove(book, voice, decider.reasoner, decider.decide(book.state)),
    )
    assert NOT_TRIED in " ".join(terminal.text.split()) and "still there" not in terminal.text
    assert book.state.closing and book.state.repairs[-1].still
