"""A three-phase induction motor on any three volts, by symmetrical components.

Per-unit equivalent circuit (Fitzgerald, Kingsley and Umans, Electric Machinery, polyphase
induction machines); the part that turns backward meets slip 2 - s. Values: a motor of a few
horsepower, locked-rotor amps about six times full load (common practice, no source).
"""

from __future__ import annotations

import cmath
import math
from typing import Final

from troubleshoot.frozen import frozen

STATOR: Final = complex(0.03, 0.07)
MAGNETIZING: Final = complex(0.0, 2.3)
ROTOR_OHMS: Final = 0.025
ROTOR_REACTANCE: Final = 0.07
_DEEP_BAR: Final = 0.6
"""How much more the rotor resists at slip 2 than at none: current crowds to the bars' edge."""
_TURN: Final = cmath.exp(2j * math.pi / 3)
HOTTEST_SHARE: Final = 0.4
"""How much of a winding's rise follows its own heat; the rest follows the mean of the three."""

Legs = tuple[float, float, float]


@frozen
class Drawn:
    """Per unit of the motor's rating: amps of the legs, watts taken in, slip; whether it turns."""

    amps: Legs
    power: float
    slip: float
    turns: bool


def components(volts: Legs) -> tuple[complex, complex]:
    """Positive and negative sequence of the phase volts, from the volts of the pairs 1-2, 2-3, 3-1.

    Both over rated volts, so that three pairs of 1 are a positive sequence of 1. Raises ValueError
    for pairs that close no triangle.
    """
    one, two, three = volts
    cosine = (two**2 - one**2 - three**2) / (2 * one * three)
    if not -1.0 <= cosine <= 1.0:
        raise ValueError("three such pairs close no triangle")
    first = complex(one, 0.0)
    third = three * cmath.exp(1j * (math.pi - math.acos(-cosine)))
    second = -first - third
    if second.imag > 0:
        third, second = third.conjugate(), second.conjugate()
    positive = (first + _TURN * second + _TURN**2 * third) / 3
    negative = (first + _TURN**2 * second + _TURN * third) / 3
    tilt = cmath.exp(1j * math.pi / 6)
    return positive / tilt, negative * tilt


def rotor_ohms(slip: float) -> float:
    """Per-unit rotor resistance at a slip, crowding counted in."""
    return ROTOR_OHMS * (1.0 + _DEEP_BAR * slip)


def impedance(slip: float) -> complex:
    """Per-unit impedance of one phase at a slip."""
    rotor = complex(rotor_ohms(slip) / slip, ROTOR_REACTANCE)
    return STATOR + MAGNETIZING * rotor / (MAGNETIZING + rotor)


def gap_power(volts: complex, slip: float) -> float:
    """Per-unit torque, in synchronous watts, of one sequence at a slip."""
    rotor = complex(rotor_ohms(slip) / slip, ROTOR_REACTANCE)
    share = MAGNETIZING / (MAGNETIZING + rotor)
    current = volts / impedance(slip) * share
    return abs(current) ** 2 * rotor.real


def _torque(positive: complex, negative: complex, slip: float) -> float:
    return gap_power(positive, slip) - gap_power(negative, 2.0 - slip)


def _slip_for(torque: float, positive: complex, negative: complex) -> float | None:
    """The slip at which it carries a torque; None where it cannot."""
    low, high = 1e-4, 0.25
    if max(_torque(positive, negative, s / 100) for s in range(6, 26)) < torque:
        return None
    while _torque(positive, negative, high) < torque:
        high *= 0.8
    for _ in range(40):
        middle = (low + high) / 2
        if _torque(positive, negative, middle) < torque:
            low = middle
        else:
            high = middle
    return high


RATED_SLIP: Final = 0.027
RATED_AMPS: Final = 1.0 / abs(impedance(RATED_SLIP))
RATED_TORQUE: Final = gap_power(1.0, RATED_SLIP)


def draw(load: float, volts: Legs, dropped: Legs = (0.0, 0.0, 0.0)) -> Drawn:
    """What a motor draws that carries `load` times its rated torque.

    `volts`: the pairs over rated volts; `dropped`: of each leg over rated volts, in its contacts.
    A motor that cannot carry its load stands, and draws what stands for locked-rotor amps.
    """
    positive, negative = components(volts)
    if any(dropped):
        legs = [d * math.sqrt(3.0) for d in dropped]
        angle = cmath.exp(1j * cmath.phase(positive))
        turned = [legs[0] * angle, legs[1] * angle / _TURN, legs[2] * angle * _TURN]
        positive -= (turned[0] + _TURN * turned[1] + _TURN**2 * turned[2]) / 3
        negative -= (turned[0] + _TURN**2 * turned[1] + _TURN * turned[2]) / 3
    slip = _slip_for(load * RATED_TORQUE, positive, negative)
    at = slip if slip is not None else 1.0
    forward, backward = positive / impedance(at), negative / impedance(2.0 - at)
    legs_amps = (
        abs(forward + backward) / RATED_AMPS,
        abs(forward / _TURN + backward * _TURN) / RATED_AMPS,
        abs(forward * _TURN + backward / _TURN) / RATED_AMPS,
    )
    taken = (positive * forward.conjugate() + negative * backward.conjugate()).real
    return Drawn(legs_amps, taken / _rated_power(), at, slip is not None)


def _rated_power() -> float:
    return (1.0 / impedance(RATED_SLIP).conjugate()).real


def on_two_legs(load: float, volts: float = 1.0) -> Drawn:
    """The same with the first leg dead: both sequences carry the one current that is left."""

    def torque(slip: float) -> float:
        current = abs(volts / (impedance(slip) + impedance(2.0 - slip)))
        forward = (current * abs(impedance(slip))) * 1.0
        backward = current * abs(impedance(2.0 - slip))
        return gap_power(forward, slip) - gap_power(backward, 2.0 - slip)

    slips = [s / 1000 for s in range(5, 250)]
    slip = next((s for s in slips if torque(s) >= load * RATED_TORQUE), None)
    at = slip if slip is not None else 1.0
    both = impedance(at) + impedance(2.0 - at)
    amps = math.sqrt(3.0) * volts / abs(both) / RATED_AMPS
    return Drawn(
        (0.0, amps, amps), volts**2 * (1 / both).real / _rated_power(), at, slip is not None
    )


def winding_rise(amps: Legs) -> float:
    """Rise of the hottest winding over that at rated amps, all three alike."""
    heats = [a**2 for a in amps]
    return HOTTEST_SHARE * max(heats) + (1.0 - HOTTEST_SHARE) * sum(heats) / 3
