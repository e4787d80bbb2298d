"""The calc command: what a person sees, what a script reads, and the exit codes."""

import json
import subprocess
import sys

import pytest
from click.testing import CliRunner, Result

from tests.cli.golden import golden
from troubleshoot.cli.calc import calc
from troubleshoot.quantities.catalogue import CATALOGUE, TOPICS


def run(*arguments: str) -> Result:
    return CliRunner().invoke(calc, list(arguments))


def test_alone_it_lists_every_calculation_under_its_topic() -> None:
    shown = run().output
    assert [topic for topic in TOPICS if topic.capitalize() not in shown] == []
    assert [name for name in CATALOGUE if f"  {name} " not in shown] == []


@pytest.mark.parametrize("name", CATALOGUE)
def test_help_on_a_name_shows_its_parameters_with_their_units(name: str) -> None:
    done = run(name, "--help")
    assert done.exit_code == 0
    for parameter in CATALOGUE[name].parameters:
        assert f"  {parameter.name} " in done.output


def test_help_tells_choices_defaults_and_what_may_be_left_out() -> None:
    shown = " ".join(run("moist-air", "--help").output.split())
    assert "exactly one of wet-bulb, relative-humidity, dew-point" in shown
    assert "60 Hz if left out" in " ".join(run("capacitance-under-load", "--help").output.split())
    assert "several: 40/5/10" in run("capacitors-in-series", "--help").output


def test_help_alone_is_about_the_command() -> None:
    done = run("--help")
    assert done.exit_code == 0
    assert "[KEY=VALUE]..." in done.output


def test_a_result_is_shown_with_its_unit_formula_source_and_cautions() -> None:
    done = run("superheat", "refrigerant=R-410A", "suction-pressure=118", "line-temperature=52 F")
    assert done.exit_code == 0
    lines = done.output.splitlines()
    assert lines[0] == "superheat"
    assert lines[2].split() == ["superheat", "12.16", "°F"]
    assert "Note: Units assumed, none was typed: suction-pressure in psig." in lines
    assert "Formula: line temperature - DEW temperature at the suction pressure" in lines
    assert "Caution: Dew temperature was used." in lines


def test_a_plus_or_minus_is_shown_behind_the_figure() -> None:
    done = run("temperature-rise", "supply-air=120 +/- 3 F", "return-air=70 +/- 4 F")
    assert "50 +/- 5 °F" in done.output


def test_json_is_one_object_in_the_form_that_scripts_rely_on() -> None:
    done = run("slip", "sync=1200 rpm", "running=1075 rpm", "--json")
    document = json.loads(done.output)
    assert list(document) == ["calculation", "results", "formula", "source", "cautions"]
    assert document["calculation"] == "slip"
    assert document["results"] == {"slip": {"value": 10.41666667, "unit": "percent"}}
    assert isinstance(document["cautions"], list)


def test_in_json_a_verdict_is_a_word_without_a_unit_and_assumed_units_are_cautions() -> None:
    done = run("capacitance-deviation", "rated=40", "measured=39", "tolerance=6", "--json")
    document = json.loads(done.output)
    assert document["results"]["verdict"] == {"value": "within", "unit": None}
    assert document["cautions"][0] == (
        "Units assumed, none was typed: rated in µF, measured in µF."
    )


def test_in_json_a_result_that_cannot_be_had_is_null() -> None:
    done = run("winding-check", "c-r=OL", "c-s=OL", "r-s=4 ohm", "--json")
    results = json.loads(done.output)["results"]
    assert results["expected"] == {"value": None, "unit": "ohm"}
    assert results["verdict"]["value"] == "common-open"


def test_in_json_a_typed_plus_or_minus_is_carried_through() -> None:
    done = run("temperature-rise", "supply-air=120 +/- 3 F", "return-air=70 +/- 4 F", "--json")
    assert json.loads(done.output)["results"]["rise"]["plus_minus"] == 5


IN_WEATHER = (
    "expected", "refrigerant=410a", "metering=txv", "outdoor-dry-bulb=95 F", "return-dry-bulb=80 F",
    "return-wet-bulb=67 F",
)  # fmt: skip


def test_the_page_of_expected_values_as_a_mechanic_sees_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    golden("expected", run(*IN_WEATHER, "rla=8.9 A", "tons=5", "stated-subcooling=10 F").output)


def test_in_json_a_range_has_both_ends_and_its_unit() -> None:
    results = json.loads(run(*IN_WEATHER, "stated-subcooling=10 F", "--json").output)["results"]
    assert results["subcooling"] == {"low": 7, "high": 13, "unit": "F-diff"}


def test_weather_outside_the_table_is_refused_in_one_sentence() -> None:
    done = run(*IN_WEATHER[:3], "outdoor-dry-bulb=40 F", *IN_WEATHER[4:])
    assert (done.exit_code, done.stdout) == (3, "")
    assert done.stderr == (
        "outdoor-dry-bulb is 40 F; it must be at least 55 F and at most 115 F; read it again.\n"
    )


@pytest.mark.parametrize(
    "arguments",
    [
        ("sllip", "sync=1"),
        ("slip", "sync=1800"),
        ("slip", "sync=1800", "running=1750", "speed=2"),
        ("slip", "1800", "1750"),
        ("slip", "--nonsense"),
        ("saturation", "refrigerant=R-22", "temperature=40", "pressure=60"),
    ],
)
def test_wrong_use_ends_with_2(arguments: tuple[str, ...]) -> None:
    assert run(*arguments).exit_code == 2


@pytest.mark.parametrize(
    "arguments",
    [
        ("slip", "sync=1,5", "running=1750"),
        ("slip", "sync=1800", "running=1900"),
        ("saturation", "refrigerant=R-12", "temperature=40"),
        ("saturation", "refrigerant=R-22", "temperature=400"),
    ],
)
def test_a_value_that_cannot_serve_ends_with_3(arguments: tuple[str, ...]) -> None:
    assert run(*arguments).exit_code == 3


def test_errors_are_sentences_on_standard_error_and_nothing_else() -> None:
    done = run("slip", "sync=1800", "running=1900 rpm")
    assert done.stdout == ""
    assert done.stderr == (
        "running is 1900 rpm; it must be at least 0 rpm and at most 1800 rpm; read it again.\n"
    )


def test_errors_in_json_name_key_problem_and_what_to_do_instead() -> None:
    done = run("slip", "sync=1800", "--json")
    assert done.exit_code == 2
    assert json.loads(done.stdout) == {
        "error": [
            {
                "key": "running",
                "problem": "running is missing",
                "instead": "give running=..., speed under load",
            }
        ]
    }


def test_the_command_can_be_named_without_drawing_in_the_formulas() -> None:
    program = (
        "import sys; from troubleshoot.cli.calc import calc;"
        "print([name for name in sys.modules if name.startswith('troubleshoot.quantities.c')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"


def test_no_calculation_imports_what_only_development_has() -> None:
    program = (
        "import sys; from troubleshoot.quantities import catalogue;"
        "catalogue.answer('saturation', [('refrigerant', 'R-454B'), ('temperature', '40')]);"
        "catalogue.answer('moist-air', [('dry-bulb', '80'), ('wet-bulb', '67')]);"
        "print(sorted({'CoolProp', 'numpy', 'chemicals', 'thermo', 'pint'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
