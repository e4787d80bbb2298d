"""A reading that proves a thing works shuts out what would have kept it from working.

By a mechanic of 35 years, whose cases these are not: a thermostat's batteries stood behind a
compressor that drew its locked-rotor current, a schedule behind an inducer that ran, a winding
behind volts that unbalance the amps of any motor. That volts unbalance the amps of a sound motor
six to ten times as much is the commentary on NEMA MG 1; the rest is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.cleared import NEVER
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import read_unit

GAS: Final = {
    "heat": "gas", "fuel": "natural-gas", "draft": "induced", "ignition": "hot-surface",
    "pressure-switch-set-point": "0.55 inwc", "supply-phase": "three",
}  # fmt: skip
COOLING: Final = {
    "supply-phase": "three", "compressor-phase": "three", "heat": "electric", "circuits": 1,
    "line-volts-class": "208-to-240-volt", "nameplate-volts": "208 V", "compressor-rla": "25 A",
    "compressor-lra": "150 A",
}  # fmt: skip
CALLS: Final = {
    "schedule-or-clock-wrong", "setpoint-or-mode-changed", "thermostat-batteries-flat",
    "control-transformer-open", "disconnect-or-breaker-off",
}  # fmt: skip
SAFETIES: Final = {
    "condensate-drain-blocked", "fire-panel-holding-unit-off", "smoke-detector-interlock",
    "contactor-coil-open",
}  # fmt: skip
BEHIND_ITS_SWITCH: Final = {"flame-rod-dirty", "hot-surface-igniter-cracked", "gas-valve-failed"}


def shut_out(
    shipped: Knowledge, unit: Mapping[str, object], call: str, *answers: Answer, words: str = ""
) -> set[str]:
    """The causes against which a rule speaks as the word never does."""
    found = Reasoner(shipped).conclude(Case(read_unit(shipped, unit), call, answers, words=words))
    return {
        name for rule in found.procedures for name in rule.procedure.clears
        if any(c.fault.id == name and c.probability < 0.01 for c in found.causes)
    }  # fmt: skip


@pytest.mark.parametrize(
    "answer",
    [
        Answer("compressor-amps", text="140/138/141 A"),
        Answer("compressor-start-attempt", ("hums-and-trips",)),
    ],
)
def test_current_that_flows_clears_whatever_lets_it_flow(
    answer: Answer, shipped: Knowledge
) -> None:
    assert shut_out(shipped, COOLING, "no-cooling", answer) >= CALLS | SAFETIES


def test_what_a_caller_has_heard_clears_nothing(shipped: Knowledge) -> None:
    found = Reasoner(shipped).conclude(
        Case(read_unit(shipped, COOLING), "no-cooling", words="compressor hums")
    )
    held = {rule.procedure.id for rule in found.procedures}
    assert "current-flows-and-it-does-not-start" in held
    weights = {w.weight for c in found.causes for w in c.weights if c.fault.id in SAFETIES}
    assert NEVER not in weights


def test_a_draft_that_closes_no_switch_clears_the_call_and_what_comes_behind(
    shipped: Knowledge,
) -> None:
    answers = (
        Answer("heating-call", text="25 V"),
        Answer("inducer-fan", ("normal",)),
        Answer("draft-at-pressure-switch", ("below",)),
    )
    assert shut_out(shipped, GAS, "no-heat", *answers) >= CALLS | BEHIND_ITS_SWITCH


def test_gas_before_a_valve_that_is_fed_and_passes_none_is_not_shut_off(
    shipped: Knowledge,
) -> None:
    answers = (
        Answer("gas-valve-volts", ("present",)),
        Answer("gas-inlet-pressure-idle", ("normal",)),
        Answer("gas-manifold-pressure", ("zero",)),
    )
    assert "gas-shut-off-or-tank-empty" in shut_out(shipped, GAS, "no-heat", *answers)


@pytest.mark.parametrize(
    ("amps", "winding_is_out"),
    [("25.0/20.0/19.0 A", True), ("30.0/9.0/14.0 A", False)],
)
def test_amps_no_more_unbalanced_than_the_volts_make_them_blame_no_winding(
    amps: str, winding_is_out: bool, shipped: Knowledge
) -> None:
    """Volts 4.0 % apart from their average, amps 17 %, and 70 %: the first is the supply's."""
    answers = (
        Answer("line-volts-running", text="216/205/203 V"),
        Answer("compressor-amps", text=amps),
    )
    out = shut_out(shipped, COOLING, "trips-breaker-or-fuse", *answers)
    assert ("compressor-turns-shorted" in out) is winding_is_out
