"""Why an example fails, so that its author sees which answer or which grade to look at.

The ranking that came stands beside the one that was wanted; then the answers that moved it, what
did not count, what was left open that would have helped, and a call that the card does not bring.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from troubleshoot.authoring.open_branch import left_open, on_no_such_unit
from troubleshoot.authoring.trial import Trial
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.evidence.weighing import COMPLAINT, THE_COMPLAINT
from troubleshoot.reasoning.unit.places import Place, spoken, with_place
from troubleshoot.visit.telling.wording import percent

SHOWN: Final = 3
_HAIR: Final = 0.05
"""Weights nearer to each other than this tell the two apart by nothing worth a line."""

_Spots = tuple[tuple[str, Place | None], ...]


@frozen
class Moved:
    """What one answer says for the card's fault and for its rival, in nats; `tests`: its own."""

    tests: frozenset[str]
    answer: str
    own: float
    rival: float


def account(knowledge: Knowledge, trial: Trial) -> Iterator[str]:
    """The lines about an example that fails, below its name."""
    got, own, rival = trial.got, trial.own, trial.rival
    if own is None:
        yield from on_no_such_unit(knowledge, trial)
    if got is None or own is None or rival is None:
        return
    wanted = [own, *(cause for cause in got.causes if cause.fault.id != own.fault.id)]
    if not trial.example.names_it:
        wanted = [rival, *(cause for cause in got.causes if cause.fault.id != rival.fault.id)]
    yield f"came: {_ranked(got.causes[:SHOWN])}"
    yield f"wanted: {_ranked(wanted[:SHOWN])}"
    answers = moved(knowledge, got, own, rival)
    for each in answers[:SHOWN]:
        yield (
            f"{each.answer}: {each.own:+.1f} for {own.fault.id}, {each.rival:+.1f} for "
            f"{rival.fault.id}"
        )
    for reading in got.readings:
        if not reading.valid:
            test = knowledge.tests[reading.test]
            name = with_place(test.name, spoken(reading.at))
            yield f"{name} did not count: {reading.why_invalid}"
    yield from left_open(knowledge, trial, _turning(trial, answers))
    yield from _call_not_brought(knowledge, trial)


def moved(knowledge: Knowledge, got: Conclusions, own: Cause, rival: Cause) -> tuple[Moved, ...]:
    """The answers by which two causes differ, the one that tells most first."""
    mine, its = _by_answer(own), _by_answer(rival)
    found = [
        Moved(
            frozenset(test for test, _ in spots),
            _said(knowledge, got, spots),
            mine.get(spots, 0.0),
            its.get(spots, 0.0),
        )
        for spots in dict.fromkeys((*mine, *its))
    ]
    found = [each for each in found if abs(each.own - each.rival) >= _HAIR]
    return tuple(sorted(found, key=lambda each: (-abs(each.own - each.rival), each.answer)))


def _turning(trial: Trial, answers: Sequence[Moved]) -> frozenset[str]:
    """The tests whose readings speak against what the example wants."""
    wanted = 1 if trial.example.names_it else -1
    return frozenset(
        test for each in answers if wanted * (each.own - each.rival) < 0 for test in each.tests
    )


def _ranked(causes: Sequence[Cause]) -> str:
    return ", ".join(f"{cause.fault.id} {percent(cause.probability)}" for cause in causes)


def _by_answer(cause: Cause) -> Mapping[_Spots, float]:
    return {weight.tests: weight.weight for weight in cause.weights}


def _said(knowledge: Knowledge, got: Conclusions, spots: _Spots) -> str:
    """An answer, or several that count together, as people say them."""
    if spots == THE_COMPLAINT:
        return f'the call "{knowledge.complaints[got.case.complaint or ""].says}"'
    return " with ".join(_said_at(knowledge, got, test, at) for test, at in spots)


def _said_at(knowledge: Knowledge, got: Conclusions, name: str, at: Place | None) -> str:
    test = knowledge.tests.get(name)
    if test is None:
        return COMPLAINT if name == COMPLAINT else name
    seen = next((r.seen for r in got.readings if (r.test, r.at) == (name, at)), ())
    told = " and ".join(map(test.spoken, seen))
    name = with_place(test.name, spoken(at))
    return f"{name}: {told}" if told else name


def _call_not_brought(knowledge: Knowledge, trial: Trial) -> Iterator[str]:
    call = knowledge.complaints.get(trial.example.complaint or "")
    if trial.example.names_it and call is not None and trial.fault not in call.brought_by:
        yield f"the card's calls do not name {call.id}, which holds it back; add it under calls"
