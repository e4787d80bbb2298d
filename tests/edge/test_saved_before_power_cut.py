"""What is lost with the power is read before the power is cut: the board's code, the sequence."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

SAVED = ("board-code", "operating-sequence")
CASE: dict[str, Any] = {
    "unit": {"heat": "gas", "line-volts-class": "208-to-240-volt"},
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
    dead = order[: order.index("flame-rod")]  # other work may be locked out for afterwards
    locked = len(dead) - 1 - dead[::-1].index("lockout")
    for test in SAVED:
        assert order.index(test) < locked
    assert order.index("board-code") < order.index("lockout")  # locked out to close a live panel


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


def before_the_lock(shipped: Knowledge, folder: Path, unit: dict[str, Any]) -> list[str]:
    """What is asked before the lock goes on, of whoever chooses a dead test."""
    shows: dict[str, str | list[str]] = {"board-code": "normal", "operating-sequence": "load dead"}
    player = Player(shipped, shows, ["do contactor-contacts"])
    _, book = play(shipped, folder, player, {"complaint": "no-cooling", "unit": unit})
    order = [asked.test for asked in book.state.asked]
    return order[: order.index("lockout")]


@pytest.mark.parametrize("volts", ["208-to-240-volt", "480-volt", None])
def test_no_live_panel_is_opened_and_nothing_called_to_save_a_history(
    volts: str | None, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: a dead test led first to a call and to a live panel, to read the board's lamp."""
    supply = {} if volts is None else {"line-volts-class": volts}
    order = before_the_lock(shipped, tmp_path, {"heat": "gas", "circuits": 1, **supply})
    assert not {"board-code", "operating-sequence", "panels-off-energised"} & {*order}
