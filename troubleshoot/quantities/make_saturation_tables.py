"""Makes the saturation tables: `python -m troubleshoot.quantities.make_saturation_tables`.

CoolProp, a development dependency, solves the reference equations of state; the program itself
only reads the tables. One row every 2 °F (1.1 K) from -60 °F up to the last temperature, short of
the critical point, at which both the bubble and the dew pressure can be found.

CoolProp treats R-410A, R-407C, R-404A and R-507A as pseudo-pure fluids with their own fitted
bubble and dew lines. R-454B, R-422D and R-427A are mixtures of their components; there its solver
fails at single temperatures. Such a gap is filled by a straight line of the logarithm of pressure
against the reciprocal of absolute temperature between the nearest solved neighbours, and the
table lists under `filled` what was filled. The tests hold every row to the smooth run of its
neighbours, so that a wrong root of the solver cannot slip in.
"""

import json
import math
from itertools import pairwise
from pathlib import Path
from typing import Final

TABLES: Final = Path(__file__).parent / "saturation_tables"

FLUIDS: Final = {
    "R-22": "R22",
    "R-32": "R32",
    "R-134a": "R134a",
    "R-404A": "R404A",
    "R-407C": "R407C",
    "R-410A": "R410A",
    "R-422D": "R422D.mix",
    "R-427A": "R427A.mix",
    "R-454B": "R454B.mix",
    "R-507A": "R507A",
}
"""The refrigerant's name in the trade, and the name CoolProp knows it by."""

LOWEST_F: Final = -60
HIGHEST_F: Final = 210
STEP_F: Final = 2
WIDEST_GAP_F: Final = 10
_PASCAL_PER_PSI: Final = 6894.757293168


def kelvin(fahrenheit: float) -> float:
    """Return the absolute temperature, K."""
    return (fahrenheit + 459.67) / 1.8


def solved_pressure(fluid: str, fahrenheit: float, vapour_share: int) -> float | None:
    """Return the saturation pressure in psia by CoolProp, or None where its solver fails.

    `vapour_share` is 0 for the bubble line and 1 for the dew line.
    """
    from CoolProp.CoolProp import PropsSI

    try:
        pascal = float(PropsSI("P", "T", kelvin(fahrenheit), "Q", vapour_share, fluid))
    except ValueError:
        return None
    return pascal / _PASCAL_PER_PSI if math.isfinite(pascal) and pascal > 0 else None


def _between(low: tuple[int, float], high: tuple[int, float], fahrenheit: int) -> float:
    """Return the pressure on the line of ln(p) against 1/T through two solved points."""
    (low_f, low_p), (high_f, high_p) = low, high
    share = (1 / kelvin(fahrenheit) - 1 / kelvin(low_f)) / (1 / kelvin(high_f) - 1 / kelvin(low_f))
    return math.exp(math.log(low_p) + share * (math.log(high_p) - math.log(low_p)))


def fill_gaps(line: dict[int, float]) -> dict[int, float]:
    """Return pressures for the missing temperatures that have close solved neighbours."""
    known = sorted(line)
    filled: dict[int, float] = {}
    for low, high in pairwise(known):
        if STEP_F < high - low <= WIDEST_GAP_F:
            for fahrenheit in range(low + STEP_F, high, STEP_F):
                filled[fahrenheit] = _between((low, line[low]), (high, line[high]), fahrenheit)
    return filled


def solved_line(fluid: str, vapour_share: int) -> dict[int, float]:
    """Return the pressures in psia by °F of one line, leaving out where the solver fails."""
    return {
        fahrenheit: pressure
        for fahrenheit in range(LOWEST_F, HIGHEST_F + STEP_F, STEP_F)
        if (pressure := solved_pressure(fluid, fahrenheit, vapour_share)) is not None
    }


def table(name: str) -> dict[str, object]:
    """Return the table of one refrigerant, ready to be written."""
    from CoolProp.CoolProp import get_global_param_string

    bubble, dew = solved_line(FLUIDS[name], 0), solved_line(FLUIDS[name], 1)
    filled = {"bubble": fill_gaps(bubble), "dew": fill_gaps(dew)}
    bubble, dew = bubble | filled["bubble"], dew | filled["dew"]
    rows = []
    for fahrenheit in range(LOWEST_F, HIGHEST_F + STEP_F, STEP_F):
        if fahrenheit not in bubble or fahrenheit not in dew:
            break
        rows.append([fahrenheit, _rounded(bubble[fahrenheit]), _rounded(dew[fahrenheit])])
    top = rows[-1][0]
    return {
        "refrigerant": name,
        "source": f"CoolProp {get_global_param_string('version')} (HEOS), fluid {FLUIDS[name]}",
        "columns": ["temperature F", "bubble psia", "dew psia"],
        "filled": {line: sorted(f for f in points if f <= top) for line, points in filled.items()},
        "rows": rows,
    }


def _rounded(pressure: float) -> float:
    """Return the pressure to seven figures: finer than any interpolation error."""
    return float(f"{pressure:.7g}")


def text_of(made: dict[str, object]) -> str:
    """Return a table as JSON with one row on a line, so that a change can be read in a diff."""
    head = {key: value for key, value in made.items() if key != "rows"}
    rows = made["rows"]
    assert isinstance(rows, list)
    lines = ",\n".join(f"    {json.dumps(row)}" for row in rows)
    return json.dumps(head, indent=2)[:-2] + ',\n  "rows": [\n' + lines + "\n  ]\n}\n"


def main() -> None:
    """Write every table beside this module."""
    TABLES.mkdir(exist_ok=True)
    for name in FLUIDS:
        (TABLES / f"{name}.json").write_text(text_of(table(name)), encoding="ascii")


if __name__ == "__main__":
    main()
