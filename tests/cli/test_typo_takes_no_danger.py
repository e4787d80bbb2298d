"""A typo in a file takes away no danger that its other lines or words tell; the file stays refused.

Regression: one line about the typo, and nothing of the gas.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

Call = Callable[..., tuple[int, str, str]]

TOLD = [
    "readings:\n  combustible-gas-sweep: leak\n  flame-luk: sound\n",
    "readings:\n  - {test: flame-luk, outcome: sound}\n  - {test: combustible-gas-sweep, "
    "outcome: leak}\n",
    "complaint: no heat and it smells of gas\n",
    "complaint: no-heat\nreadings:\n  - {test: thermostat-settings, text: correct but I smell gas "
    "here}\n",
    "complaint: no-heat\nnote: I smell gas at the unit\n",
    "complaint: no-heat\nreadings:\n  combustible-gas-sweep: leak\n  thermostat-settings: [corr\n",
    "complaint: no-heat\n\tnote: I smell gas at the unit\n",
]
NOT_TOLD = [
    "readings:\n  combustible-gas-sweep: none\n  flame-luk: sound\n",
    "complaint: no-heat\nreadings:\n  - {test: flame-luk, text: no gas smell}\n",
    "complaint: noheat\n",
    "unit: {heat: gas}\nreadings:\n  - {test: condenser-fan-turning, text: turning right way}\n",
    "unit: {heat: gas, fuel: natural-gas}\ncomplaint: noheat\n",
    "unit: {heat: gas heat, fuel: propane}\ncomplaint: noheat\n",
    "unit:\n  heat: gas\n  fuel: LP\nreadings:\n  thermostat-settings: [corr\n",
    'unit: {"heat": "gas", "fuel": "propane"}\nreadings:\n  thermostat-settings: [corr\n',
]
FUEL_ESCAPING = [
    "unit: {heat: gas leak}\ncomplaint: noheat\n",
    "unit: {heat: gas}\nnote: gas\ncomplaint: noheat\n",
    "unit: {fuel: smell of propane}\ncomplaint: noheat\n",
    "unit:\n  heat: gas\nnote: gas everywhere\nreadings:\n  thermostat-settings: [corr\n",
]


@pytest.mark.parametrize("command_line", [("assess",), ("diagnose", "RTU-4", "--answers")])
@pytest.mark.parametrize("text", TOLD)
def test_a_danger_is_told_before_the_typo(
    text: str, command_line: tuple[str, ...], command: Call, tmp_path: Path
) -> None:
    path = tmp_path / "case.yaml"
    path.write_text(text, "utf-8")
    code, out, err = command(*command_line, str(path))
    first, *more = err.splitlines()
    assert code == 3 and not out
    assert first.startswith("DANGER - STOP") and "gas" in first
    assert any(str(path) in line or ": " in line for line in more), err
    code, out, _ = command(*command_line, str(path), "--json")
    told = json.loads(out)
    assert code == 3 and told["error"] and told["dangers"][0] == first


@pytest.mark.parametrize("text", NOT_TOLD)
def test_what_tells_no_danger_is_refused_as_ever(text: str, command: Call, tmp_path: Path) -> None:
    path = tmp_path / "case.yaml"
    path.write_text(text, "utf-8")
    code, out, err = command("assess", str(path), "--json")
    assert code == 3 and "STOP" not in err and list(json.loads(out)) == ["error"]


@pytest.mark.parametrize("text", FUEL_ESCAPING)
def test_gas_that_is_no_fact_of_the_unit_is_a_danger(
    text: str, command: Call, tmp_path: Path
) -> None:
    """The fuel of a unit is told under its fact, and in none of the words beside it."""
    path = tmp_path / "case.yaml"
    path.write_text(text, "utf-8")
    code, _, err = command("assess", str(path))
    assert code == 3 and err.startswith("DANGER - STOP")
