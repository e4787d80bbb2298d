"""Flat rules from condition trees and hazards."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, fault, test_of
from troubleshoot.knowledge.model import Condition, Finding, Hazard, Knowledge, Procedure, Trigger
from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.chaining.chains import FlatRule, compile_chains
from troubleshoot.reasoning.chaining.conditions import Facts, evaluate
from troubleshoot.reasoning.chaining.engine import Chain

TESTS = [test_of(name, "bad") for name in "abcd"]


def leaf(test: str) -> Condition:
    return Condition("finding", finding=Finding(test, ("bad",)))


def concluded(knowledge: Knowledge, *atoms: str) -> set[str]:
    chain = Chain(compile_chains(knowledge))
    chain.start([(atom, 1) for atom in atoms])
    return {conclusion.atom for conclusion in chain.concluded}


@pytest.mark.parametrize("count", [1, 2, 3, 4])
@pytest.mark.parametrize("turned", [False, True])
def test_at_least_so_many_holds_exactly_when_counted(count: int, turned: bool) -> None:
    condition = Condition("at-least", tuple(leaf(n) for n in "abcd"), count=count)
    if turned:
        condition = Condition("not", (condition,))
    knowledge = base(TESTS, procedures=[Procedure("rule", condition, "because")])
    chain = Chain(compile_chains(knowledge))
    for answers in itertools.product([True, False, None], repeat=4):
        facts = Facts(
            {
                test: frozenset({"bad" if bad else "normal"})
                for test, bad in zip("abcd", answers, strict=True)
                if bad is not None
            }
        )
        atoms = [
            (atom, 1)
            for test, bad in zip("abcd", answers, strict=True)
            if bad is not None
            for atom in (
                (chains.seen if bad else chains.unseen)(test, "bad"),
                (chains.unseen if bad else chains.seen)(test, "normal"),
            )
        ]
        chain.start(atoms)
        fired = chains.procedure("rule") in {c.atom for c in chain.concluded}
        assert fired == (evaluate(condition, facts).truth is True)


def test_not_a_fact_means_another_word_of_that_fact() -> None:
    condition = Condition("not", (Condition("fact", name="metering", words=("txv",)),))
    knowledge = base(procedures=[Procedure("rule", condition, "because")])
    fired = chains.procedure("rule")
    assert fired in concluded(knowledge, chains.equipment("metering", "fixed-orifice"))
    assert fired not in concluded(knowledge, chains.equipment("metering", "txv"))
    assert fired not in concluded(knowledge)


def test_a_state_may_be_asked_for_either_way() -> None:
    cold = Condition("state", name="cold")
    rules = [Procedure("yes", cold, "r"), Procedure("no", Condition("not", (cold,)), "r")]
    knowledge = base(procedures=rules)
    assert concluded(knowledge, chains.state("cold", True)) == {chains.procedure("yes")}
    assert concluded(knowledge, chains.state("cold", False)) == {chains.procedure("no")}
    assert concluded(knowledge) == set()


@settings(max_examples=60, deadline=None)
@given(st.permutations(["one", "two", "three"]), st.sets(st.sampled_from("ab")))
def test_derived_findings_chain_on_in_any_order_of_the_rules(
    order: list[str], bad: set[str]
) -> None:
    rules = {
        "one": Procedure("one", leaf("a"), "r", derives="x"),
        "two": Procedure(
            "two", Condition("all", (Condition("derived", name="x"), leaf("b"))), "r", derives="y"
        ),
        "three": Procedure("three", Condition("derived", name="y"), "r"),
    }
    knowledge = base(TESTS, procedures=[rules[name] for name in order])
    found = concluded(knowledge, *(chains.seen(test, "bad") for test in bad))
    assert (chains.procedure("one") in found) == ("a" in bad)
    assert (chains.procedure("three") in found) == (bad == {"a", "b"})


def hazard(*triggers: Trigger) -> Hazard:
    return Hazard("gas", "DANGER", "keep away", triggers)


def test_all_parts_of_one_trigger_must_hold_and_any_trigger_is_enough() -> None:
    both = Trigger(findings=(Finding("a", ("bad",)), Finding("b", ("bad",))))
    fact = Trigger(complaint="smell", equipment={"metering": ("txv", "fixed-orifice")})
    knowledge = base(TESTS, hazards=[hazard(both, fact)])
    a, b = chains.possible("a", "bad"), chains.possible("b", "bad")
    assert concluded(knowledge, a) == set()
    assert concluded(knowledge, a, b) == {chains.hazard("gas", 0)}
    smell = chains.complaint("smell")
    assert concluded(knowledge, smell) == set()
    for word in ("txv", "fixed-orifice"):
        found = concluded(knowledge, smell, chains.equipment("metering", word))
        assert found == {chains.hazard("gas", 1)}
    everything = concluded(knowledge, a, b, smell, chains.equipment("metering", "txv"))
    assert everything == {chains.hazard("gas", 0), chains.hazard("gas", 1)}


def test_a_hazard_looks_at_what_is_possible_and_not_only_at_what_is_seen() -> None:
    knowledge = base(TESTS, hazards=[hazard(Trigger(findings=(Finding("a", ("bad",)),)))])
    assert concluded(knowledge, chains.seen("a", "bad")) == set()
    assert concluded(knowledge, chains.possible("a", "bad")) == {chains.hazard("gas")}


@pytest.mark.parametrize(
    "trigger",
    [
        Trigger(test="a"),
        Trigger(work_state="locked-out"),
        Trigger(exposes="line"),
        Trigger(profile="apprentice", findings=(Finding("a", ("bad",)),)),
    ],
)
def test_triggers_of_the_step_about_to_be_done_are_not_chained(trigger: Trigger) -> None:
    assert chains.belongs_to_step(trigger)
    assert compile_chains(base(TESTS, hazards=[hazard(trigger)])) == ()


def test_a_likely_fault_leads_to_its_hazards() -> None:
    knowledge = base(faults=[fault("f")], hazards=[hazard(Trigger(fault="f"))])
    assert concluded(knowledge, chains.likely("f")) == {chains.hazard("gas")}


def test_the_same_rule_is_written_once() -> None:
    twice = Condition("any", (leaf("a"), leaf("a")))
    rules = compile_chains(base(TESTS, procedures=[Procedure("rule", twice, "r")]))
    assert rules == (FlatRule("rule", (chains.seen("a", "bad"),), chains.procedure("rule")),)
