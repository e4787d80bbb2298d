"""From a reply at a test or a step to the event that it is."""

from __future__ import annotations

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.mistyped import meant_by
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.talk import Reply
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events import Event, FactTold, StepDone
from troubleshoot.visit.state import VisitState


def taken_up(book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: Reply) -> Event:
    """The event that a reply is, one typing error seen through and said. Raises NotAnAnswer."""
    if not isinstance(reply, str):
        return reply
    try:
        return _event(book, prompt, reply)
    except NotAnAnswer:
        assert prompt.decision.test is not None
        meant = meant_by(book.knowledge, prompt.decision.test, reply, prompt.outcomes)
        if meant is None or listener.speaks_of_danger(reply):
            raise
    event = _event(book, prompt, meant)
    listener.voice.say(f'Taken as "{meant}".')
    return event


def _event(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> Event:
    decision, state = prompt.decision, book.state
    test = decision.test
    assert test is not None
    if decision.step is None:
        return answer_event_from(book.knowledge, test, decision.at, typed, prompt.outcomes)
    event = step_event_from(book.knowledge, state, test, decision.step, typed, book.now())
    return _fact_of(state, event, decision.step) or event


def _fact_of(state: VisitState, event: StepDone, step: Step) -> FactTold | None:
    """The fact that a step has settled, where what came of it is that the unit needs none."""
    fact = STEPS[step.id].settles.get(",".join(event.outcomes))
    if fact is None or state.unit.facts.get(fact[0]) == fact[1]:
        return None
    return FactTold(*fact)
