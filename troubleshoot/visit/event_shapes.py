"""The shape of an event that more than one place writes: an answer, a safety step, a skip."""

from __future__ import annotations

from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.places import Place, spoken
from troubleshoot.visit.events import Event
from troubleshoot.visit.steps import Step


def answer_event(answer: Answer) -> Event:
    """An answer with all that is known of it."""
    places = [str(p) for p in answer.places if p is not None]
    return {
        "event": "answer",
        "test": answer.test,
        "at": places or None,
        "shared": answer.shared,
        "outcomes": list(answer.outcomes),
        "text": answer.text,
        "valid": answer.valid,
        "instrument": answer.instrument,
        "why_invalid": answer.why_invalid,
        "conditions": dict(answer.conditions),
    }


def step_event(step: Step, outcomes: tuple[str, ...], text: str | None = None) -> Event:
    """A safety step done, and what came of it; `text` where it was read off a meter."""
    event = {
        "event": "step",
        "step": step.id,
        "place": step.place,
        "again": step.again,
        "outcomes": list(outcomes),
    }
    return event if text is None else {**event, "text": text}


def skip_event(test: str, at: Place | None) -> Event:
    """A test gone on without."""
    return {"event": "skip", "test": test, "at": spoken(at)}
