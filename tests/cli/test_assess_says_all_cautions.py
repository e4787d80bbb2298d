"""What `assess` tells people has every caution that it tells scripts, before any cause."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Command = Callable[..., tuple[int, str, str]]

UNIT = {"refrigerant": "R-454B", "metering": "TXV", "heat": "electric", "circuits": "one"}
LOW: dict[str, Any] = {
    "unit": UNIT,
    "complaint": "weak-cooling",
    "conditions": {"outdoor-temperature": "95 F", "minutes-running": 20},
    "readings": [
        {"test": "suction-pressure", "text": "88 psig"},
        {"test": "suction-line-temperature", "text": "58 F"},
        {"test": "head-pressure", "text": "280 psig"},
        {"test": "liquid-line-temperature", "text": "95 F"},
    ],
}
STANDS: dict[str, Any] = {
    **LOW,
    "readings": [*LOW["readings"], {"test": "walk-round", "outcome": "water-in-electrics"}],
}


@pytest.mark.parametrize("case", [LOW, STANDS])
def test_nothing_that_scripts_are_warned_of_is_kept_from_people(
    case: dict[str, Any], command: Command, tmp_path: Path
) -> None:
    """Regression: a charge of R-454B said to be lost, and no word that it burns."""
    file = tmp_path / "case.json"
    file.write_text(json.dumps(case), "utf-8")
    cautions = json.loads(command("assess", str(file), "--json")[1])["cautions"]
    text = " ".join(command("assess", str(file))[1].split())
    said = [" ".join(line.split()) for row in cautions for line in row["says"]]
    assert said and "flammable-refrigerant" in [row["id"] for row in cautions]
    places = [text.index(line) for line in said]
    assert places == sorted(places)
    heading = re.search(r"The cause:|Not settled\.|The diagnosis stops here\.", text)
    assert heading is not None and places[-1] < heading.start()
    standing = [row["stands"] for row in cautions]
    assert standing == sorted(standing, reverse=True)


def test_under_a_stop_for_the_whole_job_no_caution_of_a_repair_is_read(
    command: Command, tmp_path: Path
) -> None:
    """Regression: under a smell of gas, how a gas line is tested for leaks above 1/2 psi."""
    file = tmp_path / "case.json"
    smelled = {
        "unit": {"heat": "gas", "fuel": "natural-gas"},
        "complaint": "no-heat",
        "readings": [
            {"test": "walk-round", "outcome": "gas-odour"},
            {"test": "combustible-gas-sweep", "text": "25 % LEL"},
        ],
    }
    file.write_text(json.dumps(smelled), "utf-8")
    told = json.loads(command("assess", str(file), "--json")[1])
    assert told["ending"] == "stopped" and told["cautions"]
    assert [row["id"] for row in told["cautions"] if not row["stands"]] == []


def test_where_nothing_was_read_nothing_is_found_to_be_right(
    command: Command, tmp_path: Path
) -> None:
    """Regression: of an empty unit it was told that nothing is wrong on these readings."""
    path = tmp_path / "case.yaml"
    path.write_text("unit: {}\n", "utf-8")
    code, out, _ = command("assess", str(path))
    assert code == 0 and "Nothing was read, and nothing is judged." in out
    assert "Nothing wrong" not in out
