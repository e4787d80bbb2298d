"""The maker of the saturation tables: what it writes, and how it fills what cannot be solved."""

import json

import pytest

from troubleshoot.quantities import make_saturation_tables as maker


@pytest.mark.parametrize("name", ["R-22", "R-407C", "R-454B"])
def test_making_a_table_again_gives_the_stored_one(name: str) -> None:
    stored = json.loads((maker.TABLES / f"{name}.json").read_text(encoding="ascii"))
    made = json.loads(maker.text_of(maker.table(name)))
    assert made["filled"] == stored["filled"]
    assert [row[0] for row in made["rows"]] == [row[0] for row in stored["rows"]]
    for again, before in zip(made["rows"], stored["rows"], strict=True):
        assert again == pytest.approx(before, rel=1e-5)


def test_a_gap_is_filled_on_the_line_of_log_pressure_against_reciprocal_temperature() -> None:
    solved = {
        fahrenheit: maker.solved_pressure("R22", fahrenheit, 1) for fahrenheit in range(0, 42, 2)
    }
    known = {
        fahrenheit: pressure
        for fahrenheit, pressure in solved.items()
        if pressure is not None and fahrenheit not in (20, 22)
    }
    filled = maker.fill_gaps(known)
    assert sorted(filled) == [20, 22]
    for fahrenheit, pressure in filled.items():
        assert pressure == pytest.approx(solved[fahrenheit], rel=3e-4)


def test_a_wide_gap_is_left_open() -> None:
    assert maker.fill_gaps({0: 40.0, 2 + maker.WIDEST_GAP_F: 50.0}) == {}


def test_what_the_solver_cannot_do_is_left_out() -> None:
    assert maker.solved_pressure("R22", 300, 0) is None


@pytest.mark.parametrize("name", maker.FLUIDS)
def test_each_stored_table_says_how_it_was_made_and_what_was_filled(name: str) -> None:
    stored = json.loads((maker.TABLES / f"{name}.json").read_text(encoding="ascii"))
    assert stored["refrigerant"] == name
    assert stored["source"].startswith("CoolProp")
    temperatures = {row[0] for row in stored["rows"]}
    assert set(stored["filled"]["bubble"]) | set(stored["filled"]["dew"]) <= temperatures
