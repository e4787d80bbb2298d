"""One answer may name several facts of the unit: each is taken, or none of what is not clear."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.reasoning.unit.facts_said import facts_said

VOLTS, PHASE = "line-volts-class", "supply-phase"
THREE_480 = {VOLTS: "480-volt", PHASE: "three"}
THREE_208 = {VOLTS: "208-to-240-volt", PHASE: "three"}


@pytest.mark.parametrize("asked", [VOLTS, PHASE, "refrigerant", "heat"])
@pytest.mark.parametrize(
    ("typed", "facts"),
    [
        ("208 3 phase", THREE_208), ("480/3/60", THREE_480), ("208-230/3/60", THREE_208),
        ("three phase 480", THREE_480), ("460V/3PH/60HZ", THREE_480), ("480v, 3p", THREE_480),
        ("480 v three phase gas", {**THREE_480, "heat": "gas"}),
        ("208/230-1-60", {VOLTS: "208-to-240-volt", PHASE: "single"}),
        ("propane, 208 volts single phase",
         {VOLTS: "208-to-240-volt", PHASE: "single", "heat": "gas", "fuel": "propane"}),
        ("r410a with a txv and scroll",
         {"refrigerant": "R-410A", "metering": "txv", "compressor-type": "scroll"}),
        ("480/3/60 gas R-410A one circuit",
         {**THREE_480, "heat": "gas", "refrigerant": "R-410A", "circuits": "one"}),
        ("2 condenser fans, single stage, no economizer",
         {"condenser-fans": "several", "cooling-stages": "one", "economizer": "not-fitted"}),
        ("480 1 circuit", {VOLTS: "480-volt", "circuits": "one"}),
        ("belt drive, 480", {"blower-drive": "belt", VOLTS: "480-volt"}),
        ("208 three", THREE_208),
        ("480 v three, ecm blower motor",
         {**THREE_480, "blower-motor": "electronically-commutated"}),
        ("208 single, psc blower motor",
         {VOLTS: "208-to-240-volt", PHASE: "single", "blower-motor": "single-phase-capacitor"}),
    ],
)  # fmt: skip
def test_every_fact_that_is_said_is_taken(
    asked: str, typed: str, facts: Mapping[str, str], shipped: Knowledge
) -> None:
    """Regression: "208 3 phase" at the volts was the volts, and the phase was asked for again."""
    assert facts_said(shipped, asked, typed) == facts


@pytest.mark.parametrize("typed", ["230/1/60 gas", "gas 230/1/60", "230 v 1 ph gas", "240-1 gas"])
@pytest.mark.parametrize(
    ("asked", "also"),
    [
        ("circuits", {}),
        ("cooling-stages", {}),
        ("compressor-phase", {"compressor-phase": "single"}),
        ("condenser-fan-phase", {"condenser-fan-phase": "single"}),
    ],
)
def test_a_phase_behind_the_volts_is_the_supplys_whatever_is_asked(
    asked: str, also: Mapping[str, str], typed: str, shipped: Knowledge
) -> None:
    """Regression: at the compressor 230/1/60 left the supply open; at the circuits it was one."""
    single = {VOLTS: "208-to-240-volt", PHASE: "single", "heat": "gas"}
    assert facts_said(shipped, asked, typed) == {**single, **also}


@pytest.mark.parametrize(
    "typed", ["not 480", "480 or 208", "480 208", "no gas, 480", "480 rooftop", "", "?", "2"]
)
def test_what_is_not_clear_as_a_whole_says_nothing(typed: str, shipped: Knowledge) -> None:
    assert facts_said(shipped, VOLTS, typed) == {}


def test_shared_words_name_only_what_is_asked(shipped: Knowledge) -> None:
    assert facts_said(shipped, "economizer", "yes") == {"economizer": "fitted"}
    assert facts_said(shipped, "compressor-phase", "3 phase") == {"compressor-phase": "three"}
    assert facts_said(shipped, VOLTS, "yes") == {}
    assert facts_said(shipped, VOLTS, "single") == {}


@given(st.sampled_from(sorted(load_shipped().facts)), st.data())
def test_every_value_names_its_own_fact(asked: str, data: st.DataObject) -> None:
    knowledge = load_shipped()
    fact = knowledge.facts[asked]
    value = data.draw(st.sampled_from(fact.values))
    words = data.draw(st.sampled_from((value, *fact.words.get(value, ()))))
    assert facts_said(knowledge, asked, words)[asked] == value


@given(st.sampled_from(sorted(load_shipped().facts)), st.text(max_size=30))
def test_whatever_is_typed_only_values_that_there_are_come_of_it(asked: str, typed: str) -> None:
    knowledge = load_shipped()
    for fact, value in facts_said(knowledge, asked, typed).items():
        assert value in knowledge.facts[fact].values


@pytest.mark.parametrize(
    ("asked", "facts"),
    [
        ("", {"metering": "fixed-orifice"}),
        ("metering", {"metering": "fixed-orifice"}),
        ("compressor-capacity", {"compressor-capacity": "fixed"}),
    ],
)
def test_what_every_known_unit_is_takes_no_word_from_another_fact(
    asked: str, facts: dict[str, str], shipped: Knowledge
) -> None:
    """Regression: fixed named the orifice no more, since a compressor's capacity is fixed too."""
    assert facts_said(shipped, asked, "fixed") == facts


@pytest.mark.parametrize(
    ("typed", "facts", "left"),
    [
        ("208/230-1-60 gas R410a fixed orifice one circuit one cond fan PSC", 7, ("PSC",)),
        ("460/3/60 mfg 2014 r22 txv two circuits gas heat belt drive", 7, ("mfg", "2014")),
        ("480/3/60 gas r410a txv, serial xyz", 5, ("serial xyz",)),
    ],
)
def test_a_plate_without_commas_is_taken_fact_by_fact(
    shipped: Knowledge, typed: str, facts: int, left: tuple[str, ...]
) -> None:
    """Regression: one word that nobody knew, and the whole line was dropped."""
    said, rest = facts_listed(shipped, "", typed)
    assert len(said) == facts and rest == left


@pytest.mark.parametrize(
    "typed",
    [
        "not 480 gas r410a txv one circuit",
        "480/3/60 not gas r410a txv",
        "480/3/60 gas electric r410a txv foo",
        "480/3/60 gas foo electric r410a txv",
        "206 208 210 three phase gas txv",
        "gas r410a foo",
    ],
)
def test_what_denies_or_contradicts_a_fact_of_a_plate_leaves_the_whole_of_it(
    shipped: Knowledge, typed: str
) -> None:
    assert facts_listed(shipped, "", typed) == ({}, (typed,))


def test_a_motor_behind_the_condenser_fans_is_theirs(shipped: Knowledge) -> None:
    """Regression: one cond fan PSC was taken for the blower's motor."""
    assert "blower-motor" not in facts_listed(shipped, "", "480 gas one cond fan PSC")[0]
    assert facts_listed(shipped, "blower-motor", "one fan psc")[0]["blower-motor"]


@pytest.mark.parametrize("typed", ["480 gas 410a txv belt drive 10 ton", "480/3/60 gas, 10 tons"])
def test_the_rated_cooling_is_kept_beside_facts(typed: str, shipped: Knowledge) -> None:
    """Regression: of a data plate read out "10 ton" was dropped without a word."""
    said, left = facts_listed(shipped, "", typed)
    assert said["cooling-tons"].startswith("10 ton") and said["heat"] == "gas" and not left


@pytest.mark.parametrize("typed", ["480 gas, 10 ton or 12 ton", "10 ton", "a ton of rust"])
def test_what_names_no_one_size_is_kept_as_none(typed: str, shipped: Knowledge) -> None:
    assert "cooling-tons" not in facts_listed(shipped, "", typed)[0]


@pytest.mark.parametrize(
    "typed", ["208 single pole contactor", "208 three ton", "208 three fans turning"]
)
def test_a_number_of_something_else_behind_the_volts_is_no_phase(
    typed: str, shipped: Knowledge
) -> None:
    assert PHASE not in facts_said(shipped, "heat", typed)


def test_a_phase_behind_the_volts_is_not_the_blowers(shipped: Knowledge) -> None:
    """Regression: at the blower motor "208 single phase" was a capacitor motor, and no supply."""
    said = facts_said(shipped, "blower-motor", "208 single phase")
    assert said == {VOLTS: "208-to-240-volt", PHASE: "single"}
