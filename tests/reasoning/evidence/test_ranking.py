"""Ranking against a direct computation of Bayes' rule, written out plainly."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, evidence, fault, test_of, unit_of
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.reasoning.choosing.next_test import entropy
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.grades import HOW_COMMON
from troubleshoot.reasoning.evidence.outcome_chances import background, cells_of, reported, row
from troubleshoot.reasoning.readings.answers import Answer

GRADES = ["never", "seldom", "sometimes", "often", "almost-always"]
OUTCOMES = ["normal", "low", "high"]


def random_base(seed: int, faults: int = 5, tests: int = 6) -> Knowledge:
    dice = random.Random(seed)
    known = [test_of(f"t{i}", "low", "high") for i in range(tests)]
    cards = []
    for i in range(faults):
        grades: dict[str, list[dict[str, str]]] = {}
        for test in dice.sample(known, dice.randint(1, tests)):
            for outcome in dice.sample(OUTCOMES, dice.randint(1, 2)):
                grades.setdefault(dice.choice(GRADES), []).append({test.id: outcome})
        cards.append(fault(f"f{i}", grades, how_common=dice.choice(list(HOW_COMMON))))
    return base(known, cards)


def answers_for(seed: int, tests: int = 6) -> list[Answer]:
    dice = random.Random(seed)
    return [Answer(f"t{i}", (dice.choice(OUTCOMES),)) for i in range(tests) if dice.random() < 0.7]


def direct(knowledge: Knowledge, answers: list[Answer]) -> dict[str, float]:
    """Posterior by multiplying prior and likelihoods, look error 0.02, priors of the model."""
    weights = {name: HOW_COMMON[f.how_common] for name, f in knowledge.faults.items()}
    scale = (1 - 0.07 - 0.10) / sum(weights.values())
    joint = {name: weight * scale for name, weight in weights.items()}
    joint |= {"nothing": 0.10, "outside": 0.07}
    for answer in answers:
        test = knowledge.tests[answer.test]
        usual = background(test, OUTCOMES)
        rows = {
            name: row(test, cells_of(test, f.evidence, OUTCOMES), usual)
            for name, f in knowledge.faults.items()
        }
        rows["nothing"] = usual
        rows["outside"] = {o: 0.75 * p + 0.25 / 3 for o, p in usual.items()}
        for name in joint:
            joint[name] *= reported(rows[name], 0.02)[answer.outcomes[0]]
    total = sum(joint.values())
    return {name: p / total for name, p in joint.items()}


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_chances_are_those_of_bayes_rule(seed: int, answering: int) -> None:
    knowledge = random_base(seed)
    answers = answers_for(answering)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    expected = direct(knowledge, answers)
    for cause in found.causes:
        assert cause.probability == pytest.approx(expected[cause.fault.id], rel=1e-9)
    assert found.ranking.nothing_wrong == pytest.approx(expected["nothing"], rel=1e-9)
    assert found.ranking.outside == pytest.approx(expected["outside"], rel=1e-9)


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), st.randoms())
def test_the_order_of_answers_does_not_change_a_single_bit(seed: int, dice: random.Random) -> None:
    knowledge = random_base(seed)
    answers = answers_for(seed + 1)
    shuffled = answers[:]
    dice.shuffle(shuffled)
    reasoner = Reasoner(knowledge)
    one = reasoner.conclude(case(knowledge, *answers))
    other = reasoner.conclude(case(knowledge, *shuffled))
    assert [c.probability for c in one.causes] == [c.probability for c in other.causes]


def test_a_fault_that_does_not_mention_a_test_is_not_weighed_by_it() -> None:
    knowledge = base([test_of("t", "low")], [fault("a", {"often": [{"t": "low"}]}), fault("b")])
    found = Reasoner(knowledge).conclude(case(knowledge, Answer("t", ("low",))))
    by_name = {c.fault.id: c for c in found.causes}
    assert by_name["b"].weights == () and by_name["a"].weights[0].weight > 0


def test_an_invalid_reading_weighs_nothing() -> None:
    knowledge = base([test_of("t", "low")], [fault("a", {"often": [{"t": "low"}]}), fault("b")])
    reasoner = Reasoner(knowledge)
    voided = reasoner.conclude(case(knowledge, Answer("t", ("low",), valid=False)))
    silent = reasoner.conclude(case(knowledge))
    assert [c.probability for c in voided.causes] == [c.probability for c in silent.causes]


def test_the_complaint_is_a_start_that_never_filters() -> None:
    complaint = Complaint(
        "hot",
        "It is hot",
        brought_by={"a": "almost-always", "b": "often", "d": "never"},
        unlisted="seldom",
    )
    knowledge = base(
        faults=[fault("a"), fault("b"), fault("c"), fault("d")], complaints=[complaint]
    )
    found = Reasoner(knowledge).conclude(case(knowledge, complaint="hot"))
    chances = {c.fault.id: c.probability for c in found.causes}
    assert chances["a"] > chances["b"] > chances["c"] > chances["d"] > 0
    assert chances["b"] / chances["c"] == pytest.approx(0.73 / 0.14)
    assert chances["d"] / chances["c"] == pytest.approx(0.02 / 0.14)


def test_the_complaint_leaves_nothing_wrong_and_outside_as_likely_as_before() -> None:
    complaint = Complaint("hot", "It is hot", brought_by={"a": "almost-always"})
    knowledge = base(faults=[fault("a"), fault("b"), fault("c")], complaints=[complaint])
    found = Reasoner(knowledge).conclude(case(knowledge, complaint="hot")).ranking
    assert (found.nothing_wrong, found.outside) == pytest.approx((0.10, 0.07))


def test_pictures_of_one_fault_are_summed() -> None:
    from tests.building import picture

    low = picture("mild", {"almost-always": [{"t": "low"}]})
    high = picture("severe", {"almost-always": [{"t": "high"}]})
    knowledge = base([test_of("t", "low", "high")], [fault("a", pictures=(low, high)), fault("b")])
    reasoner = Reasoner(knowledge)
    for outcome in ("low", "high"):
        found = reasoner.conclude(case(knowledge, Answer("t", (outcome,))))
        assert found.causes[0].fault.id == "a"
        assert len([c for c in found.causes if c.fault.id == "a"]) == 1


def test_equipment_overrides_replace_the_grades_they_speak_of() -> None:
    from tests.building import picture

    layer = picture("", {"never": [{"t": "low"}]}, when={"metering": ("txv",)})
    knowledge = base(
        [test_of("t", "low")],
        [fault("a", {"almost-always": [{"t": "low"}]}, overrides=(layer,)), fault("b")],
    )
    reasoner = Reasoner(knowledge)
    answer = Answer("t", ("low",))
    orifice = case(knowledge, answer, unit=unit_of(knowledge, metering="fixed-orifice"))
    valve = case(knowledge, answer, unit=unit_of(knowledge, metering="txv"))
    assert reasoner.conclude(orifice).causes[0].fault.id == "a"
    assert reasoner.conclude(valve).causes[0].fault.id == "b"


def test_a_fault_that_cannot_exist_is_not_on_the_list() -> None:
    knowledge = base(faults=[fault("a", exists_when={"metering": ("txv",)}), fault("b")])
    unit = unit_of(knowledge, metering="fixed-orifice")
    found = Reasoner(knowledge).conclude(case(knowledge, unit=unit))
    assert [c.fault.id for c in found.causes] == ["b"]


def test_a_repaired_fault_leaves_the_list_and_explains_what_it_explained() -> None:
    knowledge = base(
        [test_of("t", "low"), test_of("u", "low")],
        [
            fault("a", {"almost-always": [{"t": "low"}]}, how_common="very-common"),
            fault("b", {"almost-always": [{"t": "low"}, {"u": "low"}]}, how_common="rare"),
            fault("c", {"often": [{"t": "low"}]}),
        ],
    )
    answers = (Answer("t", ("low",)), Answer("u", ("low",)))
    found = Reasoner(knowledge).conclude(case(knowledge, *answers, repaired=("a",)))
    assert found.causes[0].fault.id == "b"
    weights = {t: w.weight for c in found.causes[:1] for w in c.weights for t, _ in w.tests}
    # The repaired fault accounts for t, so t says next to nothing more; u says as much as ever.
    assert abs(weights["t"]) < 0.15 < weights["u"]


def test_a_second_reading_counts_beside_the_first() -> None:
    knowledge = base([test_of("t", "low")], [fault("a", {"often": [{"t": "low"}]}), fault("b")])
    reasoner = Reasoner(knowledge)

    def chance(*outcomes: str) -> float:
        answers = [Answer("t", (o,)) for o in outcomes]
        found = reasoner.conclude(case(knowledge, *answers))
        return next(c.probability for c in found.causes if c.fault.id == "a")

    assert chance("low") < chance("low", "low")
    assert chance("normal") < chance("low", "normal") < chance("low")
    # P(low twice | a) = sum over truths of P(truth) P(report | truth)^2, report error 0.02.
    usual = {"normal": 0.9, "low": 0.1}
    often_low = cells_of(knowledge.tests["t"], evidence({"often": [{"t": "low"}]}), list(usual))
    row_a = row(knowledge.tests["t"], often_low, usual)
    twice_a = row_a["low"] * 0.98**2 + row_a["normal"] * 0.02**2
    twice_b = 0.1 * 0.98**2 + 0.9 * 0.02**2
    two = reasoner.conclude(case(knowledge, Answer("t", ("low",)), Answer("t", ("low",))))
    chances = {c.fault.id: c.probability for c in two.causes}
    assert chances["a"] / chances["b"] == pytest.approx(twice_a / twice_b)


def test_entropy_of_even_chances_is_the_logarithm_of_their_number() -> None:
    assert entropy([0.25] * 4) == pytest.approx(2.0)
    assert entropy([1.0, 0.0]) == 0.0 and math.isclose(entropy([0.5, 0.5]), 1.0)
