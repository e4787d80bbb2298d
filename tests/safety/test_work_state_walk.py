"""No sequence of events shows a test before it is safe: exhaustive walks and walks at random.

The officer's rules follow 29 CFR 1910.333(b)(2), 29 CFR 1910.147(d) and NFPA 70E 120.5 (reference
value SAF-002).
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.safety.work_state_samples import (
    AT_CIRCUIT,
    AT_UNIT,
    ENERGISED,
    GAS_SHUT,
    GAS_UNIT,
    HANDS_IN,
    HANDS_IN_LOOK,
    JUMPERED,
    LIGHTS,
    LIVE_LINE,
    PLAIN_UNIT,
    PORTS_OUTSIDE,
    RUNNING,
    RUNNING_OPEN,
    SAMPLES,
    TWO_CIRCUITS,
    UNIT,
    WATCHED_UNIT,
)
from tests.safety.work_state_walks import Walk, walk_along, walk_everywhere
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.work_state import UnitAtWork

PARTS = 8
"""The longest walk is made in so many parts, which run beside each other."""

CHOICES = st.lists(st.integers(0, 10**6), min_size=40, max_size=60)


@pytest.mark.parametrize(
    ("samples", "unit"),
    [
        ((HANDS_IN, RUNNING, ENERGISED), PLAIN_UNIT),
        ((HANDS_IN, JUMPERED, RUNNING_OPEN), PLAIN_UNIT),
        ((HANDS_IN, LIVE_LINE), WATCHED_UNIT),
        ((GAS_SHUT, RUNNING_OPEN), GAS_UNIT),
        ((LIGHTS,), GAS_UNIT),
    ],
    ids=["hands in and live", "jumpered", "watched at 480 V", "gas", "a light that fails"],
)
def test_changing_from_one_kind_of_test_to_another_is_never_unsafe(
    samples: tuple[Test, ...], unit: UnitAtWork
) -> None:
    _, found = walk_everywhere([(test, None) for test in samples], unit)
    assert found == []


def test_circuits_are_never_run_empty_nor_read_shut_off() -> None:
    _, found = walk_everywhere(AT_CIRCUIT[:4], TWO_CIRCUITS)
    assert found == []


@pytest.mark.parametrize(
    "samples",
    [(HANDS_IN_LOOK,), (RUNNING, RUNNING_OPEN, ENERGISED)],
    ids=["hands in", "energised"],
)
def test_undo_never_makes_a_test_unsafe(samples: tuple[Test, ...]) -> None:
    _, found = walk_everywhere([(test, None) for test in samples], PLAIN_UNIT, undo=True)
    assert found == []


@cache
def walk_on(unit: UnitAtWork) -> Walk:
    """Walks among all sample tests of a unit: what one has worked out, the next finds."""
    return Walk(SAMPLES if unit in (UNIT, PORTS_OUTSIDE) else AT_UNIT, unit)


@settings(max_examples=250, deadline=None)
@given(CHOICES, st.sampled_from([PLAIN_UNIT, UNIT, WATCHED_UNIT, GAS_UNIT, PORTS_OUTSIDE]))
def test_a_visit_led_at_random_never_shows_an_unsafe_test(
    choices: list[int], unit: UnitAtWork
) -> None:
    assert walk_along(choices, walk_on(unit)) == []


@cache
def hands_in() -> Walk:
    """Walks to work by hand, and behind a shut cock."""
    return Walk([(HANDS_IN, None), (HANDS_IN_LOOK, None), (GAS_SHUT, None)], PLAIN_UNIT)


@settings(max_examples=25, deadline=None)
@given(CHOICES)
def test_steps_reported_out_of_turn_never_let_hands_in(choices: list[int]) -> None:
    assert walk_along(choices, hands_in(), heedless=True) == []


@pytest.mark.parametrize("part", range(PARTS))
def test_no_way_to_any_test_of_the_rule_base_is_unsafe_or_blocked(
    part: int, shipped: Knowledge
) -> None:
    kinds = tuple(_one_of_each_kind(shipped.tests.values()))
    assert len(kinds) > 10
    for test in kinds[part::PARTS]:
        _, found = walk_everywhere([(test, None)], PLAIN_UNIT)
        assert found == [], test.id


def _one_of_each_kind(tests: Iterable[Test]) -> Iterable[Test]:
    """One test for each set of facts that the work state or the officer looks at."""
    kinds: dict[object, Test] = {}
    for test in tests:
        if test.kind != "step":
            kinds.setdefault(
                (
                    needs_of(test, None, PLAIN_UNIT),
                    test.work_state,
                    test.needs_state,
                    test.kind == "measurement",
                    test.exposes,
                    frozenset(test.hazards) & _LOOKED_AT,
                ),
                test,
            )
    return kinds.values()


_LOOKED_AT = frozenset(
    {
        "temporary-jumper",
        "nitrogen-pressure",
        "compressor-in-vacuum",
        "carbon-monoxide-in-room",
        "fire-alarm-interlock",
    }
)
