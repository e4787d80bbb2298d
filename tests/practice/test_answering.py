"""The unit that answers: as listed, as the true fault's card says, or as a sound unit."""

from __future__ import annotations

import pytest

from tests.practice.playing import reasoner_of, scenario_named
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import answer_of
from troubleshoot.practice.realistic import reading_of
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED

SOUND_UNITS = ("spa-terrace", "granary-row", "drovers-yard")


def unit_of(shipped: Knowledge, name: str) -> AnsweringUnit:
    return AnsweringUnit(reasoner_of(shipped), scenario_named(shipped, name))


def test_a_listed_test_reads_as_listed_at_its_place_only(shipped: Knowledge) -> None:
    unit = unit_of(shipped, "alderbrook")
    amps = shipped.tests["compressor-amps"]
    first, second = (unit.shows(amps, Place("compressor", number)) for number in (1, 2))
    assert first is not None and first.text == "6.7/6.6/6.7 A"
    assert second is not None and second.text == "52/52/0 A"


def test_repeats_read_in_their_order_and_the_last_stays(shipped: Knowledge) -> None:
    unit = unit_of(shipped, "reed-water")
    windings, at = shipped.tests["compressor-windings"], Place("compressor", 1)
    shown = [unit.shows(windings, at, times) for times in range(4)]
    assert [each.text for each in shown if each] == ["OL/OL/OL", *3 * ["1.12/1.13/1.12 ohm"]]
    assert [each.valid for each in shown if each] == [False, None, None, None]


@pytest.mark.parametrize("name", SOUND_UNITS)
def test_whatever_is_not_listed_reads_sound_on_a_sound_unit(shipped: Knowledge, name: str) -> None:
    unit = unit_of(shipped, name)
    asked = 0
    for test in unit.hypotheses.tests.values():
        if test.kind in ("computed", "input", "step") or not test.healthy:
            continue
        for place in unit.scenario.unit.layout.places(test.per):
            shown = unit.shows(test, place)
            assert shown is not None, test.id
            if unit.listed(test.id, place):
                continue
            reading = reading_of(shipped, unit.inputs, test, place, answer_of(shown))
            assert reading is not None and set(reading.seen) <= set(test.healthy), shown
            asked += 1
    assert asked > 60


def test_inputs_that_are_not_listed_fit_what_is(shipped: Knowledge) -> None:
    """A good charge leaves 10 F of subcooling (common practice, no source)."""
    unit = unit_of(shipped, "mill-lane")
    shown = unit.shows(shipped.tests["liquid-line-temperature"], Place("circuit", 1))
    condensing = unit.values.get("condensing-temperature", Place("circuit", 1))
    assert shown is not None and shown.text is not None and condensing is not None
    assert float(shown.text.split()[0]) == pytest.approx(condensing.number - 10, abs=0.1)


def test_an_unlisted_test_shows_what_the_true_card_most_often_says(shipped: Knowledge) -> None:
    """Low charge warms the suction line and leaves bubbles; the scenario lists neither."""
    unit = unit_of(shipped, "quarry-road")
    usual = unit.shows(shipped.tests["sight-glass"], Place("circuit", 1))
    row = unit.hypotheses
    assert usual is not None
    cells = next(h for h in row.causes if h.fault.id == "low-charge-from-leak").picture.cells
    expected = "bubbles" if "sight-glass" in cells else "clear"
    assert usual.outcomes == (expected,)


def test_safety_steps_are_confirmed_unless_the_scenario_says_otherwise(shipped: Knowledge) -> None:
    unit = unit_of(shipped, "canal-wharf")
    proof = shipped.tests["tester-proof"]
    outcomes = [unit.shows(proof, None, times) for times in (0, 1, 2)]
    assert [each.outcomes for each in outcomes if each] == [("failed",), *2 * [("proved",)]]
    lock = unit.shows(shipped.tests["lockout"], None)
    assert lock is not None and lock.outcomes == (CONFIRMED["lockout"],)
