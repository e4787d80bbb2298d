"""What somebody says was put right before the visit, and what is said besides."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.visit.hearing.repairs_told import besides, is_told_of_before, repairs_told


@pytest.mark.parametrize(
    ("words", "parts", "rest"),
    [
        ("I already replaced the contactor", ["contactor"], ""),
        ("the gas company changed the meter", [], "gas company changed meter"),
        ("the utility swapped out the regulator", ["regulator"], ""),
        ("changed the cap", ["cap"], ""),
        ("i already replaced the contactor and its still not pulling in", ["contactor"],
         "still not pulling"),
        ("put a new cap on it yesterday still humming", ["cap"], "still humming"),
        ("already cleaned both coils still trips on high head", ["coils"],
         "still trips high head"),
        ("swapped the board same code", ["board"], "same code"),
        ("changed txv and drier still starving", ["txv", "drier"], "still starving"),
        ("no cooling, the contactor was replaced last week", ["contactor"], "no cooling"),
        ("filters and belt are new still got no air", ["filters", "belt"], "still got no air"),
        ("new gas valve and ignitor still wont light", ["gas valve", "ignitor"],
         "still wont light"),
        ("maintenance guy already put in new fuses and they blew again", ["fuses"], "blew again"),
        ("they swapped out the thermostat", ["thermostat"], ""),
        ("fixed the drain", ["drain"], ""),
        ("owner says the CO sensor was replaced in spring", ["co sensor"], ""),
        ("the contactor was replaced in March", ["contactor"], ""),
        ("belt changed in May, no air", ["belt"], "no air"),
        ("tenant says the filters were changed in winter", ["filters"], ""),
        ("capacitor got replaced in 2024", ["capacitor"], ""),
        ("put in a new spring", ["spring"], ""),
        ("put in spring isolators", ["spring isolators"], ""),
        ("replaced the damper spring", ["damper spring"], ""),
        ("the belt may be replaced", [], "belt may be replaced"),
        ("unit drains well and the belt is new", ["belt"], "unit drains well"),
        ("the contactor was replaced and the roof is new", ["contactor"], "roof is new"),
        ("replaced the drier c2", ["drier"], "c2"),
        ("replaced the drier on circuit 2", ["drier"], "circuit 2"),
        ("changed the fan 2 cap, 7.5 mfd 440", ["fan 2 cap"], "7 5 mfd 440"),
        ("changed comp 2", ["comp"], "2"),
        ("put in a 7.5 mfd cap", ["cap"], ""),
        ("ran new stat cable and 3a fuse", ["stat cable", "fuse"], ""),
        ("opened the damper", ["damper"], ""),
        ("opened up the fire damper", ["fire damper"], ""),
        ("replaced the contactor, new 3 pole 30 amp", ["contactor"], "new 3 pole 30 amp"),
        ("new 3 pole 30 amp contactor", ["contactor"], ""),
        ("tightened the belt", ["belt"], ""),
        ("swapped all the filters, new ones in", ["filters"], "new ones"),
        ("new cap 7.5 like for like", ["cap"], "7 5 like like"),
        ("put in a new 40/5 cap and a contactor", ["cap", "contactor"], ""),
        ("threw in a new contactor", ["contactor"], ""),
        ("hung a new belt on it, still squeals", ["belt"], "still squeals"),
        ("new 35/5 440 cap in", ["cap"], ""),
        ("slapped a new stat on the wall", ["stat"], "wall"),
        ("swapped to a txv", ["txv"], ""),
        ("put a 45/5 cap in it", ["cap"], ""),
        ("dropped in a new transformer 40 VA", ["transformer"], "40 va"),
        ("put fresh batteries in the thermostat", ["batteries"], "thermostat"),
    ],
)  # fmt: skip
def test_a_repair_that_is_told_is_heard_and_the_complaint_is_left(
    words: str, parts: list[str], rest: str
) -> None:
    told = repairs_told(words)
    assert [each.part for each in told] == parts
    assert besides(words, told) == rest


@pytest.mark.parametrize(
    "words",
    [
        "no cooling", "needs the contactor replaced", "it has not been changed", "I fixed it",
        "the belt should be changed", "we will replace the motor", "fixed orifice",
        "they want it replaced", "didn't change the filter", "never cleaned the coil",
        "contactor", "smells of gas", "replaced", "", "couldnt put on test", "put on test",
        "couldnt get the belt replaced", "the contactor wasnt replaced",
        "the roof drains well and the deck is new", "the roof is new", "the manager is new here",
        "opened the disconnect", "opened the gas cock", "opened the panel", "ran the fan",
        "ran 2 hours", "new 3 pole 30 amp",
        "I swapped to my buddys meter", "swapped over to the other gauge set", "put my gloves on",
        "swapped meters", "changed meters", "meters swapped", "swapped multimeters",
        "changed batteries in my meter", "new fuse in the meter", "changed over to the spare leads",
        "swapped places with my helper", "stuck a screwdriver in it", "hung my jacket on the rail",
        "new roof", "the hatch and the rail are new", "new tenant",
    ],
)  # fmt: skip
def test_what_is_to_be_done_or_was_not_is_no_repair(words: str) -> None:
    assert repairs_told(words) == ()


@given(st.text(max_size=80))
def test_any_words_are_taken(words: str) -> None:
    told = repairs_told(words)
    assert all(each.part and each.part.islower() for each in told)
    assert len(besides(words, told)) <= 2 * len(words) + 1


@pytest.mark.parametrize("words", ["contactor replaced in spring", "belt changed in 2024"])
def test_a_season_or_a_year_says_that_it_was_before(words: str) -> None:
    assert is_told_of_before(words)
    assert not is_told_of_before("put in spring isolators")


@pytest.mark.parametrize(
    "said",
    [
        "new cap reads 10.1", "the new can shows 45.2 uF", "new capacitor measures 7.4",
        "new motor draws about 2.1 amps", "brand new run cap is .98",
    ],
)  # fmt: skip
def test_what_is_read_on_a_new_part_is_a_reading_and_no_repair(said: str) -> None:
    """Regression: eight causes were offered for "cap reads"."""
    assert not repairs_told(said)


@pytest.mark.parametrize(
    "said", ["new cap", "new cap, reads 10.1", "put in a new cap", "replaced the cap, reads 10.1"]
)
def test_a_new_part_is_a_repair_whatever_is_read_on_it_next(said: str) -> None:
    assert [each.part for each in repairs_told(said)] == ["cap"]
