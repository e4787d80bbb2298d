"""Conditions of procedure rules: three-valued truth, and what is still unknown."""

from __future__ import annotations

import itertools

import pytest

from troubleshoot.knowledge.model import Condition, Finding
from troubleshoot.reasoning.chaining.conditions import Facts, Truth, evaluate


def leaf(test: str, outcome: str = "bad") -> Condition:
    return Condition("finding", finding=Finding(test, (outcome,)))


def facts(**answers: bool | None) -> Facts:
    """`a=True`: test a was answered "bad"; False: answered "good"; None: not answered."""
    return Facts(
        {
            test: frozenset({"bad" if bad else "good"})
            for test, bad in answers.items()
            if bad is not None
        }
    )


TRUTHS: list[Truth] = [True, False, None]


@pytest.mark.parametrize(("a", "b"), list(itertools.product(TRUTHS, TRUTHS)))
def test_all_and_any_follow_kleene(a: Truth, b: Truth) -> None:
    # Kleene 1952, strong three-valued logic: false decides "all", true decides "any".
    known = facts(a=a, b=b)
    both = False if False in (a, b) else None if None in (a, b) else True
    either = True if True in (a, b) else None if None in (a, b) else False
    assert evaluate(Condition("all", (leaf("a"), leaf("b"))), known).truth is both
    assert evaluate(Condition("any", (leaf("a"), leaf("b"))), known).truth is either


@pytest.mark.parametrize("answers", list(itertools.product(TRUTHS, repeat=3)))
def test_at_least_counts_what_is_true_and_what_may_be(answers: tuple[Truth, ...]) -> None:
    known = facts(**dict(zip("abc", answers, strict=True)))
    parts = tuple(leaf(name) for name in "abc")
    truth = evaluate(Condition("at-least", parts, count=2), known).truth
    possible = [
        sum(world)
        for world in itertools.product(
            *([True, False] if answer is None else [answer] for answer in answers)
        )
    ]
    expected: Truth = None
    if min(possible) >= 2:
        expected = True
    elif max(possible) < 2:
        expected = False
    assert truth is expected


def test_not_means_answered_no() -> None:
    condition = Condition("not", (leaf("a"),))
    assert evaluate(condition, facts(a=False)).truth is True
    assert evaluate(condition, facts(a=True)).truth is False
    assert evaluate(condition, facts()).truth is None


def test_leaves_are_known_only_by_what_was_said() -> None:
    fact = Condition("fact", name="metering", words=("txv",))
    state = Condition("state", name="cold")
    derived = Condition("derived", name="starved")
    known = Facts({}, {"metering": "txv"}, {"cold": False}, {"starved": True})
    assert [evaluate(c, known).truth for c in (fact, state, derived)] == [True, False, True]
    assert [evaluate(c, Facts()).truth for c in (fact, state, derived)] == [None] * 3
    other = Facts({}, {"metering": "fixed-orifice"})
    assert evaluate(fact, other).truth is False


def test_any_of_the_outcomes_seen_counts() -> None:
    signs = Facts({"face": frozenset({"dirty", "bent"})})
    assert evaluate(leaf("face", "bent"), signs).truth is True
    assert evaluate(leaf("face", "missing"), signs).truth is False


def test_what_is_still_unknown_is_only_what_could_change_the_truth() -> None:
    decided = Condition("any", (leaf("a"), leaf("b")))
    open_ = Condition("all", (leaf("a"), decided, leaf("c")))
    assert evaluate(decided, facts(a=True)).unknown_leaves() == ()
    assert evaluate(open_, facts(a=True)).unknown_leaves() == (leaf("c"),)
    assert evaluate(open_, facts(a=False)).unknown_leaves() == ()
    assert evaluate(open_, facts()).unknown_leaves() == (leaf("a"), leaf("a"), leaf("b"), leaf("c"))


def test_the_verdict_keeps_every_part() -> None:
    condition = Condition("all", (leaf("a"), Condition("not", (leaf("b"),))))
    verdict = evaluate(condition, facts(a=True, b=True))
    assert [part.truth for part in verdict.parts] == [True, False]
    assert verdict.parts[1].parts[0].truth is True
