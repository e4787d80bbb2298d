"""An honest repair that says what was found is no new danger; what may be so still is one."""

from __future__ import annotations

import pytest

from troubleshoot.dialogue.hearing import hear_among
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.wire_made_new import without_what_was_made_new

MADE_NEW = (
    "ground wire was broken, ran a new one to the panel",
    "cut back the burnt wire and put on a new crimp",
    "replaced the burnt wire and its lug", "Ground wire was broken; landed a new one",
    "removed the burnt wire, new wire run in conduit",
    "found the ground wire broken off, bonded with a new strap",
)  # fmt: skip
STILL = (
    "ground wire was broken", "burnt wire", "ground wire is broken, will run a new one",
    "cut back the burnt wire and it is smoking again", "replaced the fuse, burnt wire at the lug",
    "replaced the burnt wire, gas smell", "ground wire was broken, new one ordered",
    "replaced the burnt wire but the cabinet tingles", "ground wire broken, no new one here",
)  # fmt: skip


@pytest.mark.parametrize("typed", MADE_NEW)
def test_what_was_made_new_is_no_danger(typed: str, shipped: Knowledge) -> None:
    """Regression: an honest deed that lifts a STOP rang another."""
    hear_among(shipped, without_what_was_made_new(typed))


@pytest.mark.parametrize("typed", STILL)
def test_what_may_be_so_still_is_heard(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        hear_among(shipped, without_what_was_made_new(typed))
