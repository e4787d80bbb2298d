"""Simulated visits: outcomes thrown from the rows, visits led, minutes and wrong calls counted."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace

import pytest

from tests.building import base, fault, test_of, unit_of
from tests.building import given as given_that
from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.measure.faulty_unit import FaultyUnit, draw
from troubleshoot.measure.simulated import CheckedVisit, SimulatedVisit, Visit
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.safety.declared import CONFIRMED

HOT = Complaint(
    "hot", "It is hot", first_tests=("u",), brought_by={"a": "almost-always", "b": "often"}
)


def told_apart() -> Knowledge:
    """Two faults that one test tells apart, and one that says nothing of either."""
    tests = [test_of("t", "low"), test_of("u", "low")]
    low = {"almost-always": [{"t": "low"}]}
    return base(tests, [fault("a", low), fault("b", {"never": [{"t": "low"}]})], complaints=[HOT])


def faulty(knowledge: Knowledge, unit: Unit, name: str, seed: int = 1) -> FaultyUnit:
    hypotheses, _ = Reasoner(knowledge).hypotheses(unit)
    truth = next(h for h in hypotheses.causes if h.fault.id == name)
    return FaultyUnit(hypotheses, truth, random.Random(seed))


def reports(knowledge: Knowledge, name: str, test: str, times: int = 2000) -> Counter[str]:
    """What many units with one fault are reported to show on one test."""
    unit = unit_of(knowledge)
    made = faulty(knowledge, unit, name)
    seen: Counter[str] = Counter()
    for _ in range(times):
        again = FaultyUnit(made.hypotheses, made.truth, made.dice)
        seen.update(again.report(knowledge.tests[test], None))
    return seen


def test_outcomes_come_as_often_as_the_card_says_less_the_slips() -> None:
    seen = reports(told_apart(), "a", "t")
    # 0.92 of "almost always" with a look error of 0.02 either way.
    assert seen["low"] / 2000 == pytest.approx(0.92 * 0.98 + 0.08 * 0.02, abs=0.02)


def test_an_outcome_whose_name_is_none_stays_what_it_is() -> None:
    """Regression: it was once taken for "none of these signs", which is a sound answer."""
    knowledge = base(
        [test_of("volts", "low", "none")],
        [fault("open", {"almost-always": [{"volts": "none"}]}), fault("other")],
    )
    assert reports(knowledge, "open", "volts")["none"] > 1700


def test_what_was_thrown_once_stays_and_only_the_report_may_slip() -> None:
    knowledge = told_apart()
    alike = 0
    for seed in range(200):
        one = faulty(knowledge, unit_of(knowledge), "b", seed)
        first, second = (one.report(knowledge.tests["u"], None) for _ in range(2))
        alike += first == second
    assert alike > 180


def test_joined_tests_are_thrown_together() -> None:
    tests = [test_of("a", "high"), test_of("b", "hot")]
    joined = fault("f", {"sometimes": [{"a": "high"}, {"b": "hot"}]},
                   given=(given_that("b", "hot", "almost-always", a="high"),))  # fmt: skip
    knowledge = base(tests, [joined, fault("g")])
    hot = Counter[str]()
    for seed in range(1500):
        one = faulty(knowledge, unit_of(knowledge), "f", seed)
        if one.report(tests[0], None) == ("high",):
            hot.update(one.report(tests[1], None))
    assert hot["hot"] / hot.total() == pytest.approx(0.9, abs=0.05)


def visited(kind: type[SimulatedVisit], seed: int = 1) -> tuple[SimulatedVisit, Visit]:
    reasoner = Reasoner(told_apart())
    hypotheses, _ = reasoner.hypotheses(unit_of(reasoner.knowledge))
    truth = next(h for h in hypotheses.causes if h.fault.id == "a")
    made = kind(reasoner, {}, truth, HOT, random.Random(seed))
    return made, made.visit()


def test_the_engine_asks_what_tells_the_faults_apart_and_a_checklist_what_it_lists() -> None:
    for kind, first in ((SimulatedVisit, "t"), (CheckedVisit, "u")):
        made, _ = visited(kind)
        assert made.state.asked[0].test == first


def test_a_visit_counts_its_minutes_and_ends_in_a_call() -> None:
    visits = [visited(SimulatedVisit, seed)[1] for seed in range(30)]
    assert all(v.minutes == v.tests > 0 and not v.stopped for v in visits)
    assert sum(v.right for v in visits) > 24


def test_safety_steps_are_paid_for_and_a_stop_ends_the_visit(shipped: Knowledge) -> None:
    reasoner = Reasoner(shipped)
    facts = shipped.typical_units["measured-one-circuit"].unit
    hypotheses, _ = reasoner.hypotheses(read_unit(shipped, facts))
    call = shipped.complaints["no-heat"]
    crack = next(h for h in hypotheses.causes if h.fault.id == "heat-exchanger-cracked")
    made = SimulatedVisit(reasoner, facts, crack, call, random.Random(1))
    visit = made.visit()
    steps = [a for a in made.state.asked if a.test in CONFIRMED]
    assert steps and visit.minutes >= sum(a.minutes for a in made.state.asked)
    smell = SimulatedVisit(
        reasoner, facts, crack, shipped.complaints["gas-smell"], random.Random(1)
    ).visit()
    assert smell.stopped and smell.tests == 0


SPLIT = "air-temperature-split"


def simulated(
    knowledge: Knowledge, kind: type[SimulatedVisit], fault_named: str, call: str
) -> tuple[SimulatedVisit, Visit]:
    """A visit to a shipped typical unit with this fault."""
    reasoner = Reasoner(knowledge)
    facts = knowledge.typical_units["measured-one-circuit"].unit
    hypotheses, _ = reasoner.hypotheses(read_unit(knowledge, facts))
    truth = next(h for h in hypotheses.causes if h.fault.id == fault_named)
    made = kind(reasoner, facts, truth, knowledge.complaints[call], random.Random(1))
    return made, made.visit()


class UpToTheSplit(SimulatedVisit):
    """A visit that is left once the air split is known."""

    def reply(self, prompt: Prompt) -> Reply | None:
        split = any(asked.test == SPLIT for asked in self.state.asked)
        return None if split else super().reply(prompt)


def test_a_computed_test_takes_the_minutes_of_its_inputs(shipped: Knowledge) -> None:
    """As the choice of the next test reckons them, neither twice nor beside its own."""
    made, visit = simulated(shipped, UpToTheSplit, "filters-loaded", "weak-cooling")
    asked = [a.test for a in made.state.asked]
    assert asked.count(SPLIT) == 1
    others = sum(a.minutes for a in made.state.asked if a.test != SPLIT)
    known = {"return-air-temperature", "mixed-air-temperature", "supply-air-temperature",
             "return-wet-bulb"}  # fmt: skip
    known -= {*asked}  # one read by itself before costs nothing more
    inputs = sum(shipped.tests[name].minutes for name in known)
    assert visit.minutes - others == inputs != shipped.tests[SPLIT].minutes


def test_a_checklist_goes_on_after_what_rules_put_before_its_tests(shipped: Knowledge) -> None:
    """The walk round the unit comes before any test on the roof; it is no missing way there."""
    made, _ = simulated(shipped, CheckedVisit, "blower-wheel-dirty", "weak-airflow")
    asked = [a.test for a in made.state.asked]
    assert asked.index("walk-round") < asked.index("air-filters")
    assert {"evaporator-coil-face", "blower-wheel"} <= {*asked}


def test_calls_come_as_often_as_the_rules_hold_them_to() -> None:
    other = Complaint("cold", "It is cold", brought_by={"b": "almost-always"})
    knowledge = replace(told_apart(), complaints={"hot": HOT, "cold": other})
    drawn = list(draw(Reasoner(knowledge), unit_of(knowledge), 600, 1))
    calls = Counter((truth.fault.id, call.id) for truth, call in drawn)
    assert calls["a", "hot"] and not calls["a", "cold"]
    # 0.73 / 0.02 against 0.92 / 0.02.
    shares = calls["b", "hot"], calls["b", "cold"]
    assert shares[0] / sum(shares) == pytest.approx(0.73 / (0.73 + 0.92), abs=0.06)


def test_a_visit_says_what_the_screen_lists_at_its_end() -> None:
    for kind in (SimulatedVisit, CheckedVisit):
        visit = visited(kind, 1)[1]
        assert visit.listed[0] == visit.call and visit.named == (visit.chance >= 0.9)
        assert len(set(visit.listed)) == len(visit.listed)
