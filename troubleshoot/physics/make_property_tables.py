"""Makes the property tables: `python -m troubleshoot.physics.make_property_tables`.

CoolProp solves the reference equations of state once; the unit only reads the tables, since a
mixture takes its solver a tenth of a second a state. R-454B is CoolProp's mixture of 68.9 percent
R-32 and 31.1 percent R-1234yf by mass; R-410A is its pseudo-pure fluid.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

TABLES: Final = Path(__file__).parent / "property_tables"
FLUIDS: Final = {
    "R-22": ("R22", ""),
    "R-32": ("R32", ""),
    "R-410A": ("R410A", ""),
    "R-454B": ("R32&R1234yf", "0.829258&0.170742"),
}
"""The refrigerant's name in the trade; CoolProp's name, and the mole fractions of a mixture."""

ASIDE: Final = tuple(0.05 * step for step in range(40))
"""K to step aside where the solver of a mixture fails at a single temperature."""

HIGHEST_C: Final = {"R-22": 80, "R-32": 72, "R-410A": 66, "R-454B": 70}
"""Short of the critical point, where every state can still be found."""
LOWEST_C: Final = -50
SUPERHEATS: Final = (0.0, 5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 80.0, 105.0, 135.0)
VAPOUR_STEP: Final = 2


def state(name: str) -> Any:
    """CoolProp's state of one refrigerant."""
    from CoolProp.CoolProp import AbstractState

    fluid, fractions = FLUIDS[name]
    made = AbstractState("HEOS", fluid)
    if fractions:
        made.set_mole_fractions([float(share) for share in fractions.split("&")])
    return made


def saturation_row(fluid: Any, celsius: float) -> list[float]:
    """T, bubble and dew Pa; J/kg, kg/m3 of the liquid; J/kg, J/kg K, kg/m3 of the vapour."""
    from CoolProp.CoolProp import QT_INPUTS

    fluid.update(QT_INPUTS, 0, celsius + 273.15)
    liquid = [fluid.hmass(), fluid.rhomass()]
    bubble = fluid.p()
    fluid.update(QT_INPUTS, 1, celsius + 273.15)
    vapour = [fluid.hmass(), fluid.smass(), fluid.rhomass()]
    return [celsius, bubble, fluid.p(), *liquid, *vapour]


def vapour_row(fluid: Any, celsius: float) -> list[float]:
    """J/kg by superheat at the dew pressure of this temperature, then J/kg K, then kg/m3."""
    from CoolProp.CoolProp import PT_INPUTS, QT_INPUTS, iphase_gas, iphase_not_imposed

    fluid.update(QT_INPUTS, 1, celsius + 273.15)
    pressure = fluid.p()
    found = [[fluid.hmass(), fluid.smass(), fluid.rhomass()]]
    fluid.specify_phase(iphase_gas)
    for superheat in SUPERHEATS[1:]:
        fluid.update(PT_INPUTS, pressure, celsius + superheat + 273.15)
        found.append([fluid.hmass(), fluid.smass(), fluid.rhomass()])
    fluid.specify_phase(iphase_not_imposed)
    return [number for column in zip(*found, strict=True) for number in column]


def table(name: str) -> dict[str, Any]:
    """The table of one refrigerant, ready to be written."""
    from CoolProp.CoolProp import get_global_param_string

    highest = HIGHEST_C[name]
    return {
        "refrigerant": name,
        "source": f"CoolProp {get_global_param_string('version')} (HEOS), {' '.join(FLUIDS[name])}",
        "superheats": list(SUPERHEATS),
        "saturation": [
            _rounded(solved(saturation_row, name, celsius))
            for celsius in range(LOWEST_C, highest + 1)
        ],
        "vapour": [
            _rounded(solved(vapour_row, name, celsius))
            for celsius in range(LOWEST_C, highest + 1, VAPOUR_STEP)
        ],
    }


def solved(values: Callable[[Any, float], list[float]], name: str, celsius: float) -> list[float]:
    """Values at a temperature; where the solver fails there, between the nearest on both sides."""
    low, high = (_nearest(values, name, celsius, way) for way in (-1, 1))
    share = low[0] / (low[0] + high[0]) if low[0] else 0.0
    return [a + share * (b - a) for a, b in zip(low[1], high[1], strict=True)]


def _nearest(
    values: Callable[[Any, float], list[float]], name: str, celsius: float, way: int
) -> tuple[float, list[float]]:
    """The nearest solved values on one side, and how far off in K."""
    for aside in ASIDE:
        try:
            return aside, values(state(name), celsius + way * aside)
        except ValueError:
            continue
    raise ValueError(f"no state of {name} near {celsius} degrees C")


def _rounded(numbers: list[float]) -> list[float]:
    return [float(f"{number:.7g}") for number in numbers]


def text_of(made: dict[str, Any]) -> str:
    """A table as JSON with one row on a line, so that a change can be read in a diff."""
    head = json.dumps({k: v for k, v in made.items() if k not in ("saturation", "vapour")})[:-1]
    parts = [
        f'"{key}": [\n' + ",\n".join(json.dumps(row) for row in made[key]) + "\n]"
        for key in ("saturation", "vapour")
    ]
    body = ",\n".join(parts)
    return f"{head},\n{body}}}\n"


def main() -> None:
    """Write every table beside this module."""
    TABLES.mkdir(exist_ok=True)
    for name in FLUIDS:
        (TABLES / f"{name}.json").write_text(text_of(table(name)), encoding="ascii")


if __name__ == "__main__":
    main()
