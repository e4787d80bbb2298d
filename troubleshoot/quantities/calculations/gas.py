"""Calculations about gas heat and its flue gas."""

from typing import Final, cast

from troubleshoot.quantities import combustion, gas
from troubleshoot.quantities.calculations.model import (
    WORD,
    Calculation,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)

TOPIC: Final = "Gas heat"

_GAS: Final = (
    "Gas work belongs to licensed technicians under the local code; a smell of gas or CO in the "
    "air stops the work."
)
_O2: Final = Parameter("o2", "percent", "oxygen in the dry flue gas, ahead of dilution")
_FUEL: Final = Parameter(
    "gas", WORD, "which gas", default="natural-gas", choices=tuple(combustion.GASES)
)


def _gas_input_rate(given: Given) -> Computed:
    flow = gas.gas_flow(given.number("dial"), given.number("time"))
    heating_value = given.optional("heating-value")
    if heating_value is None:
        return Computed({"flow": flow}, ("No input without the utility's heating value.",))
    return Computed({"flow": flow, "input": gas.gas_input(flow, heating_value)})


def _orifice_flow(given: Given) -> Computed:
    flow = gas.orifice_flow(
        given.number("diameter"),
        given.number("pressure"),
        given.number("specific-gravity"),
        given.number("discharge-coefficient"),
    )
    heating_value = given.optional("heating-value")
    if heating_value is None:
        return Computed({"flow": flow})
    return Computed({"flow": flow, "input": gas.gas_input(flow, heating_value)})


def _excess_air(given: Given) -> Computed:
    fuel = cast(combustion.Gas, given.word("gas"))
    oxygen = given.number("o2")
    return Computed(
        {
            "excess-air": combustion.excess_air(oxygen, fuel),
            "carbon-dioxide": combustion.carbon_dioxide(oxygen, fuel),
        }
    )


def _co_air_free(given: Given) -> Computed:
    found = combustion.co_air_free(given.number("co"), given.number("o2"))
    cautions: tuple[str, ...] = ()
    if found > combustion.HIGHEST_CO_AIR_FREE:
        cautions = (
            "Above 400 ppm air-free, the ANSI Z21 ceiling for vented heating: shut it down and "
            "find the cause.",
        )
    return Computed({"co-air-free": found}, cautions)


FUEL_SIDE: Final = (
    Calculation(
        name="gas-input-rate",
        parameters=(
            Parameter("dial", "ft3", "volume that passed"),
            Parameter("time", "s", "that it took"),
            Parameter("heating-value", "Btu/ft3", "from the gas utility", required=False),
        ),
        results=(
            Result("flow", "cfh", "of gas"),
            Result("input", "Btu/h", "of heat"),
        ),
        formula="flow = 3600 x dial / time; input = flow x heating value",
        source="definition",
        compute=_gas_input_rate,
        cautions=("All other gas users off; several turns of the dial read better.", _GAS),
    ),
    Calculation(
        name="manifold-input-ratio",
        parameters=(
            Parameter("p1", "in-wc", "manifold pressure to start from"),
            Parameter("p2", "in-wc", "manifold pressure to compare"),
        ),
        results=(Result("ratio", "ratio", "input at p2 over input at p1"),),
        formula="sqrt(p2 / p1)",
        source="flow through an orifice goes with the square root of pressure, textbook",
        compute=direct("ratio", gas.manifold_input_ratio, "p1", "p2"),
        cautions=("Set the manifold to the rating plate, never by this ratio.", _GAS),
    ),
    Calculation(
        name="orifice-flow",
        parameters=(
            Parameter("diameter", "in", "of the hole"),
            Parameter("pressure", "in-wc", "at the manifold"),
            Parameter("specific-gravity", "ratio", "of the gas, air = 1", default="0.60"),
            Parameter("discharge-coefficient", "ratio", "of the orifice", default="0.90"),
            Parameter("heating-value", "Btu/ft3", "from the gas utility", required=False),
        ),
        results=(
            Result("flow", "cfh", "through one orifice"),
            Result("input", "Btu/h", "of one orifice"),
        ),
        formula="1658.5 x discharge coefficient x area x sqrt(pressure / specific gravity)",
        source="relation behind the orifice tables of NFPA 54 (0.60 and 0.90)",
        compute=_orifice_flow,
        cautions=("Drilled and worn orifices differ; never enlarge one by hand.", _GAS),
    ),
    Calculation(
        name="altitude-derate",
        parameters=(Parameter("altitude", "ft", "altitude of the site above the sea"),),
        results=(Result("factor", "ratio", "part of the sea-level rated input"),),
        formula="1 up to 2000 ft; above, 1 - 0.04 x altitude / 1000",
        source="NFPA 54 / ANSI Z223.1",
        compute=direct("factor", gas.altitude_derate, "altitude"),
        cautions=(
            "The rating plate rules; where the utility's gas is derated already, do not do it "
            "twice.",
            _GAS,
        ),
    ),
    Calculation(
        name="temperature-rise",
        parameters=(
            Parameter("supply-air", "F", "out of sight of the heat exchanger"),
            Parameter("return-air", "F", "entering the heat section"),
        ),
        results=(Result("rise", "F-diff", "of the air"),),
        formula="supply air - return air",
        source="definition",
        compute=direct("rise", gas.temperature_rise, "supply-air", "return-air"),
        cautions=("It must lie in the range on the rating plate.",),
    ),
)

FLUE_SIDE: Final = (
    Calculation(
        name="co-air-free",
        parameters=(Parameter("co", "ppm", "carbon monoxide as measured"), _O2),
        results=(Result("co-air-free", "ppm", "without the excess air"),),
        formula="co x 20.9 / (20.9 - o2)",
        source="ANSI Z21 combustion test",
        compute=_co_air_free,
        cautions=("Flue gas only; limits for air that people breathe are others.", _GAS),
    ),
    Calculation(
        name="excess-air",
        parameters=(_O2, _FUEL),
        results=(
            Result("excess-air", "percent", "of the air needed"),
            Result("carbon-dioxide", "percent", "of the dry flue gas"),
        ),
        formula="100 x k x o2 / (20.9 - o2), k = 0.92 natural gas, 0.895 methane, 0.916 propane; "
        "carbon dioxide = highest x (20.9 - o2) / 20.9",
        source="stoichiometry; natural gas: published process-heating figures of the US DOE",
        compute=_excess_air,
        cautions=("The shortcut without k reads 5 to 10 percent higher.", _GAS),
    ),
    Calculation(
        name="combustion-efficiency",
        parameters=(
            Parameter("stack-temperature", "F", "of the flue gas, ahead of dilution"),
            Parameter("air-temperature", "F", "of the combustion air"),
            _O2,
        ),
        results=(
            Result("efficiency", "percent", "on the higher heating value"),
            Result("efficiency-lower", "percent", "on the lower heating value"),
        ),
        formula="100 - stack loss: heat capacity of the flue gas of methane x temperature over air "
        "and the heat of its water vapor",
        source="stack-loss method; heats of combustion and heat capacities by NIST",
        compute=direct(
            {"efficiency": "higher", "efficiency-lower": "lower"},
            combustion.combustion_efficiency,
            "stack-temperature",
            "air-temperature",
            "o2",
        ),
        cautions=(
            "efficiency is on the higher heating value, as North American ratings; on the lower "
            "one it is 8 to 10 points more.",
            "Natural gas, nothing condensing; casing and standby losses are not in it.",
            _GAS,
        ),
    ),
)

CALCULATIONS: Final = (*FUEL_SIDE, *FLUE_SIDE)
