"""The account of a circuit: totals, what was put back, and the leak rate by the rule's methods."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import markdown
from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.refrigerant import rolling_leak_rate
from troubleshoot.records.refrigerant.account import (
    NO_CHARGE,
    NO_WEIGHT,
    NONE_BEFORE,
    CircuitAccount,
    account_of,
)
from troubleshoot.records.refrigerant.moved import Moved
from troubleshoot.records.refrigerant.told import refrigerant_section
from troubleshoot.visit.weighing import Weighing

START = date(2026, 1, 10)


def account(*moved: tuple[int, str, float | None], charge: float | None = 100.0) -> CircuitAccount:
    """`moved`: the day after the start, the way, the pounds."""
    every = [
        Moved(START + timedelta(days=day), Weighing(way, "circuit 1"), pounds)
        for day, way, pounds in moved
    ]
    return account_of("circuit 1", every, charge)


def test_the_rate_is_that_of_the_four_steps_of_the_rule() -> None:
    """40 CFR 82.152, annualizing method: 10 lb into 100 lb, 180 days after the last addition.

    Step 1: 10 / 100 = 0.1; step 2: 180 / 365 = 0.4932; step 3: 0.1 / 0.4932 = 0.2028; step 4: by
    100, 20.28 %. Rolling average method: (5 + 10) / 100 by 100, 15 %.
    """
    found = account((0, "added", 5.0), (180, "added", 10.0))
    assert found.annualized.percent == pytest.approx(20.28, abs=0.005)
    assert found.rolling.percent == pytest.approx(15.0)


def test_more_than_a_year_counts_as_a_year_and_is_out_of_the_rolling_average() -> None:
    found = account((0, "added", 5.0), (400, "added", 10.0))
    assert found.annualized.percent == pytest.approx(10.0)
    assert found.rolling.percent == pytest.approx(10.0)
    assert account((0, "added", 5.0), (365, "added", 10.0)).rolling.percent == pytest.approx(10.0)
    assert account((1, "added", 5.0), (365, "added", 10.0)).rolling.percent == pytest.approx(15.0)


@pytest.mark.parametrize(
    ("moved", "charge", "annualized", "rolling"),
    [
        ([(0, "added", 2.0)], 100.0, NONE_BEFORE, ""),
        ([(0, "added", 2.0), (9, "added", 2.0)], None, NO_CHARGE, NO_CHARGE),
        ([(0, "added", None), (9, "added", 2.0)], 100.0, "", NO_WEIGHT),
        ([(0, "added", 2.0), (9, "added", None)], 100.0, NO_WEIGHT, NO_WEIGHT),
        (
            [(0, "added", 2.0), (5, "recovered", None), (9, "added", 2.0)],
            100.0, NO_WEIGHT, NO_WEIGHT,
        ),
    ],
)  # fmt: skip
def test_what_is_not_known_is_said_and_never_assumed(
    moved: list[tuple[int, str, float | None]],
    charge: float | None,
    annualized: str,
    rolling: str,
) -> None:
    found = account(*moved, charge=charge)
    assert (found.annualized.why_not, found.rolling.why_not) == (annualized, rolling)
    assert (found.annualized.percent is None) == bool(annualized)
    assert (found.rolling.percent is None) == bool(rolling)


def test_what_was_recovered_and_goes_back_is_no_loss() -> None:
    found = account(
        (0, "added", 1.0), (100, "recovered", 90.0), (103, "added", 80.0), (105, "added", 12.0)
    )
    assert [each.pounds for each in found.made_up] == [1.0, 0.0, 2.0]
    assert [each.put_back for each in found.made_up] == [0.0, 80.0, 10.0]
    assert (found.added, found.recovered) == (93.0, 90.0)
    assert found.rolling.percent == pytest.approx(3.0)


def test_on_one_day_it_is_recovered_first_and_additions_count_together() -> None:
    found = account((0, "added", 8.9), (0, "recovered", 8.2), (0, "added", 0.3))
    assert [each.pounds for each in found.made_up] == [pytest.approx(1.0)]


def test_another_circuit_is_another_account() -> None:
    other = Moved(START, Weighing("added", "circuit 2"), 2.0)
    assert account_of("circuit 1", [other], 10.0).made_up == ()


MOVES = st.lists(
    st.tuples(
        st.integers(min_value=0, max_value=900),
        st.sampled_from(["added", "recovered"]),
        st.one_of(st.none(), st.floats(min_value=0.01, max_value=50.0)),
    ),
    max_size=8,
)


@given(MOVES)
def test_nothing_is_made_up_that_was_not_added(moves: list[tuple[int, str, float | None]]) -> None:
    found = account(*sorted(moves, key=lambda each: each[0]))
    known = sum(each.pounds or 0.0 for each in found.made_up)
    assert known <= found.added + 1e-9
    assert known >= found.added - found.recovered - 1e-9 or found.not_told
    assert all(each.pounds is None or each.pounds >= 0.0 for each in found.made_up)
    for rate in (found.annualized, found.rolling):
        assert (rate.percent is None) == bool(rate.why_not) or not found.made_up


def test_in_a_report_a_weighing_is_one_item_with_what_its_cylinder_says(
    shipped: Knowledge,
) -> None:
    says = ("Left in the cylinder: 9.00 lb.",)
    weighing = Weighing("added", "circuit 1", "2 lb", "C_7")
    moved = Moved(START, weighing, 2.0, "2026-01-10-1", says=says)
    found = account_of("circuit 1", [moved], None)
    lines = [*refrigerant_section(shipped, [found])]
    assert lines[:2] == ["## Refrigerant added and recovered", ""]
    whole = (
        "2026-01-10  added 2.00 lb, from C_7 (visit 2026-01-10-1). Left in the cylinder: 9.00 lb."
    )
    assert f"- {markdown(whole)}" in lines
    assert any("its full charge is not on record" in line for line in lines)
    assert lines[-2].endswith("Judged by the owner's responsible person.")
    assert [*refrigerant_section(shipped, [account_of("circuit 2", [moved], None)])] == []


def test_the_rolling_average_wants_a_charge() -> None:
    assert rolling_leak_rate(3.0, 30.0) == pytest.approx(10.0)
    with pytest.raises(OutOfRange):
        rolling_leak_rate(3.0, 0.0)
