"""A second reading of the same thing is compared with the first; one of a new part is not."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, held
from tests.dialogue.mended import at_the_open_unit
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Repaired, Started

CAN, FAN = "capacitance-out-of-circuit", "capacitor condenser fan 1"


def read(microfarads: str) -> Answered:
    return Answered(CAN, (FAN,), text=f"{microfarads} uF")


@pytest.mark.parametrize(
    ("between", "compared"),
    [((), True), ((Repaired("condenser-fan-capacitor-weak"),), False)],
    ids=["of the old can", "of the new one"],
)
def test_a_new_part_is_no_second_reading_of_the_old_one(
    between: tuple[Event, ...], compared: bool, shipped: Knowledge
) -> None:
    """Regression: 7.6 uF of the new can, and "Clean the points, check the leads"."""
    book = at_the_open_unit(shipped, Started(complaint="no-cooling"), test=CAN)
    terminal = Lines()

    def part(voice: Voice) -> Talk[None]:
        telling = Telling(book, voice, Reasoner(shipped))
        telling.keep_reading(read("3.1"))
        book.add(*between) if between else None
        telling.keep_reading(read("7.6"))
        yield from ()

    held(shipped, terminal, part)
    assert ("do not agree: 3.1 and 7.6 uF" in terminal.text) is compared


@pytest.mark.parametrize(
    ("between", "asked"),
    [((), True), ((Repaired("condenser-fan-capacitor-weak"),), False)],
    ids=["before a repair", "after one"],
)
@pytest.mark.parametrize("said", ["new cap reads 4.9", "the new one reads 4.9"])
def test_what_is_read_on_the_new_part_needs_no_yes_after_a_repair(
    said: str, between: tuple[Event, ...], asked: bool, shipped: Knowledge
) -> None:
    """Before one it may clear a part that nobody has read."""
    book = at_the_open_unit(shipped, Started(complaint="no-cooling"), test=CAN)
    if between:
        book.add(*between)
    terminal = Lines("n")

    def part(voice: Voice) -> Talk[None]:
        decider = Decider(shipped)
        reading_out = ReadingOut(book, voice, decider, Telling(book, voice, decider.reasoner))
        at = Place("condenser-fan-capacitor", 1)
        decision = Decision("test", test=shipped.tests[CAN], at=at)
        yield from reading_out.take(Listener(shipped, voice), said, decision, "")

    held(shipped, terminal, part)
    taken = [event.text for event in book.events if isinstance(event, Answered)]
    assert taken == ([] if asked else ["4.9"])
