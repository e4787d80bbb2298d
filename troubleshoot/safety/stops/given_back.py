"""Which STOPs of a visit are given back with the last, that only has to be read afresh once."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import StopMet


def given_back_with(
    knowledge: Knowledge, met: StopMet, last: StopMet, stops: tuple[StopMet, ...]
) -> StopMet:
    """A STOP as it is once the last one has been given back.

    So is one that was told in the same words, where the same people may clear it and the same
    number on an instrument shows it: it is read afresh with the last, and not handed over once
    more. A word that the place is clear says of which danger it is so only of the one asked about.
    """
    if met.hazard == last.hazard:
        return replace(met, reopened=True)
    hazard = knowledge.hazards.get(met.hazard)
    said = {each.reported for each in stops if each.hazard == last.hazard} - {None}
    if hazard is None or met.reopened or met.reported not in said or met.spot != last.spot:
        return met
    if met.spot is None or not knowledge.tests[met.spot[0]].reads:
        return met
    if last.result is None or last.result.by not in hazard.cleared_by:
        return met
    return replace(
        met,
        result=last.result,
        reopened=True,
        called=last.called,
        said_yes_to=last.said_yes_to,
        answers=last.answers,
    )
