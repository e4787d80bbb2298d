"""One unit's facts and plate values, read from what people typed."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, unit_of
from troubleshoot.knowledge.model import Implication, Knowledge, PlateValue, Quantity
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import ENDS, InputRefused, Unit, read_unit, suggest
from troubleshoot.reasoning.unit.places import Place

KNOWLEDGE: Knowledge = replace(
    base(
        quantities=[Quantity("head-pressure", "psig", "high side", per="circuit")],
        plates=[
            PlateValue("rla", "A", "nameplate", "rated load amps", per="compressor"),
            PlateValue("own-amps", "A", "own-record", "usual amps", per="compressor"),
        ],
    ),
    implications=(
        Implication({"metering": ("txv",)}, {"fans-serve": "all"}),
        Implication({"fans-serve": ("all",)}, {"compressor-phase": "three"}),
    ),
)


def refused(unit: dict[str, object], **own: object) -> dict[str, str]:
    with pytest.raises(InputRefused) as error:
        read_unit(KNOWLEDGE, unit, own)
    return {r.key: r.problem for r in error.value.refusals}


def counts(**facts: Any) -> dict[str, int]:
    return dict(unit_of(KNOWLEDGE, **facts).layout.counts)


@pytest.mark.parametrize(
    ("typed", "word", "places"),
    [("one", "one", 1), (1, "one", 1), ("1", "one", 1), (2, "two-or-more", 2),
     (4, "two-or-more", 4), ("two-or-more", "two-or-more", 2)],
)  # fmt: skip
def test_a_count_may_be_a_number_or_its_word(typed: object, word: str, places: int) -> None:
    unit = unit_of(KNOWLEDGE, circuits=typed)
    assert unit.facts["circuits"] == word
    assert len(unit.layout.places("circuit")) == places


def test_places_follow_from_the_facts() -> None:
    plain = counts()
    assert plain["circuit"] == plain["compressor"] == plain["condenser-fan"] == 1
    assert counts(circuits=2)["contactor"] == 2
    assert counts(circuits=2, compressor_phase="three")["compressor-capacitor"] == 0
    assert counts(condenser_fans=2, condenser_fan_phase="single")["condenser-fan-capacitor"] == 2
    assert counts(blower_motor="three-phase")["blower-capacitor"] == 0


def test_fans_serve_their_own_circuit_only_where_there_are_as_many() -> None:
    assert (
        unit_of(KNOWLEDGE, circuits=2, condenser_fans=2, fans_serve="own-circuit").layout.fans_serve
        == "own-circuit"
    )
    assert (
        unit_of(KNOWLEDGE, circuits=2, condenser_fans=3, fans_serve="own-circuit").layout.fans_serve
        == "all"
    )


def test_facts_imply_facts_in_turn_but_never_against_what_was_stated() -> None:
    assert unit_of(KNOWLEDGE, metering="txv").facts == {
        "metering": "txv", "fans-serve": "all", "compressor-phase": "three",
    }  # fmt: skip
    stated = unit_of(KNOWLEDGE, metering="txv", compressor_phase="single")
    assert stated.facts["compressor-phase"] == "single"


def test_a_place_that_a_reading_names_widens_a_count_left_open_and_no_other() -> None:
    found = read_unit(KNOWLEDGE, {}, at_least={"circuit": 2})
    assert len(found.layout.places("circuit")) == 2
    stated = read_unit(KNOWLEDGE, {"circuits": "one"}, at_least={"circuit": 2})
    assert len(stated.layout.places("circuit")) == 1


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("8.9 A", {None: 8.9}),
        (8.9, {None: 8.9}),
        ({"value": 8.9, "unit": "A"}, {None: 8.9}),
        ({"compressor 1": "8.9 A", "compressor B": "9100 mA"},
         {Place("compressor", 1): 8.9, Place("compressor", 2): 9.1}),
    ],
)  # fmt: skip
def test_plate_values_are_typed_with_unit_or_by_place(
    typed: object, expected: dict[Place | None, float]
) -> None:
    unit = read_unit(KNOWLEDGE, {"circuits": 2, "rla": typed})
    assert {place: v for (_, place), v in unit.plate.items()} == pytest.approx(expected)
    assert unit.plate_value("rla", Place("compressor", 2)) == pytest.approx(
        expected.get(Place("compressor", 2), 8.9)
    )


def test_this_unit_s_usual_values_are_kept_under_their_own_name() -> None:
    unit = read_unit(KNOWLEDGE, {}, {"head-pressure": "380 psig", "amps": "8.1 A"})
    assert unit.plate_value("own-head-pressure", None) == 380
    assert unit.plate_value("own-amps", None) == pytest.approx(8.1)
    assert unit.proves({"own-amps": ("known",)}) and not unit.proves({"own-amps": ("not-known",)})


def test_everything_not_understood_is_named_at_once() -> None:
    found = refused(
        {"meterin": "txv", "metering": "valve", "circuits": 40, "rla": {"compressor 3": "9 A"},
         "fans-serve": "all"}, nothing="1 A", amps="9 psig",
    )  # fmt: skip
    assert set(found) == {
        "unit.meterin", "unit.metering", "unit.circuits", "unit.rla.compressor 3",
        "own-record.nothing", "own-record.amps",
    }  # fmt: skip


@pytest.mark.parametrize("typed", ["²", "③", "0", "9", "-1", "1.5", "several"])
def test_only_whole_numbers_that_a_unit_can_have_are_counts(typed: str) -> None:
    assert set(refused({"circuits": typed})) == {"unit.circuits"}


def test_a_refusal_says_what_would_do() -> None:
    with pytest.raises(InputRefused, match="did you mean metering"):
        read_unit(KNOWLEDGE, {"meterin": "txv"})
    with pytest.raises(InputRefused, match="one of fixed-orifice, txv"):
        read_unit(KNOWLEDGE, {"metering": "valve"})


def test_an_unknown_fact_rules_nothing_out_and_proves_nothing() -> None:
    needed = {"metering": ("txv",)}
    unknown, valve = Unit(), Unit({"metering": "txv"})
    orifice = Unit({"metering": "fixed-orifice"})
    assert [u.allows(needed) for u in (unknown, valve, orifice)] == [True, True, False]
    assert [u.proves(needed) for u in (unknown, valve, orifice)] == [False, True, False]
    assert unknown.allows({}) and unknown.proves({})


@given(st.text(max_size=12), st.lists(st.text(max_size=8), max_size=20))
def test_a_suggestion_is_always_a_sentence(word: str, names: list[str]) -> None:
    assert suggest(word, names)


ANY = st.none() | st.booleans() | st.integers(-5, 50) | st.text(max_size=10)


@given(st.dictionaries(st.sampled_from(["metering", "circuits", "rla", "x"]), ANY | st.dictionaries(
    st.text(max_size=12), ANY, max_size=2)))  # fmt: skip
def test_no_unit_does_anything_but_be_read_or_be_refused(unit: dict[str, object]) -> None:
    try:
        found = read_unit(KNOWLEDGE, unit)
    except InputRefused as error:
        assert all(r.key and r.problem and r.instead for r in error.refusals)
        return
    for fact, word in found.facts.items():
        assert word in KNOWLEDGE.facts[fact].values


@pytest.mark.parametrize(
    ("fact", "said", "value"),
    [
        ("supply-phase", "three phase", "three"), ("supply-phase", "3 ph", "three"),
        ("supply-phase", "208V 3ph", "three"), ("line-volts-class", "208V 3ph", "208-to-240-volt"),
        ("line-volts-class", "208", "208-to-240-volt"), ("line-volts-class", "460 V", "480-volt"),
        ("line-volts-class", "208/230", "208-to-240-volt"), ("line-volts-class", "208/480", None),
        ("refrigerant", "410a", "R-410A"), ("refrigerant", "r410a", "R-410A"),
        ("refrigerant", "R 22", "R-22"), ("refrigerant", "r22a", None),
        ("refrigerant", "R-407C in place of R-22", None), ("fuel", "nat gas", "natural-gas"),
        ("fuel", "propane", "propane"), ("heat", "propane", "gas"),
        ("duct-smoke-detector", "none", "not-fitted"), ("duct-smoke-detector", "no idea", None),
    ],
)  # fmt: skip
def test_a_fact_takes_the_words_and_numbers_people_use(
    fact: str, said: str, value: str | None, shipped: Knowledge
) -> None:
    """What would make a unit safer than it is, R-22a for R-22, is not guessed at."""
    if value is None:
        with pytest.raises(InputRefused, match="is no answer here"):
            read_unit(shipped, {fact: said})
    else:
        assert read_unit(shipped, {fact: said}).facts[fact] == value


@pytest.mark.parametrize(
    ("fact", "typed", "value"),
    [
        ("supply-phase", "3", "three"), ("supply-phase", "3ph", "three"),
        ("supply-phase", "1ph", "single"), ("circuits", "two", "two-or-more"),
        ("cooling-stages", "two", "two-or-more"), ("circuits", "single", "one"),
    ],
)  # fmt: skip
def test_phases_and_how_many_are_understood_as_people_say_them(
    fact: str, typed: str, value: str, shipped: Knowledge
) -> None:
    assert read_unit(shipped, {fact: typed}).facts[fact] == value


@pytest.mark.parametrize(
    ("typed", "ends", "phase"),
    [
        ("208/230", (208, 230), None), ("208-230/3/60", (208, 230), "three"),
        ("460/3/60", (460, 460), "three"), ("208", (208, 208), None),
    ],
)  # fmt: skip
def test_volts_are_taken_as_the_plate_has_them(
    typed: str, ends: tuple[float, float], phase: str | None, shipped: Knowledge
) -> None:
    """Regression: 208/230 was no fraction that a ruler shows."""
    unit = read_unit(shipped, {"nameplate-volts": typed})
    assert tuple(unit.plate_value("nameplate-volts", None, near) for near in ENDS) == ends
    assert unit.facts.get("supply-phase") == phase
    known = {"208": None, "460/3/60": "480-volt"}.get(typed, "208-to-240-volt")
    assert unit.facts.get("line-volts-class") == known


def test_what_was_said_of_the_supply_stands_beside_the_plate(shipped: Knowledge) -> None:
    said = {"nameplate-volts": "208-230/1/60", "supply-phase": "three"}
    assert read_unit(shipped, said).facts["supply-phase"] == "three"


def test_volts_of_two_supplies_are_refused(shipped: Knowledge) -> None:
    with pytest.raises(InputRefused, match="the service that feeds it"):
        read_unit(shipped, {"nameplate-volts": "208/460"})


@pytest.mark.parametrize(
    ("volts", "outcome"),
    [
        ("186 187 188", "low"), ("188 189 190", "normal"), ("214 215 213", "normal"),
        ("251 252 250", "normal"), ("254 255 254", "high"),
    ],
)  # fmt: skip
def test_line_volts_are_held_to_the_nearer_end_of_the_plates_range(
    volts: str, outcome: str, shipped: Knowledge
) -> None:
    """208 V less 10 % is 187 V, 230 V and 10 % are 253 V (NEMA MG 1, 12.44)."""
    unit = read_unit(shipped, {"supply-phase": "three", "nameplate-volts": "208/230"})
    read = case(shipped, Answer("line-volts-idle", text=volts.replace(" ", "/")), unit=unit)
    (reading, *_), _ = take_readings(shipped, read)
    assert reading.seen == (outcome,)
