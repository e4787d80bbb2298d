"""What a caller says along with the call moves what is behind it, and never what a card rules out.

Which faults hum is common practice, no source; that a motor that does not turn up hums, since it
draws its locked-rotor current, is of every textbook of motors.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.evidence.said_along import as_said

HUM = "comp 1 wont start just hums"
FAN = "cond fan hums and wont turn"


@pytest.mark.parametrize(
    ("said", "points_at", "not_at"),
    [
        (HUM, "compressor-run-capacitor-weak", "condensate-drain-blocked"),
        ("compressor hums and clicks off", "compressor-locked-rotor", "schedule-or-clock-wrong"),
        (FAN, "condenser-fan-capacitor-weak", "low-charge-from-leak"),
    ],
)
def test_what_hums_points_at_its_own_faults(
    said: str, points_at: str, not_at: str, shipped: Knowledge
) -> None:
    """Regression: the hum was lost from the call, which a drain and low charge then led."""
    call = shipped.complaints["no-cooling"]
    heard = as_said(shipped, call, said).brought_by
    assert heard[points_at] == "almost-always" and heard[not_at] == "seldom"
    assert as_said(shipped, call, "no cooling").brought_by == call.brought_by


@pytest.mark.parametrize("said", [HUM, FAN, "fan runs but it blows warm"])
def test_what_a_card_rules_out_stays_ruled_out(said: str, shipped: Knowledge) -> None:
    call = shipped.complaints["no-cooling"]
    never = {fault for fault, grade in call.brought_by.items() if grade == "never"}
    heard = as_said(shipped, call, said).brought_by
    assert never == {fault for fault, grade in heard.items() if grade == "never"}


def test_what_runs_clears_what_would_keep_it_off_and_moves_no_other(shipped: Knowledge) -> None:
    call = shipped.complaints["no-cooling"]
    heard = as_said(shipped, call, "fan runs but it blows warm").brought_by
    assert (
        heard["disconnect-or-breaker-off"]
        == "seldom"
        != call.brought_by["disconnect-or-breaker-off"]
    )
    assert heard["low-charge-from-leak"] == call.brought_by["low-charge-from-leak"]
