"""Evidence groups, against tables written out by hand."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, evidence, fault, test_of
from tests.building import given as given_that
from troubleshoot.knowledge.model import Evidence
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.groups import InfeasibleGroup, Statement, joint
from troubleshoot.reasoning.readings.answers import Answer

A = {"normal": 0.6, "high": 0.4}
B = {"normal": 0.7, "hot": 0.3}


def test_a_statement_sets_its_cell_and_leaves_the_rest_in_proportion() -> None:
    said = Statement(0.92, {"b": frozenset({"hot"})}, {"a": frozenset({"high"})})
    group = joint({"a": A, "b": B}, [said])
    table = group.table
    inside = table[("high", "hot")] + table[("high", "normal")]
    assert table[("high", "hot")] / inside == pytest.approx(0.92)
    assert inside == pytest.approx(0.4)
    assert table[("normal", "hot")] / table[("normal", "normal")] == pytest.approx(0.3 / 0.7)


def test_unanswered_members_are_summed_out() -> None:
    said = Statement(0.92, {"b": frozenset({"hot"})}, {"a": frozenset({"high"})})
    group = joint({"a": A, "b": B}, [said])
    assert group.likelihood({"a": {"normal": 0.0, "high": 1.0}}) == pytest.approx(0.4)
    assert group.likelihood({}) == pytest.approx(1.0)
    seen = {"a": {"normal": 0.0, "high": 1.0}}
    assert group.row_given("b", seen)["hot"] == pytest.approx(0.92)


def test_any_of_gives_one_less_the_grade_to_none_of_them() -> None:
    said = Statement(0.92, {"a": frozenset({"high"}), "b": frozenset({"hot"})}, {}, any_of=True)
    group = joint({"a": A, "b": B}, [said])
    assert group.table[("normal", "normal")] == pytest.approx(0.08)


def test_statements_that_contradict_one_another_are_refused() -> None:
    one = Statement(0.9, {"b": frozenset({"hot"})}, {"a": frozenset({"high"})})
    other = Statement(0.2, {"b": frozenset({"hot"})}, {"a": frozenset({"high"})})
    with pytest.raises(InfeasibleGroup, match="contradict"):
        joint({"a": A, "b": B}, [one, other])


@settings(max_examples=60, deadline=None)
@given(st.floats(0.05, 0.95), st.floats(0.05, 0.95), st.floats(0.05, 0.95), st.floats(0.05, 0.95))
def test_two_statements_are_both_kept_in_a_table_that_is_a_distribution(
    a: float, b: float, first: float, second: float
) -> None:
    rows = {"a": {"n": a, "h": 1 - a}, "b": {"n": b, "h": 1 - b}, "c": {"n": 0.5, "h": 0.5}}
    said = [
        Statement(first, {"b": frozenset({"h"})}, {"a": frozenset({"h"})}),
        Statement(second, {"c": frozenset({"h"})}, {"a": frozenset({"h"})}),
    ]
    table = joint(rows, said).table
    assert math.fsum(table.values()) == pytest.approx(1.0)
    for position, chance in ((1, first), (2, second)):
        inside = math.fsum(p for cell, p in table.items() if cell[0] == "h")
        hits = math.fsum(p for c, p in table.items() if c[0] == "h" and c[position] == "h")
        assert hits / inside == pytest.approx(chance, abs=1e-5)


def test_two_readings_joined_by_a_card_are_not_counted_twice() -> None:
    tests = [test_of("superheat", "high"), test_of("discharge", "hot")]
    grades = {"often": [{"superheat": "high"}, {"discharge": "hot"}]}
    joined = fault(
        "joined", grades, given=(given_that("discharge", "hot", "almost-always", superheat="high"),)
    )
    knowledge = base(tests, [joined, fault("apart", grades)])
    answers = (Answer("superheat", ("high",)), Answer("discharge", ("hot",)))
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    chances = {c.fault.id: c.probability for c in found.causes}

    def report(true: bool) -> float:
        return 0.98 if true else 0.02

    def likelihood(hot_given_high: float) -> float:
        total = 0.0
        for high, hot in itertools.product((True, False), repeat=2):
            p = 0.73 if high else 0.27
            q = hot_given_high if high else 0.73
            total += p * (q if hot else 1 - q) * report(high) * report(hot)
        return total

    expected = likelihood(0.92) / likelihood(0.73)
    assert chances["joined"] / chances["apart"] == pytest.approx(expected, rel=1e-6)


def test_evidence_over_two_tests_means_at_least_one_of_them() -> None:
    tests = [test_of("a", "high"), test_of("b", "hot")]
    either = Evidence("almost-always", evidence({"often": [{"a": "high", "b": "hot"}]})[0].findings)
    knowledge = base(tests, [fault("f").__class__(**{
        **{s: getattr(fault("f"), s) for s in vars(fault("f"))}, "evidence": (either,)}),
        fault("g")])  # fmt: skip
    reasoner = Reasoner(knowledge)

    def chance(*answers: Answer) -> float:
        found = reasoner.conclude(case(knowledge, *answers))
        return next(c.probability for c in found.causes if c.fault.id == "f")

    nothing = chance()
    assert chance(Answer("a", ("high",))) > nothing
    assert chance(Answer("a", ("normal",)), Answer("b", ("normal",))) < nothing / 5
    assert chance(Answer("a", ("normal",)), Answer("b", ("hot",))) > nothing
