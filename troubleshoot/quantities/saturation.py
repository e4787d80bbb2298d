"""Bubble and dew pressures and temperatures of the refrigerants, read from stored tables.

The tables hold what the reference equations of state give (made by make_saturation_tables); only
the one table asked for is read, once. Between two rows the logarithm of pressure runs straight
against the reciprocal of absolute temperature, which keeps the error below 0.001 °F up to 30 °F
short of the top of a table and below 0.05 °F everywhere, and makes pressure to temperature and
back exact.

Pressures are absolute (psia), temperatures °F. A blend boils over a glide: its liquid starts to
boil at the bubble temperature, its vapour starts to condense at the dew temperature.
"""

import json
import math
from bisect import bisect_right
from functools import cache
from pathlib import Path
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange

Line = Literal["bubble", "dew"]

REFRIGERANTS: Final = (
    "R-22",
    "R-32",
    "R-134a",
    "R-404A",
    "R-407C",
    "R-410A",
    "R-422D",
    "R-427A",
    "R-454B",
    "R-507A",
)
"""The refrigerants for which there is a table, by the names of ANSI/ASHRAE Standard 34."""

_TABLES: Final = Path(__file__).parent / "saturation_tables"
_RANKINE: Final = 459.67
_LONGEST_NAME: Final = 20
_HAIR: Final = 1e-9
"""What rounding may put a value past the end of a table that it was read from."""


class UnknownRefrigerant(OutOfRange):
    """There is no saturation table for the refrigerant named."""


@frozen
class SaturationTable:
    """Reciprocal absolute temperatures (1/°R, falling) and log pressures (rising) of one fluid."""

    refrigerant: str
    reciprocals: tuple[float, ...]
    bubble: tuple[float, ...]
    dew: tuple[float, ...]

    def log_pressures(self, line: Line) -> tuple[float, ...]:
        """Return ln(psia) along the bubble or the dew line."""
        return self.bubble if line == "bubble" else self.dew


@cache
def refrigerant_named(text: str) -> str:
    """Return the refrigerant's standard name for `R-410A`, `r410a` or `410A`.

    Raises UnknownRefrigerant, naming the ones there are.
    """
    bare = _bare(text)
    for name in REFRIGERANTS:
        if _bare(name) == bare:
            return name
    # A likeness of letters is no likeness of fluids: only an unfinished name gets a suggestion.
    near = [name for name in REFRIGERANTS if bare and _bare(name).startswith(bare)]
    hint = f"did you mean {' or '.join(near)}?" if near else f"use {', '.join(REFRIGERANTS)}"
    raise UnknownRefrigerant(
        "refrigerant", f"there is no saturation table for {text[:_LONGEST_NAME]!r}", hint
    )


def _bare(name: str) -> str:
    """Return a refrigerant's name without R, spaces and hyphens, in capitals."""
    letters = "".join(letter for letter in name.upper() if letter.isalnum())
    return letters.removeprefix("R")


@cache
def _table(refrigerant: str) -> SaturationTable:
    stored = json.loads((_TABLES / f"{refrigerant}.json").read_text(encoding="ascii"))
    rows: list[list[float]] = stored["rows"]
    return SaturationTable(
        refrigerant=refrigerant,
        reciprocals=tuple(1 / (row[0] + _RANKINE) for row in rows),
        bubble=tuple(math.log(row[1]) for row in rows),
        dew=tuple(math.log(row[2]) for row in rows),
    )


def table_of(refrigerant: str) -> SaturationTable:
    """Return the table of the refrigerant so named; raise UnknownRefrigerant."""
    return _table(refrigerant_named(refrigerant))


def pressures_of(refrigerant: str, line: Line) -> tuple[float, float]:
    """Return the lowest and the highest psia of the table; raise UnknownRefrigerant."""
    logs = table_of(refrigerant).log_pressures(line)
    return math.exp(logs[0]), math.exp(logs[-1])


def _temperature(refrigerant: str, pressure_psia: float, line: Line) -> float:
    table = table_of(refrigerant)
    logs = table.log_pressures(line)
    log_pressure = math.log(pressure_psia) if 0 < pressure_psia < math.inf else math.nan
    if not logs[0] - _HAIR <= log_pressure <= logs[-1] + _HAIR:
        raise OutOfRange(
            "pressure",
            f"{table.refrigerant} at {pressure_psia:.4g} psia lies outside the saturation table",
            f"it runs from {math.exp(logs[0]):.1f} to {math.exp(logs[-1]):.1f} psia on the "
            f"{line} line; check the reading and the refrigerant",
        )
    upper = min(max(bisect_right(logs, log_pressure), 1), len(logs) - 1)
    share = (log_pressure - logs[upper - 1]) / (logs[upper] - logs[upper - 1])
    low, high = table.reciprocals[upper - 1], table.reciprocals[upper]
    return 1 / (low + share * (high - low)) - _RANKINE


def _pressure(refrigerant: str, temperature_f: float, line: Line) -> float:
    table = table_of(refrigerant)
    lowest, highest = (1 / end - _RANKINE for end in (table.reciprocals[0], table.reciprocals[-1]))
    if not lowest - _HAIR <= temperature_f <= highest + _HAIR:
        raise OutOfRange(
            "temperature",
            f"{table.refrigerant} at {temperature_f:.4g} F lies outside the saturation table",
            f"it runs from {lowest:.0f} to {highest:.0f} F; check the reading and the refrigerant",
        )
    reciprocal = 1 / (temperature_f + _RANKINE)
    upper = bisect_right(table.reciprocals, -reciprocal, key=lambda stored: -stored)
    upper = min(max(upper, 1), len(table.reciprocals) - 1)
    low, high = table.reciprocals[upper - 1], table.reciprocals[upper]
    logs = table.log_pressures(line)
    share = (reciprocal - low) / (high - low)
    return math.exp(logs[upper - 1] + share * (logs[upper] - logs[upper - 1]))


def bubble_temperature(refrigerant: str, pressure_psia: float) -> float:
    """Return the temperature in °F at which the liquid at `pressure_psia` starts to boil.

    Raises UnknownRefrigerant, and OutOfRange outside the table.
    """
    return _temperature(refrigerant, pressure_psia, "bubble")


def dew_temperature(refrigerant: str, pressure_psia: float) -> float:
    """Return the temperature in °F at which the last liquid at `pressure_psia` has boiled.

    Raises UnknownRefrigerant, and OutOfRange outside the table.
    """
    return _temperature(refrigerant, pressure_psia, "dew")


def bubble_pressure(refrigerant: str, temperature_f: float) -> float:
    """Return the absolute pressure in psia over boiling liquid at `temperature_f`.

    Raises UnknownRefrigerant, and OutOfRange outside the table.
    """
    return _pressure(refrigerant, temperature_f, "bubble")


def dew_pressure(refrigerant: str, temperature_f: float) -> float:
    """Return the absolute pressure in psia at which vapour at `temperature_f` starts to condense.

    Raises UnknownRefrigerant, and OutOfRange outside the table.
    """
    return _pressure(refrigerant, temperature_f, "dew")
