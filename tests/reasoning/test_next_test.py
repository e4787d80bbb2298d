"""The next test: gain against a direct computation, minutes, exposure, and when to stop."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of
from tests.reasoning.test_ranking import OUTCOMES, answers_for, random_base
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclude import Conclusions, Reasoner
from troubleshoot.reasoning.next_test import Candidate, choose, entropy, least_rate, pays
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.rows import background, cells_of, reported, row


def itself(test: Test, place: Place | None) -> tuple[Test, ...]:
    return (test,)


def no_switch(test: Test, place: Place | None) -> float:
    return 0.0


def candidates(found: Conclusions) -> tuple[Candidate, ...]:
    done = frozenset((r.test, r.at) for r in found.readings)
    return found.chooser.candidates(found.ranking, found.seen, done, itself, no_switch)


def direct_gain(knowledge: Knowledge, found: Conclusions, test: Test) -> float:
    """H(sum p P(r|h)) - sum p H(r|h), over all hypotheses, with look error 0.02."""
    rows = {
        c.fault.id: row(test, cells_of(test, c.fault.evidence, OUTCOMES), OUTCOMES)
        for c in found.causes
    }
    usual = background(test, OUTCOMES)
    weighted = [(c.probability, reported(rows[c.fault.id], 0.02)) for c in found.causes]
    rest = found.ranking.nothing_wrong + found.ranking.outside
    weighted.append((rest, reported(usual, 0.02)))
    mixed = [math.fsum(p * r[o] for p, r in weighted) for o in OUTCOMES]
    return entropy(mixed) - math.fsum(p * entropy(r.values()) for p, r in weighted)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_the_gain_is_the_expected_drop_in_doubt(seed: int, answering: int) -> None:
    knowledge = random_base(seed)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers_for(answering)[:2]))
    for candidate in candidates(found):
        expected = direct_gain(knowledge, found, candidate.test)
        assert candidate.gain == pytest.approx(expected, abs=1e-4)


def one_question(**more: dict[str, object]) -> Knowledge:
    """Two faults and tests that separate them equally well; `more` changes single tests."""
    names = ["slow", "quick"]
    tests = [test_of(name, "low", **more.get(name, {})) for name in names]
    low = {"almost-always": [{name: "low"} for name in names]}
    never = {"never": [{name: "low"} for name in names]}
    return base(tests, [fault("a", low), fault("b", never)])


def test_of_two_that_tell_the_same_the_quicker_is_next() -> None:
    knowledge = one_question(slow={"minutes": 20}, quick={"minutes": 5})
    found = Reasoner(knowledge).conclude(case(knowledge))
    chosen = choose(candidates(found), found.ranking)
    assert chosen is not None and chosen.test.id == "quick"


def test_changing_the_work_state_costs_its_minutes() -> None:
    knowledge = one_question(slow={"minutes": 8}, quick={"minutes": 5})
    found = Reasoner(knowledge).conclude(case(knowledge))

    def switch(test: Test, place: Place | None) -> float:
        return 30.0 if test.id == "quick" else 0.0

    offered = found.chooser.candidates(found.ranking, found.seen, frozenset(), itself, switch)
    assert offered[0].test.id == "slow"


def test_among_nearly_equal_rates_the_less_exposed_wins() -> None:
    knowledge = one_question(slow={"minutes": 10.5}, quick={"minutes": 10, "exposes": "line"})
    found = Reasoner(knowledge).conclude(case(knowledge))
    chosen = choose(candidates(found), found.ranking)
    assert chosen is not None and chosen.test.id == "slow"


def test_a_test_that_no_live_cause_mentions_is_not_offered() -> None:
    knowledge = base([test_of("t", "low")], [fault("a"), fault("b")])
    found = Reasoner(knowledge).conclude(case(knowledge))
    assert candidates(found) == ()


def test_it_stops_when_a_test_costs_more_than_it_can_save() -> None:
    cheap = one_question(slow={"minutes": 1}, quick={"minutes": 1})
    dear = one_question(slow={"minutes": 900}, quick={"minutes": 900})
    for knowledge, going_on in ((cheap, True), (dear, False)):
        found = Reasoner(knowledge).conclude(case(knowledge))
        assert (choose(candidates(found), found.ranking) is not None) == going_on


def test_the_least_rate_is_doubt_over_what_a_wrong_repair_costs() -> None:
    knowledge = one_question()
    found = Reasoner(knowledge).conclude(case(knowledge))
    chances = [c.probability for c in found.causes]
    rest = [found.ranking.nothing_wrong, found.ranking.outside]
    expected = entropy([*chances, *rest]) / (1.1 * 180 * (1 - max(chances + rest)))
    assert least_rate(found.ranking) == pytest.approx(expected)
    candidate = candidates(found)[0]
    assert pays(candidate, candidate.gain / candidate.minutes * 0.99)
    assert not pays(candidate, candidate.gain / candidate.minutes * 1.01)
