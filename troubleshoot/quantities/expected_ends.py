"""Either end of what a sound unit shows now, each as a formula that rules may name.

All take refrigerant and metering as words, and in F the outdoor air, the air entering the indoor
coil and, where they were read, the return air with its wet bulb; where outdoor air is mixed in,
that says nothing of the mixture. All give F and raise OutOfRange outside the table (source: see
`quantities.expected`).
"""

from __future__ import annotations

from troubleshoot.quantities.expected import Conditions, expected_ends


def evaporating_least(refrigerant: str, metering: str, *air: float) -> float:
    """Lower end of the evaporating temperature."""
    return _ends("evaporating", refrigerant, metering, air)[0]


def evaporating_most(refrigerant: str, metering: str, *air: float) -> float:
    """Upper end of the evaporating temperature."""
    return _ends("evaporating", refrigerant, metering, air)[1]


def condensing_over_ambient_least(refrigerant: str, metering: str, *air: float) -> float:
    """Lower end of the condensing temperature over the outdoor air."""
    return _ends("condensing-over-ambient", refrigerant, metering, air)[0]


def condensing_over_ambient_most(refrigerant: str, metering: str, *air: float) -> float:
    """Upper end of the condensing temperature over the outdoor air."""
    return _ends("condensing-over-ambient", refrigerant, metering, air)[1]


def _ends(
    column: str, refrigerant: str, metering: str, air: tuple[float, ...]
) -> tuple[float, float]:
    outdoor, entering, *returned = air
    is_of_it = bool(returned) and returned[0] == entering
    wet_bulb = returned[1] if is_of_it else None
    return expected_ends(Conditions(refrigerant, metering, outdoor, entering, wet_bulb))[column]
