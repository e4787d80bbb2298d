"""The 24 V chain: transformer, thermostat's wires, contactor coil.

A 40 VA transformer falls by a tenth from no load to full (common practice, no source); a 24 V
contactor pulls in from 18 V and lets go under 15 V (common practice, no source).
"""

from __future__ import annotations

from typing import Final

from troubleshoot.frozen import frozen

PULLS_IN: Final = 18.0
OPEN_VOLTS: Final = 27.0
SAGS: Final = 1.6
"""Volts lost from no load to this load of board, relays and contactors."""
HELD: Final = 0.35
"""Amps of a contactor coil that is in; it takes three times that to pull in."""


@frozen
class Control:
    """Volts of the secondary and at the contactor's coil; whether it pulls in."""

    secondary: float
    coil: float
    pulls_in: bool


def control(supply: float, tap: float, cable_ohms: float, contactors: int = 1) -> Control:
    """The chain with `supply` volts over the plate's at the transformer."""
    secondary = OPEN_VOLTS * supply * tap - SAGS
    amps = HELD * contactors
    coil = secondary - amps * cable_ohms
    pulling = secondary - 3.0 * amps * cable_ohms
    return Control(secondary, max(coil, 0.0), pulling >= PULLS_IN)
