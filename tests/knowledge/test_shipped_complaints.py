"""The complaints that come with the program: what each of them leads with."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge

FEWEST_TESTS, MOST_TESTS = 3, 6


def test_a_complaint_leads_with_a_handful_of_tests(shipped: Knowledge) -> None:
    """Common practice, no source: fewer tell nothing apart, more are the whole round."""
    counts = {c.id: len(c.first_tests) for c in shipped.complaints.values()}
    assert {c: n for c, n in counts.items() if not FEWEST_TESTS <= n <= MOST_TESTS} == {}
