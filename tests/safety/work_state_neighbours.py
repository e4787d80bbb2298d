"""Work states by the dozen: those on the way to each sample test, and each with one fact wrong."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from typing import Any

from tests.safety.work_state_account import SWEEPS, World
from tests.safety.work_state_samples import HANDS_IN, RUNNING_OPEN, SAMPLES
from troubleshoot.safety import steps
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, steps_to_leave
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, after_test
from troubleshoot.safety.work_state import UnitAtWork, WorkState

DEMANDING_UNIT = UnitAtWork(
    capacitors=("capacitor blower",),
    drives=("blower",),
    circuits=("circuit 1", "circuit 2"),
    flammable=True,
    fire_panel=True,
    volts_480=True,
    burns_gas=True,
)

_WRONG: dict[str, tuple[Any, ...]] = {
    "power": ("on", "unsure", "locked-out"),
    "panels": ("on", "unsure", "off"),
    "calls": ("stuck-on", "on", "off"),
    "dead": ("not-shown", "tested", "shown", "tested-again", "proved"),
    "meter": ("failed", "not-proved", "proved"),
    "only_steps_since_proof": (True, False),
    "second_source": ("none-known", "found", "locked"),
    "discharged": (frozenset(), frozenset({"blower"}), frozenset({"capacitor blower"})),
    "leads_off": (frozenset(), frozenset({"compressor 1"}), frozenset({"flame rod lead"})),
    "hooked_up": (frozenset(), frozenset({"flame rod lead"})),
    "jumpers": (frozenset(), frozenset({"call-by-jumper"})),
    "gas": ("on", "unsure", "shut"),
    "gas_swept": (True, False),
    "unburnt": (True, False),
    "taps_open": (frozenset(), frozenset({"inlet tap"}), frozenset({"outlet tap"})),
    "hoses_on": (frozenset(), frozenset({"outlet tap"})),
    "plugs_untested": (frozenset(), frozenset({"outlet tap"})),
    "circuits": (
        (),
        (("circuit 1", "gauges-unsure"),),
        (("circuit 1", "gauges-on"),),
        (("circuit 1", "charge-unsure"),),
        (("circuit 1", "charge-recovered"),),
        (("circuit 1", "under-nitrogen"),),
        (("circuit 1", "under-vacuum"),),
        (("circuit 1", "evacuated"),),
        (("circuit 1", "opened"),),
        (("circuit 1", "opened-unsure"),),
    ),
    "clear": (frozenset(), frozenset(SWEEPS), *(frozenset(SWEEPS) - {each} for each in SWEEPS)),
    "occupants_told": (True, False),
    "fire_panel": ("in-service", "unsure", "on-test"),
    "roof": ("not-checked", "no-go", "edge-near", "go"),
    "second_person": (True, False),
    "arc_clothing": (True, False),
    "area_clear": (True, False),
    "clips_dead": (True, False),
    "doors_open": (True, False),
}


def with_one_fact_wrong(state: WorkState) -> Iterator[WorkState]:
    """The state itself and every state that differs from it in one fact.

    Where something is hooked up a lead is off, whatever comes.
    """
    yield state
    for fact, values in _WRONG.items():
        for value in values:
            wrong = replace(state, **{fact: value})
            if wrong != state and wrong.hooked_up <= wrong.leads_off:
                yield wrong
    if state.hooked_up:  # nobody has, and so no lead is off for it either
        bare = state.leads_off - state.hooked_up
        yield replace(state, hooked_up=frozenset(), leads_off=bare)


def _along(state: WorkState, way: Iterable[Step], unit: UnitAtWork) -> Iterator[WorkState]:
    for step in way:
        state = after_step(state, step, (CONFIRMED[step.id],), unit)
        yield state


@cache
def ready_for(index: int, unit: UnitAtWork) -> WorkState:
    """The state in which sample number `index` may be shown, reached the usual way."""
    test, place = SAMPLES[index]
    start = WorkState()
    way = steps_to(start, needs_of(test, place, unit), unit)
    return (start, *_along(start, way, unit))[-1]


@cache
def states_on_every_way(unit: UnitAtWork) -> tuple[WorkState, ...]:
    """Every state on the way to each sample test and back, each also with one fact wrong.

    And on the way from hands in to a reading behind an open panel.
    """
    found: dict[WorkState, None] = {}
    for index, (test, place) in enumerate(SAMPLES):
        ready = ready_for(index, unit)
        left = after_test(ready, test, place, (), unit)
        way_out = _along(
            WorkState(), steps_to(WorkState(), needs_of(test, place, unit), unit), unit
        )
        way_back = _along(left, steps_to_leave(left, unit), unit)
        for state in (WorkState(), *way_out, left, *way_back):
            found.update(dict.fromkeys(with_one_fact_wrong(state)))
    dead = ready_for(SAMPLES.index((HANDS_IN, None)), unit)
    for state in _along(dead, steps_to(dead, needs_of(RUNNING_OPEN, None, unit), unit), unit):
        found.update(dict.fromkeys(with_one_fact_wrong(state)))
    for condition in ("opened", "opened-unsure"):  # a repair brings these, and no step
        mended = dead.with_circuit("circuit 1", condition)
        for state in (mended, *_along(mended, steps_to_leave(mended, unit), unit)):
            found.update(dict.fromkeys(with_one_fact_wrong(state)))
    return tuple(found)


def as_world(state: WorkState) -> World:
    """What the officer would find standing, were the state the whole truth."""
    open_live = state.panels != "on" and state.power != "locked-out"
    may_be_lit = state.panels != "on" or state.gas != "shut"  # called for heat, for all we know
    things = {
        "roof-safe": state.roof == "go",
        "edge-near": state.roof == "edge-near",
        "told": state.occupants_told,
        "panel-on-test": state.fire_panel == "on-test",
        "company": state.second_person,
        "dressed": state.arc_clothing,
        "no-refrigerant": steps.REFRIGERANT_SWEEP in state.clear,
        "no-gas": steps.GAS_SWEEP in state.clear,
        "air-good": steps.ROOM_AIR in state.clear,
        "gas-shut": state.gas == "shut",
        "cock-unknown": state.gas == "unsure",
        "unburnt": state.unburnt,
        "gas-about": not state.gas_swept,
        "locked": state.power == "locked-out",
        "powered": state.power == "on",
        "dead-first": state.dead != "not-shown",
        "meter-first": state.dead in ("shown", "tested-again", "proved"),
        "dead-last": state.dead in ("tested-again", "proved"),
        "meter-last": state.dead == "proved",
        "meter": state.meter == "proved",
        "meter-just": state.meter == "proved" and state.only_steps_since_proof,
        "second-source": state.second_source != "none-known",
        "second-source-locked": state.second_source == "locked",
        "second-source-open": state.second_source == "found",
        "opened": state.panels == "off",
        "open-live": open_live,
        "open-live-no-jumper": open_live and not state.jumpers,
        "open-live-alone": open_live and not state.second_person,
        "open-live-undressed": open_live and not state.arc_clothing,
        "closed-up": state.panels == "on",
        "stopped": state.calls == "off",
        "called": state.calls != "off",
        "cock-open": state.gas == "on",
        "would-run": state.power != "locked-out" and state.calls != "off",
        "running-untried": state.power != "locked-out" and state.calls == "on",
        "tap-open": bool(state.taps_open),
        "leads-off": bool(state.leads_off - state.hooked_up),
        "jumper-in": bool(state.jumpers),
        "area-clear": state.area_clear,
        "clips-dead": state.clips_dead,
        "doors-open": state.doors_open,
        "unswept": may_be_lit and steps.GAS_SWEEP not in state.clear,
        "open-alone": state.panels != "on" and not state.second_person,
        "open-undressed": state.panels != "on" and not state.arc_clothing,
        "no-charge": bool(state.circuits_without_charge),
    }
    standing = {thing for thing, stands in things.items() if stands}
    standing |= {f"bled {place}" for place in state.discharged}
    standing |= {f"tap-open {tap}" for tap in state.taps_open}
    standing |= {f"hose-on {tap}" for tap in state.hoses_on}
    standing |= {f"hooked-up {place}" for place in state.hooked_up}
    standing |= {f"plug-untested {tap}" for tap in state.plugs_untested}
    for place, condition in state.circuits:
        standing |= {f"{thing} {place}" for thing in _CONDITIONS[condition]}
    return frozenset(standing)


_CONDITIONS: dict[str, tuple[str, ...]] = {
    "gauges-unsure": ("not-gauged",),
    "gauges-on": ("gauges-on",),
    "charge-unsure": ("vacuum", "not-gauged"),
    "charge-recovered": ("emptied",),
    "under-nitrogen": ("nitrogen",),
    "under-vacuum": ("vacuum",),
    "evacuated": ("vacuum", "vacuum-held"),
    "opened": ("vacuum",),
    "opened-unsure": ("vacuum", "not-gauged"),
}
