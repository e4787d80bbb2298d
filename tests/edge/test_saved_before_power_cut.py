"""What is lost with the power is read before the power is cut: the board's code, the sequence."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

SAVED = ("board-code", "operating-sequence")
CASE: dict[str, Any] = {
    "unit": {"heat": "gas"},
    "complaint": "no-heat",
    "readings": {
        "thermostat-settings": "correct",
        "flame-rod": "coated",
        "air-filters": "loaded",
        "board-code": "code-shown",
        "operating-sequence": "stops-at-safety",
    },
}


def asked(command: Call, path: str) -> list[str]:
    plain = json.loads(command("diagnose", "--answers", path, "--json")[1])
    return [row["test"] for row in plain["asked"]]


def test_the_code_is_read_before_the_lock_goes_on(command: Call, case_file: Write) -> None:
    """Regression: the board's code was asked for after lock-out, when it is gone."""
    order = asked(command, case_file(CASE))
    locked = len(order) - 1 - order[::-1].index("lockout")
    for test in SAVED:
        assert order.index(test) < locked
    assert order.index("board-code") < order.index("lockout")  # locked out to close a live panel
    assert "flame-rod" in order[locked:]


@pytest.mark.parametrize("answered", [*SAVED, None])
def test_what_a_file_does_not_hold_costs_no_way_to_it(
    answered: str | None, command: Call, case_file: Write
) -> None:
    readings = {t: o for t, o in CASE["readings"].items() if t not in SAVED or t == answered}
    order = asked(command, case_file({**CASE, "readings": readings}))
    locked = order.index("lockout")
    assert [test for test in order if test in SAVED] == ([answered] if answered else [])
    assert "flame-rod" in order[locked:]


def test_without_a_rule_that_holds_nothing_is_saved(command: Call, case_file: Write) -> None:
    """The rule speaks of units of which the heat is known."""
    case = {**CASE, "unit": {}, "complaint": "weak-cooling",
            "readings": {"air-filters": "loaded"}}  # fmt: skip
    assert not set(SAVED) & set(asked(command, case_file(case)))
