"""What else of the rules points at an entry, for its page: an author sees who leans on it."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.model import Fault, Knowledge, Test


def pointing_at_fault(knowledge: Knowledge, fault: Fault) -> Iterator[str]:
    """The cards that take a fault for theirs, or have it behind them, and its own examples."""
    others = knowledge.faults.values()
    taken = [other.name for other in others if fault.id in other.look_alikes]
    if taken:
        yield f"Taken for it: {', '.join(taken)}"
    ahead = [other.name for other in others if fault.id in other.behind]
    if ahead:
        yield f"May lie behind: {', '.join(ahead)}"
    for example in fault.examples:
        yield f"Example, must {'name it' if example.names_it else 'not name it'}: {example.name}"


def pointing_at_test(knowledge: Knowledge, test: Test) -> Iterator[str]:
    """The calls that begin with a test, and the cards whose examples read it."""
    calls = [call.says for call in knowledge.complaints.values() if test.id in call.first_tests]
    if calls:
        yield f"Looked at first on: {', '.join(calls)}"
    reading = [
        fault.name
        for fault in knowledge.faults.values()
        if any(row["test"] == test.id for example in fault.examples for row in example.readings)
    ]
    if reading:
        yield f"In examples of: {', '.join(reading)}"
