"""What undo takes back, in words: nobody has to guess which answer that was."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.facts_said import as_typed, in_words
from troubleshoot.visit.events import (
    Answered,
    Closing,
    Event,
    FactTold,
    FindingsKept,
    MarkedInvalid,
    ProofRead,
    Repaired,
    RepairedBefore,
    RoundGoneOn,
    SearchBegun,
    Skipped,
    StateGone,
    StepDone,
    Weighed,
)
from troubleshoot.visit.weights import weighing_words


def in_words_again(knowledge: Knowledge, event: Event) -> str:
    """What was said by an event; empty where nobody understands it."""
    if isinstance(event, Answered | StepDone):
        test = knowledge.tests[event.test if isinstance(event, Answered) else event.step]
        return f"{test.name}: {event.text or ', '.join(map(test.spoken, event.outcomes))}"
    if isinstance(event, Skipped):
        return f"{knowledge.tests[event.test].name}: skipped"
    if isinstance(event, FactTold):
        if event.value is None:
            return f"{knowledge.spoken(event.name)}: not known"
        return in_words(knowledge, event.name, as_typed(event.value))
    if isinstance(event, MarkedInvalid):
        return f"the last reading does not count, {event.reason}"
    if isinstance(event, ProofRead):
        return f"{event.reason}: {event.text or 'not read'}"
    if isinstance(event, Repaired):
        return f"repaired, {knowledge.faults[event.fault].name}"
    if isinstance(event, RepairedBefore):
        return f"repaired before, {knowledge.faults[event.fault].name}"
    if isinstance(event, FindingsKept | SearchBegun):
        names = "; ".join(knowledge.tests[each.test].name for each in event.findings)
        return f"{names}: {'for the end' if isinstance(event, FindingsKept) else 'the cause now'}"
    if isinstance(event, Weighed):
        return weighing_words(knowledge, event.weighing)
    if isinstance(event, StateGone):
        return f'"{event.words}"'
    if isinstance(event, RoundGoneOn):
        return "back to the round"
    return "done" if isinstance(event, Closing) else ""
