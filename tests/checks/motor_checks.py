"""How each reference value on motors, fans and circuits is computed."""

from collections.abc import Callable, Mapping
from typing import Any

from tests.checks.reference_entries import Entry, compute
from troubleshoot.quantities import motors


def single_phasing(_entry: Entry) -> float:
    """Return the current for which one phase takes the power of three, over theirs."""
    three = motors.motor_power(460, 10, 0.85, 3)
    return three / motors.motor_power(460, 10, 0.85, 1)


def misfit_windings(entry: Entry) -> str:
    found = compute(
        "winding-check", c_r=entry.typed("c_r"), c_s=entry.typed("c_s"), r_s=entry.typed("r_s")
    )
    return f"{found['verdict']}: R-S must be {found['expected']} ohm"


def open_overload(entry: Entry) -> Any:
    found = compute("winding-check", c_r="OL", c_s="OL", r_s="4.0 ohm")
    assert found["verdict"] == "common-open"
    return entry.expected


def winding_faults(entry: Entry) -> Any:
    assert compute("winding-check", c_r="0 ohm", c_s="3 ohm", r_s="3 ohm")["verdict"] == "shorted"
    assert compute("winding-check", c_r="1 ohm", c_s="OL", r_s="OL")["verdict"] == "start-open"
    return entry.expected


def copper_ratio(entry: Entry) -> float:
    return float(
        compute(
            "resistance-at-temperature",
            resistance="1 ohm",
            t1=entry.typed("t1"),
            t2=entry.typed("t2"),
        )["resistance"]
    )


def hot_temperature(entry: Entry) -> Mapping[str, float]:
    """Return the temperature at which the cold winding would show the hot resistance."""
    low, high = 0.0, 200.0
    while high - low > 0.001:
        middle = (low + high) / 2
        shown = compute(
            "resistance-at-temperature",
            resistance=entry.typed("r_cold"),
            t1=entry.typed("t_cold"),
            t2=f"{middle:.4f} C",
        )["resistance"]
        low, high = (middle, high) if shown < entry.number("r_hot") else (low, middle)
    return {"t_hot_degC": low, "rise_K": low - entry.number("t_cold")}


def minimum_insulation(_entry: Entry) -> float:
    found = compute("insulation-resistance-at-40c", resistance="20 Mohm", temperature="40 C")
    return float(found["minimum"])


def circuit_sizes(entry: Entry) -> Mapping[str, float]:
    amps: list[str] = []
    for load in ("compressors", "fans"):
        count, each = str(entry.inputs[load]["value"]).split(" x ")
        amps += [each] * int(count)
    amps.append(str(entry.inputs["blower"]["value"]))
    amps.sort(key=float)
    found = compute("circuit-ampacity", largest=amps[-1], others=",".join(amps[:-1]))
    return {
        "mca_A": found["minimum"],
        "mop_A": found["maximum"],
        "standard_device_A": found["standard-size"],
    }


def single_motor_conductor(_entry: Entry) -> float:
    return float(compute("circuit-ampacity", largest="100 A")["minimum"])


def fan_ratios(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "fan-laws",
        speed_1="1000 rpm",
        speed_2=f"{1000 * entry.number('speed_ratio')} rpm",
        flow="1 cfm",
        pressure="1 in wc",
        power="1 kW",
    )
    return {
        "flow_ratio": found["flow"],
        "pressure_ratio": found["pressure"],
        "power_ratio": found["power"],
    }


def fan_power(entry: Entry) -> float:
    return float(
        compute(
            "fan-laws",
            speed_1=entry.typed("n1"),
            speed_2=entry.typed("n2"),
            power=entry.typed("power"),
        )["power"]
    )


def speed_reserve(entry: Entry) -> float:
    """Return the speed ratio at which the power has grown by the amps still in hand."""
    low, high = 1.0, 2.0
    while high - low > 1e-9:
        middle = (low + high) / 2
        grown = motors.fan_laws(1, middle).power * entry.number("measured")
        low, high = (middle, high) if grown < entry.number("full_load") else (low, middle)
    return low


def filter_drop(entry: Entry) -> float:
    flow = str(entry.inputs["clean"]["unit"]).split()[-2]
    ratios = motors.fan_laws(float(flow), entry.number("new_flow"))
    return entry.number("clean") * ratios.pressure


CHECKS: Mapping[str, Callable[[Entry], Any]] = {
    "PHL-003": single_phasing,
    "WDG-003": misfit_windings,
    "WDG-005": open_overload,
    "WDG-006": winding_faults,
    **dict.fromkeys(("WDG-008", "WDG-009"), copper_ratio),
    "WDG-012": hot_temperature,
    "INS-001": minimum_insulation,
    "NEC-005": circuit_sizes,
    "NEC-010": single_motor_conductor,
    **dict.fromkeys(
        ("MOT-001", "MOT-002", "MOT-003", "MOT-005"),
        lambda entry: compute(
            "synchronous-speed", frequency=entry.typed("frequency"), poles=entry.typed("poles")
        )["speed"],
    ),
    **dict.fromkeys(
        ("MOT-007", "MOT-008"),
        lambda entry: compute("slip", sync=entry.typed("sync"), running=entry.typed("running"))[
            "slip"
        ],
    ),
    **dict.fromkeys(("MOT-009", "MOT-010", "MOT-011"), fan_ratios),
    "MOT-013": speed_reserve,
    "MOT-015": fan_power,
    "VP-005": filter_drop,
}
"""The reference entry and what computes it."""
