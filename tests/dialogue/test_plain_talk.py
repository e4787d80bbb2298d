"""Answers as mechanics say them: taken where nothing but manner stands beside an answer."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.read_out import typed_at
from troubleshoot.dialogue.by_word import by_own_text, by_word
from troubleshoot.dialogue.complaint import _facts_beside
from troubleshoot.dialogue.plain_talk import by_plain_talk, is_not_fitted
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Talk
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.dialogue.unit_told import put_right
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.events import Aimed, Started


def meant(knowledge: Knowledge, name: str, typed: str) -> tuple[str, ...]:
    test = knowledge.tests[name]
    every, several = tuple(o.id for o in test.outcomes), test.choose == "several"
    if found := by_word(test, typed, every, several):
        return found
    if talked := by_plain_talk(knowledge, test, typed, every):
        return by_word(test, talked, every, several)
    own = by_own_text(test, typed, every)
    return () if own is None else (own,)


@pytest.mark.parametrize(
    ("test", "typed", "outcome"),
    [
        ("condenser-fan-turning", "hums but dont turn", "stopped"),
        ("condenser-fan-turning", "fan stopped", "stopped"),
        ("condenser-fan-turning", "cond fan not turnin, hummin", "stopped"),
        ("condenser-fan-turning", "all fans turnin good", "normal"),
        ("condenser-fan-hand-spin", "spins ok", "free"),
        ("air-filters", "plugged", "loaded"),
        ("air-filters", "filters plugged solid", "loaded"),
        ("air-filters", "clean, new last month", "clean"),
        ("evaporator-coil-face", "matted up bad", "dirty"),
        ("ice-on-coil", "iced up solid", "iced"),
        ("blower-belt", "belt squealin", "slipping"),
        ("blower-wheel", "looks clean", "clean"),
        ("flame-rod", "white crud on the rod", "coated"),
        ("leak-search", "bubblin at the liquid schrader core", "at-access-valve"),
        ("contactor-pull-in", "pulls in clean", "pulls-in"),
        ("ignition-trials", "3 tries n locks out", "locks-out"),
        ("arc-clothing-on", "dressed cat 2", "dressed"),
    ],
)
def test_what_mechanics_say_is_an_answer(
    shipped: Knowledge, test: str, typed: str, outcome: str
) -> None:
    """Regression: all of these were refused."""
    assert meant(shipped, test, typed) == (outcome,)


def test_two_things_joined_by_an_n_are_both_so(shipped: Knowledge) -> None:
    assert set(meant(shipped, "blower-belt", "glazed n loose")) == {"slipping", "loose"}


@pytest.mark.parametrize(
    ("test", "typed"),
    [
        ("condenser-fan-turning", "not all fans turnin good"),
        ("condenser-fan-turning", "fan never stopped"),
        ("condenser-fan-turning", "would be stopped"),
        ("condenser-fan-turning", "all but one stopped"),
        ("ice-on-coil", "was iced up"),
        ("ice-on-coil", "half of it iced"),
        ("air-filters", "not plugged"),
        ("air-filters", "filters"),
        ("blower-belt", "belt isnt loose"),
    ],
)
def test_a_denial_a_wish_or_another_word_is_none(shipped: Knowledge, test: str, typed: str) -> None:
    assert meant(shipped, test, typed) == ()


@pytest.mark.parametrize("typed", ["no sight glass on it", "not fitted", "doesn't have one"])
def test_what_is_not_fitted_is_skipped_and_kept_as_a_note(
    shipped: Knowledge, tmp_path: Path, typed: str
) -> None:
    """Regression: no sight glass on it was no answer, and nothing but s was."""
    text, book = typed_at(shipped, tmp_path, "sight-glass", typed)
    assert "Taken as not fitted: skipped" in text
    assert any("Sight glass" in note and typed in note for note in book.state.notes)
    assert not any(answer.test == "sight-glass" for answer in book.state.answers)


def test_what_is_there_is_not_called_not_fitted(shipped: Knowledge) -> None:
    glass = shipped.tests["sight-glass"]
    assert not any(is_not_fitted(glass, said) for said in ("no bubbles", "no idea", "no light"))


def told(shipped: Knowledge, fact: str, *typed: str) -> tuple[dict[str, object], str]:
    """The facts that are kept once a fact was answered, and what was said."""
    book = book_of(shipped, [Started(complaint="no-cooling")])
    terminal = Lines(*typed)
    held(shipped, terminal, lambda voice: ask_fact(book, voice, shipped.facts[fact]))
    return dict(book.state.unit.facts), terminal.text


def test_of_a_list_what_is_understood_is_taken_and_the_rest_named(shipped: Knowledge) -> None:
    """Regression: one word nobody knew, and the whole line was dropped."""
    line = "gas heat, blower 3 phase belt no vfd, no smoke det"
    facts, said = told(shipped, "duct-smoke-detector", line)
    assert facts["heat"] == "gas" and facts["duct-smoke-detector"] == "not-fitted"
    assert "Not understood" in said and "blower 3 phase belt no vfd" in " ".join(said.split())


@pytest.mark.parametrize("typed", ["one circuit, i smell gas", "gas, one circuit, everywhere"])
def test_what_is_not_understood_of_a_list_may_be_a_danger(shipped: Knowledge, typed: str) -> None:
    with pytest.raises(DangerCalled):
        told(shipped, "circuits", typed)


@pytest.mark.parametrize(
    ("fact", "typed", "value"),
    [
        ("fuel", "nat", "natural-gas"),
        ("refrigerant", "r410", "R-410A"),
        ("blower-motor", "psc 3 speed", "single-phase-capacitor"),
        ("blower-motor", "three", "three-phase"),
        ("ignition", "hot surface ign", "hot-surface"),
        ("duct-smoke-detector", "nope", "not-fitted"),
        ("economizer", "yep", "fitted"),
    ],
)
def test_short_words_for_a_fact(shipped: Knowledge, fact: str, typed: str, value: str) -> None:
    assert told(shipped, fact, typed)[0][fact] == value


def test_at_a_step_what_may_still_change_is_taken(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: a line that held a number of circuits was dropped whole."""
    line = "208/3/60, r410a, fixed, one circuit, gas"
    text, book = typed_at(shipped, tmp_path, "thermostat-settings", line)
    assert book.state.unit.facts["metering"] == "fixed-orifice"
    assert "cannot be changed" not in text
    text, book = typed_at(shipped, tmp_path / "b", "blower-amps", "fixed, two circuits")
    assert book.state.unit.facts["metering"] == "fixed-orifice"
    assert "cannot be changed" in text and book.state.unit.facts["circuits"] == "one"


@pytest.mark.parametrize(
    ("typed", "heat", "words"),
    [
        ("no heat, natural gas", "gas", "no heat"),
        ("it is not cooling, natural gas fired", "gas", "it is not cooling"),
        ("heat short cycles, electric heat", "electric", "heat short cycles"),
        ("no heat, 208/3/60, gas", "gas", "no heat"),
        ("no heat, gas heat, spark", "gas", "no heat"),
    ],
)
def test_the_heat_beside_the_call_is_a_fact(
    shipped: Knowledge, typed: str, heat: str, words: str
) -> None:
    """Regression: volts and refrigerant were taken there, and the heat was asked again."""
    facts, call = _facts_beside(shipped, typed)
    assert facts["heat"] == heat and call == words


@pytest.mark.parametrize("typed", ["no heat, gas heat, sparks", "no heat, spark"])
def test_a_spark_is_the_ignition_only_beside_the_heat_and_never_sparks(
    shipped: Knowledge, typed: str
) -> None:
    assert "ignition" not in _facts_beside(shipped, typed)[0]


@pytest.mark.parametrize("typed", ["cold, gas", "no heat, i smell gas", "warm air, no heat"])
def test_gas_by_itself_beside_a_call_is_no_fact(shipped: Knowledge, typed: str) -> None:
    assert _facts_beside(shipped, typed) == ({}, typed)


def test_no_cause_that_the_unit_cannot_have_is_a_reason_for_a_test(shipped: Knowledge) -> None:
    """Regression: told that the blower is driven directly, the next test told the belt apart."""
    belt = shipped.faults["blower-belt-slipping"].name
    aimed = Aimed("return-air-temperature", None, f"it tells Filters loaded from {belt}")
    book = book_of(shipped, [Started(complaint="weak-cooling")])
    book.watch_the_clock()
    book.add(aimed)

    def part(voice: Voice) -> Talk[bool]:
        yield from ()
        return put_right(book, voice, Reasoner(shipped), "blower drive direct")

    assert held(shipped, Lines(), part)
    assert book.state.aim == ("return-air-temperature", None)
    assert belt not in book.state.aim_reason


def test_a_plate_without_commas_at_a_test_is_a_plate(shipped: Knowledge, tmp_path: Path) -> None:
    line = "208/230-1-60 gas R410a fixed orifice one circuit one cond fan PSC"
    text, book = typed_at(shipped, tmp_path, "thermostat-settings", line)
    assert book.state.unit.facts["metering"] == "fixed-orifice"
    assert 'Not understood, and kept as a note: "PSC".' in text
    text, book = typed_at(shipped, tmp_path / "b", "thermostat-settings", "gas r410a")
    assert "Taken" not in text.partition("\n")[0]
