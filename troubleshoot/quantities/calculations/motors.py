"""Calculations about motors and what they drive."""

from typing import Final

from troubleshoot.quantities import motors
from troubleshoot.quantities.calculations.model import (
    WORD,
    Calculation,
    Choice,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)

TOPIC: Final = "Motors"

_DEAD: Final = (
    "Locked out, tagged, proved dead and discharged, leads lifted; the terminal cover of a "
    "charged compressor stays on."
)
_ROTATION: Final = "Keep clear of belts and wheels; measure speed without contact or locked out."


def _winding_check(given: Given) -> Computed:
    found = motors.winding_check(given.number("c-r"), given.number("c-s"), given.number("r-s"))
    cautions: tuple[str, ...] = ()
    if found.verdict == "common-open":
        cautions = (
            "Common open on a hot compressor is most often its internal overload: let it cool, "
            "for an hour or more, and measure again before condemning it.",
        )
    return Computed(
        {
            "expected": found.expected_ohm,
            "difference": found.difference_ohm,
            "verdict": found.verdict,
        },
        cautions,
    )


def _insulation(given: Given) -> Computed:
    corrected = motors.insulation_resistance_at_40c(
        given.number("resistance"), given.number("temperature")
    )
    return Computed({"resistance": corrected, "minimum": motors.MINIMUM_INSULATION_MOHM})


def _fan_laws(given: Given) -> Computed:
    ratios = motors.fan_laws(given.number("speed-1"), given.number("speed-2"))
    by_name = {"flow": ratios.flow, "pressure": ratios.pressure, "power": ratios.power}
    return Computed(
        {name: given.number(name) * by for name, by in by_name.items() if given.has(name)}
    )


def _circuit_ampacity(given: Given) -> Computed:
    sizes = motors.circuit_ampacity(given.number("largest"), given.numbers("others"))
    return Computed(
        {
            "minimum": sizes.minimum_a,
            "maximum": sizes.maximum_a,
            "standard-size": float(sizes.standard_size_a),
        }
    )


WINDINGS: Final = (
    Calculation(
        name="winding-check",
        parameters=(
            Parameter("c-r", "ohm", "common to run", open=True),
            Parameter("c-s", "ohm", "common to start", open=True),
            Parameter("r-s", "ohm", "run to start", open=True),
        ),
        results=(
            Result("expected", "ohm", "run to start, from the other two"),
            Result("difference", "ohm", "run to start as read, less the expected"),
            Result(
                "verdict",
                WORD,
                "consistent, inconsistent, shorted, common-open, run-open, start-open or open",
            ),
        ),
        formula="expected R-S = C-R + C-S; consistent within 5 percent or 0.2 ohm",
        source="windings in series; the allowance is common practice, no source",
        compute=_winding_check,
        cautions=("Inconsistent readings point to a lead, the meter or a winding.", _DEAD),
    ),
    Calculation(
        name="resistance-at-temperature",
        parameters=(
            Parameter("resistance", "ohm", "measured at t1"),
            Parameter("t1", "F", "winding temperature when measured"),
            Parameter("t2", "F", "winding temperature wanted"),
        ),
        results=(Result("resistance", "ohm", "at t2"),),
        formula="resistance x (234.5 + t2) / (234.5 + t1), temperatures in degrees C, copper",
        source="IEC 60034-1 and IEEE 112",
        compute=direct("resistance", motors.resistance_at_temperature, "resistance", "t1", "t2"),
        cautions=("Copper only; aluminum windings have 225 in place of 234.5.", _DEAD),
    ),
    Calculation(
        name="insulation-resistance-at-40c",
        parameters=(
            Parameter("resistance", "Mohm", "winding to frame, read after one minute"),
            Parameter("temperature", "F", "of the winding"),
        ),
        results=(
            Result("resistance", "Mohm", "at 40 degrees C"),
            Result("minimum", "Mohm", "for random-wound motors and those below 1 kV"),
        ),
        formula="resistance x 2 ^ ((temperature - 40) / 10), in degrees C: half per 10 degrees",
        source="IEEE 43-2013, clause on temperature correction and Table 3",
        compute=_insulation,
        cautions=(
            "Halving for each 10 degrees C was used; modern insulation changes less.",
            "Never test a compressor in a vacuum, nor through drives and electronics.",
            _DEAD,
        ),
    ),
)

SPEEDS: Final = (
    Calculation(
        name="synchronous-speed",
        parameters=(
            Parameter("frequency", "Hz", "of the supply"),
            Parameter("poles", "count", "of the motor: 2, 4, 6, 8 ..."),
        ),
        results=(Result("speed", "rpm", "of the turning field"),),
        formula="120 x frequency / poles",
        source="textbook",
        compute=direct("speed", motors.synchronous_speed, "frequency", "poles"),
    ),
    Calculation(
        name="slip",
        parameters=(
            Parameter("sync", "rpm", "synchronous speed"),
            Parameter("running", "rpm", "speed under load"),
        ),
        results=(Result("slip", "percent", "of the synchronous speed"),),
        formula="100 x (sync - running) / sync",
        source="textbook",
        compute=direct("slip", motors.slip, "sync", "running"),
        cautions=(_ROTATION,),
    ),
    Calculation(
        name="fan-laws",
        parameters=(
            Parameter("speed-1", "rpm", "speed at which the rest was read"),
            Parameter("speed-2", "rpm", "speed wanted"),
            Parameter("flow", "cfm", "at speed 1", required=False),
            Parameter("pressure", "in-wc", "at speed 1", required=False),
            Parameter("power", "kW", "at speed 1", required=False),
        ),
        results=(
            Result("flow", "cfm", "at speed 2"),
            Result("pressure", "in-wc", "at speed 2"),
            Result("power", "kW", "at speed 2"),
        ),
        choices=(Choice(("flow", "pressure", "power"), "at least one"),),
        formula="flow goes with speed, pressure with its square, power with its cube",
        source="ASHRAE Handbook, HVAC Systems and Equipment, Fans (fan laws)",
        compute=_fan_laws,
        cautions=(
            "Same fan, duct and air density; savings of power turn out 5 to 15 percent less.",
            "Check the motor's amps against its nameplate after speeding a fan up.",
            _ROTATION,
        ),
    ),
    Calculation(
        name="belt-drive",
        parameters=(
            Parameter("motor-speed", "rpm", "of the motor"),
            Parameter("motor-pulley", "in", "pitch diameter"),
            Parameter("fan-pulley", "in", "pitch diameter"),
        ),
        results=(Result("fan-speed", "rpm", "without belt slip"),),
        formula="motor speed x motor pulley / fan pulley",
        source="kinematics; creep of 1 to 2 percent is common practice, no source",
        compute=direct("fan-speed", motors.belt_drive, "motor-speed", "motor-pulley", "fan-pulley"),
        cautions=("Pitch diameters, not outside ones; a slack belt slips more.", _ROTATION),
    ),
)

POWER: Final = (
    Calculation(
        name="motor-power",
        parameters=(
            Parameter("voltage", "V", "line to line for three phases"),
            Parameter("current", "A", "in one line"),
            Parameter("power-factor", "ratio", "0 to 1, or in percent"),
            Parameter("phases", "count", "1 or 3"),
        ),
        results=(Result("power", "kW", "taken from the line"),),
        formula="voltage x current x power factor / 1000, x 1.732 for three phases",
        source="textbook",
        compute=direct("power", motors.motor_power, "voltage", "current", "power-factor", "phases"),
        cautions=("This is the electrical input; the shaft gives less by the efficiency.",),
    ),
    Calculation(
        name="circuit-ampacity",
        parameters=(
            Parameter("largest", "A", "rated-load amps of the largest motor or compressor"),
            Parameter("others", "A", "all other loads", required=False, fewest=1),
        ),
        results=(
            Result("minimum", "A", "minimum circuit ampacity"),
            Result("maximum", "A", "overcurrent protection, at the very most"),
            Result("standard-size", "A", "largest standard fuse or breaker under that"),
        ),
        formula="minimum = 1.25 x largest + others; maximum = 2.25 x largest + others; standard "
        "size = the next one down",
        source="NEC 440.22(A) and (B), 440.33 and 240.6(A)",
        compute=_circuit_ampacity,
        cautions=(
            "One motor-compressor alone is protected at 175 percent; up to 225 percent only where "
            "it does not start on that (NEC 440.22(A)).",
            "The unit's rating plate and the local code rule; a licensed electrician sizes "
            "circuits.",
        ),
    ),
)

CALCULATIONS: Final = (*WINDINGS, *SPEEDS, *POWER)
