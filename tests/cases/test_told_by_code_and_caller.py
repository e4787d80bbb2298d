"""What the board's code says by its legend, and what the caller says runs, weigh in the ranking.

Met by a mechanic. Common practice, no source: an inducer that runs has had its call and its volts,
and a code for the pressure switch leads to draft, tube and switch.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cases.led_by import led_by
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.events import Started, after
from troubleshoot.visit.state import VisitState

FURNACE = {"heat": "gas", "fuel": "natural-gas", "draft": "induced"}
DRAFT = {
    "pressure-switch-tube-fault",
    "pressure-switch-failed",
    "vent-blocked",
    "inducer-motor-failed",
}
CALLED_OR_FED = (
    "thermostat-batteries-flat",
    "schedule-or-clock-wrong",
    "control-transformer-open",
    "disconnect-or-breaker-off",
)


def told(
    knowledge: Knowledge, complaint: str, words: str, read: dict[str, str]
) -> dict[str, float]:
    """The causes on what a caller said, and what was read after it."""
    unit = FURNACE if complaint == "no-heat" else {}
    readings = [{"test": test, "outcome": outcome} for test, outcome in read.items()]
    plain = {"unit": unit, "complaint": complaint, "readings": readings}
    case = replace(read_case(knowledge, plain), words=words)
    found: dict[str, float] = {}
    for cause in Reasoner(knowledge).conclude(case).causes:
        found.setdefault(cause.fault.id, cause.probability)
    return found


def test_a_code_for_the_pressure_switch_leads_to_draft_tube_and_switch(shipped: Knowledge) -> None:
    led = led_by(shipped, "no-heat", FURNACE, {"board-code": "code-pressure-switch"})
    assert set(list(led.causes)[:3]) < DRAFT


@pytest.mark.parametrize(
    ("code", "complaint", "first"),
    [
        ("code-no-flame", "heat-short-cycles", "flame-rod-dirty"),
        ("code-high-pressure", "cooling-short-cycles", "condenser-coil-dirty"),
        ("code-low-pressure", "cooling-short-cycles", "low-charge-from-leak"),
    ],
)
def test_a_code_leads_where_its_legend_points(
    code: str, complaint: str, first: str, shipped: Knowledge
) -> None:
    unit = {**FURNACE, "circuits": 1, "metering": "txv", "condenser-fan-phase": "three"}
    assert led_by(shipped, complaint, unit, {"board-code": code}).first == first


@pytest.mark.parametrize(
    "words", ["no heat, inducer runs but it never lights", "inducer just runs, no heat"]
)
def test_an_inducer_that_is_said_to_run_had_its_call_and_its_volts(
    words: str, shipped: Knowledge
) -> None:
    found = told(shipped, "no-heat", words, {"ignition-trials": "no-trial"})
    assert next(iter(found)) == "pressure-switch-tube-fault"
    assert max(found[fault] for fault in CALLED_OR_FED) < 0.02
    bare = told(shipped, "no-heat", "no heat", {"ignition-trials": "no-trial"})
    assert found["inducer-motor-failed"] < bare["inducer-motor-failed"] / 3


def test_an_inducer_that_is_said_not_to_run_is_accused(shipped: Knowledge) -> None:
    words = "no heat, inducer doesnt run"
    found = told(shipped, "no-heat", words, {"ignition-trials": "no-trial"})
    assert next(iter(found)) == "inducer-motor-failed"


def test_a_unit_whose_fan_runs_has_its_power_and_its_control_volts(shipped: Knowledge) -> None:
    words = "no cooling, fan runs but the compressor dont"
    found = told(shipped, "no-cooling", words, {"condenser-fan-turning": "nothing-runs"})
    assert next(iter(found)) == "contactor-coil-open"
    assert found["condenser-fan-capacitor-weak"] < 0.6 * found["contactor-coil-open"]
    assert found["control-transformer-open"] < 0.03


def test_a_visit_hands_the_callers_words_to_the_reasoning(shipped: Knowledge) -> None:
    words = "no heat, inducer runs"
    state = after(shipped, VisitState(), Started(complaint="no-heat", words=words))
    assert state.case.words == words
