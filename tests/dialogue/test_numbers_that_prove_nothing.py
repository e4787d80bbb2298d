"""A sound number at a step that protects proves nothing where it may be another than it seems.

Regression: 0 V AC on a capacitor, about 0 V and a bare 1 counted as discharged and as dead.
"""

from __future__ import annotations

from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import (
    BLEED_CAPACITOR,
    BLEED_DRIVE,
    DEAD_TEST,
    GAS_SWEEP,
    ROOF,
    ROOM_AIR,
    Step,
)
from troubleshoot.visit.events import Answered
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


@pytest.mark.parametrize(
    ("step", "typed", "why"),
    [
        (BLEED_CAPACITOR, "it reads 0 v ac", "a stored charge is direct current"),
        (BLEED_DRIVE, "bled down, the meter shows 1 vac", "a stored charge is direct current"),
        (DEAD_TEST, "0 vdc on all three", "line volts are alternating current"),
        (ROOF, "about 20 ft, safe", "it is told as about so much"),
        (ROOF, "less than 20 ft, safe", "the number leaves open how far it goes"),
    ],
)
def test_nor_does_it_among_words(step: str, typed: str, why: str, shipped: Knowledge) -> None:
    """Words that take nothing away from a number add nothing to one that proves nothing."""
    with pytest.raises(NearlyAnAnswer, match=f"^{typed} proves nothing: {why}"):
        outcomes(shipped, step, typed)


@pytest.mark.parametrize(
    ("step", "typed", "kept"),
    [
        (DEAD_TEST, "about 208 V", "about 208 V"), (DEAD_TEST, "~208", "~208"),
        (BLEED_DRIVE, "roughly 160 V DC", "roughly 160 V DC"), (DEAD_TEST, "maybe 208 V", "208 V"),
        (ROOF, "about 4 ft, safe", "about 4 ft"),
    ],
)  # fmt: skip
def test_what_is_bad_is_kept_with_how_sure_it_was(
    step: str, typed: str, kept: str, shipped: Knowledge
) -> None:
    """Whoever reads the record sees a guess for what it was, where the number can be read so."""
    done = Step(step, PLACES.get(step))
    event = step_event_from(shipped, VisitState(), shipped.tests[step], done, typed, NOW)
    assert event.text == kept and CONFIRMED[step] not in event.outcomes


def test_what_is_named_as_wrong_in_the_air_counts_and_no_number_beside_it(
    shipped: Knowledge,
) -> None:
    """A sound number elsewhere takes nothing away from a leak that somebody has found."""
    sweep = shipped.tests["combustible-gas-sweep"]
    words = tuple(outcome.id for outcome in sweep.outcomes)
    for typed in ("there is a leak at the union", "leak at the union, 0 at the next one"):
        found = answer_event_from(shipped, sweep, None, typed, words)
        assert found == Answered(sweep.id, outcomes=("leak",))


@pytest.mark.parametrize(
    ("step", "limit"),
    [
        (BLEED_CAPACITOR, "10 V"), (BLEED_DRIVE, "10 V"), (DEAD_TEST, "30 V"),
        (DEAD_TEST, "0.1/0.2/<40 V"), (GAS_SWEEP, "10 % LEL"), (ROOM_AIR, "9 ppm"),
        (GAS_SWEEP, "1 % LEL"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("said", ["<", "< ", "<=", "less than ", "under ", "Less than "])
def test_the_limit_it_is_held_to_is_no_number_off_the_meter(
    step: str, limit: str, said: str, shipped: Knowledge
) -> None:
    """Regression: "< 10 V", the limit on the screen, was kept as discharged."""
    typed = limit if "<" in limit else f"{said}{limit}"
    try:
        assert outcomes(shipped, step, typed) != (CONFIRMED[step],)
    except NotAnAnswer:
        assert not counts_in_a_file(shipped, step, typed)


@pytest.mark.parametrize("step", ALL)
@pytest.mark.parametrize("typed", ["< 2 V", "<1", "under 1 V", "less than 0.1 V", "<=0"])
def test_nor_is_any_bound_where_hands_go_in_on_it(
    step: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, step, typed)
    assert not counts_in_a_file(shipped, step, typed)


@pytest.mark.parametrize("step", ALL)
@pytest.mark.parametrize(
    "typed",
    [
        "1 and 2", "2 and 1", "1 / 2", "1/2", "1/1/1", "2, 1", "0/0", "0 and 0", "0, 0", "0 to 2 V",
        "0 V to 2 V", "0 through 2", "between 0 and 2 V", "dead and 1", "dead, 1",
        "discharged and 1", "no volts",
    ],
)  # fmt: skip
def test_a_range_or_what_may_be_of_the_list_is_asked_again(
    step: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: 1 and 2, as lines of the list dead and ghost volts, proved 480 V dead."""
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, step, typed)


def test_a_range_proves_no_charge_gone_in_a_file_either(shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer, match="a range stands on no meter"):
        outcomes(shipped, BLEED_CAPACITOR, "2 to 5")
    assert not counts_in_a_file(shipped, DEAD_TEST, "1 and 2")


@pytest.mark.parametrize(
    "typed",
    [
        "0", "0.2 V", "1 V", "0/0/0", "0.2 0.1 0.3", "L1 0, L2 0, L3 0", "0/0 V", "it reads 1",
        "l1 to l2 0, l2 to l3 0", "0 volts on every leg", "0 on all 3 legs", "no volts, 0.1 V",
    ],
)  # fmt: skip
def test_one_number_a_leg_counts(typed: str, shipped: Knowledge) -> None:
    assert outcomes(shipped, DEAD_TEST, typed) == ("dead",)


@pytest.mark.parametrize("typed", ["-0", "-0.0", "-1 V", "\u22120"])
def test_line_volts_have_no_sign(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, DEAD_TEST, typed)
    assert outcomes(shipped, BLEED_DRIVE, "-0.3 V DC") == ("discharged",)


@pytest.mark.parametrize("typed", ["2 to 480 V", "1 and 208", "0/277", "<30 V, L2 live", "2 to 5"])
def test_what_is_live_counts_however_it_is_told(typed: str, shipped: Knowledge) -> None:
    assert "live" in outcomes(shipped, DEAD_TEST, typed)


@pytest.mark.parametrize("step", [GAS_SWEEP, ROOM_AIR])
@pytest.mark.parametrize(
    "typed", ["-0.0", "-0", "\u22120", "-0 ppm", "-.0", "it reads -0.0", "- 0"]
)
def test_no_detector_shows_a_clean_air_below_zero(
    step: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: -0.0 was a clean sweep."""
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, step, typed)
    with pytest.raises(NotAnAnswer):
        answer_event_from(shipped, shipped.tests[step], None, typed, ())
    assert not counts_in_a_file(shipped, step, "-0.0")
    assert outcomes(shipped, step, "0.0") == (CONFIRMED[step],)
