"""Whether today's rules know what an event speaks of: test, outcomes, fault, hazard, quantities.

A journal is written by this program, but perhaps by another version of it, under other rules.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.instruments import INSTRUMENTS
from troubleshoot.quantities.typed import NotUnderstood as NotRead
from troubleshoot.reasoning.readings.measuring import read_quantity, read_text
from troubleshoot.visit.events.answers import Answered, StepDone
from troubleshoot.visit.events.beginning import Started
from troubleshoot.visit.events.codec import quoted
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.instruments import InstrumentsListed
from troubleshoot.visit.events.on_round import FindingsKept, RoundBegun, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.weighed import Weighed
from troubleshoot.visit.round.season import SEASONS
from troubleshoot.visit.weighing import ADDED, RECOVERED, Weighing
from troubleshoot.visit.weights import weight_read


class Unknown(ValueError):
    """An event speaks of what today's rules do not know; the message says of what."""


def in_todays_words(knowledge: Knowledge, event: Event) -> Event:
    """An answer or a step whose outcomes have another name by now, under that name."""
    if not isinstance(event, Answered | StepDone):
        return event
    test = event.test if isinstance(event, Answered) else event.step
    today = (knowledge.aliases.get((test, word), (test, word)) for word in event.outcomes)
    outcomes = tuple(word for now, word in today if now == test)
    return replace(event, outcomes=outcomes) if len(outcomes) == len(event.outcomes) else event


def check_known(knowledge: Knowledge, event: Event) -> None:
    """Check everything that an event names. Raises Unknown."""
    names: Mapping[str, Mapping[str, object]] = {
        "test": knowledge.tests,
        "step": knowledge.tests,
        "fault": knowledge.faults,
        "hazard": knowledge.hazards,
    }
    for key, known in names.items():
        name = getattr(event, key, None)
        if name is not None and name not in known:
            raise Unknown(f"the {key} {name} is not in today's rules")
    if isinstance(event, RoundBegun) and event.season not in SEASONS:
        raise Unknown(f"{quoted(event.season)} is no season of a round")
    if isinstance(event, FindingsKept | SearchBegun | RoundGoneOn):
        apart = event.apart if isinstance(event, SearchBegun) else ()
        for found in (*event.findings, *apart):
            if found.test not in knowledge.tests:
                raise Unknown(f"the test {found.test} is not in today's rules")
    if isinstance(event, Answered):
        _check_answer(knowledge, knowledge.tests[event.test], event)
    if isinstance(event, StepDone):
        _check_answer(knowledge, knowledge.tests[event.step], event)
    if isinstance(event, Answered | Started):
        check_conditions(knowledge, event.conditions)
    if isinstance(event, InstrumentsListed):
        for each in event.instruments:
            if each.kind not in INSTRUMENTS or min(each.percent, each.counts, each.fixed) < 0:
                raise Unknown(f"{quoted(each.name)} is no instrument of a kind that is known")
    if isinstance(event, Weighed):
        _check_weighed(knowledge, event.weighing)


def _check_weighed(knowledge: Knowledge, weighing: Weighing) -> None:
    """Check that its weights are some. Raises Unknown."""
    if weighing.way not in (ADDED, RECOVERED):
        raise Unknown(f"{quoted(weighing.way)} is neither added nor recovered")
    for typed in (weighing.weight, weighing.before, weighing.after, weighing.tare):
        try:
            if typed:
                weight_read(knowledge, typed)
        except NotRead:
            raise Unknown(f"{quoted(typed)} is no weight") from None


def check_conditions(knowledge: Knowledge, conditions: Mapping[str, str]) -> None:
    """Check what held during a reading. Raises Unknown."""
    for name, text in conditions.items():
        quantity = knowledge.quantities.get(name)
        if quantity is None:
            raise Unknown(f"the quantity {name} is not in today's rules")
        try:
            read_quantity(quantity, text)
        except NotRead:
            raise Unknown(f"{quoted(text)} is no {name}") from None


def _check_answer(knowledge: Knowledge, test: Test, event: Answered | StepDone) -> None:
    """Check that a test has such outcomes and reads such a text, and that there is either."""
    known = {outcome.id for outcome in test.outcomes}
    gone = [each for each in event.outcomes if each not in known]
    if gone:
        raise Unknown(f"{gone[0]} is no outcome of {test.id} in today's rules")
    if event.outcomes:
        return
    if event.text is None or not test.reads:
        raise Unknown(f"it says nothing of {test.id}")
    try:
        read_text(test, event.text, knowledge)
    except NotRead:
        raise Unknown(f"{quoted(event.text)} is no reading of {test.id}") from None
