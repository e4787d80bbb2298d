"""The steps that take the power away and bring it back: stop, lock, restart."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import (
    all_of,
    any_other,
    may_start,
    not_dead,
    only_if,
    power_back,
    sets,
)
from troubleshoot.safety.declaration import Outcomes, SafetyStep
from troubleshoot.safety.step_guards import (
    ARC_CLOTHING_IF_OPEN,
    AREA_CLEAR,
    AWAY_FROM_LIVE,
    CALLED_TO_RUN,
    CALLS_OFF,
    CHARGE_BACK,
    DOORS_SHUT,
    FIRE_PANEL_ON_TEST,
    GAS_SWEPT,
    GAS_SWEPT_BEFORE_A_CALL,
    HELP_THERE_IF_OPEN,
    JUMPERS_OUT,
    LEADS_BACK,
    LOCK_IS_OFF,
    LOCKED_OUT,
    LOCKED_OUT_BEFORE_CLOSING,
    NO_SECOND_SOURCE,
    PEOPLE_TOLD,
    PORTS_LOCKED_OUT,
    POWER_ON,
    REFRIGERANT_SWEPT,
    ROOF_SAFE,
    STOP_TRIED,
    STOPPED,
    UNBURNT_GONE,
)
from troubleshoot.safety.work_state import WorkState


def _locked(state: WorkState, place: str) -> WorkState:
    """Whatever was proved dead was proved of another state of the switch."""
    return power_back(state, state.calls).with_facts(power="locked-out")


def _lock_holds_if_said(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    changed = power_back(state, state.calls)
    if "second-source" in outcomes:
        changed = changed.with_facts(second_source="found")
    if "locked" in outcomes and steps.CANNOT_LOCK not in outcomes:
        changed = changed.with_facts(power="locked-out")
    return changed


def _lock_may_be_off(state: WorkState, place: str) -> WorkState:
    return state if state.power == "on" else state.with_facts(power="unsure")


def _second_source_may_be_on(state: WorkState, place: str) -> WorkState:
    none_known = state.second_source == "none-known"
    return state if none_known else state.with_facts(second_source="found")


def _still_on_or_starts(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    return state if outcomes == ("still-on",) else power_back(state, "stuck-on")


def _live_again(state: WorkState, place: str) -> WorkState:
    """What is not known to be locked out may be on, and called; other locks may be off too."""
    changed = _second_source_may_be_on(may_start(not_dead(state, place), place), place)
    return changed.with_facts(power="unsure", area_clear=False)


def _locked_out(state: WorkState) -> bool:
    return state.power == "locked-out"


def _called_with_power(state: WorkState) -> bool:
    return state.power == "on" and state.calls != "off"


STOP_BY_CONTROLS: Final = SafetyStep(
    id=steps.STOP_BY_CONTROLS,
    sound="stopped",
    after=(ROOF_SAFE, JUMPERS_OUT, PEOPLE_TOLD, FIRE_PANEL_ON_TEST),
    brings=(STOP_TRIED, STOPPED, CALLS_OFF),
    does=sets(calls="off"),
    otherwise=any_other(sets(calls="stuck-on")),
    lost={"lock-off": sets(calls="on"), "resumed": sets(calls="on")},
    gone=may_start,
)
LOCKOUT: Final = SafetyStep(
    id=steps.LOCKOUT,
    sound="locked",
    after=(ROOF_SAFE, JUMPERS_OUT, PEOPLE_TOLD, FIRE_PANEL_ON_TEST, STOP_TRIED),
    brings=(LOCKED_OUT, AWAY_FROM_LIVE, LOCKED_OUT_BEFORE_CLOSING, PORTS_LOCKED_OUT),
    does=_locked,
    otherwise=_lock_holds_if_said,
    lost={"lock-off": sets(power="on"), "resumed": _lock_may_be_off},
    gone=only_if(_locked_out, _live_again),
)
SECOND_SOURCE: Final = SafetyStep(
    id=steps.SECOND_SOURCE,
    sound="locked",
    after=(ROOF_SAFE, LOCKED_OUT),
    brings=(NO_SECOND_SOURCE,),
    does=sets(second_source="locked"),
    otherwise=any_other(sets(second_source="found")),
    lost={"resumed": _second_source_may_be_on},
    gone=all_of(sets(second_source="found"), not_dead),
)
LOCK_OFF: Final = SafetyStep(
    id=steps.LOCK_OFF,
    sound="switched-on",
    after=(
        ROOF_SAFE,
        LOCKED_OUT,
        CALLS_OFF,
        LEADS_BACK,
        JUMPERS_OUT,
        CHARGE_BACK,
        UNBURNT_GONE,
        REFRIGERANT_SWEPT,
        DOORS_SHUT,
        GAS_SWEPT,
        GAS_SWEPT_BEFORE_A_CALL,
        HELP_THERE_IF_OPEN,
        ARC_CLOTHING_IF_OPEN,
        AREA_CLEAR,
    ),
    brings=(LOCK_IS_OFF,),
    does=lambda state, place: power_back(state, "off"),
    otherwise=_still_on_or_starts,
    in_other_words=frozenset({steps.LOCKOUT, steps.STOP_BY_CONTROLS}),
)
RESTART: Final = SafetyStep(
    id=steps.RESTART,
    sound="runs",
    after=(
        ROOF_SAFE,
        POWER_ON,
        CALLS_OFF,
        LEADS_BACK,
        CHARGE_BACK,
        UNBURNT_GONE,
        REFRIGERANT_SWEPT,
        DOORS_SHUT,
        GAS_SWEPT,
        GAS_SWEPT_BEFORE_A_CALL,
        HELP_THERE_IF_OPEN,
        ARC_CLOTHING_IF_OPEN,
        AREA_CLEAR,
    ),
    brings=(CALLED_TO_RUN,),
    does=sets(calls="on"),
    # What does not start, or drops out, may have let gas by that was not lit.
    otherwise=any_other(sets(calls="on", unburnt=True)),
    gone=only_if(_called_with_power, sets(unburnt=True)),
    in_other_words=LOCK_OFF.in_other_words,
)
