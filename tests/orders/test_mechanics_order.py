"""A visit looks in much the order that a mechanic takes, and never first at what he calls a danger.

25 calls with his first five looks each, every test left unanswered: the order from the call alone.
`tests/bench/orders.py` prints the table.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.orders.driven import MOST, calls, order_on
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge

FIVE = 5
AMONG_FIVE = 0.6
"""How many of his first five are among the tool's first five, at least. Before: 0.41."""
AMONG_EIGHT = 0.72
"""The same among its first eight. Before: 0.56."""
Orders = Mapping[str, tuple[str, ...]]


@pytest.fixture(scope="module")
def orders(shipped: Knowledge) -> Orders:
    """The first looks on each call."""
    reasoner = reasoner_of(shipped)
    return {call.complaint: order_on(reasoner, call, "unknown") for call in calls()}


def test_most_of_what_a_mechanic_looks_at_first_comes_first(orders: Orders) -> None:
    looks = sum(len(call.looks) for call in calls())
    assert (len(orders), looks) == (25, 125)
    for first, least in ((FIVE, AMONG_FIVE), (MOST, AMONG_EIGHT)):
        hits = sum(call.hits(orders[call.complaint][:first]) for call in calls())
        assert hits >= least * looks, f"{hits} of {looks} among the first {first}"


def test_nothing_that_is_a_danger_stands_among_the_first_five(
    orders: Orders, shipped: Knowledge
) -> None:
    found = [
        (call.complaint, each.what, name)
        for call in calls()
        for each in call.unwanted
        if each.danger
        for name in each.among(orders[call.complaint][:FIVE], shipped.tests)
    ]
    assert found == []


def test_every_look_names_something_that_there_is(shipped: Knowledge) -> None:
    known = {*shipped.tests, *shipped.hazards}
    for call in calls():
        assert call.complaint in shipped.complaints
        assert frozenset().union(*call.looks) <= known
        for each in call.unwanted:
            assert each.tests | each.after <= known
