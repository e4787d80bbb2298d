"""The steps at the gas train: its cock, and the manometer on its taps."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import adds, all_of, any_other, drops, only_if, sets, unclears
from troubleshoot.safety.declaration import Outcomes, SafetyStep
from troubleshoot.safety.needs import TAPS
from troubleshoot.safety.step_guards import (
    ARC_CLOTHING_IF_LIVE,
    CALLED_TO_RUN,
    COCK_KNOWN,
    COCK_OPEN,
    COCK_SHUT,
    DEAD_PROVED,
    GAS_AIR_CLEAR,
    HELP_THERE_IF_LIVE,
    HOSE_ON,
    LOCKED_OUT,
    PANELS_OFF,
    PLUG_IN,
    PLUG_TESTED,
    POWER_ON,
    ROOF_SAFE,
    STOPPED,
    TAPS_PLUGGED,
    UNBURNT_GONE,
)
from troubleshoot.safety.work_state import WorkState

_SWEEP_AGAIN: Final = unclears(steps.GAS_SWEEP)
_BEFORE_THE_VALVE: Final = TAPS["manometer-at-inlet"]
_OPENED: Final = all_of(sets(gas="on", gas_swept=False), _SWEEP_AGAIN)


def _cock_may_be_turned(state: WorkState, place: str) -> WorkState:
    """What we shut others may have opened."""
    sure = state.gas == "on"
    return state if sure else state.with_facts(gas="unsure", gas_swept=False)


def _was_shut(state: WorkState) -> bool:
    return state.gas == "shut"


def _shut_or_not_known(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    return state.with_facts(gas="shut" if outcomes == ("shut",) else "unsure", gas_swept=False)


def _plug_was_out(state: WorkState, place: str) -> WorkState:
    """On a plug before the valve the open cock puts gas; on one behind it only a burner does."""
    behind = frozenset[str]() if place == _BEFORE_THE_VALVE else frozenset({place})
    return state.with_facts(
        taps_open=state.taps_open | {place}, plugs_untested=state.plugs_untested | behind
    )


# What is swept behind a shut cock is not under gas: it is swept again once the cock is known to be
# open.
COCK_LOOK: Final = SafetyStep(
    id=steps.COCK_LOOK,
    sound="open",
    after=(ROOF_SAFE,),
    brings=(COCK_KNOWN,),
    does=_OPENED,
    otherwise=_shut_or_not_known,
    lost={"reopened": sets(gas="unsure", gas_swept=False)},
    in_other_words=frozenset({steps.GAS_SHUT}),
)
GAS_SHUT: Final = SafetyStep(
    id=steps.GAS_SHUT,
    sound="shut",
    after=(ROOF_SAFE,),
    brings=(COCK_SHUT,),
    does=all_of(sets(gas="shut"), _SWEEP_AGAIN),
    otherwise=any_other(_SWEEP_AGAIN),
    lost={"resumed": _cock_may_be_turned},
    gone=only_if(_was_shut, all_of(sets(gas="unsure", gas_swept=False), _SWEEP_AGAIN)),
    hangs_on=("heat",),
)
# What is left of the gas shows in the sweep alone: nothing is called, nor is power put back, first.
PURGE_WAIT: Final = SafetyStep(
    id=steps.PURGE_WAIT,
    sound="waited",
    waits_from="cock-shut",
    after=(ROOF_SAFE, STOPPED, COCK_SHUT),
    brings=(UNBURNT_GONE,),
    does=all_of(sets(unburnt=False, gas_swept=False), _SWEEP_AGAIN),
    otherwise=any_other(_SWEEP_AGAIN),
)
GAS_OPEN: Final = SafetyStep(
    id=steps.GAS_OPEN,
    sound="open",
    after=(ROOF_SAFE, STOPPED),
    brings=(COCK_OPEN,),
    does=_OPENED,
    otherwise=any_other(_OPENED),
    in_other_words=COCK_LOOK.in_other_words,
)

# No spark and no call while the train is open, and hands go in: gas and power are off, and dead is
# proved, before a plug comes out.
# Whatever came of it, the plug may be out now.
TAP_OPENED: Final = SafetyStep(
    id=steps.TAP_OPENED,
    at="tap",
    sound="on",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, PANELS_OFF, DEAD_PROVED, COCK_SHUT, GAS_AIR_CLEAR),
    brings=(HOSE_ON,),
    does=all_of(_plug_was_out, adds("hoses_on")),
    otherwise=any_other(all_of(_plug_was_out, drops("hoses_on"))),
    lost={"resumed": sets(hoses_on=frozenset())},
)
TAP_PLUGGED: Final = SafetyStep(
    id=steps.TAP_PLUGGED,
    at="tap",
    sound="plugged",
    by_hand=True,
    after=TAP_OPENED.after,
    brings=(PLUG_IN, TAPS_PLUGGED),
    does=all_of(drops("taps_open"), drops("hoses_on")),
    otherwise=any_other(all_of(_plug_was_out, drops("hoses_on"))),
)
PLUG_TEST: Final = SafetyStep(
    id=steps.PLUG_TEST,
    at="tap",
    sound="tight",
    after=(
        ROOF_SAFE,
        POWER_ON,
        COCK_OPEN,
        PLUG_IN,
        HELP_THERE_IF_LIVE,
        ARC_CLOTHING_IF_LIVE,
        CALLED_TO_RUN,
    ),
    brings=(PLUG_TESTED,),
    does=drops("plugs_untested"),
    # Where it could not be done the burner may not have lit.
    otherwise=any_other(all_of(adds("plugs_untested"), sets(unburnt=True))),
)
