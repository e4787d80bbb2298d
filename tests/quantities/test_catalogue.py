"""The catalogue: complete as promised, consistent with itself, and safe against any text."""

import math
import subprocess
import sys
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities.calculations.model import ANY_UNIT, WORD, Calculation
from troubleshoot.quantities.catalogue import (
    CATALOGUE,
    TOPICS,
    Answer,
    WrongUse,
    WrongValue,
    answer,
    find,
)
from troubleshoot.quantities.span import Span
from troubleshoot.quantities.units import UNITS

PROMISED = {
    "capacitance-under-load": ("current voltage frequency", "capacitance"),
    "capacitance-deviation": (
        "rated measured tolerance",
        "deviation low-limit high-limit verdict",
    ),
    "capacitor-stored-energy": ("capacitance rms-voltage", "energy peak-voltage"),
    "capacitor-discharge-time": ("capacitance resistance start-voltage safe-voltage", "time"),
    "capacitors-in-series": ("values", "capacitance"),
    "capacitors-in-parallel": ("values", "capacitance"),
    "voltage-unbalance": (
        "ab bc ca",
        "average largest-deviation percent derating negative-sequence-factor",
    ),
    "current-unbalance": ("a b c", "average percent"),
    "service-voltage": ("nominal measured", "deviation verdict"),
    "winding-check": ("c-r c-s r-s", "expected difference verdict"),
    "resistance-at-temperature": ("resistance t1 t2", "resistance"),
    "insulation-resistance-at-40c": ("resistance temperature", "resistance minimum"),
    "synchronous-speed": ("frequency poles", "speed"),
    "slip": ("sync running", "slip"),
    "fan-laws": ("speed-1 speed-2 flow pressure power", "flow pressure power"),
    "belt-drive": ("motor-speed motor-pulley fan-pulley", "fan-speed"),
    "motor-power": ("voltage current power-factor phases", "power"),
    "circuit-ampacity": ("largest others", "minimum maximum standard-size"),
    "saturation": (
        "refrigerant temperature pressure altitude",
        "bubble-pressure dew-pressure bubble-temperature dew-temperature",
    ),
    "superheat": (
        "refrigerant suction-pressure line-temperature altitude",
        "saturation-temperature superheat",
    ),
    "subcooling": (
        "refrigerant liquid-pressure line-temperature altitude",
        "saturation-temperature subcooling",
    ),
    "target-superheat": ("return-wet-bulb outdoor-dry-bulb", "superheat"),
    "condensing-over-ambient": (
        "refrigerant liquid-pressure outdoor-dry-bulb altitude",
        "difference",
    ),
    "expected": (
        "refrigerant metering outdoor-dry-bulb return-dry-bulb return-wet-bulb rla tons "
        "chart-suction-pressure chart-head-pressure chart-superheat stated-subcooling",
        "suction-pressure head-pressure superheat subcooling condensing-over-ambient air-split "
        "compressor-amps airflow-per-ton airflow",
    ),
    "compression-ratio": ("suction-pressure discharge-pressure altitude", "ratio"),
    "leak-rate": ("added full-charge days", "rate"),
    "moist-air": (
        "dry-bulb wet-bulb relative-humidity dew-point pressure altitude",
        "wet-bulb relative-humidity dew-point humidity-ratio enthalpy volume",
    ),
    "air-side-capacity": (
        "airflow entering-dry-bulb entering-wet-bulb leaving-dry-bulb leaving-wet-bulb altitude",
        "total sensible latent tons sensible-heat-ratio",
    ),
    "outdoor-air-fraction": ("return-air mixed-air outdoor", "fraction uncertainty"),
    "mixed-air-temperature": ("return-air outdoor fraction", "temperature"),
    "air-velocity": ("velocity-pressure density", "velocity"),
    "airflow-from-heat-rise": ("output rise altitude", "airflow"),
    "airflow-from-electric-heat": ("power rise altitude", "airflow"),
    "target-temperature-split": ("return-dry-bulb return-wet-bulb", "split"),
    "gas-input-rate": ("dial time heating-value", "flow input"),
    "manifold-input-ratio": ("p1 p2", "ratio"),
    "temperature-rise": ("supply-air return-air", "rise"),
    "co-air-free": ("co o2", "co-air-free"),
    "excess-air": ("o2", "excess-air"),
    "combustion-efficiency": ("stack-temperature air-temperature o2", "efficiency"),
    "orifice-flow": ("diameter pressure", "flow"),
    "altitude-derate": ("altitude", "factor"),
    "reading-limits": ("reading percent counts resolution", "error low high"),
    "conformance": ("low-limit high-limit reading u", "probability verdict"),
    "repeatability": ("values", "mean standard-deviation"),
    "false-accept-risk": ("in-tolerance-probability sigma-ratio", "risk"),
}
"""What scripts may rely on: the parameters and results of each calculation."""

calculations = pytest.mark.parametrize("calculation", CATALOGUE.values(), ids=CATALOGUE)


def figures(name: str, **typed: str) -> Mapping[str, object]:
    found = answer(name, [(key.replace("_", "-"), text) for key, text in typed.items()])
    return {result.name: result.figure for result in found.results}


def test_the_names_that_scripts_rely_on_are_all_there_and_no_others() -> None:
    assert set(CATALOGUE) == set(PROMISED)
    assert sum(map(len, TOPICS.values())) == len(CATALOGUE)


@calculations
def test_parameters_and_results_are_as_promised(calculation: Calculation) -> None:
    parameters, results = PROMISED[calculation.name]
    assert set(parameters.split()) <= {each.name for each in calculation.parameters}
    assert set(results.split()) <= {each.name for each in calculation.results}


@calculations
def test_each_calculation_is_complete_and_in_known_units(calculation: Calculation) -> None:
    assert calculation.formula
    assert calculation.source
    taken = [(each.meaning, each.unit) for each in calculation.parameters]
    gained = [(each.meaning, each.unit) for each in calculation.results]
    for meaning, unit in taken + gained:
        assert meaning
        assert unit in {*UNITS, ANY_UNIT, WORD}
    names = {each.name for each in calculation.parameters}
    for choice in calculation.choices:
        assert set(choice.of) <= names


def test_an_unknown_name_gets_the_nearest_one() -> None:
    with pytest.raises(WrongUse, match="did you mean superheat"):
        find("superheet")


def test_a_formula_out_of_its_range_is_a_wrong_value_with_what_to_do() -> None:
    with pytest.raises(WrongValue, match="at most 660 V"):
        figures("capacitance-under-load", current="4 A", voltage="700 V")
    with pytest.raises(WrongValue, match="low limit"):
        figures("conformance", reading="5", u="1", low_limit="9", high_limit="3")


def test_results_that_do_not_exist_here_are_left_out_or_empty() -> None:
    assert set(figures("gas-input-rate", dial="1 ft3", time="36 s")) == {"flow"}
    assert set(figures("saturation", refrigerant="R-22", pressure="68.6")) == {
        "bubble-temperature",
        "dew-temperature",
    }
    lost = figures("voltage-unbalance", ab="480", bc="240", ca="240")
    assert lost["derating"] is None


def test_what_sources_disagree_on_is_said() -> None:
    def cautions(found: Answer) -> str:
        return " ".join((*found.cautions, found.calculation.formula))

    volts = answer("voltage-unbalance", [("ab", "412"), ("bc", "400"), ("ca", "388")])
    assert "0.88" in cautions(volts)
    airflow = answer("airflow-from-heat-rise", [("output", "80000"), ("rise", "50")])
    assert "1.10" in cautions(airflow)
    blend = answer("saturation", [("refrigerant", "R-454B"), ("temperature", "40")])
    assert "1.5 percent" in cautions(blend)
    heat = answer(
        "superheat",
        [("refrigerant", "R-407C"), ("suction-pressure", "63.2"), ("line-temperature", "50")],
    )
    assert "Dew temperature was used." in heat.cautions


def test_a_typed_plus_or_minus_is_carried_through_to_the_results() -> None:
    """Source: JCGM 100, 5.1.2: for a difference, the root of the sum of squares."""
    found = answer("temperature-rise", [("supply-air", "120 +/- 3 F"), ("return-air", "70 ± 4 F")])
    (rise,) = found.results
    assert rise.figure == 50
    assert rise.spread == pytest.approx(5)


def test_without_a_plus_or_minus_no_result_claims_one() -> None:
    (rise,) = answer("temperature-rise", [("supply-air", "120"), ("return-air", "70")]).results
    assert rise.spread is None


IN_WEATHER = {
    "refrigerant": "R-410A",
    "metering": "txv",
    "outdoor-dry-bulb": "95 F",
    "return-dry-bulb": "80 F",
}


def expected_values(**more: str) -> Answer:
    own = {key.replace("_", "-"): text for key, text in more.items()}
    return answer("expected", [*{**IN_WEATHER, **own}.items()])


def test_the_units_own_chart_stands_above_what_is_expected_of_its_like() -> None:
    """Source: California Title 24, RA3.2: 5 F of superheat and 3 F of subcooling either way."""
    found = expected_values(
        return_wet_bulb="67 F",
        chart_suction_pressure="140 psig",
        chart_head_pressure="390 psig",
        chart_superheat="14 F",
        stated_subcooling="11 F",
    )
    own = {each.name: each.figure for each in found.results}
    assert own["suction-pressure"] == Span(135, 145)
    assert own["head-pressure"] == Span(385, 395)
    assert own["superheat"] == Span(9, 19)
    assert own["subcooling"] == Span(8, 14)
    assert found.cautions[0] == (
        "By the unit's own chart or data plate: suction-pressure, head-pressure, superheat, "
        "subcooling."
    )


def test_a_wet_bulb_that_was_left_out_is_said() -> None:
    said = "return-wet-bulb was not given"
    assert said in " ".join(expected_values().cautions)
    assert said not in " ".join(expected_values(return_wet_bulb="67").cautions)


words = st.one_of(
    st.text(max_size=20),
    st.from_regex(
        r"[+-]?[0-9]{1,5}([.,][0-9]{1,3})? ?(F|psig|psia|V|A|uF|%|ft|Btu/h)?", fullmatch=True
    ),
    st.sampled_from(["R-410A", "OL", "208/209/207", "1e9", "nan", "inf", "118 +/- 2"]),
)


@given(st.data(), st.sampled_from(sorted(CATALOGUE)))
def test_whatever_is_typed_gives_finite_numbers_or_one_clear_refusal(
    data: st.DataObject, name: str
) -> None:
    calculation = find(name)
    pairs = [(each.name, data.draw(words, label=each.name)) for each in calculation.parameters]
    try:
        found = answer(name, pairs)
    except WrongUse as refused:
        assert refused.problems
        assert all(each.problem and each.instead for each in refused.problems)
        return
    for result in found.results:
        figure = result.figure
        if isinstance(figure, Span):
            assert math.isfinite(figure.low) and figure.low <= figure.high < math.inf
        else:
            assert figure is None or isinstance(figure, str) or math.isfinite(figure)


def test_the_formulas_alone_start_without_the_catalogue_and_its_libraries() -> None:
    program = (
        "import sys;"
        "from troubleshoot.quantities import air, capacitors, combustion, gas, motors;"
        "from troubleshoot.quantities import refrigerant, saturation, supply;"
        "heavy = {'click', 'pint', 'numpy', 'psychrolib', 'CoolProp', 'yaml',"
        " 'troubleshoot.quantities.catalogue'};"
        "print(sorted(heavy & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
