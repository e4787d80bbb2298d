"""Looking again: the gain of a second report, against every pair of truths and reports."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from tests.building import given as given_that
from tests.reasoning.evidence.test_ranking import OUTCOMES, answers_for, random_base
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.look_again import (
    gain_of_repeating,
    second_report,
    worth_repeating,
)
from troubleshoot.reasoning.choosing.next_test import QUESTION_MINUTES
from troubleshoot.reasoning.choosing.stopping import entropy, least_rate_on
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.outcome_chances import background, cells_of, row
from troubleshoot.reasoning.evidence.reading_evidence import Seen
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place

ERROR = 0.02


def report(truth: str, said: str) -> float:
    return 1 - ERROR if truth == said else ERROR / (len(OUTCOMES) - 1)


def rows_of(
    knowledge: Knowledge, found: Conclusions, name: str
) -> list[tuple[float, dict[str, float]]]:
    """Every hypothesis with its chance and its row of the test."""
    test = knowledge.tests[name]
    usual = dict(background(test, OUTCOMES))
    beyond = {o: 0.75 * p + 0.25 / 3 for o, p in usual.items()}
    rows = [
        (c.probability, dict(row(test, cells_of(test, c.fault.evidence, OUTCOMES), usual)))
        for c in found.causes
    ]
    return [*rows, (found.ranking.nothing_wrong, usual), (found.ranking.outside, beyond)]


def direct(knowledge: Knowledge, found: Conclusions, one: Seen) -> float:
    """H(sum p P(r2 | h, r1)) - sum p H(P(r2 | h, r1)), by plain sums over the truth."""
    first = one.reading.seen[0]
    mixed = dict.fromkeys(OUTCOMES, 0.0)
    inside = 0.0
    for chance, truths in rows_of(knowledge, found, one.reading.test):
        seen = math.fsum(truths[k] * report(k, first) for k in OUTCOMES)
        second = {
            r: math.fsum(truths[k] * report(k, first) * report(k, r) for k in OUTCOMES) / seen
            for r in OUTCOMES
        }
        inside += chance * entropy(second.values())
        for outcome, p in second.items():
            mixed[outcome] += chance * p
    return entropy(mixed.values()) - inside


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_the_gain_is_the_expected_drop_in_doubt(seed: int, answering: int) -> None:
    knowledge = random_base(seed)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers_for(answering)))
    for one in found.seen:
        expected = direct(knowledge, found, one)
        gain = gain_of_repeating(found.hypotheses, found.ranking, one, found.seen)
        assert gain == pytest.approx(expected, abs=1e-9)


@given(st.floats(0.01, 0.99), st.floats(0.001, 0.2))
def test_a_second_report_depends_on_the_first_only_through_the_truth(p: float, e: float) -> None:
    rows = {"normal": 1 - p, "low": p}
    joint = {
        (k, one, two): rows[k] * (1 - e if one == k else e) * (1 - e if two == k else e)
        for k, one, two in itertools.product(rows, repeat=3)
    }
    first = {k: 1 - e if k == "low" else e for k in rows}
    for two in rows:
        both = math.fsum(joint[k, "low", two] for k in rows)
        alone = math.fsum(joint[k, "low", other] for k in rows for other in rows)
        assert second_report(rows, first, e)[two] == pytest.approx(both / alone)


def test_a_test_that_no_cause_mentions_is_hardly_worth_repeating() -> None:
    knowledge = base(
        [test_of("t", "low", "high"), test_of("u", "low", "high")],
        [fault("a", {"almost-always": [{"t": "low"}]}), fault("b", {"often": [{"t": "high"}]})],
    )
    answers = (Answer("t", ("low",)), Answer("u", ("low",)))
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    gains = {
        one.reading.test: gain_of_repeating(found.hypotheses, found.ranking, one, found.seen)
        for one in found.seen
    }
    assert gains["t"] > 2 * gains["u"]


def repeats(found: Conclusions, **switch: float) -> list[str]:
    """The tests that pay to be repeated; `switch` gives minutes to change the work state."""
    worth = worth_repeating(
        found.hypotheses, found.ranking, found.seen, lambda test, _: switch.get(test.id, 0.0)
    )
    return [again.test.id for again in worth]


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_readings_that_pay_to_be_repeated_come_best_rate_first(seed: int, answering: int) -> None:
    knowledge = random_base(seed)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers_for(answering)))
    least = least_rate_on(found.ranking)
    rates = {
        one.reading.test: gain_of_repeating(found.hypotheses, found.ranking, one, found.seen)
        / (knowledge.tests[one.reading.test].minutes + QUESTION_MINUTES)
        for one in found.seen
    }
    paying = [t for t in sorted(rates, key=lambda t: (-rates[t], t)) if rates[t] > least]
    assert repeats(found) == paying


def test_no_reading_is_repeated_twice_or_where_getting_there_costs_more_than_it_tells() -> None:
    knowledge = base(
        [test_of("t", "low", kind="question"), test_of("u", "low", kind="question")],
        [fault("a", {"often": [{"t": "low"}, {"u": "low"}]}), fault("b")],
    )
    reasoner = Reasoner(knowledge)
    once = (Answer("t", ("low",)), Answer("u", ("low",)))
    found = reasoner.conclude(case(knowledge, *once))
    assert repeats(found) == ["t", "u"]
    assert repeats(found, t=400.0) == ["u"]
    twice = reasoner.conclude(case(knowledge, *once, Answer("u", ("low",))))
    assert "u" not in repeats(twice)


def test_a_reading_from_before_a_repair_is_not_repeated() -> None:
    knowledge = base(
        [test_of("t", "low", kind="question")],
        [fault("a", {"often": [{"t": "low"}]}), fault("b"), fault("c", {"seldom": [{"t": "low"}]})],
    )
    reasoner = Reasoner(knowledge)
    before = case(knowledge, Answer("t", ("low",)), repaired=("b",))
    after = case(knowledge, Answer("t", ("low",), repairs=1), repaired=("b",))
    for asked, worth in ((before, False), (after, True)):
        found = reasoner.conclude(asked)
        assert bool(repeats(found)) == worth


def test_a_question_with_several_answers_at_once_is_not_asked_again_without_end() -> None:
    """Regression: its second report was not weighed with the first, so it always paid to ask."""
    asked = test_of("t", "low", kind="question")
    knowledge = base([replace(asked, choose="several")], [fault("a", {"often": [{"t": "low"}]})])
    assert repeats(Reasoner(knowledge).conclude(case(knowledge, Answer("t", ("low",))))) == []


def test_after_a_repair_too_a_reading_is_repeated_once() -> None:
    """Regression: what was read after a repair stood alone however often it was read."""
    knowledge = base(
        [test_of("t", "low", kind="question")],
        [fault("a", {"often": [{"t": "low"}]}), fault("b"), fault("c", {"seldom": [{"t": "low"}]})],
    )
    answer = Answer("t", ("low",), repairs=1)
    again = Reasoner(knowledge).conclude(case(knowledge, answer, answer, repaired=("b",)))
    assert repeats(again) == []


def test_a_reading_speaks_again_only_about_its_own_place() -> None:
    knowledge = base(
        [test_of("t", "low", per="circuit")],
        [fault("a", {"often": [{"t": "low"}]}, per="circuit")],
    )
    unit = unit_of(knowledge, circuits=2)
    placed = Answer("t", ("low",), places=(Place("circuit", 2),))
    found = Reasoner(knowledge).conclude(case(knowledge, placed, unit=unit))
    (one,) = found.seen
    other_gone = [r for r in found.ranking.hypotheses if r.hypothesis.at == Place("circuit", 2)]
    rest = replace(found.ranking, hypotheses=tuple(other_gone))
    whole = gain_of_repeating(found.hypotheses, found.ranking, one)
    assert whole == pytest.approx(gain_of_repeating(found.hypotheses, rest, one))


def test_what_a_card_joins_it_with_counts() -> None:
    tests = [test_of("a", "high"), test_of("b", "hot")]
    joined = fault("f", {"sometimes": [{"a": "high"}, {"b": "hot"}]},
                   given=(given_that("b", "hot", "almost-always", a="high"),))  # fmt: skip
    knowledge = base(tests, [joined, fault("g")])
    answers = (Answer("a", ("high",)), Answer("b", ("hot",)))
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    hot = next(one for one in found.seen if one.reading.test == "b")
    alone = gain_of_repeating(found.hypotheses, found.ranking, hot)
    beside = gain_of_repeating(found.hypotheses, found.ranking, hot, found.seen)
    assert alone != pytest.approx(beside)
