"""What burns in a unit is a fact of it beside other facts of it, and a danger by itself."""

from __future__ import annotations

import pytest

from tests.building import base
from tests.safety.hearing.invented import ANY, job
from troubleshoot.knowledge.model import EquipmentFact, Knowledge
from troubleshoot.safety.hearing.dangers import named
from troubleshoot.safety.hearing.mending import mender_of
from troubleshoot.safety.hearing.unit_words import is_fuel, names_the_unit
from troubleshoot.safety.hearing.words import clauses, spoken_words

FUELS = ("gas", "natural gas", "propane", "propane gas", "gas heat")
INVENTED = base(
    hazards=[job("gas-odour", *FUELS), ANY],
    facts=[
        EquipmentFact("heat", ("gas", "electric-strips"), "What heat?"),
        EquipmentFact("fuel", ("propane", "from-bottles"), "Which fuel?"),
        EquipmentFact("supply", ("99", "100", "200-volt"), "Which volts?", words={"99": ("low",)}),
        EquipmentFact("train", ("natural-gas", "other"), "Which gas train?"),
        EquipmentFact("blower", ("belt", "direct"), "Blower?", words={"belt": ("two belts",)}),
    ],
)  # fmt: skip


def is_danger(knowledge: Knowledge, said: str) -> bool:
    return "gas-odour" in {hazard.id for hazard in named(knowledge, said)}


@pytest.mark.parametrize("fuel", FUELS)
def test_a_fuel_in_a_row_of_facts_is_the_units(fuel: str) -> None:
    assert is_danger(INVENTED, fuel)
    assert not is_danger(INVENTED, f"{fuel}, belt")
    assert not is_danger(INVENTED, f"200 volts, {fuel}")


@pytest.mark.parametrize("fuel", ["gas", "natural gas", "propane", "propane gas"])
@pytest.mark.parametrize(
    "beside",
    [
        "TXV", "fixed orifice", "208", "three phase", "R-410A", "belt", "no economizer", "two fans",
        "microchannel", "scroll compressor",
    ],
)  # fmt: skip
def test_a_data_plate_that_is_read_out_stops_nothing(
    fuel: str, beside: str, shipped: Knowledge
) -> None:
    assert not is_danger(shipped, f"{fuel}, {beside}")
    assert not is_danger(shipped, f"{beside}, {fuel}")


@pytest.mark.parametrize(
    ("beside", "of_the_unit"),
    [
        ("100", True), ("99", False), ("low", False), ("200 volts", True), ("belt", True),
        ("two belts", True), ("direct", False), ("other", False),
    ],
)  # fmt: skip
def test_one_word_tells_a_unit_only_where_it_can_mean_nothing_else(
    beside: str, of_the_unit: bool
) -> None:
    """From 100 on a number is volts; below it may be of people, of ppm, of the floor."""
    assert is_danger(INVENTED, f"gas, {beside}") is not of_the_unit


@pytest.mark.parametrize(
    "said",
    [
        "runs all day, 208/1/60, gas, R-410A, no smoke detector",
        "gas, no smoke detector",
        "no duct smoke detector fitted, gas",
        "208, gas, runs all day",
    ],
)
def test_what_a_unit_lacks_is_told_in_a_row_too(said: str, shipped: Knowledge) -> None:
    """Regression: a caller's words beside the data plate stopped the whole job as gas."""
    assert not is_danger(shipped, said)


@pytest.mark.parametrize(
    "said", ["gas, all day", "runs all day, gas", "gas, no air", "gas, no smoke detector, help"]
)
def test_without_the_unit_it_stays_a_danger(said: str, shipped: Knowledge) -> None:
    assert is_danger(shipped, said)


@pytest.mark.parametrize("beside", ["electric strips", "from bottles", "propane"])
def test_a_fuel_told_twice_tells_of_no_unit(beside: str) -> None:
    """Gas, bottles: what leaks may be told so; only another fact makes a row of facts of it."""
    assert is_danger(INVENTED, f"gas, {beside}")
    assert not is_danger(INVENTED, f"gas, {beside}, belt")


@pytest.mark.parametrize("fuel", FUELS)
def test_a_fuel_is_not_its_own_data_plate(fuel: str) -> None:
    """Though a site has a fact of that name."""
    mend = mender_of(INVENTED)
    assert not names_the_unit(INVENTED, clauses(fuel, mend))
    assert not names_the_unit(INVENTED, clauses(f"{fuel}, natural gas", mend))


@pytest.mark.parametrize(
    "beside",
    [
        "hot surface igniter", "direct spark", "smoke detector", "one leg", "all",
        "one", "three", "TXV, leaking", "TXV, i smell it", "R-410A, help", "208, two people sick",
    ],
)  # fmt: skip
def test_words_in_which_a_danger_is_told_as_well_leave_it_one(
    beside: str, shipped: Knowledge
) -> None:
    assert is_danger(shipped, f"gas, {beside}")


@pytest.mark.parametrize(
    "said",
    [
        "not cooling enough, gas, natural gas",
        "weak heat, natural gas, gas",
        "not cooling enough, gas heat, gas",
        "not cooling enough, gas and natural gas",
        "water leak, gas, natural gas",
        "weak air from the vents, gas, natural gas",
        "gas, it is not keeping up",
        "cannot keep up when it is hot, natural gas, gas",
        "the ac is out, gas",
        "blower not running, propane",
    ],
)
def test_a_fuel_beside_what_ails_the_unit_is_the_units(said: str, shipped: Knowledge) -> None:
    """Regression: the fuel in a caller's line stopped the whole job as gas in the air."""
    assert not is_danger(shipped, said)


@pytest.mark.parametrize(
    "said",
    [
        "not cooling enough, gas, i smell it",
        "not cooling enough, gas everywhere",
        "no cooling, gas, everywhere",
        "gas, everybody out, not cooling enough",
        "not cooling enough, gas, two people sick",
        "water leak, gas leak",
        "roof leaks, gas",
        "leak, gas",
        "somebody said it has a leak, gas",
        "bad smell, gas",
        "it stinks, gas",
        "dirty socks, gas",
        "stuffy air, gas",
        "no fresh air, gas",
        "hardly any air, gas",
        "will not light, gas",
        "no flame, gas",
        "hum, gas",
        "gas, it smells when it is hot",
        "everybody out, gas, no cooling",
    ],
)
def test_a_complaint_that_may_tell_of_the_air_leaves_it_a_danger(
    said: str, shipped: Knowledge
) -> None:
    assert is_danger(shipped, said)


@pytest.mark.parametrize("said", ["gas and gas", "gas and natural gas", "and, gas", "gas, hot and"])
def test_fuels_by_themselves_stay_a_danger(said: str, shipped: Knowledge) -> None:
    assert is_danger(shipped, said)


@pytest.mark.parametrize("said", [*FUELS, "gas and propane", "gas and natural gas and gas"])
def test_a_clause_of_fuels_alone_is_fuel(said: str) -> None:
    assert is_fuel(spoken_words(said, str))


@pytest.mark.parametrize("said", ["gas and smell", "smell and gas", "and", "gas leak", "smell"])
def test_a_clause_with_anything_else_is_none(said: str) -> None:
    assert not is_fuel(spoken_words(said, str))


@pytest.mark.parametrize("said", ["all day", "when it is hot", "when it is cold", "when it rains"])
def test_the_weather_a_unit_runs_in_calls_for_nobody_and_what_stands_beside_it_does(
    said: str,
) -> None:
    assert not is_danger(INVENTED, f"gas, belt, runs {said}")
    assert is_danger(INVENTED, f"gas, belt, leaking {said}")
    assert is_danger(INVENTED, f"gas, belt, {said} leaking")


def test_what_stands_beside_the_fuel_of_a_unit_is_heard_as_ever() -> None:
    """Only the fuel is the unit's: belt, sparking."""
    rules = base(hazards=[job("sparking", "sparking"), ANY], facts=INVENTED.facts.values())
    assert [hazard.id for hazard in named(rules, "belt, sparking")] == ["sparking"]
