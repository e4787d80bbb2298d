"""A number that no unit can show is refused where it is typed, with what it can be."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_quantity, read_text


def test_every_quantity_of_the_rules_says_what_it_can_be(shipped: Knowledge) -> None:
    for quantity in shipped.quantities.values():
        assert quantity.can_be is not None and quantity.can_be[0] < quantity.can_be[1]


@pytest.mark.parametrize(
    ("test", "text"),
    [
        ("suction-pressure", "-5000 psig"), ("suction-pressure", "-15 psig"),
        ("suction-pressure", "-40 bar"), ("head-pressure", "9000"), ("line-volts-idle", "-230 V"),
        ("line-volts-idle", "230/-231/229"), ("line-volts-idle", "40 kV"),
        ("room-carbon-monoxide", "-9 ppm"), ("compressor-amps", "99999 A"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_what_can(test: str, text: str, shipped: Knowledge) -> None:
    """Regression: -5000 psig was taken for a reading."""
    with pytest.raises(NotUnderstood, match=r"cannot be: .* lies between .* and .*; read it again"):
        read_text(shipped.tests[test], text, shipped)


@pytest.mark.parametrize(
    ("test", "text"),
    [
        ("suction-pressure", "-14.7 psig"), ("suction-pressure", "29.9 inHg vac"),
        ("head-pressure", "640 psig"), ("line-volts-idle", "0 V"), ("line-volts-idle", "482"),
        ("motor-insulation", "OL"), ("outdoor-temperature", "-40 F"),
        ("suction-line-temperature", "-40 C"), ("room-carbon-monoxide", "0 ppm"),
    ],
)  # fmt: skip
def test_the_worst_that_there_is_is_taken(test: str, text: str, shipped: Knowledge) -> None:
    if test in shipped.tests and shipped.tests[test].reads:
        assert read_text(shipped.tests[test], text, shipped).text == text
    elif test in shipped.quantities:
        assert read_quantity(shipped.quantities[test], text).text == text


def test_a_file_is_refused_by_the_place_of_what_cannot_be(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, Any]], str]
) -> None:
    case = {
        "complaint": "no-cooling",
        "conditions": {"outdoor-temperature": "4000 F"},
        "readings": [{"test": "suction-pressure", "text": "-5000 psig"}],
    }
    code, out, err = command("assess", case_file(case), "--json")
    assert code == 3
    keys = {row["key"] for row in json.loads(out)["error"]}
    assert keys == {"conditions.outdoor-temperature", "readings[0].text"}
    assert "lies between -14.75 and 3000 psig" in err
