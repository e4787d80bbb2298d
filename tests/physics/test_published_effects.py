"""What faults do to a circuit, against published laboratory work: which way, and how far.

Sizes are checked where a source with the number was seen; what is only remembered checks a
direction. Not reproduced, and so not checked for size: the capacity that FLT-020 says a
restriction costs (22 % at its 30 %; here 8 % on a fixed orifice, nothing yet on a valve, whose
reserve makes up for it) and that FLT-021 says overcharge costs (4 to 9 %; here it gains 2 to 3 %
and takes more power).
"""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from tests.checks.reference_entries import entries
from tests.physics.units import (
    FIXED,
    VALVE,
    Seen,
    of_circuit,
    of_unit,
    with_condenser_air,
    with_indoor_air,
)
from troubleshoot.physics.sizing import Nameplate, built

FEATURES = {
    "evaporating_temp": "evaporating",
    "superheat": "superheat",
    "condensing_temp": "condensing",
    "subcooling": "subcooling",
    "discharge_temp": "discharge",
    "condenser_air_dT": "condenser_rise",
    "evaporator_air_dT": "air_drop",
}
SEVERE: dict[str, dict[str, object]] = {
    "FLT-001": {"charge": 0.85},
    "FLT-002": {"valve_leak": 0.08},
    "FLT-003": {"restriction": 0.25},
    "FLT-004": {"coil_blocked": 0.45},
}
"""The knob that stands for each published fault, as severe as those tests made it."""


def moved(found: Seen, sound: Seen) -> dict[str, str]:
    """The sign of each feature's move."""
    return {
        published: "+" if getattr(found, own) > getattr(sound, own) else "-"
        for published, own in FEATURES.items()
    }


@pytest.mark.parametrize("entry", SEVERE)
def test_a_fixed_orifice_moves_as_the_published_rules_say(entry: str) -> None:
    """Source: Rossi and Braun 1997, HVAC&R Research 3(1), rules of a rooftop unit's faults."""
    signs = moved(of_unit(FIXED, **SEVERE[entry]), of_unit(FIXED))
    assert signs == entries()[entry].expected


def test_low_air_on_the_evaporator_moves_as_the_published_rules_say() -> None:
    """Source: the same; their evaporator fouling was a lower airflow."""
    signs = moved(with_indoor_air(FIXED, 0.75), of_circuit(FIXED))
    assert signs == entries()["FLT-005"].expected


@pytest.mark.parametrize(
    ("lost", "capacity", "energy"), [(0.1, 0.04, 0.04), (0.3, 0.05, 0.05), (0.5, 0.06, 0.09)]
)
def test_less_condenser_air_costs_as_much_as_was_measured(
    lost: float, capacity: float, energy: float
) -> None:
    """Source: FLT-018, regressions after Cheung and Braun in a national laboratory's models."""
    published = entries()["FLT-018"].expected[f"{lost:.0%}"]
    found, sound = with_condenser_air(VALVE, 1 - lost), of_circuit(VALVE)
    assert found.capacity / sound.capacity == pytest.approx(
        published["capacity_ratio"], abs=capacity
    )
    assert found.energy_ratio / sound.energy_ratio == pytest.approx(
        published["eir_ratio"], abs=energy
    )


@pytest.mark.parametrize(("lost", "near"), [(0.1, 0.07), (0.3, 0.1), (0.5, 0.03)])
def test_less_indoor_air_costs_as_much_as_was_measured(lost: float, near: float) -> None:
    """Source: FLT-019, of the same origin; its loss at 30 % is larger than at 50 %."""
    published = entries()["FLT-019"].expected[f"{lost:.0%}"]
    found, sound = with_indoor_air(VALVE, 1 - lost), of_circuit(VALVE)
    assert found.capacity / sound.capacity == pytest.approx(published["capacity_ratio"], abs=near)
    assert found.energy_ratio / sound.energy_ratio == pytest.approx(
        published["eir_ratio"], abs=near
    )


def test_half_the_indoor_air_hardly_changes_power_and_hurts_an_orifice_more() -> None:
    """Source: Rodriguez, O'Neal, Davis and Kondepudi 1996, Energy and Buildings 24, abstract.

    Two units at 35 degrees C, airflow down by up to 50 %: power fell by less than 4 %; the unit
    with the orifice lost more capacity and more COP than that with the valve.
    """
    kept = {}
    for plate in (FIXED, VALVE):
        found, sound = with_indoor_air(plate, 0.5), of_circuit(plate)
        assert 0.95 < found.power / sound.power < 1.0
        kept[plate.metering] = found.capacity / sound.capacity
    assert kept["fixed-orifice"] < kept["txv"]


def test_a_valve_hides_a_loss_of_charge_until_it_is_wide_open() -> None:
    """Source: ASHRAE RP-1173 (six units), as a national laboratory's report on it sums it up.

    Fixed orifices lose noticeably under 90 % of charge; valves only under 80 %, once they stand
    wide open and hold superheat no more.
    """
    sound = {plate.metering: of_unit(plate) for plate in (FIXED, VALVE)}
    kept: dict[tuple[str, float], float] = {}
    over: dict[tuple[str, float], float] = {}
    for plate in (FIXED, VALVE):
        for charge in (0.9, 0.8, 0.6):
            found, name = of_unit(plate, charge=charge), plate.metering
            kept[name, charge] = found.capacity / sound[name].capacity
            over[name, charge] = found.superheat - sound[name].superheat
    assert kept["fixed-orifice", 0.9] < 0.95 < kept["txv", 0.9]
    assert kept["fixed-orifice", 0.8] < kept["txv", 0.8] - 0.05
    assert over["txv", 0.8] < 4 and over["fixed-orifice", 0.8] > 15
    assert kept["txv", 0.6] < 0.85 and over["txv", 0.6] > 10


@pytest.mark.parametrize("share", [0.95, 0.9, 1.1, 1.2])
def test_on_a_valve_subcooling_is_the_first_to_tell_of_the_charge(share: float) -> None:
    """Source: FLT-023: Chen and Braun 2001; Kim, Yoon, Payne and Domanski 2008 (NIST SP 1087)."""
    found, sound = of_unit(VALVE, charge=share), of_unit(VALVE)
    change = found.subcooling - sound.subcooling
    assert change * (share - 1) > 0 and abs(change) > 2
    assert abs(change) > 3 * abs(found.superheat - sound.superheat)


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_a_restriction_keeps_its_liquid_back_and_starves_the_coil(plate: Nameplate) -> None:
    """Direction: FLT-003 and FLT-023: subcooling up, finally superheat up, suction down."""
    found, sound = of_unit(plate, restriction=0.6), of_unit(plate)
    assert found.subcooling > sound.subcooling + 1
    assert found.superheat > sound.superheat + 10
    assert found.suction < sound.suction - 5 and found.head < sound.head


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_overcharge_fills_the_condenser(plate: Nameplate) -> None:
    """Direction: FLT-022, a refrigeration handbook; suction only on a fixed orifice."""
    found, sound = of_unit(plate, charge=1.25), of_unit(plate)
    assert found.head > sound.head + 10 and found.subcooling > sound.subcooling + 8
    if plate.metering == "fixed-orifice":
        assert found.superheat < 1
    else:
        assert found.superheat == pytest.approx(sound.superheat, abs=1.5)


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_air_in_the_circuit_adds_to_head_and_to_apparent_subcooling(plate: Nameplate) -> None:
    """Direction: Dalton's law; FLT-022 and, from memory, NIST's tests of a heat pump."""
    heads, cools = [], []
    for share in (0.0, 0.2, 0.5, 1.0):
        found = of_unit(plate, strange_gas=share)
        heads.append(found.head)
        cools.append(found.subcooling)
    assert heads == sorted(heads) and heads[-1] > heads[0] + 40
    assert cools == sorted(cools) and cools[-1] > cools[0] + 5


def test_a_leaking_valve_brings_the_pressures_together_on_an_expansion_valve_too() -> None:
    """Direction of both pressures: FLT-002, FLT-022. The discharge temperature is left out: the
    published rules say it falls (a fixed orifice, liquid coming back), later work that it rises."""
    found, sound = of_unit(VALVE, valve_leak=0.25), of_unit(VALVE)
    assert found.suction > sound.suction + 5 and found.head < sound.head - 10
    assert found.capacity < 0.85 * sound.capacity and found.power < sound.power
    assert found.air_drop < sound.air_drop - 1.5


def test_underfeeding_starves_and_overfeeding_floods() -> None:
    """Direction: FLT-022, a refrigeration handbook's fault chapter."""
    sound = of_unit(VALVE)
    starved, flooded = of_unit(VALVE, valve_most=0.4), of_unit(VALVE, valve_least=1.0)
    assert starved.superheat > sound.superheat + 12 and starved.suction < sound.suction - 10
    assert flooded.superheat < 2 and flooded.suction > sound.suction + 3
    assert flooded.discharge < sound.discharge - 20


def test_warm_air_from_next_door_raises_head_degree_for_degree() -> None:
    """The condenser knows its own air only: within a sixth of the degrees (heat balance)."""
    found, sound = of_unit(VALVE, recirculation=12.0), of_unit(VALVE)
    assert found.condensing - sound.condensing == pytest.approx(12, abs=2)
    assert found.condenser_rise == pytest.approx(sound.condenser_rise, abs=1)


def test_charges_lie_where_units_charges_lie() -> None:
    """1.2 to 2.6 lb a ton (common practice, no source)."""
    for name in ("R-410A", "R-22", "R-32", "R-454B"):
        circuit = built(Nameplate(name, 5.0))
        assert 1.2 < circuit.charge * 2.2046 / 5 < 2.6
