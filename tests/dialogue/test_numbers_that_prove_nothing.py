"""A sound number at a step that protects proves nothing where it may be another than it seems.

Regression: 0 V AC on a capacitor, about 0 V and a bare 1 counted as discharged and as dead.
"""

from __future__ import annotations

from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import BLEED_CAPACITOR, BLEED_DRIVE, DEAD_TEST, Step
from troubleshoot.visit.hearing.metered import as_a_file_counts
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
PLACES = {BLEED_CAPACITOR: "capacitor blower", BLEED_DRIVE: "blower drive"}
CHARGES = (BLEED_CAPACITOR, BLEED_DRIVE)
ALL = (*CHARGES, DEAD_TEST)


def outcomes(shipped: Knowledge, step: str, typed: str) -> tuple[str, ...]:
    done = Step(step, PLACES.get(step))
    return step_event_from(shipped, VisitState(), shipped.tests[step], done, typed, NOW).outcomes


def counts_in_a_file(shipped: Knowledge, step: str, text: str) -> bool:
    answer = as_a_file_counts(shipped, Unit(), Answer(step, (), text, (None,)))
    return answer.valid is not False


@pytest.mark.parametrize("step", CHARGES)
@pytest.mark.parametrize(
    "typed", ["0 V AC", "1 V ac", "0 vac", "2 V a.c.", "0.4 ACV", "0 mVac", "1 volts AC", "0 V-AC"]
)
def test_a_stored_charge_is_read_on_direct_current(
    step: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAnAnswer, match="a stored charge is direct current"):
        outcomes(shipped, step, typed)
    assert not counts_in_a_file(shipped, step, typed)


@pytest.mark.parametrize("step", CHARGES)
@pytest.mark.parametrize("typed", ["2 V", "2 V DC", "2 vdc", "0.3", "0 V dc and 0 V ac"])
def test_a_number_on_direct_current_or_of_none_named_counts(
    step: str, typed: str, shipped: Knowledge
) -> None:
    assert outcomes(shipped, step, typed) == (CONFIRMED[step],)


def test_what_is_bad_counts_on_either_current(shipped: Knowledge) -> None:
    assert outcomes(shipped, BLEED_DRIVE, "160 V AC") == ("holds-charge",)
    assert outcomes(shipped, BLEED_DRIVE, "about 160 V") == ("holds-charge",)
    assert outcomes(shipped, DEAD_TEST, "maybe 208 V DC") == ("live",)


@pytest.mark.parametrize("typed", ["0 V DC", "1 vdc", "0.2 V d.c."])
def test_line_volts_are_read_on_alternating_current(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer, match="line volts are alternating current"):
        outcomes(shipped, DEAD_TEST, typed)
    assert not counts_in_a_file(shipped, DEAD_TEST, typed)
    assert outcomes(shipped, DEAD_TEST, "0 V AC") == ("dead",)


@pytest.mark.parametrize("step", ALL)
@pytest.mark.parametrize("said", ["about", "~", "maybe", "roughly", "Around", "approx.", "ca."])
def test_what_is_told_as_about_so_much_proves_nothing(
    step: str, said: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAnAnswer, match="it is told as about so much"):
        outcomes(shipped, step, f"{said} 1 V")


def test_about_so_much_counts_for_nothing_in_a_file_and_at_a_reading_as_ever(
    shipped: Knowledge,
) -> None:
    assert not counts_in_a_file(shipped, DEAD_TEST, "about 1 V")
    reading = shipped.tests["suction-pressure"]
    assert answer_event_from(shipped, reading, None, "about 128 psig", ()).text == "about 128 psig"


@pytest.mark.parametrize("step", ALL)
def test_a_bare_number_that_may_be_one_of_the_list_is_asked_about(
    step: str, shipped: Knowledge
) -> None:
    listed = len(shipped.tests[step].outcomes)
    for number in range(1, listed + 1):
        word = shipped.tests[step].outcomes[number - 1].spoken
        with pytest.raises(NotAnAnswer, match=f'^Is "{number} V" on the meter meant, or "{word}"'):
            outcomes(shipped, step, str(number))
    for typed in ("0", "0.3", "1 V", f"{listed + 1}"):
        assert outcomes(shipped, step, typed)


@pytest.mark.parametrize("step", ALL)
@pytest.mark.parametrize("typed", ["1.", "+1", "1)", "#1", "(1)", "1 .", "1,"])
def test_the_number_of_a_line_is_asked_about_however_it_is_written(
    step: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: 1. and +1 were taken for 1 V."""
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, step, typed)


@pytest.mark.parametrize("step", ALL)
@pytest.mark.parametrize("typed", ["0 kV", "0.00 kv", "0 kilovolts"])
def test_a_display_in_kilovolts_proves_nothing(step: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, step, typed)
    assert not counts_in_a_file(shipped, step, typed)
