"""From a card's story to its rivals: the nearest causes, and the cheapest test that splits them."""

from __future__ import annotations

from troubleshoot.authoring.trial import Trial
from troubleshoot.frozen import frozen
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.visit.cases.assessment import candidates_for

NEAREST = 3


@frozen
class Rivals:
    """The causes that come nearest to a card's own on its example, and what tells them apart best.

    `splits`: None where the card's fault is named, or no test that is left tells anything.
    """

    own: Cause
    nearest: tuple[Cause, ...]
    splits: Candidate | None


def rivals(trial: Trial) -> Rivals | None:
    """The rivals on one example; None of an effect, or where the fault is not in the ranking."""
    if trial.got is None or trial.own is None or trial.own.fault.is_effect:
        return None
    others = [cause for cause in trial.got.causes if cause.fault.id != trial.fault]
    splits = None if trial.own == trial.got.named else next(iter(candidates_for(trial.got)), None)
    return Rivals(trial.own, tuple(others[:NEAREST]), splits)
