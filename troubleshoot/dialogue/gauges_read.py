"""Pressures that are read out before anybody said that the gauges are on: it is asked, then taken.

Who reads a gauge has it on. The question stands for the step that Enter confirms too, and only
where that step is the one thing that the reading lacks.
"""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.readable import Readable
from troubleshoot.dialogue.talk import Back, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import GAUGES_ON, Step
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import StepDone
from troubleshoot.visit.hearing.read_out import ReadOut


def ask_if_gauges_are_on(
    book: VisitBook,
    listener: Listener,
    readable: Readable,
    readings: tuple[ReadOut, ...],
    decision: Decision,
) -> Talk[None]:
    """Ask whether the gauges are on where only that is lacking, and keep it where they are.

    Raises Leave, DangerCalled.
    """
    lacking = [
        (one, step)
        for one in readings
        if (step := _all_that_lacks(book, readable, one, decision)) is not None
    ]
    if not lacking:
        return
    step = lacking[0][1]
    told = ", ".join(f"{one.words} {one.text}".strip() for one, lacks in lacking if lacks == step)
    try:
        are_on = yield from yes_or_no(
            listener, YesNo(f"{told}: are the gauges on, at {step.place}?")
        )
    except Back:
        are_on = False
    if are_on:
        book.add(StepDone.of(step, (CONFIRMED[GAUGES_ON],)))


def _all_that_lacks(
    book: VisitBook, readable: Readable, one: ReadOut, decision: Decision
) -> Step | None:
    """The step by which the gauges come on, where a reading lacks it and no other."""
    state = book.state
    if decision.stop is not None:
        return None
    for test, at in readable.spots(one, decision)[:1]:
        needs = needs_of(test, spoken(at), state.at_work)
        steps = steps_to(state.work, needs, state.at_work)
        if len(steps) == 1 and steps[0].id == GAUGES_ON:
            return steps[0]
    return None
