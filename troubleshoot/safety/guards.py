"""The guards: each watches one need of a test and answers with words when it is unmet.

A guard answers with nothing when its need is met, and a test may be shown only when every guard is
silent. Guards know nothing of each other, so that each can be tried alone.
"""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.safety.needs import OPENED, Needs, needs_of
from troubleshoot.safety.work_state import MAY_BE_IN_VACUUM, UnitAtWork, WorkState


def turn_has_come(state: WorkState, needs: Needs) -> str:
    return "a safety step is shown only when its turn comes" if needs.is_step else ""


def roof_is_safe(state: WorkState, needs: Needs) -> str:
    return "the roof found safe to work on" if needs.roof and state.roof != "go" else ""


def occupants_are_told(state: WorkState, needs: Needs) -> str:
    return "the occupants told" if needs.occupants and not state.occupants_told else ""


def fire_panel_is_told(state: WorkState, needs: Needs) -> str:
    unmet = needs.fire_panel and state.fire_panel != "on-test"
    return "the fire panel on test" if unmet else ""


def air_is_clear(state: WorkState, needs: Needs) -> str:
    missing = [spoken(sweep) for sweep in needs.sweeps if sweep not in state.clear]
    return f"the air found clear: {', '.join(missing)}" if missing else ""


def second_person_is_there(state: WorkState, needs: Needs) -> str:
    unmet = needs.second_person and not state.second_person
    return "a second person there" if unmet else ""


def arc_clothing_is_on(state: WorkState, needs: Needs) -> str:
    unmet = needs.arc_clothing and not state.arc_clothing
    return "arc-rated clothing, face shield and rated gloves on" if unmet else ""


def _is_dead_work(state: WorkState, needs: Needs) -> bool:
    """Whether hands come near electrical parts: it is such work, or a cover over them is off."""
    return needs.energy == "locked-out" or (needs.closed and state.panels != "on")


def meter_is_proved(state: WorkState, needs: Needs) -> str:
    unmet = (needs.meter or _is_dead_work(state, needs)) and state.meter != "proved"
    return "the meter proved on a known live source" if unmet else ""


def power_is_locked_out(state: WorkState, needs: Needs) -> str:
    wanted = needs.energy == "locked-out" or needs.closed
    unmet = wanted and state.power != "locked-out"
    return "the power switched off, locked and tagged" if unmet else ""


def dead_is_proved(state: WorkState, needs: Needs) -> str:
    unmet = _is_dead_work(state, needs) and state.dead != "proved"
    return "dead proved at the point of work" if unmet else ""


def second_source_is_locked(state: WorkState, needs: Needs) -> str:
    wanted = needs.energy == "locked-out" or needs.closed
    unmet = wanted and state.second_source == "found"
    return "the second source of power found and locked" if unmet else ""


def charge_is_bled(state: WorkState, needs: Needs) -> str:
    charged = [place for place in needs.stored if place not in state.discharged]
    return f"discharged and metered: {', '.join(charged)}" if charged else ""


def panels_are_on(state: WorkState, needs: Needs) -> str:
    unmet = needs.energy == "running" and state.panels != "on"
    return "the panels on" if unmet else ""


def panels_are_off(state: WorkState, needs: Needs) -> str:
    unmet = needs.energy in OPENED and state.panels != "off"
    return "the panel off" if unmet else ""


def power_is_on(state: WorkState, needs: Needs) -> str:
    return "the power on" if needs.energised and state.power != "on" else ""


def nothing_can_start(state: WorkState, needs: Needs) -> str:
    can_start = state.calls != "off" or bool(state.jumpers)
    unmet = needs.energy == "energised-open" and can_start
    return "the unit stopped so that nothing can start" if unmet else ""


def unit_may_run(state: WorkState, needs: Needs) -> str:
    unmet = needs.energy in ("running", "running-open") and state.calls == "off"
    return "the unit called to run" if unmet else ""


def leads_are_back(state: WorkState, needs: Needs) -> str:
    off = state.leads_off - (state.hooked_up & set(needs.hook_ups))
    return "every lead back on" if needs.energised and off else ""


def it_is_hooked_up(state: WorkState, needs: Needs) -> str:
    missing = [place for place in needs.hook_ups if place not in state.hooked_up]
    return f"hooked up while it was dead: {'; '.join(missing)}" if missing else ""


def no_jumper_behind_panels(state: WorkState, needs: Needs) -> str:
    unmet = needs.energy == "running" and state.jumpers
    return "every temporary jumper out" if unmet else ""


def circuits_hold_their_charge(state: WorkState, needs: Needs) -> str:
    unmet = needs.energised and state.circuits_without_charge
    return "the charge back in every circuit" if unmet else ""


def gas_is_swept(state: WorkState, needs: Needs) -> str:
    unmet = needs.energised and not state.gas_swept
    return "the gas swept and no leak found" if unmet else ""


def unburnt_gas_is_gone(state: WorkState, needs: Needs) -> str:
    unmet = needs.no_unburnt and state.unburnt
    return "the unburnt gas of a light that failed waited out" if unmet else ""


def gas_is_shut(state: WorkState, needs: Needs) -> str:
    return "the gas cock shut" if needs.gas == "shut" and state.gas != "shut" else ""


def gas_is_on(state: WorkState, needs: Needs) -> str:
    return "the gas on" if needs.gas == "on" and state.gas != "on" else ""


def manometer_is_on(state: WorkState, needs: Needs) -> str:
    missing = [tap for tap in needs.taps if tap not in state.hoses_on]
    return f"the manometer on, with the cock shut: {', '.join(missing)}" if missing else ""


def taps_are_plugged(state: WorkState, needs: Needs) -> str:
    still_open = sorted(state.taps_open - set(needs.taps)) if needs.energised else []
    return f"plugged again: {', '.join(still_open)}" if still_open else ""


def plugs_are_tested(state: WorkState, needs: Needs) -> str:
    lit = needs.gas == "on" and needs.energy in ("running", "running-open")
    untested = sorted(state.plugs_untested - set(needs.taps)) if lit else []
    return f"the plug tested under gas: {', '.join(untested)}" if untested else ""


def circuits_are_ready(state: WorkState, needs: Needs) -> str:
    missing = [
        f"{spoken(need)} at {place}"
        for place, need in needs.circuits
        if state.circuit(place) != need
    ]
    return ", ".join(missing)


def no_circuit_in_vacuum(state: WorkState, needs: Needs) -> str:
    maybe = any(now in MAY_BE_IN_VACUUM for _, now in state.circuits)
    return "the vacuum broken" if needs.no_vacuum and maybe else ""


def nothing_is_open_live(state: WorkState, needs: Needs) -> str:
    is_live = state.panels != "on" and state.power != "locked-out"
    return "nothing left open and live" if needs.away and (is_live or state.jumpers) else ""


def nothing_is_called(state: WorkState, needs: Needs) -> str:
    return "nothing called for" if needs.unlit and state.calls != "off" else ""


def unit_is_stopped(state: WorkState, needs: Needs) -> str:
    unmet = needs.stopped and state.power != "locked-out" and state.calls != "off"
    return "the unit stopped by its controls" if unmet else ""


def clips_are_dead(state: WorkState, needs: Needs) -> str:
    return "the fuse clips tested for dead" if needs.clips and not state.clips_dead else ""


def doors_are_shut(state: WorkState, needs: Needs) -> str:
    unmet = needs.energised and state.doors_open
    return "every door and panel that was opened for a look shut" if unmet else ""


Guard = Callable[[WorkState, Needs], str]

GUARDS: tuple[Guard, ...] = (
    turn_has_come,
    roof_is_safe,
    occupants_are_told,
    fire_panel_is_told,
    air_is_clear,
    second_person_is_there,
    arc_clothing_is_on,
    meter_is_proved,
    power_is_locked_out,
    dead_is_proved,
    second_source_is_locked,
    charge_is_bled,
    panels_are_on,
    panels_are_off,
    power_is_on,
    nothing_can_start,
    unit_may_run,
    leads_are_back,
    it_is_hooked_up,
    no_jumper_behind_panels,
    circuits_hold_their_charge,
    gas_is_swept,
    unburnt_gas_is_gone,
    gas_is_shut,
    gas_is_on,
    manometer_is_on,
    taps_are_plugged,
    plugs_are_tested,
    circuits_are_ready,
    no_circuit_in_vacuum,
    nothing_is_open_live,
    nothing_is_called,
    unit_is_stopped,
    clips_are_dead,
    doors_are_shut,
)


def unmet(state: WorkState, needs: Needs) -> tuple[str, ...]:
    """The needs that the state does not meet, in words; empty when all are met."""
    return tuple(words for guard in GUARDS if (words := guard(state, needs)))


def allowed(state: WorkState, test: Test, place: str | None, unit: UnitAtWork) -> tuple[str, ...]:
    """The unmet needs of a test, in words. Empty means the test may be shown."""
    return unmet(state, needs_of(test, place, unit))
