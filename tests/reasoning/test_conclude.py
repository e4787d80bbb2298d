"""What follows from a case: procedures, the ranking, effects; and that order changes nothing."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from tests.reasoning.chaining.test_engine import trees
from tests.reasoning.evidence.test_ranking import answers_for, random_base
from tests.reasoning.test_hazards import FOUND, LOOK, SWEEP, concluded, gas, knowing, said
from troubleshoot.knowledge.model import (
    Condition,
    Finding,
    Procedure,
)
from troubleshoot.reasoning.chaining.conditions import Facts, evaluate
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place

FAN_TESTS = [test_of(f"t{i}", "low", "high", per="condenser-fan") for i in range(4)]


@settings(max_examples=80, deadline=None)
@given(
    trees(),
    st.dictionaries(
        st.tuples(st.sampled_from(["t0", "t1", "t2", "t3"]), st.integers(1, 2)),
        st.sampled_from(["normal", "low", "high"]),
    ),
)
def test_procedures_fire_exactly_where_the_evaluator_says_so(
    condition: Condition, answered: dict[tuple[str, int], str]
) -> None:
    """Two fans that serve the one circuit: what is seen at either is seen, not answered no."""
    knowledge = base(FAN_TESTS, [fault("f")], [Procedure("rule", condition, "because")])
    unit = unit_of(knowledge, circuits="one", condenser_fans=2, fans_serve="all", metering="txv")
    answers = [
        said(test, outcome, places=(Place("condenser-fan", n),))
        for (test, n), outcome in answered.items()
    ]
    found = concluded(knowledge, *answers, unit=unit)
    seen: dict[str, frozenset[str]] = {}
    for (test, _), outcome in answered.items():
        seen[test] = seen.get(test, frozenset()) | {outcome}
    truth = evaluate(condition, Facts(seen, dict(unit.facts))).truth
    assert bool(found.procedures) == (truth is True)


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000), st.randoms())
def test_the_order_of_cards_and_answers_does_not_change_a_bit_of_the_ranking(
    seed: int, dice: random.Random
) -> None:
    knowledge, answers = random_base(seed), answers_for(seed + 1)
    cards = list(knowledge.faults.items())
    dice.shuffle(cards)
    shuffled = answers[:]
    dice.shuffle(shuffled)
    one = concluded(knowledge, *answers)
    other = concluded(replace(knowledge, faults=dict(cards)), *shuffled)
    assert [(c.fault.id, c.probability.hex()) for c in one.causes] == [
        (c.fault.id, c.probability.hex()) for c in other.causes
    ]
    assert one.misfit.z == other.misfit.z
    assert one.ranking.outside.hex() == other.ranking.outside.hex()


def test_a_corrected_answer_leaves_nothing_behind() -> None:
    bad = Condition("finding", finding=Finding("look", ("bad",)))
    rule = Procedure("rule", bad, "because", derives="wrong")
    knowledge = base(
        [SWEEP, LOOK], [fault("f", {"often": [{"look": "bad"}]})], [rule], [gas(FOUND)]
    )
    reasoner = Reasoner(knowledge)
    clean = reasoner.conclude(case(knowledge, said("look", "normal")))
    reasoner.conclude(case(knowledge, said("look", "bad"), said("sweep", "gas")))
    again = reasoner.conclude(case(knowledge, said("look", "normal")))
    assert again.procedures == () and again.hazards == ()
    assert [c.probability for c in again.causes] == [c.probability for c in clean.causes]


def test_a_skipped_test_weighs_nothing_and_is_not_offered_again() -> None:
    from tests.reasoning.choosing.test_next_test import itself, no_switch

    knowledge = knowing()
    skipped = frozenset({("look", None)})
    plain, passed = concluded(knowledge), concluded(knowledge, skipped=skipped)
    assert [c.probability for c in plain.causes] == [c.probability for c in passed.causes]
    args = (passed.ranking, passed.seen, passed.case.skipped, itself, no_switch)
    assert "look" not in [c.test.id for c in passed.chooser.candidates(*args)]


def test_an_answer_that_says_unknown_weighs_nothing() -> None:
    knowledge = knowing()
    silent, unknown = concluded(knowledge), concluded(knowledge, Answer("look"))
    assert [c.probability for c in silent.causes] == [c.probability for c in unknown.causes]
    assert unknown.seen == ()


def test_an_outcome_this_unit_cannot_show_weighs_nothing() -> None:
    gone = replace(LOOK, outcomes=(LOOK.outcomes[0], replace(
        LOOK.outcomes[1], exists_when={"metering": ("txv",)})))  # fmt: skip
    knowledge = base([gone], [fault("f", {"often": [{"look": "bad"}]}), fault("g")])
    unit = unit_of(knowledge, metering="fixed-orifice")
    found = concluded(knowledge, said("look", "bad"), unit=unit)
    assert found.seen == () and found.readings[0].valid


def test_a_part_is_accused_only_at_nine_tenths() -> None:
    knowledge = knowing(faults=[fault("f", {"almost-always": [{"look": "bad"}]},
                                      how_common="very-common")])  # fmt: skip
    once, often = concluded(knowledge), concluded(knowledge, *[said("look", "bad")] * 2)
    assert once.named is None or once.causes[0].probability >= 0.9
    assert often.named is not None and often.named.fault.id == "f"
    weak = concluded(knowing(), said("look", "bad"))
    assert weak.causes[0].probability < 0.9 and weak.named is None


def test_effects_are_what_happened_and_do_not_compete_with_causes() -> None:
    effect = fault("iced", {"almost-always": [{"look": "bad"}]}, is_effect=True, behind=("g",),
                   how_common="very-common")  # fmt: skip
    alone = knowing(faults=[fault("f", {"often": [{"look": "bad"}]}), fault("g")])
    beside = knowing(faults=[*alone.faults.values(), effect])
    answers = [said("look", "bad")] * 2
    one, other = concluded(alone, *answers), concluded(beside, *answers)
    assert [c.probability for c in one.causes] == [c.probability for c in other.causes]
    assert [e.fault.id for e in other.effects] == ["iced"]
    # Odds against nothing having happened: 10 in 100, times the likelihood ratio of both reports.
    both = (0.92 * 0.98**2 + 0.08 * 0.02**2) / (0.1 * 0.98**2 + 0.9 * 0.02**2)
    odds = 0.1 / 0.9 * both
    assert other.effects[0].probability == pytest.approx(odds / (1 + odds))


def test_pictures_of_an_effect_are_summed() -> None:
    from tests.building import picture

    grades = {"almost-always": [{"look": "bad"}]}
    pictures = (picture("mild", grades), picture("severe", grades))
    plain = fault(
        "iced", {"almost-always": [{"look": "bad"}]}, is_effect=True, how_common="very-common"
    )
    drawn = replace(plain, pictures=pictures)
    answers = [said("look", "bad")] * 3
    chances = [concluded(knowing(faults=[f, fault("g")]), *answers).effects for f in (plain, drawn)]
    assert [len(effects) for effects in chances] == [1, 1]
    assert chances[0][0].probability == pytest.approx(chances[1][0].probability)


def test_a_round_expects_nothing_wrong_and_a_complaint_something() -> None:
    knowledge = knowing()
    assert concluded(knowledge).ranking.nothing_wrong == pytest.approx(0.10)
    assert concluded(knowledge, routine=True).ranking.nothing_wrong == pytest.approx(0.50)
    assert concluded(knowledge, routine=True).ranking.outside == pytest.approx(0.07)


def test_the_hypotheses_of_a_unit_are_made_once() -> None:
    knowledge = knowing()
    reasoner = Reasoner(knowledge)
    first, second = (
        reasoner.conclude(case(knowledge, *answers)) for answers in ((), [said("look", "bad")])
    )
    assert first.hypotheses is second.hypotheses and first.chooser is second.chooser
    other = reasoner.conclude(case(knowledge, unit=unit_of(knowledge, metering="txv")))
    assert other.hypotheses is not first.hypotheses


def test_a_case_is_reasoned_through_once_until_it_changes() -> None:
    knowledge = knowing()
    reasoner = Reasoner(knowledge)
    first, again = (reasoner.conclude(case(knowledge, said("look", "bad"))) for _ in range(2))
    assert first is again
    changed = reasoner.conclude(case(knowledge, said("look", "normal")))
    assert changed.seen != first.seen and changed.case != first.case


def test_a_base_without_faults_still_answers() -> None:
    found = concluded(base([LOOK]), said("look", "bad"))
    assert found.causes == () and found.named is None
    assert found.ranking.nothing_wrong + found.ranking.outside == pytest.approx(1.0)
