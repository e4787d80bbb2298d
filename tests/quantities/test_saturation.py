"""Saturation tables against CoolProp, against a second library, and against themselves."""

import subprocess
import sys
from collections.abc import Callable

import pytest
from chemicals import vapor_pressure
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import make_saturation_tables as maker
from troubleshoot.quantities import saturation
from troubleshoot.quantities.ranges import OutOfRange

RANKINE = 459.67
PSI = 6894.757293168
refrigerants = st.sampled_from(saturation.REFRIGERANTS)
shares = st.floats(min_value=0, max_value=1)

TO_TEMPERATURE: dict[str, Callable[[str, float], float]] = {
    "bubble": saturation.bubble_temperature,
    "dew": saturation.dew_temperature,
}
TO_PRESSURE: dict[str, Callable[[str, float], float]] = {
    "bubble": saturation.bubble_pressure,
    "dew": saturation.dew_pressure,
}


def ends(refrigerant: str) -> tuple[float, float]:
    """Return the lowest and highest temperature of a table, °F."""
    reciprocals = saturation.table_of(refrigerant).reciprocals
    return 1 / reciprocals[0] - RANKINE, 1 / reciprocals[-1] - RANKINE


@pytest.mark.parametrize("line", ["bubble", "dew"])
@pytest.mark.parametrize("refrigerant", saturation.REFRIGERANTS)
def test_between_its_rows_a_table_agrees_with_coolprop(refrigerant: str, line: str) -> None:
    """Source: CoolProp, reference equations of state; allowed: 0.001 F, near the top 0.05 F."""
    lowest, highest = ends(refrigerant)
    solved = 0
    for fahrenheit in range(int(lowest) + 1, int(highest), 2):
        pressure = maker.solved_pressure(
            maker.FLUIDS[refrigerant], fahrenheit, 0 if line == "bubble" else 1
        )
        if pressure is None:
            continue
        solved += 1
        near_top = fahrenheit > highest - 30
        found = TO_TEMPERATURE[line](refrigerant, pressure)
        assert found == pytest.approx(fahrenheit, abs=0.05 if near_top else 0.001)
    assert solved > 90


@pytest.mark.parametrize(
    ("refrigerant", "registry_number"),
    [("R-22", "75-45-6"), ("R-32", "75-10-5"), ("R-134a", "811-97-2")],
)
def test_pure_refrigerants_agree_with_a_second_library(
    refrigerant: str, registry_number: str
) -> None:
    """Source: extended Antoine equation, Poling and others 2001, as held by `chemicals`."""
    row = vapor_pressure.Psat_data_AntoineExtended.loc[registry_number]
    for fahrenheit in (30, 60, 90, 120, 140):
        pascal = vapor_pressure.TRC_Antoine_extended(
            maker.kelvin(fahrenheit),
            *(row[name] for name in ("Tc", "to", "A", "B", "C", "n", "E", "F")),
        )
        found = saturation.dew_pressure(refrigerant, fahrenheit)
        assert found == pytest.approx(pascal / PSI, rel=0.01)


@given(refrigerants, st.sampled_from(["bubble", "dew"]), shares)
def test_temperature_to_pressure_and_back_is_exact(
    refrigerant: str, line: str, share: float
) -> None:
    lowest, highest = ends(refrigerant)
    fahrenheit = lowest + share * (highest - lowest)
    pressure = TO_PRESSURE[line](refrigerant, fahrenheit)
    assert TO_TEMPERATURE[line](refrigerant, pressure) == pytest.approx(fahrenheit, abs=1e-6)


@given(refrigerants, shares, shares)
def test_warmer_is_always_at_higher_pressure_and_bubble_never_below_dew(
    refrigerant: str, first: float, second: float
) -> None:
    lowest, highest = ends(refrigerant)
    low, high = sorted(lowest + share * (highest - lowest) for share in (first, second))
    for to_pressure in TO_PRESSURE.values():
        assert to_pressure(refrigerant, low) <= to_pressure(refrigerant, high) * (1 + 1e-12)
    bubble, dew = (to_pressure(refrigerant, low) for to_pressure in TO_PRESSURE.values())
    assert bubble >= dew * (1 - 1e-12)


@pytest.mark.parametrize("refrigerant", saturation.REFRIGERANTS)
def test_no_row_breaks_the_smooth_run_of_its_neighbours(refrigerant: str) -> None:
    table = saturation.table_of(refrigerant)
    for logs in (table.bubble, table.dew):
        for row in range(1, len(logs) - 1):
            low, middle, high = table.reciprocals[row - 1 : row + 2]
            straight = logs[row - 1] + (middle - low) / (high - low) * (
                logs[row + 1] - logs[row - 1]
            )
            assert logs[row] == pytest.approx(straight, abs=1e-3)


@pytest.mark.parametrize("refrigerant", saturation.REFRIGERANTS)
def test_every_table_covers_what_a_rooftop_unit_can_show(refrigerant: str) -> None:
    lowest, highest = ends(refrigerant)
    assert lowest <= -40
    assert highest >= 150


@pytest.mark.parametrize("temperature", [-61, 300, float("nan")])
def test_outside_its_table_a_temperature_is_refused(temperature: float) -> None:
    with pytest.raises(OutOfRange, match="saturation table"):
        saturation.dew_pressure("R-410A", temperature)


@pytest.mark.parametrize("pressure", [-5, 0, 1, 900, float("nan"), float("inf")])
def test_outside_its_table_a_pressure_is_refused(pressure: float) -> None:
    with pytest.raises(OutOfRange, match="psia"):
        saturation.bubble_temperature("R-410A", pressure)


@pytest.mark.parametrize("typed", ["R-410A", "r410a", "410a", " R 410A ", "R-410a"])
def test_a_refrigerant_may_be_written_as_people_write_it(typed: str) -> None:
    assert saturation.refrigerant_named(typed) == "R-410A"


@pytest.mark.parametrize("typed", ["R-12", "", "air", "R-410B", "x" * 1000])
def test_an_unknown_refrigerant_is_never_taken_for_a_like_one(typed: str) -> None:
    with pytest.raises(saturation.UnknownRefrigerant, match="R-22, R-32"):
        saturation.refrigerant_named(typed)


def test_an_unfinished_name_gets_a_suggestion() -> None:
    with pytest.raises(saturation.UnknownRefrigerant, match="did you mean R-410A"):
        saturation.refrigerant_named("R410")


def test_one_answer_reads_one_table_and_draws_in_nothing_heavy() -> None:
    program = (
        "import sys; from troubleshoot.quantities import saturation;"
        "saturation.dew_temperature('R-410A', 132.7);"
        "assert saturation._table.cache_info().currsize == 1;"
        "heavy = {'CoolProp', 'pint', 'numpy', 'psychrolib', 'click', 'yaml'};"
        "print(sorted(heavy & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
