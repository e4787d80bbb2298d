"""A STOP that has the fire service for a case apart is for whoever puts the unit right too."""

from __future__ import annotations

from datetime import datetime

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.who_was_told import ask_told
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import NOT_TOLD_YET
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.events import DangerReported, Started

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
NINE = stamp(NOW.replace(hour=9))
RESCUE = "supervisor, gas utility and fire service 11:10"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


def kept(shipped: Knowledge, hazard: str, *typed: str) -> tuple[str, str]:
    """What was said, and what is kept, of who was told of a STOP."""
    terminal = Lines(*typed)
    danger = DangerReported(hazard, "x", time=NINE)
    book = book_of(shipped, [Started(complaint="no-cooling", time=NINE), danger])
    one = shipped.hazards[hazard]
    words = held(
        shipped, terminal, lambda voice: ask_told(book, Listener(shipped, voice, (hazard,)), one)
    )
    return terminal.text, words


@pytest.mark.parametrize(
    ("hazard", "whom"),
    [
        ("refrigerant-escaping", "federally certified refrigerant technician"),
        ("flammable-refrigerant-alarm", "technician trained for flammable refrigerants"),
        ("recovery-cylinder-over-full", "federally certified refrigerant technician"),
    ],
)
def test_the_fire_service_alone_is_not_whom_it_is_for(
    hazard: str, whom: str, shipped: Knowledge
) -> None:
    """Regression: a refrigerant STOP closed without the technician, unlike water and exchanger."""
    said, words = kept(shipped, hazard, RESCUE, "")
    assert f"It is for: {whom}. Tell them too." in said
    assert words == f"{RESCUE}; {NOT_TOLD_YET}{whom}"
    said, words = kept(shipped, hazard, RESCUE, "fire brigade 11:12")
    assert words.endswith(f"{NOT_TOLD_YET}{whom}")


@pytest.mark.parametrize(
    ("hazard", "told"),
    [
        ("refrigerant-escaping", "refrigerant technician 11:10"),
        ("refrigerant-escaping", "fire service and refrigeration tech 11:10"),
        ("gas-odour", "fire service 11:10"),
        ("smoke-or-heat-now", "fire service 11:10"),
    ],
)
def test_nobody_is_missing_where_it_is_for_them(hazard: str, told: str, shipped: Knowledge) -> None:
    said, words = kept(shipped, hazard, told)
    assert "Tell them too" not in said and words == told
