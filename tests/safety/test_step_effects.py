"""What each safety step changes of the work state, by its outcome: everything else stays."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS
from troubleshoot.safety.steps import Step, minutes_of
from troubleshoot.safety.work_state import WorkState

Facts = dict[str, Any]
A2L, GAS, CO = "refrigerant-sweep-a2l", "combustible-gas-sweep", "room-carbon-monoxide"
ALL_CLEAR = frozenset({A2L, GAS, CO})
PLACE = "capacitor 1"
NONE: frozenset[str] = frozenset()

BEST = WorkState(
    power="locked-out", panels="unsure", calls="off", dead="proved", meter="proved",
    only_steps_since_proof=True, second_source="locked", discharged=frozenset({PLACE, "other"}),
    leads_off=frozenset({"lead"}), hooked_up=frozenset({"lead"}),
    jumpers=frozenset({PLACE, "other"}), gas="shut", gas_swept=True,
    circuits=(("other", "under-vacuum"),), clear=ALL_CLEAR, occupants_told=True,
    fire_panel="on-test", roof="go", second_person=True, arc_clothing=True,
    area_clear=True, clips_dead=True,
)  # fmt: skip
"""Everything that a step can take away."""

WORST = replace(
    WorkState(), meter="failed", second_source="found", gas_swept=False, fire_panel="unsure",
    unburnt=True, calls="stuck-on", leads_off=frozenset({"lead"}), jumpers=frozenset({PLACE}),
    panels="unsure", plugs_untested=frozenset({PLACE}), doors_open=True,
)  # fmt: skip
"""Everything that a step can confirm is still to come."""

POWERED: Facts = {
    "power": "on", "dead": "not-shown", "discharged": NONE, "clips_dead": False,
}  # fmt: skip
PROVED: Facts = {"meter": "proved", "only_steps_since_proof": True}
UNPROVED: Facts = {"meter": "failed", "only_steps_since_proof": False}
NOT_DEAD: Facts = {"dead": "not-shown", "discharged": NONE, "clips_dead": False}
PLUG_OUT: Facts = {"taps_open": {PLACE}, "plugs_untested": {PLACE}}
LAID_OFF: Facts = {"arc_clothing": False, "second_person": False}

CASES: list[tuple[str, tuple[str, ...], Facts, Facts]] = [
    ("roof-conditions", ("safe",), {}, {"roof": "go"}),
    ("roof-conditions", ("edge-6-to-15-ft",), {"roof": "edge-near"}, {"roof": "edge-near"}),
    ("roof-conditions", ("safe", "edge-6-to-15-ft"), {"roof": "edge-near"}, {"roof": "edge-near"}),
    ("roof-conditions", ("edge-under-6-ft",), {"roof": "edge-near"}, {"roof": "edge-near"}),
    ("roof-conditions", ("safe", "edge-6-to-15-ft", "edge-under-6-ft"), {"roof": "edge-near"},
     {"roof": "edge-near"}),
    ("roof-conditions", ("lightning",), {"roof": "no-go"}, {"roof": "no-go"}),
    ("roof-conditions", ("safe", "lightning"), {"roof": "no-go"}, {"roof": "no-go"}),
    ("roof-conditions", ("edge-under-6-ft", "lightning"), {"roof": "no-go"}, {"roof": "no-go"}),
    ("roof-conditions", (), {"roof": "no-go"}, {"roof": "no-go"}),
    ("edge-protection", ("on",), {}, {"roof": "go"}),
    ("edge-protection", ("cannot",), {"roof": "edge-near"}, {"roof": "edge-near"}),
    ("tell-occupants", ("told",), {}, {"occupants_told": True}),
    ("tell-occupants", (), {"occupants_told": False}, {}),
    ("tell-fire-panel", ("on-test",), {}, {"fire_panel": "on-test"}),
    ("tell-fire-panel", ("not-agreed",), {"fire_panel": "unsure"}, {}),
    ("fire-panel-back", ("in-service",), {"fire_panel": "in-service"},
     {"fire_panel": "in-service"}),
    ("fire-panel-back", ("not",), {}, {}),
    ("second-person", ("there",), {}, {"second_person": True}),
    ("second-person", ("alone",), {"second_person": False}, {}),
    ("arc-clothing-on", ("dressed",), {}, {"arc_clothing": True}),
    ("arc-clothing-on", ("missing",), {"arc_clothing": False}, {}),
    (A2L, ("none",), {}, {"clear": {A2L}}),
    (A2L, ("leak",), {"clear": ALL_CLEAR - {A2L}}, {}),
    (A2L, ("none", "leak"), {"clear": ALL_CLEAR - {A2L}}, {}),
    (A2L, (), {"clear": ALL_CLEAR - {A2L}}, {}),
    (GAS, ("none",), {}, {"clear": {GAS}, "gas_swept": True}),
    (GAS, ("leak",), {"clear": ALL_CLEAR - {GAS}, "gas_swept": False}, {}),
    (GAS, (), {"clear": ALL_CLEAR - {GAS}, "gas_swept": False}, {}),
    (CO, ("normal",), {}, {"clear": {CO}}),
    (CO, ("none",), {"clear": ALL_CLEAR - {CO}}, {}),
    ("tester-proof", ("proved",), {}, PROVED),
    ("tester-proof", ("failed",), {**UNPROVED, **NOT_DEAD}, {}),
    ("tester-proof", (), {**UNPROVED, **NOT_DEAD}, {}),
    ("stop-by-controls", ("stopped",), {}, {"calls": "off"}),
    ("stop-by-controls", ("runs-on",), {"calls": "stuck-on"}, {}),
    ("lockout", ("locked",), {**NOT_DEAD}, {"power": "locked-out"}),
    ("lockout", ("locked", "second-source"), {**NOT_DEAD, "second_source": "found"},
     {"power": "locked-out"}),
    ("lockout", ("locked", "cannot-lock"), POWERED, {}),
    ("lockout", ("cannot-lock",), POWERED, {}),
    ("lockout", ("second-source",), {**POWERED, "second_source": "found"}, {}),
    ("lockout", (), POWERED, {}),
    ("second-source-locked", ("locked",), {}, {"second_source": "locked"}),
    ("second-source-locked", ("cannot",), {"second_source": "found"}, {}),
    ("panels-off", ("off",), {"panels": "off", "doors_open": True}, {"panels": "off"}),
    ("panels-off", ("stuck",), {}, {}),
    ("panels-off-energised", ("open",), {"panels": "off"}, {"panels": "off"}),
    ("panels-off-energised", ("stuck",), {}, {}),
    ("verified-dead", ("dead",), {"dead": "tested-again"}, {"dead": "tested"}),
    ("verified-dead", ("live",), {**NOT_DEAD, "second_source": "found"}, {}),
    ("verified-dead", ("ghost-volts",), NOT_DEAD, {}),
    ("verified-dead", ("dead", "live"), {**NOT_DEAD, "second_source": "found"}, {}),
    ("capacitor-discharge", ("discharged",), {"dead": "shown"},
     {"dead": "shown", "discharged": {PLACE}}),
    ("capacitor-discharge", ("holds-charge",), {"dead": "shown", "discharged": {"other"}},
     {"dead": "shown"}),
    ("drive-discharge", ("discharged",), {"dead": "shown"},
     {"dead": "shown", "discharged": {PLACE}}),
    ("drive-discharge", ("holds-charge",), {"dead": "shown", "discharged": {"other"}},
     {"dead": "shown"}),
    ("gas-cock-look", ("open",), {"gas": "on", "gas_swept": False, "clear": {A2L, CO}}, {}),
    ("gas-cock-look", ("shut",), {"gas_swept": False}, {"gas": "shut"}),
    ("gas-cock-look", ("cannot-tell",), {"gas": "unsure", "gas_swept": False}, {"gas": "unsure"}),
    ("purge-wait", ("waited",), {"gas_swept": False, "clear": {A2L, CO}}, {"unburnt": False}),
    ("purge-wait", ("gas-smelled",), {"clear": {A2L, CO}}, {}),
    ("gas-cock-shut", ("shut",), {"clear": {A2L, CO}}, {"gas": "shut"}),
    ("gas-cock-shut", ("stuck",), {"clear": {A2L, CO}}, {}),
    ("gas-cock-open", ("open",), {"gas": "on", "gas_swept": False, "clear": {A2L, CO}}, {}),
    ("gas-cock-open", (), {"gas": "on", "gas_swept": False, "clear": {A2L, CO}}, {}),
    ("manometer-on", ("on",), {**PLUG_OUT, "hoses_on": {PLACE}, **LAID_OFF},
     {**PLUG_OUT, "hoses_on": {PLACE}}),
    ("manometer-on", ("cannot",), {**PLUG_OUT, **LAID_OFF}, PLUG_OUT),
    ("manometer-off", ("plugged",), LAID_OFF, {}),
    ("manometer-off", ("will-not-seal",), {**PLUG_OUT, **LAID_OFF}, PLUG_OUT),
    ("plug-under-gas", ("tight",), {}, {"plugs_untested": NONE}),
    ("plug-under-gas", ("leaks",), {"plugs_untested": {PLACE}, "unburnt": True}, {}),
    ("plug-under-gas", ("cannot",), {"plugs_untested": {PLACE}, "unburnt": True}, {}),
    ("hook-up-dead", ("hooked-up",),
     {"leads_off": {"lead", PLACE}, "hooked_up": {"lead", PLACE}, **LAID_OFF},
     {"leads_off": {"lead", PLACE}, "hooked_up": {PLACE}}),
    ("hook-up-dead", ("cannot",), {"leads_off": {"lead", PLACE}, **LAID_OFF},
     {"leads_off": {"lead", PLACE}}),
    ("leads-back", ("back",), {"leads_off": NONE, "hooked_up": NONE, **LAID_OFF},
     {"leads_off": NONE}),
    ("leads-back", ("not",), LAID_OFF, {}),
    ("jumper-out", ("out",), {"jumpers": {"other"}}, {"jumpers": NONE}),
    ("jumper-out", ("left-in",), {}, {}),
    ("panels-on", ("on",), {"panels": "on"}, {"panels": "on", "doors_open": False}),
    ("panels-on", ("not",), {}, {}),
    ("doors-shut", ("shut",), {}, {"doors_open": False}),
    ("doors-shut", ("cannot",), {}, {}),
    ("fuse-clips-dead", ("dead",), {}, {"clips_dead": True}),
    ("fuse-clips-dead", ("lugs-bare",), {"clips_dead": False}, {}),
    ("fuse-clips-dead", ("live",), {**NOT_DEAD, "second_source": "found"}, {}),
    ("tools-clear", ("clear",), {}, {"area_clear": True}),
    ("tools-clear", ("not",), {"area_clear": False}, {}),
    ("lock-off", ("switched-on",), POWERED, {"calls": "off"}),
    ("lock-off", ("starts-at-once",), {**POWERED, "calls": "stuck-on"}, {}),
    ("lock-off", ("switched-on", "trips"), {**POWERED, "calls": "stuck-on"}, {}),
    ("lock-off", ("still-on",), {}, {}),
    ("restart-and-watch", ("runs",), {"calls": "on"}, {"calls": "on"}),
    ("restart-and-watch", ("trips",), {"calls": "on", "unburnt": True}, {"calls": "on"}),
]  # fmt: skip
"""(step, outcomes, what changes of the best state, what of the worst)."""

CIRCUIT_STEPS = {
    "gauges-on": "gauges-on",
    "gauges-off": "closed",
    "charge-recovered": "charge-recovered",
    "circuit-opened": "opened",
    "circuit-held": "under-nitrogen",
    "circuit-to-zero": "charge-recovered",
    "circuit-evacuated": "evacuated",
    "charge-put-back": "gauges-on",
}
SWEPT_ANEW = {"charge-put-back"}
"""What was weighed in may escape where the circuit was open."""
NOT_DONE = {"circuit-evacuated": "under-vacuum"}
"""How a circuit stands where its step did not come off; the others leave it as it was."""
GLOVED = {step for step in CIRCUIT_STEPS if STEPS[step].by_hand} | {"gauges-on", "gauges-off"}
"""Done by hand where it is locked out, which `BEST` is."""


@pytest.mark.parametrize(
    ("step", "outcomes", "best", "worst"),
    CASES,
    ids=[f"{case[0]} {'+'.join(case[1]) or 'nothing'}" for case in CASES],
)
def test_a_step_changes_this_and_nothing_else(
    step: str, outcomes: tuple[str, ...], best: Facts, worst: Facts
) -> None:
    for state, changed in ((BEST, best), (WORST, worst)):
        after = STEPS[step].effect(state, PLACE, outcomes)
        assert after == replace(state, **changed), state


@pytest.mark.parametrize(("step", "condition"), CIRCUIT_STEPS.items())
def test_a_step_at_a_circuit_changes_that_circuit_once_confirmed(step: str, condition: str) -> None:
    before = BEST.with_circuit("circuit 1", "under-nitrogen").with_circuit("unit", "charge-unsure")
    for place in ("circuit 1", None):
        worn = replace(before, **(LAID_OFF if step in GLOVED else {}))
        at = place or "unit"
        after = STEPS[step].effect(before, place, (CONFIRMED[step],))
        clear = worn.clear - ({A2L} if step in SWEPT_ANEW else set())
        assert after == replace(worn, clear=clear).with_circuit(at, condition)  # type: ignore[arg-type]
        tried = STEPS[step].effect(before, place, ("otherwise",))
        assert tried == worn.with_circuit(at, NOT_DONE.get(step, worn.circuit(at)))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("step", "then"),
    [("circuit-opened", "gauges-unsure"), ("circuit-held", "charge-recovered")],
)
def test_what_was_never_opened_is_charged_as_far_as_the_record_has_it(step: str, then: str) -> None:
    for outcomes, found in (
        (("nothing-opened",), then),
        (("nothing-opened", "not-held"), "opened"),
        ((), "opened"),
    ):
        before = BEST.with_circuit("circuit 1", "opened")
        after = STEPS[step].effect(before, "circuit 1", outcomes)
        assert after.circuit("circuit 1") == found


@pytest.mark.parametrize("step", ["capacitor-discharge", "jumper-out"])
def test_what_has_no_place_is_the_whole_units(step: str) -> None:
    before = replace(WORST, jumpers=frozenset({"unit", "other"}))
    after = STEPS[step].effect(before, None, (CONFIRMED[step],))
    assert (after.discharged, after.jumpers) == (
        (frozenset({"unit"}), before.jumpers) if step == "capacitor-discharge"
        else (frozenset(), frozenset({"other"}))
    )  # fmt: skip


@pytest.mark.parametrize(
    ("dead", "then"),
    [
        ("not-shown", "not-shown"), ("tested", "shown"), ("shown", "shown"),
        ("tested-again", "proved"), ("proved", "proved"),
    ],
)  # fmt: skip
def test_a_meter_proves_what_it_was_tested_with_last_and_only_then(dead: Any, then: str) -> None:
    proof = STEPS["tester-proof"].effect
    assert proof(replace(BEST, dead=dead), None, ("proved",)).dead == then


@pytest.mark.parametrize(
    ("dead", "then"),
    [("not-shown", "tested"), ("tested", "tested"), ("shown", "tested-again")],
)
def test_a_second_test_for_dead_counts_only_once_the_meter_was_proved_after_the_first(
    dead: Any, then: str
) -> None:
    again = STEPS["verified-dead"].effect
    assert again(replace(BEST, dead=dead), None, ("dead",)).dead == then


def test_every_step_has_its_case_its_effect_and_its_word() -> None:
    covered = {step for step, *_ in CASES} | CIRCUIT_STEPS.keys()
    assert covered == STEPS.keys()
    assert {field.name for field in fields(WorkState)} >= {f for case in CASES for f in case[2]}


def test_the_word_that_confirms_a_step_is_its_sound_outcome_in_the_rules(
    shipped: Knowledge,
) -> None:
    for step, word in CONFIRMED.items():
        outcomes = [o.id for o in shipped.tests[step].outcomes]
        assert word in outcomes, step
        assert word in shipped.tests[step].healthy, step


def test_steps_take_their_minutes_and_their_waits(shipped: Knowledge) -> None:
    tests = {
        "lockout": replace(shipped.tests["lockout"], minutes=3, wait_minutes=0),
        "drive-discharge": replace(shipped.tests["drive-discharge"], minutes=2, wait_minutes=10),
    }
    assert minutes_of([Step("lockout"), Step("drive-discharge", "x")], tests) == 15


def test_only_what_protects_no_life_is_confirmed_by_enter() -> None:
    assert sorted(ENTER_CONFIRMS) == [
        "gauges-off", "gauges-on", "panels-off",
    ]  # fmt: skip


def test_drives_and_the_purge_are_waited_for_and_an_edge_is_no_danger_of_its_own() -> None:
    assert {step.id: step.waits_from for step in STEPS.values() if step.waits_from} == {
        "drive-discharge": "lock-on",
        "purge-wait": "cock-shut",
    }
    assert {step.id: step.also_sound for step in STEPS.values() if step.also_sound} == {
        "roof-conditions": frozenset({"edge-6-to-15-ft", "edge-under-6-ft"})
    }
