"""What follows from a case: hazards and their STOP, procedures and the ranking."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, measured, test_of, unit_of
from tests.reasoning.test_engine import trees
from tests.reasoning.test_ranking import answers_for, random_base
from troubleshoot.knowledge.model import (
    Complaint,
    Condition,
    Finding,
    Hazard,
    Knowledge,
    Procedure,
    Quantity,
    Read,
    Stop,
    StopScope,
    Trigger,
)
from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.conclude import Conclusions, Reasoner
from troubleshoot.reasoning.conditions import Facts, evaluate
from troubleshoot.reasoning.places import Place

SWEEP = test_of("sweep", "none", "trace", "gas", healthy="none", kind="measurement")
LOOK = test_of("look", "bad")
SMELL = Complaint("smell", "It smells", all_clear="sweep")


def gas(*triggers: Trigger, scope: StopScope = "whole-job", name: str = "gas") -> Hazard:
    return Hazard(name, "DANGER", "leave", triggers, Stop(scope, "everything"))


FOUND = Trigger((Finding("sweep", ("gas",)),))
CALLED = Trigger(complaint="smell")


def knowing(*hazards: Hazard, **more: Any) -> Knowledge:
    cards = more.pop("faults", [fault("f", {"often": [{"look": "bad"}]}), fault("g")])
    return base([SWEEP, LOOK], cards, hazards=hazards, complaints=[SMELL], **more)


def concluded(knowledge: Knowledge, *answers: Answer, **more: Any) -> Conclusions:
    return Reasoner(knowledge).conclude(case(knowledge, *answers, **more))


def said(test: str, outcome: str, **more: Any) -> Answer:
    return Answer(test, (outcome,), **more)


def stopped(found: Conclusions) -> list[str]:
    return [fired.hazard.id for fired in found.hazards if fired.stops]


def test_a_complaint_that_is_a_stop_stands_until_the_all_clear() -> None:
    knowledge = knowing(gas(CALLED))
    assert stopped(concluded(knowledge, complaint="smell")) == ["gas"]
    cleared = concluded(knowledge, said("sweep", "none"), complaint="smell")
    assert stopped(cleared) == [] and [h.hazard.id for h in cleared.hazards] == ["gas"]
    assert cleared.stop is None


@pytest.mark.parametrize(
    "answer",
    [said("sweep", "gas"), said("sweep", "trace"), said("sweep", "none", valid=False),
     said("look", "normal")],
)  # fmt: skip
def test_nothing_but_a_valid_healthy_all_clear_lifts_it(answer: Answer) -> None:
    assert stopped(concluded(knowing(gas(CALLED)), answer, complaint="smell")) == ["gas"]


def test_a_doubtful_reading_after_the_all_clear_brings_the_stop_back() -> None:
    answers = (said("sweep", "none"), said("sweep", "gas", valid=False))
    assert stopped(concluded(knowing(gas(CALLED)), *answers, complaint="smell")) == ["gas"]


@pytest.mark.parametrize("triggers", [(CALLED, FOUND), (FOUND, CALLED)])
def test_a_finding_stops_whatever_became_of_the_complaint(triggers: tuple[Trigger, ...]) -> None:
    leak = Trigger((Finding("look", ("bad",)),))
    knowledge = knowing(gas(*triggers, leak))
    answers = (said("sweep", "none"), said("look", "bad"))
    found = concluded(knowledge, *answers, complaint="smell")
    assert stopped(found) == ["gas"] and len(found.hazards) == 1
    assert "possible:look:bad" in found.hazards[0].because


def test_a_likely_fault_shows_its_hazard_but_does_not_stop() -> None:
    knowledge = knowing(gas(Trigger(fault="f")))
    answers = (said("look", "bad"),) * 3
    found = concluded(knowledge, *answers)
    assert found.causes[0].fault.id == "f" and found.causes[0].probability >= 0.3
    assert [h.hazard.id for h in found.hazards] == ["gas"] and stopped(found) == []
    assert concluded(knowledge, said("look", "normal")).hazards == ()


def test_the_stop_that_ends_the_diagnosis_is_one_for_the_whole_job() -> None:
    step = gas(Trigger((Finding("look", ("bad",)),)), scope="this-step", name="a-step")
    safe = gas(Trigger((Finding("look", ("bad",)),)), scope="until-made-safe", name="b-safe")
    knowledge = knowing(step, safe, gas(FOUND))
    assert concluded(knowledge, said("look", "bad")).stop is None
    both = concluded(knowledge, said("look", "bad"), said("sweep", "gas"))
    assert both.stop is not None and both.stop.hazard.id == "gas"
    assert both.causes, "causes are still ranked at a STOP"


def test_a_hazard_without_a_stop_only_warns() -> None:
    knowledge = knowing(Hazard("hot", "CAUTION", "let it cool", (FOUND,)))
    found = concluded(knowledge, said("sweep", "gas"))
    assert [h.hazard.id for h in found.hazards] == ["hot"] and found.stop is None


@pytest.mark.parametrize(
    ("text", "fires"), [("7 ppm", False), ("8.6 ppm", True), ("9.4 ppm", True), ("12 ppm", True)]
)
def test_hazards_fire_on_the_worse_side_of_a_reading_too_close_to_call(
    text: str, fires: bool
) -> None:
    test = measured("co", {"normal": {"below": 9}, "high": {"at_least": 9}}, reads=(Read("co"),))
    hazard = gas(Trigger((Finding("co", ("high",)),)), name="co")
    knowledge = base(
        [test], [fault("f")], hazards=[hazard], quantities=[Quantity("co", "ppm", "co")]
    )
    near = text.replace(" ppm", " +/- 0.5 ppm")
    for valid in (None, False):
        found = concluded(knowledge, Answer("co", text=near, valid=valid))
        assert (stopped(found) == ["co"]) == fires


def test_a_finding_at_one_circuit_does_not_complete_a_trigger_at_another() -> None:
    tests = [test_of("a", "bad", per="circuit"), test_of("b", "bad", per="circuit")]
    both = Trigger((Finding("a", ("bad",)), Finding("b", ("bad",))))
    knowledge = base(tests, [fault("f")], hazards=[gas(both)])
    unit = unit_of(knowledge, circuits=2)

    def fired(at_a: int, at_b: int) -> list[str]:
        answers = (said("a", "bad", places=(Place("circuit", at_a),)),
                   said("b", "bad", places=(Place("circuit", at_b),)))  # fmt: skip
        return stopped(concluded(knowledge, *answers, unit=unit))

    assert fired(1, 1) == fired(2, 2) == ["gas"] and fired(1, 2) == []


def test_a_reading_of_which_the_place_is_open_may_complete_it_anywhere() -> None:
    tests = [test_of("a", "bad", per="circuit"), test_of("b", "bad", per="circuit")]
    both = Trigger((Finding("a", ("bad",)), Finding("b", ("bad",))))
    knowledge = base(tests, [fault("f")], hazards=[gas(both)])
    unit = unit_of(knowledge, circuits=2)
    places = unit.layout.places("circuit")
    answers = (said("a", "bad", places=places, shared=True),
               said("b", "bad", places=(Place("circuit", 2),)))  # fmt: skip
    assert stopped(concluded(knowledge, *answers, unit=unit)) == ["gas"]


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
    from tests.reasoning.test_next_test import itself, no_switch

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
