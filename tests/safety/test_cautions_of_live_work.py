"""Work that is live by what it does: closing a panel on the power, power put behind an open one."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, test_of, unit_of
from troubleshoot.knowledge.model import Hazard, Trigger
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.steps import (
    LOCK_OFF,
    PANELS_OFF,
    PANELS_ON,
    PLUG_TEST,
    RESTART,
    TOOLS_CLEAR,
)
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.state import VisitState

HAZARDS = (
    Hazard("open", "DANGER", "live parts open", (Trigger(work_state="energised-open"),)),
    Hazard("line", "DANGER", "line volts", (Trigger(exposes="line"),)),
)
OPEN, UNSURE, CLOSED = (WorkState(panels=p) for p in ("off", "unsure", "on"))  # type: ignore[arg-type]
LOCKED: dict[str, Any] = {"power": "locked-out"}
NONE: list[str] = []
STEPS = {
    "closed dead": (PANELS_ON, replace(OPEN, **LOCKED), NONE),
    "on already": (PANELS_ON, CLOSED, NONE),
    "lock off behind an open panel": (LOCK_OFF, replace(OPEN, **LOCKED), ["open"]),
    "lock off behind a panel not sure": (LOCK_OFF, replace(UNSURE, **LOCKED), ["open"]),
    "lock off behind a closed panel": (LOCK_OFF, replace(CLOSED, **LOCKED), NONE),
    "started behind an open panel": (RESTART, OPEN, ["open"]),
    "started behind a closed panel": (RESTART, CLOSED, NONE),
    "a plug tested behind an open panel": (PLUG_TEST, OPEN, ["open"]),
    "a plug tested behind a closed panel": (PLUG_TEST, CLOSED, NONE),
    "another step at an open panel": (TOOLS_CLEAR, OPEN, NONE),
    "opened dead": (PANELS_OFF, replace(CLOSED, **LOCKED), NONE),
}


@pytest.mark.parametrize(("step", "work", "told"), STEPS.values(), ids=STEPS)
def test_a_step_is_told_as_live_work_where_power_and_an_open_panel_meet(
    step: str, work: WorkState, told: list[str]
) -> None:
    # NFPA 70E article 100 (from memory): exposed and energised together make live work.
    test = test_of(step, kind="step")
    knowledge = base([test], hazards=HAZARDS)
    state = VisitState(unit=unit_of(knowledge), work=work)
    assert [hazard.id for hazard in cautions_before(knowledge, state, test)] == told
