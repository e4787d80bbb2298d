"""The shape of each event that has one: answers, steps, skips, a STOP and what comes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from troubleshoot.knowledge.model import Hazard
from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.places import Place, spoken
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stop_record import HandOverResult, Spot

Event = Mapping[str, Any]
"""One event of a visit as plain data, as it stands in the journal."""


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


def assumed_event(step: Step, outcome: str) -> Event:
    """A safety step that nobody says was done, taken as done so that an account can go on."""
    return {**step_event(step, (outcome,)), "nobody": True}


def skip_event(test: str, at: Place | None) -> Event:
    """A test gone on without."""
    return {"event": "skip", "test": test, "at": spoken(at)}


def stop_event(hazard: str, spot: Spot | None = None) -> Event:
    """A STOP that halts the visit; `spot` is the finding that shows whether it still stands."""
    event = {"event": "stop", "hazard": hazard}
    return event if spot is None else {**event, "test": spot[0], "at": spoken(spot[1])}


def danger_event(hazard: Hazard, words: str) -> Event:
    """A danger that a person reported in their own words. It stops the visit at once."""
    event = {"event": "danger", "hazard": hazard.id, "words": words}
    return event if hazard.all_clear is None else {**event, "test": hazard.all_clear, "at": None}


def named_danger_event(hazard: Hazard, words: str) -> Event:
    """The danger that somebody names who had called for help: it stands instead of the call."""
    return {**danger_event(hazard, words), "names_the_last": True}


def take_afresh_event(spot: Spot) -> Event:
    """The finding that shows whether a STOP still stands is to be taken once more."""
    return {"event": "take-afresh", "test": spot[0], "at": spoken(spot[1])}


def handed_over_event(told: str, told_at: str) -> Event:
    """A stopped job was handed over: who was told, and the time by the clock."""
    return {"event": "end", "ending": "stopped", "told": told, "told_at": told_at}


def reopened_event(hazard: str, result: HandOverResult, spot: Spot) -> Event:
    """A stopped visit goes on with the hand-over's result, and with a fresh finding first."""
    return {
        "event": "reopened",
        "hazard": hazard,
        "result": asdict(result),
        "test": spot[0],
        "at": spoken(spot[1]),
    }
