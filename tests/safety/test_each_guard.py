"""What each guard watches: with which needs, in which states it speaks, in which it is silent.

By hand from the words of each guard. What follows for a test, and that no guard can be missed,
stand in `test_work_state_guards.py`.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import pytest

from troubleshoot.safety import guards
from troubleshoot.safety.guards import GUARDS, unmet
from troubleshoot.safety.needs import Needs
from troubleshoot.safety.work_state import WorkState

ENERGIES = ("any", "running", "running-open", "energised-open", "locked-closed", "locked-out")
LIVE = ENERGIES[1:4]


class Watch(NamedTuple):
    """`speaks`, `silent`: states in which the need is not met, and in which it is.

    `without`: needs beside which the guard has nothing to watch, whatever the state.
    """

    guard: str
    words: str
    needs: tuple[dict[str, Any], ...]
    speaks: tuple[dict[str, Any], ...]
    silent: tuple[dict[str, Any], ...]
    without: tuple[dict[str, Any], ...] = ({},)


def energies(*wanted: str, **more: Any) -> tuple[dict[str, Any], ...]:
    return tuple({"energy": each, **more} for each in wanted)


def but(*left_out: str, **more: Any) -> tuple[dict[str, Any], ...]:
    return energies(*(each for each in ENERGIES if each not in left_out), **more)


COVERED = energies("locked-closed")
HANDS_IN = energies("locked-out")
TAP, OTHER = "inlet tap", "outlet tap"
ROD = "flame rod lead"
WATCHED = (
    Watch("turn_has_come", "a safety step is shown only when its turn comes",
          ({"is_step": True},), ({}, {"roof": "go"}), ()),
    Watch("roof_is_safe", "the roof found safe to work on", ({"roof": True},),
          ({"roof": "not-checked"}, {"roof": "no-go"}), ({"roof": "go"},)),
    Watch("occupants_are_told", "the occupants told", ({"occupants": True},),
          ({},), ({"occupants_told": True},)),
    Watch("fire_panel_is_told", "the fire panel on test", ({"fire_panel": True},),
          ({"fire_panel": "in-service"},), ({"fire_panel": "on-test"},)),
    Watch("air_is_clear", "the air found clear: combustible gas sweep",
          ({"sweeps": ("combustible-gas-sweep",)},
           {"sweeps": ("room-carbon-monoxide", "combustible-gas-sweep")}),
          ({"clear": frozenset({"room-carbon-monoxide"})},),
          ({"clear": frozenset({"room-carbon-monoxide", "combustible-gas-sweep"})},)),
    Watch("second_person_is_there", "a second person there", ({"second_person": True},),
          ({},), ({"second_person": True},)),
    Watch("arc_clothing_is_on", "arc-rated clothing, face shield and rated gloves on",
          ({"arc_clothing": True},), ({},), ({"arc_clothing": True},)),
    Watch("meter_is_proved", "the meter proved on a known live source",
          ({"meter": True}, *HANDS_IN), ({"meter": "not-proved"},), ({"meter": "proved"},),
          but("locked-out", "locked-closed")),
    Watch("meter_is_proved", "the meter proved on a known live source",
          COVERED, ({"panels": "off"},), ({"panels": "on"}, {"panels": "off", "meter": "proved"})),
    Watch("power_is_locked_out", "the power switched off, locked and tagged",
          (*COVERED, *HANDS_IN), ({"power": "on"}, {"power": "unsure"}),
          ({"power": "locked-out"},), but("locked-out", "locked-closed")),
    Watch("dead_is_proved", "dead proved at the point of work", HANDS_IN,
          ({"dead": "not-shown"}, {"dead": "tested-again"}), ({"dead": "proved"},),
          but("locked-out", "locked-closed")),
    Watch("dead_is_proved", "dead proved at the point of work", COVERED,
          ({"panels": "off"},), ({"panels": "on"}, {"panels": "off", "dead": "proved"})),
    Watch("second_source_is_locked", "the second source of power found and locked",
          (*COVERED, *HANDS_IN), ({"second_source": "found"},),
          ({"second_source": "locked"}, {"second_source": "none-known"}),
          but("locked-out", "locked-closed")),
    Watch("charge_is_bled", "discharged and metered: capacitor blower",
          ({"stored": ("capacitor blower",)}, {"stored": ("capacitor fan", "capacitor blower")}),
          ({"discharged": frozenset({"capacitor fan"})},),
          ({"discharged": frozenset({"capacitor fan", "capacitor blower"})},)),
    Watch("panels_are_on", "the panels on", energies("running"), ({"panels": "off"},),
          ({"panels": "on"},), but("running")),
    Watch("panels_are_off", "the panel off",
          energies("running-open", "energised-open", "locked-out"),
          ({"panels": "on"},), ({"panels": "off"},), energies("any", "running", "locked-closed")),
    Watch("power_is_on", "the power on", energies(*LIVE),
          ({"power": "locked-out"}, {"power": "unsure"}), ({"power": "on"},), but(*LIVE)),
    Watch("nothing_can_start", "the unit stopped so that nothing can start",
          energies("energised-open"),
          ({"calls": "on"}, {"calls": "stuck-on"}, {"calls": "off", "jumpers": frozenset("j")}),
          ({"calls": "off"},), but("energised-open")),
    Watch("unit_may_run", "the unit called to run", energies("running", "running-open"),
          ({"calls": "off"},), ({"calls": "on"}, {"calls": "stuck-on"}),
          but("running", "running-open")),
    Watch("leads_are_back", "every lead back on", energies(*LIVE),
          ({"leads_off": frozenset({ROD})},
           {"leads_off": frozenset({ROD}), "hooked_up": frozenset({ROD})}),
          ({},), but(*LIVE)),
    Watch("leads_are_back", "every lead back on", energies(*LIVE, hook_ups=(ROD,)),
          ({"leads_off": frozenset({ROD})},
           {"leads_off": frozenset({ROD, "other"}), "hooked_up": frozenset({ROD, "other"})}),
          ({"leads_off": frozenset({ROD}), "hooked_up": frozenset({ROD})},)),
    Watch("it_is_hooked_up", f"hooked up while it was dead: {ROD}",
          ({"hook_ups": (ROD,)}, {"hook_ups": ("heater lead", ROD)}),
          ({"hooked_up": frozenset({"heater lead"})},),
          ({"hooked_up": frozenset({ROD, "heater lead"})},)),
    Watch("no_jumper_behind_panels", "every temporary jumper out", energies("running"),
          ({"jumpers": frozenset("j")},), ({},), but("running")),
    Watch("circuits_hold_their_charge", "the charge back in every circuit", energies(*LIVE),
          ({"circuits": (("circuit 1", "charge-recovered"),)},
           {"circuits": (("circuit 1", "opened"),)}),
          ({}, {"circuits": (("circuit 1", "gauges-on"),)}), but(*LIVE)),
    Watch("gas_is_swept", "the gas swept and no leak found", energies(*LIVE),
          ({"gas_swept": False},), ({},), but(*LIVE)),
    Watch("unburnt_gas_is_gone", "the unburnt gas of a light that failed waited out",
          ({"no_unburnt": True},), ({"unburnt": True},), ({},)),
    Watch("gas_is_shut", "the gas cock shut", ({"gas": "shut"},),
          ({"gas": "on"}, {"gas": "unsure"}), ({"gas": "shut"},), ({}, {"gas": "on"})),
    Watch("gas_is_on", "the gas on", ({"gas": "on"},),
          ({"gas": "shut"}, {"gas": "unsure"}), ({"gas": "on"},), ({}, {"gas": "shut"})),
    Watch("manometer_is_on", f"the manometer on, with the cock shut: {TAP}",
          ({"taps": (TAP,)}, {"taps": (OTHER, TAP)}), ({"hoses_on": frozenset({OTHER})},),
          ({"hoses_on": frozenset({TAP, OTHER})},)),
    Watch("taps_are_plugged", f"plugged again: {TAP}",
          (*energies(*LIVE), *energies("running", taps=(OTHER,))),
          ({"taps_open": frozenset({TAP})},), ({},),
          (*but(*LIVE), *energies("running", taps=(TAP,)))),
    Watch("plugs_are_tested", f"the plug tested under gas: {TAP}",
          energies("running", "running-open", gas="on"),
          ({"plugs_untested": frozenset({TAP})},), ({},),
          (*but("running", "running-open", gas="on"), *energies("running", "running-open"),
           *energies("running", gas="on", taps=(TAP,)))),
    Watch("circuits_are_ready", "gauges on at circuit 1",
          ({"circuits": (("circuit 1", "gauges-on"),)},
           {"circuits": (("circuit 2", "charge-recovered"), ("circuit 1", "gauges-on"))}),
          ({"circuits": (("circuit 2", "charge-recovered"),)},),
          ({"circuits": (("circuit 1", "gauges-on"), ("circuit 2", "charge-recovered"))},)),
    Watch("no_circuit_in_vacuum", "the vacuum broken", ({"no_vacuum": True},),
          ({"circuits": (("circuit 1", "evacuated"),)},),
          ({}, {"circuits": (("circuit 1", "gauges-on"),)})),
    Watch("nothing_is_open_live", "nothing left open and live", ({"away": True},),
          ({"panels": "off"}, {"panels": "off", "power": "unsure"}, {"jumpers": frozenset("j")},
           {"panels": "off", "power": "locked-out", "jumpers": frozenset("j")}),
          ({}, {"panels": "off", "power": "locked-out"}, {"power": "locked-out"})),
    Watch("nothing_is_called", "nothing called for", ({"unlit": True},),
          ({"calls": "on"}, {"calls": "stuck-on"}), ({"calls": "off"},)),
    Watch("unit_is_stopped", "the unit stopped by its controls", ({"stopped": True},),
          ({"calls": "on"}, {"calls": "stuck-on", "power": "unsure"}),
          ({"calls": "off"}, {"calls": "on", "power": "locked-out"})),
    Watch("clips_are_dead", "the fuse clips tested for dead", ({"clips": True},),
          ({},), ({"clips_dead": True},)),
    Watch("doors_are_shut", "every door and panel that was opened for a look shut",
          energies(*LIVE), ({"doors_open": True},), ({},), but(*LIVE)),
)  # fmt: skip


@pytest.mark.parametrize("watch", WATCHED, ids=lambda watch: watch.guard)
def test_a_guard_speaks_where_its_need_is_not_met_and_nowhere_else(watch: Watch) -> None:
    guard = getattr(guards, watch.guard)
    for wanted in watch.needs:
        needs = Needs(**wanted)
        for facts in watch.speaks:
            state = WorkState(**facts)
            assert guard(state, needs) == watch.words, (wanted, facts)
            assert watch.words in unmet(state, needs), (wanted, facts)
        for facts in watch.silent:
            assert guard(WorkState(**facts), needs) == "", (wanted, facts)
    for wanted in watch.without:
        for facts in (*watch.speaks, *watch.silent):
            assert guard(WorkState(**facts), Needs(**wanted)) == "", (wanted, facts)


def test_every_guard_is_watched() -> None:
    assert {guard.__name__ for guard in GUARDS} == {watch.guard for watch in WATCHED}
