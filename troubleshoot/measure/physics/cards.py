"""The cards that physics can act out: the knob of each, how far it is turned, who can have it.

Severities run from just worth a call to as bad as units are found (common practice, no source).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any, Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.physics.knobs import Faults
from troubleshoot.physics.sizing import Nameplate

Mode = Literal["cooling", "heating"]
Part = Literal["refrigerant", "air", "supply", "gas"]
Severity = Callable[[random.Random], object]
Fits = Callable[[Nameplate], bool]


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


@frozen
class Card:
    """The knob that acts out one card's fault. `everywhere`: it comes to all circuits alike."""

    part: Part
    knob: str
    severity: Severity
    fits: Fits = _any
    everywhere: bool = False

    def turned(self, faults: Faults, dice: random.Random) -> Faults:
        """The same faults with this one beside them."""
        part: Any = getattr(faults, self.part)
        wrong = replace(part, **{self.knob: self.severity(dice)})
        changed: dict[str, Any] = {self.part: wrong}
        return replace(faults, **changed)

    def goes_with(self, other: Card, plate: Nameplate) -> bool:
        """Whether this unit can have both: two knobs, and in the same circuits if in any."""
        alike = self.everywhere == other.everywhere or plate.circuits == 1
        in_circuits = self.part == other.part == "refrigerant"
        return (self.part, self.knob) != (other.part, other.knob) and (alike or not in_circuits)


def _between(low: float, high: float) -> Severity:
    return lambda dice: dice.uniform(low, high)


def _either(one: Severity, other: Severity) -> Severity:
    return lambda dice: dice.choice((one, other))(dice)


def _true(_: random.Random) -> bool:
    return True


def _all_pairs(low: float, high: float) -> Severity:
    return lambda dice: (dice.uniform(low, high),) * 3


def _unbalanced(dice: random.Random) -> tuple[float, ...]:
    off = dice.uniform(0.03, 0.08)
    pairs = [1.0 - off, 1.0 + off / 3, 1.0 + off / 3]
    dice.shuffle(pairs)
    return tuple(pairs)


def _circuit(knob: str, low: float, high: float, fits: Fits = _any, *, all_: bool = False) -> Card:
    return Card("refrigerant", knob, _between(low, high), fits, all_)


def _air(knob: str, low: float, high: float, fits: Fits = _any) -> Card:
    return Card("air", knob, _between(low, high), fits)


def _gas(knob: str, low: float, high: float) -> Card:
    return Card("gas", knob, _between(low, high))


COOLING: Final[Mapping[str, Card]] = MappingProxyType({
    "low-charge-from-leak": _circuit("charge", 0.45, 0.85),
    "overcharge": _circuit("charge", 1.12, 1.35),
    "condenser-coil-dirty": _circuit("coil_blocked", 0.25, 0.65, all_=True),
    "condenser-air-recirculating": _circuit("recirculation", 8, 20, all_=True),
    "condenser-fan-capacitor-weak": _circuit("fan_capacitor", 0.1, 0.75),
    "condenser-fan-no-supply": Card("refrigerant", "fan_dead", _true),
    "condenser-fan-motor-seized": _circuit("fan_drag", 0.45, 1.2),
    "liquid-line-restriction": _circuit("restriction", 0.35, 1.0),
    "air-in-refrigerant": _circuit("strange_gas", 0.3, 1.0),
    "compressor-pumping-weak": _circuit("valve_leak", 0.12, 0.38),
    "txv-underfeeding": _circuit("valve_most", 0.2, 0.55, _valve),
    "txv-overfeeding": _circuit("valve_least", 0.85, 1.0, _valve),
    "fixed-orifice-wrong-or-worn": Card(
        "refrigerant", "orifice", _either(_between(1.2, 1.6), _between(0.6, 0.82)), _orifice
    ),
    "compressor-run-capacitor-weak": _circuit("compressor_capacitor", 0.1, 0.65, _single),
    "contactor-contacts-pitted": _circuit("pole_drop", 1.5, 6.0),
    "filters-loaded": _air("filter", 4, 14),
    "evaporator-coil-dirty": _air("coil_dirt", 0.2, 0.55),
    "duct-damper-shut": _air("duct", 2.5, 7),
    "duct-disconnected-or-leaking": _air("duct", 0.2, 0.45),
    "blower-belt-slipping": _air("belt_slip", 0.12, 0.4, _three),
    "blower-wheel-dirty": _air("wheel_dirt", 0.2, 0.5),
    "blower-capacitor-weak": _air("capacitor", 0.3, 0.7, _single),
    "supply-voltage-low": Card("supply", "pairs", _all_pairs(0.80, 0.88)),
    "supply-voltage-high": Card("supply", "pairs", _all_pairs(1.11, 1.16)),
    "supply-voltage-unbalanced": Card("supply", "pairs", _unbalanced, _three),
    "supply-phases-reversed": Card("supply", "reversed", _true, _three),
})  # fmt: skip
HEATING: Final[Mapping[str, Card]] = MappingProxyType({
    "manifold-pressure-low": _gas("manifold", 1.6, 2.9),
    "manifold-pressure-set-too-high": _gas("manifold", 4.2, 5.5),
    "gas-inlet-pressure-low-under-load": _gas("pipe_drop", 2.8, 5.0),
    "gas-inlet-pressure-too-high": _gas("inlet", 14.5, 20.0),
    "wrong-orifice-or-altitude": Card(
        "gas", "orifice", _either(_between(1.09, 1.25), _between(0.75, 0.9))
    ),
    "burner-or-orifice-blocked": _gas("burners_blocked", 0.2, 0.5),
    "vent-blocked": _gas("flue_blocked", 0.45, 0.8),
    "heat-exchanger-sooted": _gas("soot", 0.2, 0.5),
    "flame-rod-dirty": _gas("rod", 0.08, 0.35),
    "filters-loaded": _air("filter", 6, 16),
})  # fmt: skip


def cards_of(mode: Mode) -> Mapping[str, Card]:
    """The cards of one kind of call, by id."""
    return COOLING if mode == "cooling" else HEATING
