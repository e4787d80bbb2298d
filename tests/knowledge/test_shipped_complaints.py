"""The complaints that come with the program: what the cards say a caller reports, they lead to."""

from __future__ import annotations

from troubleshoot.knowledge.model import Fault, Knowledge

FEWEST_TESTS, MOST_TESTS = 3, 6
FEWEST_COMPLAINTS = 2


def listing(knowledge: Knowledge, fault: Fault) -> list[str]:
    return [c.id for c in knowledge.complaints.values() if fault.id in (*c.faults, *c.also)]


def test_a_fault_that_an_example_names_is_listed_under_the_complaint_of_that_example(
    shipped: Knowledge,
) -> None:
    missing = [
        (fault.id, example.complaint)
        for fault in shipped.faults.values()
        for example in fault.examples
        if example.names_it and example.complaint is not None
        if example.complaint not in listing(shipped, fault)
    ]
    assert missing == []


def test_no_cause_hangs_on_a_single_complaint(shipped: Knowledge) -> None:
    """Common practice, no source: callers name one fault in several ways."""
    causes = [fault for fault in shipped.faults.values() if not fault.is_effect]
    lonely = [f.id for f in causes if len(listing(shipped, f)) < FEWEST_COMPLAINTS]
    assert lonely == []


def test_a_complaint_leads_with_a_handful_of_tests(shipped: Knowledge) -> None:
    """Common practice, no source: fewer tell nothing apart, more are the whole round."""
    counts = {c.id: len(c.first_tests) for c in shipped.complaints.values()}
    assert {c: n for c, n in counts.items() if not FEWEST_TESTS <= n <= MOST_TESTS} == {}
