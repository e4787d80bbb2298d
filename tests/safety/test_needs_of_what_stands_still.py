"""What is needed of what is read or reached with the unit stopped: the lock, the stop, the clips.

29 CFR 1910.147(a)(2)(ii): whoever puts a hand where something moves does so behind a lock. 29 CFR
1910.333(b)(2)(iv)(B): whatever hands are exposed to is tested for dead, and so are the clips of
fuses, whose line side a switch may leave live. Both from memory.
"""

from __future__ import annotations

from dataclasses import asdict
from typing import Any, get_args

import pytest

from tests.safety.work_state_samples import a_test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.safety.needs import (
    HOOK_UPS,
    TAPS,
    Needs,
    left_on,
    needs_of,
    with_needs,
)
from troubleshoot.safety.work_state import UnitAtWork, WorkState

PLAIN = UnitAtWork()
STORED = UnitAtWork(("capacitor 1",), ("drive",))
WATCHED = UnitAtWork(fire_panel=True)
WORK_STATES = ("any", "running", "running-open", "energised-open", "locked-closed", "locked-out")


def needs(unit: UnitAtWork = PLAIN, **facts: Any) -> dict[str, Any]:
    """What a look with these facts needs, without what needs nothing."""
    found = asdict(needs_of(a_test("some-look", kind="look", **facts), None, unit))
    nothing = asdict(Needs())
    return {name: value for name, value in found.items() if value != nothing[name]}


def test_a_hand_on_a_belt_behind_its_door_needs_the_lock_and_no_proof_of_dead() -> None:
    behind_a_door = {"energy": "locked-closed", "roof": True, "occupants": True, "lock": True}
    assert needs(STORED, work_state="locked-closed") == behind_a_door
    assert needs(WATCHED, work_state="locked-closed") == behind_a_door | {"fire_panel": True}


@pytest.mark.parametrize("work_state", WORK_STATES)
def test_only_behind_a_door_nothing_but_what_moves_is_reached(work_state: Any) -> None:
    found = needs_of(a_test("t", work_state=work_state), None, PLAIN)
    assert found.closed is found.lock is (work_state == "locked-closed")


def test_what_is_read_at_rest_is_stopped_with_the_people_below_told() -> None:
    """They lose their air for it, whether it is stopped by its controls or by the lock."""
    at_rest = {"roof": True, "occupants": True, "stopped": True}
    assert needs(needs_state=("unit-stopped",)) == at_rest
    assert needs(WATCHED, needs_state=("unit-stopped",)) == at_rest | {"fire_panel": True}


def test_hands_at_fuses_need_their_clips_tested_beside_all_that_dead_work_needs() -> None:
    dead = needs(STORED, work_state="locked-out")
    at_fuses = needs(STORED, work_state="locked-out", needs_state=("clips-dead",))
    assert at_fuses == dead | {"clips": True} and "clips" not in dead


@pytest.mark.parametrize("work_state", WORK_STATES)
@pytest.mark.parametrize("area", ["building-side", "power"])
@pytest.mark.parametrize("volts_480", [True, False])
def test_only_who_goes_down_into_the_rooms_leaves_the_unit_behind(
    area: str, work_state: Any, volts_480: bool
) -> None:
    """What runs while it is read in the rooms has its panels on already."""
    found = needs(UnitAtWork(volts_480=volts_480), area=area, work_state=work_state)
    goes = area == "building-side" and work_state == "any" and volts_480
    assert found.get("away", False) is goes


@pytest.mark.parametrize(
    ("facts", "left"),
    [
        ({}, ()),
        *(({"taps_open": frozenset({tap})}, (word,)) for word, tap in TAPS.items()),
        *(({"hooked_up": frozenset({at})}, (word,)) for word, at in HOOK_UPS.items()),
        ({"taps_open": frozenset(TAPS.values())}, tuple(TAPS)),
        ({"taps_open": frozenset({"inlet tap"}), "hooked_up": frozenset({"flame rod lead"})},
         ("manometer-at-inlet", "meter-in-rod-lead")),
        ({"leads_off": frozenset({"flame rod lead"})}, ()),
    ],
)  # fmt: skip
def test_what_is_left_on_is_what_was_opened_or_hooked_up(
    facts: dict[str, Any], left: tuple[Need, ...]
) -> None:
    """So that the next reading wants it too, and nobody takes it off in between."""
    assert sorted(left_on(WorkState(**facts))) == sorted(left)


def test_a_manometer_that_stays_on_is_needed_beside_what_a_test_needs_by_itself() -> None:
    reading = a_test("t", needs_state=("meter-proved", "manometer-at-inlet"))
    both = with_needs(reading, ("manometer-at-inlet", "manometer-at-outlet"))
    assert both.needs_state == ("meter-proved", "manometer-at-inlet", "manometer-at-outlet")
    assert needs_of(both, None, PLAIN).taps == ("inlet tap", "outlet tap")
    assert needs_of(both, None, PLAIN).meter
    assert {*TAPS, *HOOK_UPS} <= {*get_args(Need)}
