"""A breaker or fuse that opened: insulation first, then what needs the power closed."""

from __future__ import annotations

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, REASONER, concluded, proposed, standing
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.cases.file import read_case

ONE_CIRCUIT = {"refrigerant": "R-410A", "refrigerant-class": "a1", "heat": "gas", "circuits": 1}
NEED_POWER = ("running", "running-open", "energised-open")
SOUND = {"test": "compressor-insulation", "outcome": "normal"}
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
    sound = concluded([*readings, SOUND], complaint=complaint, unit=ONE_CIRCUIT)
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
