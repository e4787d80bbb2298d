"""Whatever people type, however long they wait: the officer has nothing to object to.

A short walk; `tests/bench/walk_turns.py` walks for long. That the officer is awake is tried on
programs that lack a rule: he objects to each before long.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.edge.walk.small_rules import small
from tests.edge.walk.walker import Walk
from troubleshoot.dialogue import answering, state_gone
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops import lifting as stops
from troubleshoot.visit.events import passing_time
from troubleshoot.visit.kept import stopped as standing_visits

TURNS = 800
TURNS_TO_OBJECT = 3_000
SEEDS = (1, 2)

Lack = tuple[object, str, Any]
LACKS: dict[str, Lack] = {
    "Enter confirms anything": (answering, "ENTER_CONFIRMS", frozenset(CONFIRMED)),
    "nothing expires": (passing_time, "expire", lambda state, event: state),
    "a STOP is lifted by itself": (stops, "_is_lifted", lambda *visit: True),
    "a STOP binds one visit only": (standing_visits, "_stopped", lambda *visit: None),
    "no STOP has to be handed over": (stops, "_is_final", lambda fired: False),
    "no word says that a state has gone": (state_gone, "told_gone", lambda rules, typed: ()),
}


@pytest.fixture(scope="module")
def few_rules(shipped: Knowledge) -> Knowledge:
    return small(shipped)


@pytest.mark.parametrize("seed", SEEDS)
def test_nobody_is_led_past_the_law(seed: int, few_rules: Knowledge, tmp_path: Path) -> None:
    walk = Walk(few_rules, seed, tmp_path)
    walk.go(TURNS)
    assert not walk.objections, walk.objections[0]
    wanted = ("asked", "step", "answer", "stop", "reopened", "copied", "long silence", "paste")
    assert all(walk.met[what] >= 2 for what in wanted), walk.met


@pytest.mark.parametrize("lack", LACKS)
def test_the_officer_objects_where_a_rule_is_lacking(
    lack: str, few_rules: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(*LACKS[lack])
    walk = Walk(few_rules, 5, tmp_path)
    walk.go(TURNS_TO_OBJECT)
    assert walk.objections
