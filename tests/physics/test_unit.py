"""The whole unit: it always settles or stops for a reason, and its parts hang together."""

from __future__ import annotations

import random

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from tests.physics.units import FIXED, VALVE, of_unit
from troubleshoot.frozen import changed
from troubleshoot.physics.knobs import AirFaults, CircuitFaults, Day, Faults, SupplyFaults
from troubleshoot.physics.refrigerant import refrigerant
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.physics.unit import PSI, SWITCHES, cool

PLATES = tuple(
    Nameplate(name, tons, circuits, metering, 460.0 if three else 230.0, three)  # type: ignore[arg-type]
    for name, metering in (
        ("R-410A", "txv"),
        ("R-410A", "fixed-orifice"),
        ("R-22", "fixed-orifice"),
        ("R-454B", "txv"),
        ("R-32", "txv"),
    )
    for tons, circuits, three in ((3.0, 1, False), (15.0, 2, True))
)
TWO = Nameplate("R-454B", 15.0, 2)


def circuit(**wrong: object) -> Faults:
    return Faults(refrigerant=changed(CircuitFaults(), **wrong))


def drawn(dice: random.Random) -> tuple[Nameplate, Faults, Day]:
    """A unit, up to four faults at any severity, any weather that cooling runs in."""
    u = dice.uniform
    of_circuit: dict[str, object] = {
        "charge": u(0.2, 1.4), "restriction": u(0, 1.5), "strange_gas": u(0, 1),
        "valve_leak": u(0, 0.4), "valve_most": u(0.1, 1), "valve_least": u(0.02, 1),
        "orifice": u(0.4, 1.6), "coil_blocked": u(0, 0.9), "recirculation": u(0, 20),
        "fan_capacitor": u(0, 1.2), "fan_drag": u(0, 0.6), "fan_dead": True,
        "compressor_capacitor": u(0, 1.2), "pole_drop": u(0, 6),
    }  # fmt: skip
    of_air = {
        "filter": u(1, 12), "duct": u(0.2, 4), "coil_dirt": u(0, 0.7), "belt_slip": u(0, 0.6),
        "wheel_dirt": u(0, 0.6), "speed": u(0.7, 1.3), "capacitor": u(0.3, 1.2),
    }  # fmt: skip
    volts = u(0.85, 1.1)
    pairs = (volts, volts * u(0.96, 1.04), volts * u(0.96, 1.04))
    faults = Faults(
        dice.choice((1, 2)),
        changed(
            CircuitFaults(), **dict(dice.sample(sorted(of_circuit.items()), dice.choice((0, 1, 2))))
        ),
        changed(AirFaults(), **dict(dice.sample(sorted(of_air.items()), dice.choice((0, 1))))),
        SupplyFaults(pairs if dice.random() < 0.3 else (1.0, 1.0, 1.0), u(1, 4)),
    )
    wet = u(52, 75)
    day = Day(u(55, 115), max(u(66, 88), wet + 2), wet, dice.choice((0.0, 0.2, 0.4)))
    return dice.choice(PLATES), faults, day


@pytest.mark.parametrize("seed", range(5))
def test_any_faults_settle_or_stop_it_for_a_reason(seed: int) -> None:
    dice = random.Random(seed)
    for _ in range(20):
        plate, faults, day = drawn(dice)
        made = cool(plate, faults, day)
        low, high = SWITCHES[plate.refrigerant]
        for read in made.circuits:
            now = read.running
            assert (now is None) == bool(read.stopped)
            if now is None:
                continue
            assert now.settled, (plate, faults, day)
            assert low <= now.suction / PSI - 14.696 < now.head / PSI - 14.696 <= high
            fluid = refrigerant(plate.refrigerant)
            assert now.condensing > read.condenser_entering
            assert now.evaporating < made.entering.dry_bulb
            assert now.discharge_temperature(fluid) > now.evaporating
            assert now.liquid_temperature(fluid) > read.condenser_entering - 0.1


@pytest.mark.parametrize(
    ("plate", "faults", "why"),
    [
        (VALVE, circuit(fan_dead=True), "high-pressure switch"),
        (VALVE, circuit(coil_blocked=0.85), "high-pressure switch"),
        (FIXED, circuit(charge=0.25), "low-pressure switch"),
        (VALVE, circuit(valve_most=0.12), "low-pressure switch"),
        (FIXED, circuit(compressor_capacitor=0.1), "will not start"),
        (VALVE, Faults(supply=SupplyFaults(cable_ohms=15.0)), "contactor out"),
        (VALVE, Faults(supply=SupplyFaults(tap=0.7)), "contactor out"),
        (VALVE, Faults(supply=SupplyFaults(reversed=True)), "turns backward"),
    ],
)  # fmt: skip
def test_what_a_unit_cannot_run_with_keeps_it_off(
    plate: Nameplate, faults: Faults, why: str
) -> None:
    read = cool(plate, faults, Day()).circuits[0]
    assert read.stopped == why and read.running is None


def test_one_circuit_down_leaves_the_other_and_half_the_cooling() -> None:
    whole, half = cool(TWO, Faults(), Day()), cool(TWO, circuit(fan_dead=True), Day())
    assert half.circuits[0].stopped and half.circuits[1].running is not None
    assert half.cooling == pytest.approx(whole.cooling / 2, rel=0.05)


def test_standing_pressure_is_saturation_unless_nearly_all_is_gone() -> None:
    """Source: a closed vessel of liquid and vapour; what does not condense adds to it (Dalton)."""
    off = SupplyFaults(cable_ohms=20.0)
    fluid = refrigerant("R-410A")
    matched = fluid.bubble_pressure((95 - 32) / 1.8)

    def standing(**wrong: float) -> float:
        faults = changed(circuit(**wrong), supply=off)
        return cool(VALVE, faults, Day()).circuits[0].standing

    assert standing() == standing(charge=0.5) == pytest.approx(matched)
    assert standing(charge=0.05) < 0.7 * matched
    assert standing(strange_gas=0.5) > matched + 5 * PSI


def test_two_faults_are_both_felt() -> None:
    """Head lies between that of either alone, and neither hides the empty condenser."""
    both, short, dirty = (
        of_unit(VALVE, **wrong)
        for wrong in (
            {"charge": 0.65, "coil_blocked": 0.5},
            {"charge": 0.65},
            {"coil_blocked": 0.5},
        )
    )
    assert short.head + 10 < both.head < dirty.head - 10
    assert both.subcooling < 1 < dirty.subcooling
    assert both.condenser_rise > short.condenser_rise + 3
