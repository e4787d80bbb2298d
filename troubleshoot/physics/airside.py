"""The blower against filter, coil and duct, and what each of them takes.

One fan curve p = a n2 - b q2 against one system p = r q2, so that flow goes with speed and the fan
laws hold (ASHRAE Handbook, HVAC Systems and Equipment, Fans). Power of a forward-curved wheel at
one speed falls with its flow. Inches of water, cfm.
"""

from __future__ import annotations

import math
from typing import Final

from troubleshoot.frozen import frozen

_SHUT_OFF: Final = 1.55
"""Pressure of the wheel with no flow over that at its rated flow."""
_IDLE_POWER: Final = 0.25
"""Power of the wheel with no flow over that at its rated flow and the same speed."""


@frozen
class AirPath:
    """Drops at rated flow in inches of water: external (duct), filter, wet coil, cabinet."""

    cfm: float
    external: float = 0.50
    filter: float = 0.12
    coil: float = 0.25
    cabinet: float = 0.15


@frozen
class Hindered:
    """What changes the path and the wheel: factors on the drops of duct, filter and coil at equal
    flow, on speed, and on the wheel's pressure (dirt on its blades)."""

    duct: float = 1.0
    filter: float = 1.0
    coil: float = 1.0
    wheel: float = 1.0


@frozen
class Blown:
    """cfm, drops in inches of water, and shaft power over rated at the speed it was asked for."""

    cfm: float
    external: float
    filter: float
    coil: float
    power: float


def blow(path: AirPath, hindered: Hindered, speed: float) -> Blown:
    """The flow at `speed` over rated, and what follows from it."""
    sound = path.external + path.filter + path.coil + path.cabinet
    system = (
        path.external * hindered.duct
        + path.filter * hindered.filter
        + path.coil * hindered.coil
        + path.cabinet
    )
    shut_off = _SHUT_OFF * sound * hindered.wheel
    flow = speed * math.sqrt(shut_off / ((_SHUT_OFF - 1.0) * sound + system))
    squared = flow**2
    at_wheel = flow / speed if speed else 0.0
    power = speed**3 * (_IDLE_POWER + (1.0 - _IDLE_POWER) * at_wheel) * math.sqrt(hindered.wheel)
    return Blown(
        flow * path.cfm,
        path.external * hindered.duct * squared,
        path.filter * hindered.filter * squared,
        path.coil * hindered.coil * squared,
        power,
    )
