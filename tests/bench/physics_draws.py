"""Units, days and faults for the bench of physics, drawn by a seed; no rule base is looked at.

Each card that physics can act out has its knob, how severe it comes, and which units can have it.
Severities run from just worth a call to as bad as units are found (common practice, no source).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

from troubleshoot.physics.gas_heat import GasFaults
from troubleshoot.physics.knobs import AirFaults, CircuitFaults, Day, Faults, SupplyFaults
from troubleshoot.physics.sizing import Design, Nameplate

Mode = Literal["cooling", "heating"]


@dataclass(frozen=True)
class Drawn:
    """A unit with what is wrong with it, on a day; `card` is empty where nothing is."""

    plate: Nameplate
    card: str
    mode: Mode
    faults: Faults
    day: Day


Turn = Callable[[random.Random], Faults]
Fits = Callable[[Nameplate], bool]


def _circuit(name: str, low: float, high: float) -> Turn:
    return lambda dice: Faults(refrigerant=_with(CircuitFaults(), name, dice.uniform(low, high)))


def _air(name: str, low: float, high: float) -> Turn:
    return lambda dice: Faults(air=_with(AirFaults(), name, dice.uniform(low, high)))


def _gas(name: str, low: float, high: float) -> Turn:
    return lambda dice: Faults(gas=_with(GasFaults(), name, dice.uniform(low, high)))


def _with(faults: Any, name: str, value: float) -> Any:
    return replace(faults, **{name: value})


def _volts(low: float, high: float) -> Turn:
    def turned(dice: random.Random) -> Faults:
        share = dice.uniform(low, high)
        return Faults(supply=SupplyFaults((share, share, share)))

    return turned


def _unbalanced(dice: random.Random) -> Faults:
    off = dice.uniform(0.03, 0.08)
    pairs = [1.0 - off, 1.0 + off / 3, 1.0 + off / 3]
    dice.shuffle(pairs)
    return Faults(supply=SupplyFaults((pairs[0], pairs[1], pairs[2])))


def _either(one: Turn, other: Turn) -> Turn:
    return lambda dice: dice.choice((one, other))(dice)


def _any(_: Nameplate) -> bool:
    return True


def _valve(plate: Nameplate) -> bool:
    return plate.metering == "txv"


def _orifice(plate: Nameplate) -> bool:
    return plate.metering == "fixed-orifice"


def _three(plate: Nameplate) -> bool:
    return plate.three_phase


def _single(plate: Nameplate) -> bool:
    return not plate.three_phase


COOLING: Mapping[str, tuple[Turn, Fits]] = {
    "low-charge-from-leak": (_circuit("charge", 0.45, 0.85), _any),
    "overcharge": (_circuit("charge", 1.12, 1.35), _any),
    "condenser-coil-dirty": (_circuit("coil_blocked", 0.25, 0.65), _any),
    "condenser-air-recirculating": (_circuit("recirculation", 8, 20), _any),
    "condenser-fan-capacitor-weak": (_circuit("fan_capacitor", 0.1, 0.75), _any),
    "condenser-fan-no-supply": (lambda _: Faults(refrigerant=CircuitFaults(fan_dead=True)), _any),
    "condenser-fan-motor-seized": (_circuit("fan_drag", 0.45, 1.2), _any),
    "liquid-line-restriction": (_circuit("restriction", 0.35, 1.0), _any),
    "air-in-refrigerant": (_circuit("strange_gas", 0.3, 1.0), _any),
    "compressor-pumping-weak": (_circuit("valve_leak", 0.12, 0.38), _any),
    "txv-underfeeding": (_circuit("valve_most", 0.2, 0.55), _valve),
    "txv-overfeeding": (_circuit("valve_least", 0.85, 1.0), _valve),
    "fixed-orifice-wrong-or-worn": (
        _either(_circuit("orifice", 1.2, 1.6), _circuit("orifice", 0.6, 0.82)),
        _orifice,
    ),
    "compressor-run-capacitor-weak": (_circuit("compressor_capacitor", 0.1, 0.65), _single),
    "contactor-contacts-pitted": (_circuit("pole_drop", 1.5, 6.0), _any),
    "filters-loaded": (_air("filter", 4, 14), _any),
    "evaporator-coil-dirty": (_air("coil_dirt", 0.2, 0.55), _any),
    "duct-damper-shut": (_air("duct", 2.5, 7), _any),
    "duct-disconnected-or-leaking": (_air("duct", 0.2, 0.45), _any),
    "blower-belt-slipping": (_air("belt_slip", 0.12, 0.4), _three),
    "blower-wheel-dirty": (_air("wheel_dirt", 0.2, 0.5), _any),
    "blower-capacitor-weak": (_air("capacitor", 0.3, 0.7), _single),
    "supply-voltage-low": (_volts(0.80, 0.88), _any),
    "supply-voltage-high": (_volts(1.11, 1.16), _any),
    "supply-voltage-unbalanced": (_unbalanced, _three),
    "supply-phases-reversed": (lambda _: Faults(supply=SupplyFaults(reversed=True)), _three),
}
OF_ALL_CIRCUITS = frozenset({"condenser-coil-dirty", "condenser-air-recirculating"})
HEATING: Mapping[str, tuple[Turn, Fits]] = {
    "manifold-pressure-low": (_gas("manifold", 1.6, 2.9), _any),
    "manifold-pressure-set-too-high": (_gas("manifold", 4.2, 5.5), _any),
    "gas-inlet-pressure-low-under-load": (_gas("pipe_drop", 2.8, 5.0), _any),
    "gas-inlet-pressure-too-high": (_gas("inlet", 14.5, 20.0), _any),
    "wrong-orifice-or-altitude": (
        _either(_gas("orifice", 1.09, 1.25), _gas("orifice", 0.75, 0.9)),
        _any,
    ),
    "burner-or-orifice-blocked": (_gas("burners_blocked", 0.2, 0.5), _any),
    "vent-blocked": (_gas("flue_blocked", 0.45, 0.8), _any),
    "heat-exchanger-sooted": (_gas("soot", 0.2, 0.5), _any),
    "flame-rod-dirty": (_gas("rod", 0.08, 0.35), _any),
    "filters-loaded": (_air("filter", 6, 16), _any),
}


def a_plate(dice: random.Random) -> Nameplate:
    """A packaged unit of 3 to 25 tons, of any age."""
    refrigerant = dice.choice(("R-410A", "R-410A", "R-22", "R-32", "R-454B"))
    tons = dice.choice((3.0, 4.0, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0))
    single = tons <= 5 and dice.random() < 0.5
    older = refrigerant == "R-22"
    over = dice.uniform(13, 17) if older else dice.uniform(9, 13)
    design = Design(
        dice.uniform(6.5, 8.5) if older else dice.uniform(7.5, 10.5),
        over,
        dice.uniform(5, 7),
        dice.uniform(4.5, 6.5),
        dice.uniform(360, 420),
        dice.uniform(0.60, 0.65) if older else dice.uniform(0.66, 0.72),
    )
    orifice = dice.random() < (0.6 if older else 0.25)
    return Nameplate(
        refrigerant,
        tons,
        2 if tons > 7.5 else 1,
        "fixed-orifice" if orifice else "txv",
        230.0 if single else dice.choice((208.0, 460.0)),
        not single,
        round(design.cfm_per_ton * tons * 58, -3),
        design,
    )


def a_case(dice: random.Random, card: str, mode: Mode) -> Drawn:
    """One unit with this card's fault (none where it is empty) on a day of its season."""
    cards = COOLING if mode == "cooling" else HEATING
    turn, fits = cards.get(card, (lambda _: Faults(), _any))
    plate = a_plate(dice)
    while not fits(plate):
        plate = a_plate(dice)
    everywhere = card in OF_ALL_CIRCUITS
    faults = replace(turn(dice), circuit=0 if everywhere else dice.randint(1, plate.circuits))
    if mode == "heating":
        return Drawn(plate, card, mode, faults, Day(dice.uniform(15, 50), dice.uniform(64, 71), 54))
    wet = dice.uniform(60, 69)
    day = Day(dice.uniform(74, 104), wet + dice.uniform(9, 14), wet)
    return Drawn(plate, card, mode, faults, day)
