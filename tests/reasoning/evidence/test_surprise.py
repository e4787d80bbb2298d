"""How well the leader fits: surprise against a direct computation; what stays unexplained."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of
from tests.building import given as given_that
from tests.reasoning.evidence.test_ranking import OUTCOMES, answers_for, random_base
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.outcome_chances import background, cells_of, reported, row
from troubleshoot.reasoning.readings.answers import Answer

ERROR = 0.02


def moments(reports: dict[str, float]) -> tuple[float, float]:
    """Mean and variance of -log2 P(report)."""
    mean = -math.fsum(p * math.log2(p) for p in reports.values())
    return mean, math.fsum(p * math.log2(p) ** 2 for p in reports.values()) - mean**2


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_surprise_is_bits_beyond_those_expected_over_their_spread(
    seed: int, answering: int
) -> None:
    knowledge = random_base(seed)
    answers = answers_for(answering)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    if not answers:
        assert found.misfit.z == 0.0 and found.misfit.worst == ()
        return
    leader = found.causes[0].fault
    bits = expected = variance = 0.0
    for answer in answers:
        test = knowledge.tests[answer.test]
        truths = row(test, cells_of(test, leader.evidence, OUTCOMES), background(test, OUTCOMES))
        reports = dict(reported(truths, ERROR))
        mean, spread = moments(reports)
        bits -= math.log2(reports[answer.outcomes[0]])
        expected += mean
        variance += spread
    assert found.misfit.z == pytest.approx((bits - expected) / math.sqrt(variance), rel=1e-6)


def test_what_fits_worst_is_shown_first_and_at_most_three() -> None:
    tests = [test_of(f"t{i}", "low") for i in range(6)]
    knowledge = base(tests, [fault("f", {"almost-always": [{t.id: "low"} for t in tests[:5]]})])
    answers = [Answer(t.id, ("low",)) for t in tests[:4]] + [Answer("t4", ("normal",))]
    found = Reasoner(knowledge).conclude(case(knowledge, *answers, Answer("t5", ("low",))))
    worst = [r.test for r in found.misfit.worst]
    assert set(worst[:2]) == {"t4", "t5"} and len(worst) <= 3


def test_readings_that_a_card_joins_surprise_together_and_not_twice() -> None:
    tests = [test_of("a", "high"), test_of("b", "hot")]
    grades = {"sometimes": [{"a": "high"}], "seldom": [{"b": "hot"}]}
    joined = fault("f", grades, given=(given_that("b", "hot", "almost-always", a="high"),))
    answers = (Answer("a", ("high",)), Answer("b", ("hot",)))

    def z(*cards: object) -> float:
        knowledge = base(tests, cards)  # type: ignore[arg-type]
        return Reasoner(knowledge).conclude(case(knowledge, *answers)).misfit.z

    assert z(joined) < z(fault("f", grades))
    # By hand, the one the card speaks of first: b is hot in 0.92 where a is high (0.41), else in
    # 0.14; then a, given the report on b.
    truths = {("high", "hot"): 0.41 * 0.92, ("high", "cool"): 0.41 * 0.08,
              ("normal", "hot"): 0.59 * 0.14, ("normal", "cool"): 0.59 * 0.86}  # fmt: skip
    said = {cell: p * (0.98 if cell[1] == "hot" else 0.02) for cell, p in truths.items()}
    hot = math.fsum(said.values())
    high_true = math.fsum(p for cell, p in said.items() if cell[0] == "high") / hot
    high = high_true * 0.98 + (1 - high_true) * 0.02
    means, variances = zip(*(moments({"yes": p, "no": 1 - p}) for p in (hot, high)), strict=True)
    bits = -math.log2(hot) - math.log2(high)
    assert z(joined) == pytest.approx((bits - sum(means)) / math.sqrt(sum(variances)), rel=1e-6)


def test_a_repeat_is_judged_given_the_first() -> None:
    knowledge = base([test_of("t", "low")], [fault("f", {"often": [{"t": "low"}]})])

    def z(*outcomes: str) -> float:
        answers = [Answer("t", (o,)) for o in outcomes]
        return Reasoner(knowledge).conclude(case(knowledge, *answers)).misfit.z

    assert z("low", "normal") > 2 > abs(z("low", "low"))


KNOWN = base(
    [test_of("t", "low"), test_of("u", "low"), test_of("site", "rain", healthy=None)],
    [
        fault("f", {"almost-always": [{"t": "low"}]}),
        fault("g", {"sometimes": [{"u": "low"}]}, how_common="very-rare"),
        fault("iced", {"almost-always": [{"u": "low"}]}, is_effect=True, behind=("f",),
              how_common="very-common"),
    ],
)  # fmt: skip


def unexplained(*answers: Answer, known: object = KNOWN, **more: object) -> list[str]:
    found = Reasoner(known).conclude(case(known, *answers, **more))  # type: ignore[arg-type]
    return [r.test for r in found.unexplained]


def test_an_abnormal_reading_is_explained_by_an_accepted_cause_or_effect() -> None:
    low_t, low_u = Answer("t", ("low",)), Answer("u", ("low",))
    assert unexplained(low_t) == []
    bare = base(list(KNOWN.tests.values()), [KNOWN.faults["f"], fault("x")])
    assert unexplained(low_t, low_u, known=bare) == ["u"]
    # The effect "iced" is shown at this reading and explains it.
    assert unexplained(low_t, low_u, Answer("u", ("low",))) == []


def test_normal_readings_and_site_questions_need_no_explaining() -> None:
    assert unexplained(Answer("u", ("normal",)), Answer("site", ("rain",))) == []


def test_a_repaired_fault_explains_only_what_was_read_before_the_repair() -> None:
    bare = base(list(KNOWN.tests.values()), [KNOWN.faults["f"], fault("x"), fault("y")])
    assert unexplained(Answer("t", ("low",)), known=bare, repaired=("f",)) == []
    new = Answer("t", ("low",), repairs=1)
    assert unexplained(new, known=bare, repaired=("f",)) == ["t"]
