"""The plates of the typical units are in proportion: amps and charge by the tons they cool.

A unit of 11 Btu/h a watt, near the lowest that ASHRAE 90.1 allows (from memory), takes 1.09 kW a
ton in all; a compressor's rated-load amps stand somewhat above what it takes then. Near 2 lb of
refrigerant a ton is common practice, no source.
"""

from __future__ import annotations

import math

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.reasoning.unit.places import Place

UNITS = load_shipped().typical_units
PLATED = sorted(name for name, unit in UNITS.items() if "compressor-rla" in unit.unit)
CIRCUIT, COMPRESSOR = Place("circuit", 1), Place("compressor", 1)


@pytest.mark.parametrize("name", PLATED)
def test_a_compressor_takes_what_its_tons_take(name: str) -> None:
    """Regression: ten tons on one circuit at 460 V had the 8.9 A of five."""
    unit = read_unit(load_shipped(), UNITS[name].unit)
    each = _of(unit, "cooling-tons") / len(unit.layout.places("compressor"))
    phases = 1 if unit.facts["compressor-phase"] == "single" else math.sqrt(3)
    amps = unit.plate_value("compressor-rla", COMPRESSOR)
    assert amps is not None
    assert 1.1 <= phases * amps * _of(unit, "nameplate-volts") / 1000 / each <= 1.6


@pytest.mark.parametrize("name", PLATED)
def test_a_circuit_holds_what_its_tons_hold(name: str) -> None:
    unit = read_unit(load_shipped(), UNITS[name].unit)
    charge = unit.plate_value("charge", CIRCUIT)
    each = _of(unit, "cooling-tons") / len(unit.layout.places("circuit"))
    assert charge is not None and 1.5 <= charge / each <= 3


def _of(unit: Unit, name: str) -> float:
    value = unit.plate_value(name, None)
    assert value is not None
    return value
