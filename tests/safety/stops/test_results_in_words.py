"""What is a result of a hand-over in words, and what only sounds like one.

Words are matched: another turn of phrase may still pass. The finding taken afresh decides.
"""

from __future__ import annotations

import pytest

from tests.safety.stops.results_told import NOTHING_DONE, NOTHING_SHOWN, RESULTS
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, TooFewWords, in_words
from troubleshoot.safety.stops.shown import as_read, of_what


@pytest.mark.parametrize(("hazard", "done", "shown"), RESULTS)
def test_what_people_of_the_trade_write_is_a_result(
    hazard: str, done: str, shown: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, done, shipped.hazards[hazard]) == done
    assert as_read(shipped, shown, shipped.hazards[hazard]) == shown


@pytest.mark.parametrize(("hazard", "typed"), NOTHING_DONE)
def test_what_says_that_it_is_not_made_safe_is_none(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: "nobody came", "will repair it tomorrow" and a jumper were taken as results."""
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), NOTHING_SHOWN)
def test_what_shows_the_danger_or_nothing_at_all_shows_no_safety(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: 30 % LEL and "the detector was not used" were taken for what shows it is safe."""
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("the leak was left as it is", "not put right"),
        ("temporary clamp on the pipe for now", "in part or for a time"),
        ("nobody came for the valve", "nobody came"),
        ("the valve will be replaced", "still to come"),
        ("we hope the valve was shut", "hoped or guessed"),
        ("the smell of gas is normal here", "No smell, leak or alarm is normal"),
        ("the limit was bypassed and burners lit", "a way round a safety device"),
        ("left the fan guard off", "a lock, ground or guard left off"),
    ],
)
def test_each_refusal_says_what_is_wrong_with_it(typed: str, why: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult, match=why):
        in_words(shipped, typed)


@pytest.mark.parametrize(
    "typed",
    [
        "limit switch had been jumpered; jumper removed and limit replaced",
        "did not jumper the limit, replaced it and proved it opens",
        "took the tape off the pressure switch, new switch fitted",
    ],
)
def test_a_way_round_that_was_found_and_taken_away_is_a_result(
    typed: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, typed) == typed


@pytest.mark.parametrize(
    ("hazard", "sound", "unsound"),
    [
        ("gas-odour", "0 % LEL", "1 % LEL"), ("gas-odour", "0 ppm methane", "<20 ppm"),
        ("gas-odour", "0 % LEL", "20 % LEL before, 0 % LEL now"),
        ("gas-odour", "it shows 0 % LEL at all joints", "it shows 4 at all joints"),
        ("carbon-monoxide-in-room", "8 ppm", "9 ppm"),
        ("carbon-monoxide-in-room", "under 5 ppm", "over 8 ppm"),
        ("live-now", "0.3 V", "277 V"), ("live-now", "0 V", "0 V L1 to L2, 118 V to ground"),
        ("heat-exchanger-breach", "2 ppm in the room", "400 ppm in the room"),
        ("heat-exchanger-breach", "40 ppm in the flue, air free", "5 % LEL at the burner"),
        ("flammable-refrigerant-alarm", "0 % LFL", "12 % LFL"),
    ],
)  # fmt: skip
def test_a_number_is_judged_by_the_all_clears_own_limits(
    hazard: str, sound: str, unsound: str, shipped: Knowledge
) -> None:
    assert as_read(shipped, sound, shipped.hazards[hazard]) == sound
    with pytest.raises(NotAResult, match="is not sound: it shows that the danger is still there"):
        as_read(shipped, unsound, shipped.hazards[hazard])


@pytest.mark.parametrize("typed", ["under 9 ppm", "< 9 ppm CO in the room", "less than 9 ppm"])
def test_the_limit_is_no_reading_of_the_air(typed: str, shipped: Knowledge) -> None:
    """Regression: the limit told as a bound reopened a STOP for carbon monoxide."""
    with pytest.raises(NotAResult, match="may be the limit itself"):
        as_read(shipped, typed, shipped.hazards["carbon-monoxide-in-room"])


@pytest.mark.parametrize(
    "typed",
    [
        "nothing found with the detector", "not leaking at any union", "no bubbles or leaks",
        "nothing smells, detector silent", "union no longer leaking, soaped twice",
        "10 min later no gas at the valve",
    ],
)  # fmt: skip
def test_what_denies_the_danger_is_a_look_and_no_number(typed: str, shipped: Knowledge) -> None:
    """It shows a danger gone that no instrument shows, and no gas."""
    assert as_read(shipped, typed, shipped.hazards["rollout-tripped"]) == typed
    with pytest.raises(NotAResult, match="No look and no word shows this"):
        as_read(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize(
    "typed",
    [
        "on Friday the fitter replaced the valve", "unit was left off and locked out at the switch",
        "waited for the utility, who shut the main valve",
        "not leaking at the unit, the regulator had failed and was replaced",
    ],
)  # fmt: skip
def test_what_is_past_is_a_result(typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed) == typed


def test_a_share_of_the_explosive_limit_says_nothing_of_carbon_monoxide(
    shipped: Knowledge,
) -> None:
    with pytest.raises(NotAResult, match="Give the reading with its unit \\(ppm\\)"):
        as_read(shipped, "0 % LEL", shipped.hazards["carbon-monoxide-in-room"])


@pytest.mark.parametrize("typed", ["smelled nothing", "gas, smelled", "gas with my nose"])
def test_a_nose_is_no_instrument(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        of_what(shipped, typed)
    assert of_what(shipped, "LEL, gas detector") == "LEL, gas detector"


def test_parts_alone_are_no_deed_whatever_the_danger_was(shipped: Knowledge) -> None:
    with pytest.raises(TooFewWords):
        in_words(shipped, "fitter, union, pipes")
