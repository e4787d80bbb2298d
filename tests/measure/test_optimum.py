"""Ways of choosing against the exact optimum, on trees small enough to reckon by hand."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

import pytest

from troubleshoot.measure.optimum import Costs, costs_of, together
from troubleshoot.measure.policies import ENGINE, PLAINER, SPARING, Look, Policy
from troubleshoot.measure.subset import Subset
from troubleshoot.reasoning.choosing.stopping import VALUE_OF_RIGHT

NEVER = Policy(lambda *_: False, lambda look: look.gain)
ALWAYS = Policy(lambda *_: True, lambda look: look.gain)
SEEDS = range(12)
STATES: Mapping[tuple[str, str], float] = {
    ("any", "running"): 5.0, ("any", "locked-out"): 20.0, ("running", "locked-out"): 20.0,
    ("locked-out", "running"): 5.0,
}  # fmt: skip


def thrown(seed: int) -> Subset:
    """Four faults and three tests of three work states."""
    dice = random.Random(seed)
    priors = [dice.random() for _ in range(4)]
    rows = [[dice.choice((0.02, 0.14, 0.41, 0.73, 0.92)) for _ in priors] for _ in "abc"]
    return Subset(
        tuple(p / sum(priors) for p in priors),
        tuple(tuple(row) for row in rows),
        (2.0, 5.0, 12.0),
        ("any", "running", "locked-out"),
        STATES,
    )


def cheapest(subset: Subset, weights: tuple[float, ...], left: frozenset[int], at: str) -> float:
    """The best tree by trying every one of them; weights are joint, so that nothing is divided.

    As it is told in any text on decision trees: the least of stopping and of each test, what
    follows either answer being the best that can be.
    """
    found = [VALUE_OF_RIGHT * (math.fsum(weights) - max(weights))]
    for test in left:
        row, state = subset.unsound[test], subset.states[test]
        change = subset.changes.get((at, state), 0.0)
        cost = math.fsum(weights) * (subset.minutes[test] + change)
        then = at if state == "any" else state
        for shares in (row, [1 - u for u in row]):
            joint = tuple(w * u for w, u in zip(weights, shares, strict=True))
            cost += cheapest(subset, joint, left - {test}, then)
        found.append(cost)
    return min(found)


def lost(subset: Subset, policy: Policy) -> float | None:
    return costs_of(subset, (policy,))[0].lost


def test_a_test_that_settles_it_is_taken_and_nothing_is_lost() -> None:
    certain = Subset((0.5, 0.5), ((1.0, 0.0),), (5.0,), ("any",))
    for policy in (ENGINE, *PLAINER.values()):
        (cost,) = costs_of(certain, (policy,))
        assert (cost.policy, cost.optimum, cost.free) == (5.0, 5.0, VALUE_OF_RIGHT / 2)
        assert cost.lost == 0.0 and cost.ratio == 1.0


def test_where_no_test_brings_a_saving_no_share_of_it_is_lost() -> None:
    dear = Subset((0.5, 0.5), ((1.0, 0.0),), (5000.0,), ("any",))
    assert lost(dear, ENGINE) is None and costs_of(dear, (ENGINE,))[0].ratio == 1.0


def test_the_share_lost_by_hand() -> None:
    """Two faults even, a test of 5 minutes that settles it, and one of 15 that tells nothing."""
    subset = Subset((0.5, 0.5), ((1.0, 0.0), (0.5, 0.5)), (5.0, 15.0), ("any", "any"))
    both = costs_of(subset, (ALWAYS,))[0]
    assert both.policy == 20.0
    assert both.lost == pytest.approx((20 - 5) / (VALUE_OF_RIGHT / 2 - 5))


def test_many_together_count_by_what_there_is_to_save() -> None:
    costs = (Costs(20.0, 10.0, 20.0), Costs(100.0, 100.0, 190.0))
    assert [c.lost for c in costs] == [1.0, 0.0]
    assert together(costs).lost == pytest.approx(0.1)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_optimum_is_what_trying_every_tree_finds(seed: int) -> None:
    subset = thrown(seed)
    tried = cheapest(subset, subset.priors, frozenset(range(3)), "any")
    assert costs_of(subset, (ENGINE,))[0].optimum == pytest.approx(tried)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_free_stop_loses_all_and_no_policy_less_than_nothing(seed: int) -> None:
    subset = thrown(seed)
    assert lost(subset, NEVER) == pytest.approx(1.0)
    for policy in (ENGINE, ALWAYS, *PLAINER.values()):
        share = lost(subset, policy)
        assert share is not None and share >= -1e-9


@pytest.mark.parametrize("seed", SEEDS)
def test_who_tests_only_for_what_it_spares_never_loses_more_than_by_no_test(seed: int) -> None:
    share = lost(thrown(seed), SPARING)
    assert share is not None and share <= 1 + 1e-9


@pytest.mark.parametrize("seed", SEEDS)
def test_the_engine_comes_near_the_optimum(seed: int) -> None:
    (cost,) = costs_of(thrown(seed), (ENGINE,))
    assert cost.ratio < 1.2


def test_policies_choose_by_what_they_are_named_for() -> None:
    quick = Look(0, gain=0.4, surer=0.01, minutes=2.0, number=1)
    telling = Look(1, gain=0.9, surer=0.02, minutes=30.0, number=2)
    sparing = Look(2, gain=0.5, surer=0.2, minutes=20.0, number=0)
    left = (quick, telling, sparing)
    assert max(left, key=ENGINE.merit) is quick
    spared, bits, listed = (max(left, key=policy.merit) for policy in PLAINER.values())
    assert (spared, bits, listed) == (sparing, telling, sparing)
    assert not SPARING.worth(Look(3, 1.0, 0.0, 1.0, 0), 0.0)
