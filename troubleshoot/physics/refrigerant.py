"""A refrigerant's states, read from tables that CoolProp filled (make_property_tables).

Temperatures in degrees C, pressures in Pa absolute, enthalpies in J/kg, entropies in J/kg K,
densities in kg/m3. Beyond a table's ends its last slope goes on, so that a solver that strays
there finds its way back; what it hands back as found is held to lie inside.
"""

from __future__ import annotations

import json
import math
from bisect import bisect_right
from functools import cache

from troubleshoot.physics.make_property_tables import LOWEST_C, TABLES, VAPOUR_STEP

Column = tuple[float, ...]


class Refrigerant:
    """One refrigerant: the saturated liquid and vapour, and the superheated vapour."""

    def __init__(self, name: str) -> None:
        stored = json.loads((TABLES / f"{name}.json").read_text(encoding="ascii"))
        rows = stored["saturation"]
        self.name = name
        self.highest = float(rows[-1][0])
        columns = [tuple(float(v) for v in column) for column in zip(*rows, strict=True)]
        _, bubble, dew, self._h_liquid, self._rho_liquid, self._h_vapour = columns[:6]
        self._s_vapour, self._rho_vapour = columns[6:]
        self._ln_bubble = tuple(math.log(p) for p in bubble)
        self._ln_dew = tuple(math.log(p) for p in dew)
        self._superheats: Column = tuple(stored["superheats"])
        self._vapour: tuple[Column, ...] = tuple(tuple(row) for row in stored["vapour"])

    def dew_pressure(self, celsius: float) -> float:
        """Pa at which vapour of this temperature starts to condense."""
        return math.exp(_at(self._ln_dew, celsius))

    def bubble_pressure(self, celsius: float) -> float:
        """Pa over boiling liquid of this temperature."""
        return math.exp(_at(self._ln_bubble, celsius))

    def dew_temperature(self, pascal: float) -> float:
        """Degrees C at which the last liquid boils."""
        return _where(self._ln_dew, math.log(max(pascal, 1.0)))

    def bubble_temperature(self, pascal: float) -> float:
        """Degrees C at which the liquid starts to boil."""
        return _where(self._ln_bubble, math.log(max(pascal, 1.0)))

    def liquid_enthalpy(self, celsius: float) -> float:
        """J/kg of liquid, subcooled or not: pressure hardly matters."""
        return _at(self._h_liquid, celsius)

    def liquid_temperature(self, enthalpy: float) -> float:
        """Degrees C of liquid of this enthalpy."""
        return _where(self._h_liquid, enthalpy)

    def liquid_density(self, celsius: float) -> float:
        """kg/m3 of liquid."""
        return max(_at(self._rho_liquid, celsius), 100.0)

    def vapour_enthalpy(self, celsius: float) -> float:
        """J/kg of saturated vapour."""
        return _at(self._h_vapour, celsius)

    def vapour_density(self, celsius: float) -> float:
        """kg/m3 of saturated vapour."""
        return max(_at(self._rho_vapour, celsius), 0.5)

    def superheat(self, dew_c: float, enthalpy: float) -> float:
        """K above the dew point, for vapour of this enthalpy at the dew point's pressure."""
        return self._superheat_where(dew_c, 0, enthalpy)

    def superheat_at_entropy(self, dew_c: float, entropy: float) -> float:
        """K above the dew point, for vapour of this entropy at the dew point's pressure."""
        return self._superheat_where(dew_c, 1, entropy)

    def superheated(self, dew_c: float, superheat: float) -> tuple[float, float, float]:
        """J/kg, J/kg K and kg/m3 of vapour this many K above its dew point."""
        low, high, share = self._rows(dew_c)
        at, part = self._place(superheat)
        found = []
        for column in range(3):
            i = column * len(self._superheats) + at
            below = low[i] + part * (low[i + 1] - low[i])
            above = high[i] + part * (high[i + 1] - high[i])
            found.append(below + share * (above - below))
        return found[0], found[1], max(found[2], 0.5)

    def _rows(self, dew_c: float) -> tuple[Column, Column, float]:
        x = (dew_c - LOWEST_C) / VAPOUR_STEP
        i = min(max(int(x), 0), len(self._vapour) - 2)
        return self._vapour[i], self._vapour[i + 1], x - i

    def _place(self, superheat: float) -> tuple[int, float]:
        i = min(max(bisect_right(self._superheats, superheat) - 1, 0), len(self._superheats) - 2)
        low, high = self._superheats[i], self._superheats[i + 1]
        return i, (superheat - low) / (high - low)

    def _superheat_where(self, dew_c: float, column: int, wanted: float) -> float:
        low, high, share = self._rows(dew_c)
        start, many = column * len(self._superheats), len(self._superheats)
        line = [low[i] + share * (high[i] - low[i]) for i in range(start, start + many)]
        i = min(max(bisect_right(line, wanted) - 1, 0), many - 2)
        part = (wanted - line[i]) / (line[i + 1] - line[i])
        return self._superheats[i] + part * (self._superheats[i + 1] - self._superheats[i])


@cache
def refrigerant(name: str) -> Refrigerant:
    """The refrigerant of this name; FileNotFoundError where there is no table of it."""
    return Refrigerant(name)


def _at(column: Column, celsius: float) -> float:
    """A value on a grid of one K from the lowest temperature."""
    x = celsius - LOWEST_C
    i = min(max(int(x), 0), len(column) - 2)
    return column[i] + (x - i) * (column[i + 1] - column[i])


def _where(column: Column, wanted: float) -> float:
    """The temperature at which a rising column has this value."""
    i = min(max(bisect_right(column, wanted) - 1, 0), len(column) - 2)
    return LOWEST_C + i + (wanted - column[i]) / (column[i + 1] - column[i])
