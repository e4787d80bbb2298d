"""The chaining engine: agrees with the plain evaluator and with experta's own matcher."""

from __future__ import annotations

import collections
import os
import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from troubleshoot.knowledge.model import Condition, Finding, Hazard, Procedure, Stop, Trigger
from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.chaining.chains import FlatRule, compile_chains
from troubleshoot.reasoning.chaining.conditions import Facts, evaluate
from troubleshoot.reasoning.chaining.engine import Chain, ChainTooLong, StockMatcher
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer

TESTS = [test_of(f"t{i}", "low", "high") for i in range(4)]
OUTCOMES = ["normal", "low", "high"]


def leaves() -> st.SearchStrategy[Condition]:
    found = st.builds(
        lambda t, o: Condition("finding", finding=Finding(t, tuple(o))),
        st.sampled_from([t.id for t in TESTS]),
        st.lists(st.sampled_from(OUTCOMES), min_size=1, max_size=2, unique=True),
    )
    fact = st.builds(
        lambda w: Condition("fact", name="metering", words=(w,)),
        st.sampled_from(["txv", "fixed-orifice"]),
    )
    others = [Condition("state", name="cold"), Condition("derived", name="starved")]
    return found | fact | st.sampled_from(others)


def trees() -> st.SearchStrategy[Condition]:
    def grown(inner: st.SearchStrategy[Condition]) -> st.SearchStrategy[Condition]:
        parts = st.lists(inner, min_size=1, max_size=3).map(tuple)
        return (
            parts.map(lambda p: Condition("all", p))
            | parts.map(lambda p: Condition("any", p))
            | parts.map(lambda p: Condition("at-least", p, count=min(2, len(p))))
            | inner.map(lambda p: Condition("not", (p,)))
        )

    return st.recursive(leaves(), grown, max_leaves=8)


@settings(max_examples=150, deadline=None)
@given(
    trees(),
    st.dictionaries(st.sampled_from([t.id for t in TESTS]), st.sampled_from(OUTCOMES)),
    st.sampled_from([None, "txv", "fixed-orifice"]),
    st.sampled_from([None, True, False]),
    st.booleans(),
)
def test_engine_and_evaluator_conclude_the_same(
    condition: Condition,
    answered: dict[str, str],
    metering: str | None,
    cold: bool | None,
    starved: bool,
) -> None:
    knowledge = base(TESTS, procedures=[Procedure("rule", condition, "because")])
    facts = Facts(
        {test: frozenset({outcome}) for test, outcome in answered.items()},
        {} if metering is None else {"metering": metering},
        {} if cold is None else {"cold": cold},
        {"starved": True} if starved else {},
    )
    atoms = [
        (chains.seen(t, o) if o == outcome else chains.unseen(t, o), 1)
        for t, outcome in answered.items()
        for o in OUTCOMES
    ]
    if metering is not None:
        atoms.append((chains.equipment("metering", metering), 1))
    if cold is not None:
        atoms.append((chains.state("cold", cold), 1))
    if starved:
        atoms.append((chains.derived("starved"), 1))
    rules = compile_chains(knowledge)
    truth = evaluate(condition, facts).truth is True
    for matcher in (None, StockMatcher):
        chain = Chain(rules, matcher)
        chain.start(atoms)
        concluded = {c.atom for c in chain.concluded}
        assert (chains.procedure("rule") in concluded) == truth


@settings(max_examples=40, deadline=None)
@given(
    st.lists(
        st.tuples(st.sets(st.integers(0, 9), min_size=1, max_size=3), st.integers(5, 14)),
        max_size=12,
    ),
    st.sets(st.tuples(st.integers(0, 9), st.integers(1, 2))),
)
def test_both_matchers_conclude_the_same(
    rules: list[tuple[set[int], int]], start: set[tuple[int, int]]
) -> None:
    flat = [
        FlatRule(f"r{n}", tuple(f"a{i}" for i in sorted(needs)), f"a{to}")
        for n, (needs, to) in enumerate(rules)
    ]
    atoms = [(f"a{i}", at) for i, at in start]
    results = []
    for matcher in (None, StockMatcher):
        chain = Chain(flat, matcher)
        chain.start(atoms)
        results.append({(c.atom, c.at) for c in chain.concluded})
    assert results[0] == results[1]


def test_a_corrected_answer_leaves_nothing_behind() -> None:
    chain = Chain([FlatRule("r", ("a", "b"), "c")])
    chain.start([("a", 1), ("b", 1)])
    assert [c.atom for c in chain.concluded] == ["c"]
    chain.start([("a", 1)])
    assert chain.concluded == ()


def test_atoms_of_different_circuits_do_not_complete_a_rule() -> None:
    chain = Chain([FlatRule("r", ("a", "b"), "c")])
    chain.start([("a", 1), ("b", 2)])
    assert chain.concluded == ()


def test_a_chain_that_is_cut_short_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    from troubleshoot.reasoning.chaining import engine

    monkeypatch.setattr(engine, "STEPS_PER_RULE", 0)
    chain = Chain([FlatRule("r", ("a",), "b")])
    with pytest.raises(ChainTooLong, match="loop"):
        chain.start([("a", 1)])


def test_the_import_leaves_collections_as_it_was() -> None:
    assert not hasattr(collections, "Mapping")
    program = (
        "import collections, logging\n"
        "import troubleshoot.reasoning.chaining.engine\n"
        "assert not hasattr(collections, 'Mapping')\n"
        "assert logging.getLogger('experta').level == logging.WARNING\n"
    )
    subprocess.run([sys.executable, "-c", program], check=True)


def test_the_same_answers_give_the_same_bytes_under_any_hash_seed() -> None:
    program = (
        "from troubleshoot.knowledge.load import load_shipped\n"
        "from troubleshoot.visit.cases.file import read_case\n"
        "from troubleshoot.visit.cases.assessment import assess_case\n"
        "k = load_shipped()\n"
        "case = read_case(k, {'complaint': 'no-cooling', 'readings': {\n"
        "  'condenser-fan-turning': 'stopped', 'suction-pressure': '90 psig'},\n"
        "  'unit': {'refrigerant': 'R-22', 'metering': 'txv', 'circuits': 2}})\n"
        "print(assess_case(k, case))\n"
    )
    outputs = {
        subprocess.run(
            [sys.executable, "-c", program],
            env={**os.environ, "PYTHONHASHSEED": str(seed)},
            check=True,
            capture_output=True,
        ).stdout
        for seed in (0, 1, 77)
    }
    assert len(outputs) == 1 and outputs.pop().startswith(b"({'schema': 1")


def hazard(name: str, outcome: str, **more: object) -> Hazard:
    trigger = Trigger(findings=(Finding("t0", (outcome,)),))
    return Hazard(name, "DANGER", "keep away", (trigger,), Stop("whole-job", "all"), **more)  # type: ignore[arg-type]


def test_a_hazard_fires_on_an_invalid_reading_too() -> None:
    knowledge = base(TESTS, [fault("f")], hazards=[hazard("gas", "high")])
    found = Reasoner(knowledge).conclude(case(knowledge, Answer("t0", ("high",), valid=False)))
    assert [h.hazard.id for h in found.hazards] == ["gas"] and found.hazards[0].stops


def test_a_voided_reading_weighs_nothing_unless_its_validity_was_stated() -> None:
    cold = Condition("finding", finding=Finding("t1", ("low",)))
    from troubleshoot.knowledge.model import Void

    rule = Procedure("cold", cold, "too cold to judge", void=Void(("t0",)))
    knowledge = base(TESTS, [fault("f", {"often": [{"t0": "low"}]}), fault("g")], [rule])
    reasoner = Reasoner(knowledge)

    def chance(valid: bool | None) -> tuple[float, str]:
        answers = (Answer("t0", ("low",), valid=valid), Answer("t1", ("low",)))
        found = reasoner.conclude(case(knowledge, *answers))
        reading = next(r for r in found.readings if r.test == "t0")
        return next(c.probability for c in found.causes if c.fault.id == "f"), reading.why_invalid

    voided, reason = chance(None)
    stated, none = chance(True)
    assert voided < stated and reason == "too cold to judge" and none == ""


def test_a_void_for_some_faults_leaves_the_others_weighed() -> None:
    from troubleshoot.knowledge.model import Void

    hot = Condition("finding", finding=Finding("t1", ("high",)))
    rule = Procedure("hot", hot, "hot shell", void=Void(("t0",), for_faults=("open-winding",)))
    cards = [
        fault("open-winding", {"almost-always": [{"t0": "low"}]}),
        fault("protector", {"often": [{"t0": "low"}]}),
    ]
    knowledge = base(TESTS, cards, [rule])
    answers = (Answer("t0", ("low",)), Answer("t1", ("high",)))
    found = Reasoner(knowledge).conclude(case(knowledge, *answers))
    assert found.causes[0].fault.id == "protector"
    assert next(c for c in found.causes if c.fault.id == "open-winding").weights == ()


def test_derived_findings_chain_on() -> None:
    first = Procedure(
        "one", Condition("finding", finding=Finding("t0", ("low",))), "first", derives="starved"
    )
    second = Procedure("two", Condition("derived", name="starved"), "second", look_first=("t1",))
    knowledge = base(TESTS, [fault("f")], [first, second])
    found = Reasoner(knowledge).conclude(case(knowledge, Answer("t0", ("low",))))
    assert [p.procedure.id for p in found.procedures] == ["one", "two"]


def test_a_likely_fault_brings_up_the_causes_behind_it() -> None:
    cards = [fault("f", {"almost-always": [{"t0": "low"}]}, behind=("g",)), fault("g")]
    knowledge = base(TESTS, cards)
    unit = unit_of(knowledge)
    answers = (Answer("t0", ("low",)),) * 3
    found = Reasoner(knowledge).conclude(case(knowledge, *answers, unit=unit))
    assert [f.id for f in found.behind] == ["g"]
