"""A single-phase motor with a permanent capacitor, by its two turning fields.

Main and auxiliary winding in quadrature (Fitzgerald, Kingsley and Umans, Electric Machinery,
two-phase motors on unbalanced supply). Per unit of the main winding's rated volts and amps. The
values: fan motors of a fraction of a horsepower, compressors of a few (common practice, no
source).
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Final

from troubleshoot.frozen import frozen

_STALLED: Final = 0.6
"""Slip beyond which a motor crawls rather than runs."""


@frozen
class Windings:
    """Main and auxiliary impedances, magnetizing reactance, rotor, turns ratio, capacitor's
    reactance at its rating; the slip at full load; `breakaway`: torque to start over rated;
    `crowding`: how much more the rotor resists at standstill, where current crowds to its edge."""

    main: complex
    auxiliary: complex
    magnetizing: float
    rotor_ohms: float
    rotor_reactance: float
    turns: float
    capacitor: float
    rated_slip: float
    breakaway: float
    crowding: float


FAN: Final = Windings(
    complex(0.12, 0.14), complex(0.24, 0.20), 1.9, 0.20, 0.14, 1.25, 2.6, 0.10, 0.06, 0.0
)
COMPRESSOR: Final = Windings(
    complex(0.035, 0.08), complex(0.09, 0.11), 2.1, 0.05, 0.08, 1.2, 2.2, 0.035, 0.05, 1.5
)


@frozen
class AtSlip:
    """Per unit: line amps, start-lead amps, volts on the capacitor, torque in synchronous watts,
    watts taken in."""

    amps: float
    start_amps: float
    capacitor_volts: float
    torque: float
    power: float


@frozen
class Turning:
    """A motor on its load: what it draws, speed over that at its rated point, whether it turns."""

    drawn: AtSlip
    speed: float
    turns: bool


def at_slip(motor: Windings, slip: float, capacitor: float, volts: float) -> AtSlip:
    """What it draws at a slip. `capacitor`: over its rating, 0 for an open one."""
    forward = _field(motor, slip)
    backward = _field(motor, 2.0 - slip)
    both, apart, a = forward + backward, forward - backward, motor.turns
    main = motor.main + both
    auxiliary = motor.auxiliary + a * a * both
    if capacitor > 1e-6:
        auxiliary += complex(0.0, -motor.capacitor / capacitor)
        coupling = 1j * a * apart
        whole = main * auxiliary + coupling * coupling
        in_main = volts * (auxiliary + coupling) / whole
        in_start = volts * (main - coupling) / whole
    else:
        in_main, in_start = volts / main, 0j
    turning = (abs(in_main) ** 2 + a * a * abs(in_start) ** 2) * apart.real
    crossed = 2.0 * a * (in_main.conjugate() * in_start).imag * both.real
    line = in_main + in_start
    reactance = motor.capacitor / capacitor if capacitor > 1e-6 else 0.0
    return AtSlip(
        abs(line),
        abs(in_start),
        abs(in_start) * reactance,
        turning + crossed,
        volts * line.real,
    )


def _field(motor: Windings, slip: float) -> complex:
    ohms = motor.rotor_ohms * (1.0 + motor.crowding * slip)
    rotor = complex(ohms / slip, motor.rotor_reactance) / 2
    gap = complex(0.0, motor.magnetizing) / 2
    return rotor * gap / (rotor + gap)


@cache
def rated(motor: Windings) -> AtSlip:
    """At full load with its own capacitor and volts."""
    return at_slip(motor, motor.rated_slip, 1.0, 1.0)


def starting_torque(motor: Windings, capacitor: float, volts: float = 1.0) -> float:
    """Torque at standstill over that at full load."""
    return at_slip(motor, 1.0, capacitor, volts).torque / rated(motor).torque


@lru_cache(4096)
def turn(
    motor: Windings,
    capacitor: float,
    volts: float,
    load: float = 1.0,
    grows: float = 2.0,
    drag: float = 0.0,
) -> Turning:
    """Where a motor settles. Load torque over rated: `load` x speed ** `grows`, plus `drag`.

    A fan's load grows with the square of speed, a compressor's hardly. It stands where it cannot
    break away.
    """
    standing = at_slip(motor, 0.999, capacitor, volts)
    need = motor.breakaway + drag + (load if grows == 0.0 else 0.0) * 0.1
    full = rated(motor)
    if standing.torque < need * full.torque:
        return Turning(standing, 0.0, turns=False)

    def short(slip: float) -> bool:
        speed = (1.0 - slip) / (1.0 - motor.rated_slip)
        asked = load * (speed**grows if grows else _gathering(speed)) + drag
        return at_slip(motor, slip, capacitor, volts).torque < asked * full.torque

    low = next((step / 1000 for step in range(999, 0, -6) if short(step / 1000)), 0.001)
    high = min(low + 0.006, 0.999)
    for _ in range(12):
        middle = (low + high) / 2
        low, high = (middle, high) if short(middle) else (low, middle)
    drawn = at_slip(motor, high, capacitor, volts)
    return Turning(drawn, (1.0 - high) / (1.0 - motor.rated_slip), turns=high < _STALLED)


def _gathering(speed: float) -> float:
    """A compressor starts on equal pressures: its load comes up as it does."""
    return 0.1 + 0.9 * min(speed, 1.0) ** 6
