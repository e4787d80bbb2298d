"""The pressure of the air at a site: it falls with altitude, and gauge readings lean on it."""

from typing import Final

from troubleshoot.quantities.ranges import require
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

_LOWEST_FT: Final = -1500.0
_HIGHEST_FT: Final = 15000.0


def standard_pressure(altitude_ft: float) -> float:
    """Return the pressure of the standard atmosphere in psia at an altitude in ft.

    14.696 x (1 - 6.8754e-6 x altitude) ^ 5.2559 (ASHRAE Handbook, Fundamentals, chapter 1). The
    weather moves it by 2 % either way. Valid from -1500 to 15,000 ft. Raises OutOfRange.
    """
    require("altitude", altitude_ft, "ft", at_least=_LOWEST_FT, at_most=_HIGHEST_FT)
    return float(STANDARD_ATMOSPHERE_PSIA * (1 - 6.8754e-6 * altitude_ft) ** 5.2559)


def density_ratio(pressure_psia: float) -> float:
    """Return the density of air at this pressure over that at sea level, temperature alike."""
    return pressure_psia / STANDARD_ATMOSPHERE_PSIA
