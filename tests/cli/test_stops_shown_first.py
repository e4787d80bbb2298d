"""Where nothing is asked, every STOP that stands over a unit is shown before anything else."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest

Call = Callable[..., tuple[int, str, str]]
HEAD = "STOP over RTU-7, visit "


@pytest.fixture
def stopped(command: Call, typed: Callable[..., None]) -> None:
    """A visit to RTU-7 that a gas smell stopped, handed over."""
    typed("RTU-7", "gas-smell", *[""] * 12, "over", "the gas utility by telephone, just now")
    assert command()[0] == 0


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(
    "words",
    [
        ("diagnose", "--no-input"),
        ("diagnose", "RTU-9", "--no-input"),
        ("inspect", "--sheet"),
        ("inspect", "rtu 7", "--sheet", "--season", "fall"),
        ("visits",),
    ],
)
def test_it_comes_first(words: tuple[str, ...], command: Call) -> None:
    """Regression: a script and a sheet passed it in silence."""
    code, out, _ = command(*words)
    assert code == 0 and out.startswith(HEAD) and "gas odor" in out.splitlines()[0]


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(("unit", "same"), [("", False), ("RTU-9", False), ("RTU-70", False)])
def test_a_script_of_another_unit_has_it_first_in_its_object(
    unit: str, same: bool, command: Call
) -> None:
    code, out, _ = command(*filter(None, ("diagnose", unit, "--json")))
    account = json.loads(out)
    (row,) = account["standing"]
    assert code == 0 and next(iter(account)) == "standing"
    assert (row["id"], row["scope"], row["unit"]) == ("gas-odour", "whole-job", "RTU-7")
    assert row["same_unit"] is same and row["handed_over"] and row["readable"]


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize("unit", ["RTU-7", "rtu 7", "Rtu_07", "rtu#7."])
def test_a_script_of_the_same_unit_is_refused_however_it_is_typed(unit: str, command: Call) -> None:
    code, out, err = command("diagnose", unit, "--json")
    assert code == 2 and err.count("\n") == 1 and f"a STOP stands over {unit}: gas odor" in err
    told = json.loads(out)
    assert told["error"][0]["key"] == "unit" and told["standing"][0]["same_unit"] is True


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(
    "unit", ["RTU seven", "RTU VII", "rooftop seven", "seventh RTU", "RTU-7/8", "RTU-7-1"]
)
def test_a_script_whose_unit_may_be_the_stopped_one_is_told_where_to_look(
    unit: str, command: Call
) -> None:
    """Regression: with its number said otherwise a script went past the STOP."""
    code, out, err = command("diagnose", unit, "--no-input")
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert f"a STOP stands over RTU-7, which may be {unit}: gas odor" in err
    assert "see: troubleshoot report 2" in err
