"""The steps that prove a unit dead: the meter, the tests for dead, each stored charge bled."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import (
    adds,
    all_of,
    any_other,
    drops,
    may_start,
    not_dead,
    only_if,
    sets,
)
from troubleshoot.safety.declaration import Change, Outcomes, SafetyStep
from troubleshoot.safety.step_guards import (
    ARC_CLOTHING_IF_480,
    BLED_BEFORE_TESTING_AGAIN,
    CHARGE_BLED,
    CLIPS_DEAD,
    DEAD_PROVED,
    LOCKED_OUT,
    METER_JUST_PROVED,
    METER_PROVED,
    NO_SECOND_SOURCE,
    PANELS_OFF,
    PORTS_BLED,
    PORTS_DEAD,
    PROVED_SINCE_TESTED,
    ROOF_SAFE,
    SHOWN_DEAD,
    TESTED_DEAD,
    TESTED_DEAD_AGAIN,
)
from troubleshoot.safety.unit_at_work import BLOWER_DRIVE, BLOWER_MOTOR
from troubleshoot.safety.work_state import Dead, Meter, WorkState

_NOT_SHOWN: Final = sets(dead="not-shown")
_NO_CLIPS: Final = sets(clips_dead=False)
_ALL_CHARGED: Final = sets(discharged=frozenset())
_FIRST: Final = ("not-shown", "tested")
_AFTER_A_PROOF: Final[Mapping[Dead, Dead]] = MappingProxyType(
    {"tested": "shown", "tested-again": "proved"}
)
"""A test for dead counts once the meter has been proved right after it (NFPA 70E 120.5)."""


def _proves_the_last_test(state: WorkState, place: str) -> WorkState:
    dead = _AFTER_A_PROOF.get(state.dead, state.dead)
    return state.with_facts(meter="proved", only_steps_since_proof=True, dead=dead)


def _meter_is(unproved: Meter) -> Change:
    return sets(meter=unproved, only_steps_since_proof=False)


def _dead_once_more(state: WorkState, place: str) -> WorkState:
    return state.with_facts(dead="tested" if state.dead in _FIRST else "tested-again")


def _live(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    second = "found" if "live" in outcomes else state.second_source
    return not_dead(state, place).with_facts(second_source=second)


def _clips_live(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    """A clip that shows volts is fed from elsewhere: nothing inside counts as dead any more."""
    return _live(state, place, outcomes) if "live" in outcomes else _NO_CLIPS(state, place)


def _volts_are_there(state: WorkState, place: str) -> WorkState:
    """Volts where none should be: the switch that was locked may be another, or be on again."""
    return may_start(not_dead(state, place), place).with_facts(power="unsure", area_clear=False)


def _charge_is_left(state: WorkState, place: str) -> WorkState:
    """What holds a charge was not proved dead; the line may have been shown to be."""
    dead: Dead = "shown" if state.dead in ("tested-again", "proved") else state.dead
    return state.with_facts(discharged=frozenset(), dead=dead)


def _rests_on_it(state: WorkState) -> bool:
    return state.meter == "proved" or state.dead != "not-shown"


def _shown_at_all(state: WorkState) -> bool:
    return state.power == "locked-out" and state.dead != "not-shown"


METER_PROOF: Final = SafetyStep(
    id=steps.METER_PROOF,
    sound="proved",
    after=(ROOF_SAFE,),
    brings=(METER_PROVED, METER_JUST_PROVED),
    brings_again=(PROVED_SINCE_TESTED, SHOWN_DEAD, DEAD_PROVED, PORTS_DEAD),
    does=_proves_the_last_test,
    otherwise=any_other(all_of(_meter_is("failed"), _NOT_SHOWN, _NO_CLIPS, _ALL_CHARGED)),
    lost={"resumed": _meter_is("not-proved")},
    gone=only_if(_rests_on_it, all_of(_meter_is("failed"), not_dead)),
    in_other_words=frozenset({steps.DEAD_TEST}),
)
DEAD_TEST: Final = SafetyStep(
    id=steps.DEAD_TEST,
    sound="dead",
    after=(
        ROOF_SAFE,
        LOCKED_OUT,
        NO_SECOND_SOURCE,
        ARC_CLOTHING_IF_480,
        PANELS_OFF,
        METER_JUST_PROVED,
        BLED_BEFORE_TESTING_AGAIN,
    ),
    brings=(TESTED_DEAD,),
    brings_again=(TESTED_DEAD_AGAIN,),
    does=_dead_once_more,
    otherwise=_live,
    lost={"lock-off": _NOT_SHOWN, "motor-ran": _NOT_SHOWN, "resumed": _NOT_SHOWN},
    gone=only_if(_shown_at_all, _volts_are_there),
)

# The handle of a fused switch leaves its line lugs live: hands go to its fuses only once the clips
# themselves were tested, and no bare lug beside them is.
CLIPS: Final = SafetyStep(
    id=steps.CLIPS_DEAD,
    sound="dead",
    after=(
        ROOF_SAFE,
        LOCKED_OUT,
        NO_SECOND_SOURCE,
        PANELS_OFF,
        DEAD_PROVED,
        CHARGE_BLED,
        ARC_CLOTHING_IF_480,
        METER_JUST_PROVED,
    ),
    brings=(CLIPS_DEAD,),
    does=sets(clips_dead=True),
    otherwise=_clips_live,
    lost={"lock-off": _NO_CLIPS, "motor-ran": _NO_CLIPS, "resumed": _NO_CLIPS},
)

# Nothing is touched, not even to bleed it, before the meter that says dead has been proved once
# more. The last test for dead comes after the last discharge, so that an earlier one no longer
# counts.
BLEED_CAPACITOR: Final = SafetyStep(
    id=steps.BLEED_CAPACITOR,
    at="capacitor",
    sound="discharged",
    metered=True,
    after=(ROOF_SAFE, LOCKED_OUT, PANELS_OFF, METER_PROVED, SHOWN_DEAD),
    brings=(CHARGE_BLED, BLED_BEFORE_TESTING_AGAIN, PORTS_BLED),
    does=all_of(adds("discharged"), sets(dead="shown")),
    otherwise=any_other(all_of(drops("discharged"), sets(dead="shown"))),
    lost={"lock-off": _ALL_CHARGED, "motor-ran": _ALL_CHARGED, "resumed": _ALL_CHARGED},
    gone=_charge_is_left,
    in_other_words=frozenset({steps.DEAD_TEST, steps.BLEED_CAPACITOR, steps.BLEED_DRIVE}),
    hangs_on=(
        "circuits",
        "condenser-fans",
        "supply-phase",
        "compressor-phase",
        "condenser-fan-phase",
        "blower-motor",
    ),
)
BLEED_DRIVE: Final = SafetyStep(
    id=steps.BLEED_DRIVE,
    at="drive",
    sound="discharged",
    waits_from="lock-on",
    metered=True,
    after=BLEED_CAPACITOR.after,
    brings=BLEED_CAPACITOR.brings,
    does=BLEED_CAPACITOR.does,
    otherwise=BLEED_CAPACITOR.otherwise,
    lost=BLEED_CAPACITOR.lost,
    gone=_charge_is_left,
    in_other_words=BLEED_CAPACITOR.in_other_words,
    hangs_on_at={BLOWER_MOTOR: ("blower-motor",), BLOWER_DRIVE: ("variable-speed-drive",)},
)
