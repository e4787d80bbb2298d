"""What a reading should show now: by its like in this weather, unless its own limits say it."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.expected import Conditions, expected
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.expected_now import Expected, expected_now
from troubleshoot.reasoning.readings.readings import voided
from troubleshoot.visit.cases.file import read_case

AT = "circuit 1"
UNIT = {"refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas"}
AIR = (("outdoor-temperature", "95 F"), ("return-air-temperature", "80 F"))
MOIST = (*AIR, ("return-wet-bulb", "67 F"))
GAUGES = (
    ("suction-pressure", "140 psig"),
    ("head-pressure", "390 psig"),
    ("suction-line-temperature", "62 F"),
    ("liquid-line-temperature", "104 F"),
)
PLACED = {name for name, _ in GAUGES}
LIKE = expected(Conditions("R-410A", "txv", 95, 80, 67))


def read(
    shipped: Knowledge, *rows: tuple[str, str], unit: dict[str, Any] | None = None
) -> Conclusions:
    case = {
        "unit": {k: v for k, v in {**UNIT, **(unit or {})}.items() if v is not None},
        "readings": [
            {"test": name, "text": text, **({"at": AT} if name in PLACED else {})}
            for name, text in rows
        ],
    }
    return Reasoner(shipped).conclude(read_case(shipped, case))


def said(found: Conclusions, test: str) -> Expected | None:
    (reading,) = (each for each in found.readings if each.test == test)
    return expected_now(reading, found.values)


@pytest.mark.parametrize(
    ("test", "unit"),
    [("suction-pressure", "psig"), ("head-pressure", "psig"), ("superheat", "F"),
     ("subcooling", "F")],
)  # fmt: skip
def test_a_reading_has_its_likes_range_in_its_own_unit(
    shipped: Knowledge, test: str, unit: str
) -> None:
    found = said(read(shipped, *MOIST, *GAUGES), test)
    assert found == Expected(LIKE[test], unit)


def test_amps_follow_the_plate(shipped: Knowledge) -> None:
    found = read(
        shipped, *MOIST, ("compressor-amps", "7.4/7.3/7.5"),
        unit={"compressor-rla": "8.9 A", "compressor-phase": "three"},
    )  # fmt: skip
    wanted = expected(Conditions("R-410A", "txv", 95, 80, 67), rla=8.9)["compressor-amps"]
    assert said(found, "compressor-amps") == Expected(wanted, "A")


@pytest.mark.parametrize(
    "rows",
    [
        GAUGES,
        (AIR[0], *GAUGES),
        (AIR[1], *GAUGES),
        (("outdoor-temperature", "48 F"), AIR[1], *GAUGES),
    ],
    ids=["no air", "no return air", "no outdoor air", "colder than the table"],
)
def test_nothing_is_expected_of_what_nobody_knows(
    shipped: Knowledge, rows: tuple[tuple[str, str], ...]
) -> None:
    found = read(shipped, *rows)
    assert said(found, "suction-pressure") is None
    assert said(found, "head-pressure") is None


@pytest.mark.parametrize("fact", ["refrigerant", "metering"])
def test_nor_of_a_unit_of_an_unknown_kind(shipped: Knowledge, fact: str) -> None:
    found = read(shipped, *MOIST, *GAUGES, unit={fact: None})
    assert said(found, "suction-pressure") is None


def test_without_a_wet_bulb_the_range_is_that_of_ordinary_rooms(shipped: Knowledge) -> None:
    rooms = expected(Conditions("R-410A", "txv", 95, 80))["suction-pressure"]
    found = said(read(shipped, *AIR, *GAUGES), "suction-pressure")
    assert found == Expected(rooms, "psig")
    assert rooms.low < LIKE["suction-pressure"].low


def test_the_wet_bulb_of_the_return_is_not_that_of_mixed_air(shipped: Knowledge) -> None:
    mixed = ("mixed-air-temperature", "82 F")
    rooms = expected(Conditions("R-410A", "txv", 95, 82))["suction-pressure"]
    found = said(read(shipped, *MOIST, mixed, *GAUGES), "suction-pressure")
    assert found == Expected(rooms, "psig")


@pytest.mark.parametrize(
    ("plate", "value", "test"),
    [
        ("own-evaporating-temperature", "47 F", "suction-pressure"),
        ("own-condensing-over-ambient", "19 F", "head-pressure"),
        ("stated-subcooling", "10 F", "subcooling"),
    ],
)
def test_what_is_on_record_of_this_unit_stands_alone(
    shipped: Knowledge, plate: str, value: str, test: str
) -> None:
    found = read(shipped, *MOIST, *GAUGES, unit={plate: {AT: value}})
    assert said(found, test) is None


@pytest.mark.parametrize(
    ("test", "rows", "low", "high"),
    [
        ("superheat", GAUGES, 8, 18),
        ("air-temperature-split", (("supply-air-temperature", "62 F"),), 14.8, 21.8),
    ],
)
def test_a_target_of_this_weather_stands_alone(
    shipped: Knowledge, test: str, rows: tuple[tuple[str, str], ...], low: float, high: float
) -> None:
    """The verdict tells its band already: 5 F either way of (3 x 67 - 80 - 95) / 2, Title 24 RA3.2;
    3.5 F either way of the 18.3 F of RA3 Table RA3.2-3 (from memory)."""
    found = read(shipped, *MOIST, *rows, unit={"metering": "fixed-orifice"})
    (reading,) = (each for each in found.readings if each.test == test)
    assert reading.classified is not None
    assert reading.classified.low == pytest.approx(low, abs=0.1)
    assert reading.classified.high == pytest.approx(high, abs=0.1)
    assert said(found, test) is None


def test_a_reading_that_does_not_count_has_nothing_beside_it(shipped: Knowledge) -> None:
    found = read(shipped, *MOIST, *GAUGES)
    (reading,) = (each for each in found.readings if each.test == "suction-pressure")
    assert expected_now(voided(reading, "the hose was loose"), found.values) is None
