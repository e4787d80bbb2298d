"""A breaker or fuse that opened: insulation first, then what needs the power closed."""

from __future__ import annotations

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, REASONER, concluded, proposed, standing
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden, unread_ends
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.deciding.next import TAKES_IT_AWAY, Decider
from troubleshoot.visit.events import Answered, Repaired, Started, replay

ONE_CIRCUIT = {"refrigerant": "R-410A", "refrigerant-class": "a1", "heat": "gas", "circuits": 1}
NEED_POWER = ("running", "running-open", "energised-open")
SOUND = {"test": "compressor-insulation", "outcome": "normal"}
MOTORS_SOUND = [
    {"test": "condenser-fan-windings", "outcome": "normal"},
    {"test": "blower-motor-windings", "outcome": "normal"},
]
OPENED = [
    ("trips-breaker-or-fuse", []),
    ("no-cooling", [{"test": "fuse-continuity", "outcome": "open"}]),
    ("no-cooling", [{"test": "fuse-volts-drop", "text": "208/0/0 V"}]),
]


@pytest.mark.parametrize(("complaint", "readings"), OPENED)
def test_what_opened_stays_open_until_the_insulation_was_read_sound(
    complaint: str, readings: list[dict[str, str]]
) -> None:
    """On a call alone, fan, amps and start were proposed, which need the breaker closed."""
    found = concluded(readings, complaint=complaint, unit=ONE_CIRCUIT)
    assert "trip-not-looked-into" in standing(found)
    live = {t for t in proposed(found) if KNOWLEDGE.tests[t].work_state in NEED_POWER}
    assert not live
    assert "compressor-insulation" in proposed(found)
    sound = concluded([*readings, SOUND, *MOTORS_SOUND], complaint=complaint, unit=ONE_CIRCUIT)
    amps = KNOWLEDGE.tests["compressor-amps"]
    assert Forbidden(sound).by(amps, Place("compressor", 1)) is None


def test_a_visit_reads_the_insulation_before_anything_is_closed() -> None:
    data = {
        "complaint": "trips-breaker-or-fuse",
        "unit": ONE_CIRCUIT,
        "readings": [
            {"test": "compressor-amps", "text": "9 A"},
            {"test": "condenser-fan-turning", "outcome": "normal"},
            SOUND,
        ],
    }
    case = read_case(KNOWLEDGE, data)
    account = ScriptedVisit(REASONER, case, start_event(case, data)).run()
    asked = [row["test"] for row in account["asked"]]
    assert "compressor-insulation" in asked
    before = asked[: asked.index("compressor-insulation")]
    assert {"compressor-amps", "condenser-fan-turning"}.isdisjoint(before)


MOTORS = ("compressor-insulation", "condenser-fan-windings", "blower-motor-windings")
THREE_PHASE = {
    **ONE_CIRCUIT, "circuits": 2, "supply-phase": "three", "blower-motor": "three-phase",
    "condenser-fans": 2,
}  # fmt: skip


def test_the_motors_behind_an_open_fuse_are_read_too_before_the_power_is_back() -> None:
    """Regression: after both compressors the power was to go back, blower and fans never read."""
    fuse = {"test": "fuse-continuity", "text": "0.1/OL/0.1"}
    compressors = [
        {"test": "compressor-insulation", "text": "500 Mohm", "at": f"compressor {n}"}
        for n in (1, 2)
    ]
    found = concluded([fuse, *compressors], complaint="no-cooling", unit=THREE_PHASE)
    assert Forbidden(found).by(KNOWLEDGE.tests["line-volts-idle"], None) is not None
    unread = {(test, str(at)) for test, at in unread_ends(found)}
    assert unread == {
        ("condenser-fan-windings", "condenser fan 1"),
        ("condenser-fan-windings", "condenser fan 2"),
        ("blower-motor-windings", "None"),
    }
    assert left_off(found).unit, "it stays locked out until they were read"
    rest = [
        {"test": "blower-motor-windings", "outcome": "normal"},
        *({"test": "condenser-fan-windings", "outcome": "normal", "at": f"condenser fan {n}"}
          for n in (1, 2)),
    ]  # fmt: skip
    sound = concluded([fuse, *compressors, *rest], complaint="no-cooling", unit=THREE_PHASE)
    assert Forbidden(sound).by(KNOWLEDGE.tests["line-volts-idle"], None) is None
    assert not left_off(sound).unit


def test_after_a_repair_a_visit_leads_to_the_motors_not_read_yet() -> None:
    decider = Decider(KNOWLEDGE)
    events = [
        Started(complaint="no-cooling", unit=THREE_PHASE),
        Answered("fuse-continuity", text="0.1/OL/0.1"), Repaired("one-fuse-open-whole-unit"),
    ]  # fmt: skip
    decision = decider.decide(replay(KNOWLEDGE, events))
    assert decision.aim is not None and decision.aim[0] in MOTORS
    assert decision.reason == TAKES_IT_AWAY
