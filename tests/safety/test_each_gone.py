"""What goes with each step once somebody says that what it confirmed has gone, or never was.

By hand from what each step protects. A lock: 29 CFR 1910.147(d) and (f)(3); a proof of dead: NFPA
70E 120.5, both from memory; the rest common practice.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.gone import contradicted, without
from troubleshoot.safety.work_state import UnitAtWork, WorkState

Facts = dict[str, Any]
A2L, GAS, CO = "refrigerant-sweep-a2l", "combustible-gas-sweep", "room-carbon-monoxide"
ALL_CLEAR = frozenset({A2L, GAS, CO})
NONE: frozenset[str] = frozenset()
BURNS_GAS = UnitAtWork(capacitors=("capacitor 1",), burns_gas=True)

HANDS_IN = WorkState(
    power="locked-out", panels="off", calls="off", dead="proved", meter="proved",
    only_steps_since_proof=True, second_source="locked", discharged=frozenset({"capacitor 1"}),
    gas="shut", clear=ALL_CLEAR, occupants_told=True, fire_panel="on-test", roof="go",
    second_person=True, arc_clothing=True, area_clear=True, clips_dead=True,
)  # fmt: skip
"""All that hands inside stand on."""

LIVE: Facts = {"dead": "not-shown", "discharged": NONE, "clips_dead": False}
"""Nothing inside counts as dead any more."""
LOCK_GONE: Facts = {
    **LIVE, "power": "unsure", "calls": "on", "second_source": "found", "area_clear": False,
}  # fmt: skip
NOT_PROVED: Facts = {**LIVE, "meter": "failed", "only_steps_since_proof": False}
VOLTS_THERE: Facts = {**LIVE, "power": "unsure", "calls": "on", "area_clear": False}
COCK_TURNED: Facts = {"gas": "unsure", "gas_swept": False, "clear": {A2L, CO}}

CASES: list[tuple[str, Facts, Facts]] = [
    ("roof-conditions", {}, {"roof": "not-checked"}),
    ("roof-conditions", {"roof": "edge-near"}, {"roof": "not-checked"}),
    ("roof-conditions", {"roof": "no-go"}, {}),
    ("roof-conditions", {"roof": "not-checked"}, {}),
    ("edge-protection", {}, {"roof": "not-checked"}),
    ("edge-protection", {"roof": "edge-near"}, {"roof": "not-checked"}),
    ("edge-protection", {"roof": "no-go"}, {}),
    ("tell-occupants", {}, {"occupants_told": False}),
    ("tell-fire-panel", {}, {"fire_panel": "unsure"}),
    ("tell-fire-panel", {"fire_panel": "in-service"}, {}),
    ("second-person", {}, {"second_person": False}),
    ("arc-clothing-on", {}, {"arc_clothing": False}),
    (A2L, {}, {"clear": {GAS, CO}}),
    (GAS, {}, {"clear": {A2L, CO}, "gas_swept": False}),
    (GAS, {"clear": {CO}}, {}),  # who never swept takes back nothing: no leak is told of
    (CO, {}, {"clear": {A2L, GAS}}),
    # Whatever rests on the meter goes with it, and the meter with whatever was tested with it.
    ("tester-proof", {}, NOT_PROVED),
    ("tester-proof", {"dead": "not-shown"}, NOT_PROVED),
    ("tester-proof", {"meter": "not-proved"}, NOT_PROVED),
    ("tester-proof", {"dead": "not-shown", "meter": "not-proved"}, {}),
    ("stop-by-controls", {}, {"calls": "on"}),
    ("stop-by-controls", {"calls": "on"}, {}),
    ("stop-by-controls", {"calls": "stuck-on"}, {}),
    ("lockout", {}, LOCK_GONE),
    ("lockout", {"calls": "stuck-on"}, {**LOCK_GONE, "calls": "stuck-on"}),
    ("lockout", {"second_source": "none-known"}, {**LOCK_GONE, "second_source": "none-known"}),
    ("lockout", {"power": "on"}, {}),
    ("second-source-locked", {}, {**LIVE, "second_source": "found"}),
    ("panels-off", {}, {"panels": "unsure"}),
    ("panels-off", {"panels": "on"}, {}),
    ("panels-on", {"panels": "on"}, {"panels": "unsure"}),
    ("panels-on", {}, {}),
    ("verified-dead", {}, VOLTS_THERE),
    ("verified-dead", {"dead": "tested"}, VOLTS_THERE),
    ("verified-dead", {"dead": "not-shown"}, {}),
    ("verified-dead", {"power": "on"}, {}),
    # What holds a charge was not proved dead; what was tested before it was bled still was.
    ("capacitor-discharge", {}, {"dead": "shown", "discharged": NONE}),
    ("capacitor-discharge", {"dead": "tested-again"}, {"dead": "shown", "discharged": NONE}),
    ("capacitor-discharge", {"dead": "shown"}, {"discharged": NONE}),
    ("capacitor-discharge", {"dead": "tested"}, {"discharged": NONE}),
    ("capacitor-discharge", {"dead": "not-shown"}, {"discharged": NONE}),
    ("drive-discharge", {}, {"dead": "shown", "discharged": NONE}),
    ("gas-cock-shut", {}, COCK_TURNED),
    ("gas-cock-shut", {"gas": "on"}, {}),
    # Leads are off by intent while hands are in, and by mistake once it is closed, or may be live.
    ("leads-back", {}, {}),
    ("leads-back", {"panels": "on"}, {"leads_off": {"unit"}}),
    ("leads-back", {"power": "on"}, {"leads_off": {"unit"}}),
    ("leads-back", {"power": "unsure"}, {"leads_off": {"unit"}}),  # regression: it was let be
    ("tools-clear", {}, {"area_clear": False}),
    ("restart-and-watch", {"power": "on", "gas": "on", "calls": "on"}, {"unburnt": True}),
    ("restart-and-watch", {"power": "on", "gas": "on", "calls": "stuck-on"}, {"unburnt": True}),
    ("restart-and-watch", {"power": "on", "gas": "on"}, {}),
    ("restart-and-watch", {"gas": "on", "calls": "on"}, {}),
    ("restart-and-watch", {"power": "on", "calls": "on"}, {}),  # behind a shut cock
]  # fmt: skip
"""(step, how the state differs from HANDS_IN, what goes of it)."""


@pytest.mark.parametrize(
    ("step", "facts", "gone"), CASES, ids=[f"{step} {facts}" for step, facts, _ in CASES]
)
def test_what_is_said_to_have_gone_takes_this_with_it_and_nothing_else(
    step: str, facts: Facts, gone: Facts
) -> None:
    state = replace(HANDS_IN, **facts)
    assert without(state, [step], BURNS_GAS) == replace(state, **gone)
    assert contradicted(state, [step], BURNS_GAS) == ((step,) if gone else ())


def test_each_step_that_can_go_has_its_case() -> None:
    assert {step for step, *_ in CASES} == {step.id for step in STEPS.values() if step.gone}
