"""The steps that open a unit, and close it with nothing of ours left in it."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import adds, all_of, any_other, drops, only_if, sets
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.step_guards import (
    ARC_CLOTHING_IF_480,
    ARC_CLOTHING_IF_LIVE,
    AREA_CLEAR,
    CHARGE_BLED,
    DEAD_PROVED,
    GAS_SWEPT_BEFORE_OPENING,
    HELP_THERE_IF_LIVE,
    HOOKED_UP,
    JUMPERS_OUT,
    LOCKED_OUT,
    LOCKED_OUT_BEFORE_CLOSING,
    NOTHING_HOOKED_UP,
    PANELS_CLOSED,
    PANELS_NOT_ON,
    PORTS_OPENED,
    POWER_ON,
    REFRIGERANT_SWEPT,
    ROOF_SAFE,
    STOPPED,
    TAPS_PLUGGED,
)
from troubleshoot.safety.step_guards import DOORS_SHUT as DOORS_ARE_SHUT
from troubleshoot.safety.step_guards import LEADS_BACK as LEADS_ARE_BACK
from troubleshoot.safety.step_guards import PANELS_OFF as PANELS_ARE_OFF
from troubleshoot.safety.work_state import WorkState


def _were_off(state: WorkState) -> bool:
    return state.panels == "off"


def _were_on(state: WorkState) -> bool:
    return state.panels == "on"


def _no_hands_in(state: WorkState) -> bool:
    """Leads may be off by intent while hands are in; none are behind a lock that is not sure."""
    return state.panels == "on" or state.power != "locked-out"


PANELS_OFF: Final = SafetyStep(
    id=steps.PANELS_OFF,
    sound="off",
    by="enter",
    after=(ROOF_SAFE, REFRIGERANT_SWEPT, LOCKED_OUT, ARC_CLOTHING_IF_480),
    brings=(PANELS_ARE_OFF, PORTS_OPENED),
    does=sets(panels="off", doors_open=True),
    lost={"reopened": sets(panels="unsure")},
    gone=only_if(_were_off, sets(panels="unsure")),
    in_other_words=frozenset({steps.PANELS_ON}),
)
PANELS_OFF_ENERGISED: Final = SafetyStep(
    id=steps.PANELS_OFF_ENERGISED,
    sound="open",
    after=(
        ROOF_SAFE,
        POWER_ON,
        STOPPED,
        JUMPERS_OUT,
        REFRIGERANT_SWEPT,
        GAS_SWEPT_BEFORE_OPENING,
        ARC_CLOTHING_IF_480,
    ),
    brings=(PANELS_ARE_OFF,),
    does=sets(panels="off"),
    lost=PANELS_OFF.lost,
    in_other_words=PANELS_OFF.in_other_words,
)

# What is read live goes in, or is moved, while hands may be in there: locked out and proved dead.
HOOK_UP: Final = SafetyStep(
    id=steps.HOOK_UP,
    at="hook-up",
    sound="hooked-up",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, PANELS_ARE_OFF, DEAD_PROVED, CHARGE_BLED),
    brings=(HOOKED_UP,),
    does=all_of(adds("leads_off"), adds("hooked_up")),
    otherwise=any_other(all_of(adds("leads_off"), drops("hooked_up"))),
    lost={"resumed": sets(hooked_up=frozenset())},
)
LEADS_BACK: Final = SafetyStep(
    id=steps.LEADS_BACK,
    sound="back",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, DEAD_PROVED, CHARGE_BLED),
    brings=(LEADS_ARE_BACK, NOTHING_HOOKED_UP),
    does=sets(leads_off=frozenset(), hooked_up=frozenset()),
    gone=only_if(_no_hands_in, adds("leads_off")),
)
JUMPER_OUT: Final = SafetyStep(
    id=steps.JUMPER_OUT,
    at="jumper",
    sound="out",
    after=(ROOF_SAFE, PANELS_NOT_ON, HELP_THERE_IF_LIVE, ARC_CLOTHING_IF_LIVE),
    brings=(JUMPERS_OUT,),
    does=drops("jumpers"),
)
# A fan or a burner runs behind it next.
PANELS_ON: Final = SafetyStep(
    id=steps.PANELS_ON,
    sound="on",
    after=(
        ROOF_SAFE,
        STOPPED,
        JUMPERS_OUT,
        TAPS_PLUGGED,
        LOCKED_OUT_BEFORE_CLOSING,  # live parts, belts, wheels (29 CFR 1910.147 and 333)
    ),
    brings=(PANELS_CLOSED,),
    does=sets(panels="on", doors_open=False),
    lost=PANELS_OFF.lost,
    gone=only_if(_were_on, sets(panels="unsure")),
    in_other_words=frozenset({steps.PANELS_OFF}),
)
# The filter door is behind the lock alone; blower and burner panels may be off beside the one that
# something is read behind.
DOORS_SHUT: Final = SafetyStep(
    id=steps.DOORS_SHUT,
    sound="shut",
    after=(ROOF_SAFE, STOPPED),
    brings=(DOORS_ARE_SHUT,),
    does=sets(doors_open=False),
)
TOOLS_CLEAR: Final = SafetyStep(
    id=steps.TOOLS_CLEAR,
    sound="clear",
    after=(ROOF_SAFE,),
    brings=(AREA_CLEAR,),
    does=sets(area_clear=True),
    otherwise=any_other(sets(area_clear=False)),
    lost={"resumed": sets(area_clear=False)},
    gone=sets(area_clear=False),
)
