"""What shows that a danger has gone: a sound number with its unit, or a sound look."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, measured
from tests.safety.stops.little_rules import hazard
from troubleshoot.knowledge.model import Knowledge, Quantity, Read
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.safety.stops.shown import as_read, as_seen, read_in, seen_as

SOUND = [
    ("gas-odour", "0 % LEL"), ("gas-odour", "0 % LFL"), ("gas-odour", "0 ppm"),
    ("gas-odour", "0% lel"), ("carbon-monoxide-in-room", "2 ppm"),
    ("carbon-monoxide-in-room", "<5 ppm"), ("carbon-monoxide-evacuate", "0 ppm"),
    ("unexplained-voltage", "0.1 V"), ("unexplained-voltage", "-0.2 V"),
    ("unexplained-voltage", "0.1/0.2/0 V"), ("flue-carbon-monoxide-extreme", "60 ppm"),
    ("wet-electrical", "200 Mohm"), ("wet-electrical", "0 V"), ("wet-electrical", ">500 Mohm"),
    ("wet-electrical", "1 Mohm"), ("wet-electrical", "2 V"),
    ("over-fired-or-wrong-fuel", "3.5 in wc"), ("gas-pressure-too-high", "7 in wc"),
]  # fmt: skip
UNSOUND = [
    ("gas-odour", "3 % LEL"), ("gas-odour", "<1 % LEL"), ("gas-odour", "5 ppm"),
    ("gas-odour", "5000 % LEL"), ("gas-odour", ">0 ppm"),
    ("carbon-monoxide-in-room", "40 ppm"), ("carbon-monoxide-in-room", ">5 ppm"),
    ("carbon-monoxide-in-room", "99999999 ppm"), ("unexplained-voltage", "277 V"),
    ("unexplained-voltage", "-277 V"), ("unexplained-voltage", ">1 V"),
    ("unexplained-voltage", "0/0/120 V"), ("unexplained-voltage", "99999 V"),
    ("flue-carbon-monoxide-extreme", "800 ppm"), ("wet-electrical", "0.2 Mohm"),
    ("wet-electrical", "120 V"), ("wet-electrical", "<500 Mohm"), ("wet-electrical", "0.9 Mohm"),
    ("wet-electrical", "2.1 V"), ("wet-electrical", ">1 V"),
    ("over-fired-or-wrong-fuel", ">3.5 in wc"), ("gas-pressure-too-high", ">7 in wc"),
]  # fmt: skip
NO_NUMBER = [
    "", "yes", "0", "0 %", "none", "nothing", "about 0 ppm", "0 ppm or so", "0 ppm I guess",
    "0 ppm yesterday", "0 ppm next door", "0 ppm before, 9 now", "it shows 0 ppm", "-0 ppm",
    "0 ppm in the flue", "0 psi", "LEL 0", "0 % LEL, 4 joints tight", "1e-400 % LEL", "0e0 ppm",
    "0 ppm ± 5", "~0 ppm", "0 ppm?", "not 0 ppm", "0 to 5 ppm", "1.2.3 ppm", "²0 ppm", "0 % O2",
]  # fmt: skip
NO_DEAD_LINE = ["0 V dc", "0 VDC", "0 kV", "0.0 kV", "-0 V", "-0.0 V", "0/-0/0 V"]
"""What a meter that is set for something else shows."""


def read(knowledge: Knowledge, name: str, typed: str) -> str:
    """What is kept of a number that was read of a hazard."""
    own = knowledge.hazards[name]
    return as_read(knowledge, own, knowledge.tests[own.all_clear or ""], Unit(), typed)


@pytest.mark.parametrize(("name", "typed"), SOUND)
def test_a_sound_number_shows_it_gone(name: str, typed: str, shipped: Knowledge) -> None:
    assert read(shipped, name, typed) == typed


@pytest.mark.parametrize(("name", "typed"), UNSOUND)
def test_a_number_that_is_not_sound_shows_it_there(
    name: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match="is not sound"):
        read(shipped, name, typed)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        *product(["gas-odour", "carbon-monoxide-in-room"], NO_NUMBER),
        *product(["unexplained-voltage", "wet-electrical"], NO_DEAD_LINE),
    ],
)
def test_nothing_is_taken_but_a_number_and_its_unit(
    name: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: 0 V dc took away the water in a switch at 480 V."""
    with pytest.raises(NotAResult):
        read(shipped, name, typed)


@pytest.mark.parametrize("typed", ["0 % LEL", "0 % LFL"])
def test_carbon_monoxide_is_read_in_no_share_of_what_burns(typed: str, shipped: Knowledge) -> None:
    """It is poison at a thousandth of what would burn."""
    with pytest.raises(NotAResult, match=r"with its unit \(ppm\) and nothing"):
        read(shipped, "carbon-monoxide-in-room", typed)


@pytest.mark.parametrize("name", ["gas-odour", "carbon-monoxide-in-room"])
def test_only_volts_have_one_number_of_each_leg(name: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult, match="and nothing"):
        read(shipped, name, "0/0 ppm")


@given(st.text(max_size=24))
def test_no_text_shows_gas_gone_but_a_nought(shipped: Knowledge, typed: str) -> None:
    try:
        shown = read(shipped, "gas-odour", typed)
    except NotAResult:
        return
    assert not {*"123456789"} & {*shown} and "0" in shown


AIR = measured(
    "air",
    {"normal": {"at_most": 5}, "leak": {"above": 5}},
    reads=(Read("air", unit="percent-LFL"),),
)
ALARM = hazard("alarm", "whole-job", all_clear="air")
IN_LFL = base([AIR], hazards=[ALARM], quantities=[Quantity("air", "percent-LEL", "air")])


def test_a_share_is_judged_in_the_unit_of_its_own_sweep_and_another_only_as_nothing() -> None:
    assert read(IN_LFL, "alarm", "3 % LFL") and read(IN_LFL, "alarm", "0 ppm")
    for typed in ("6 % LFL", "3 ppm"):
        with pytest.raises(NotAResult, match="is not sound"):
            read(IN_LFL, "alarm", typed)


def test_a_share_is_asked_for_first_in_the_unit_of_its_own_sweep() -> None:
    assert read_in(IN_LFL, ALARM, AIR) == ("percent-LFL", "percent-LEL", "ppm")


def of_one(bands: dict[str, dict[str, float]], least: float) -> Knowledge:
    """Rules with the alarm and its measured all-clear alone; the least that this can be."""
    air = measured("air", bands, reads=(Read("air"),))
    read_as = Quantity("air", "percent", "air", can_be=(least, 100))
    return base([air], hazards=[ALARM], quantities=[read_as])


THIN = {"below": 19.5}
"""Of oxygen under 19.5 % nobody breathes (29 CFR 1910.146(b), from memory)."""


@pytest.mark.parametrize(
    ("bands", "least", "typed"),
    [
        ({"normal": {"at_least": 19.5}, "thin": THIN}, 0, ">20 %"),
        ({"normal": {"at_least": 19.5}, "thin": THIN}, 5, ">20 %"),
        ({"normal": {"at_most": 0.5}, "leak": {"above": 0.5}}, 0, "<0.4 %"),
        (
            {"wrong": {"below": 0}, "normal": {"at_least": 0, "at_most": 5}, "leak": {"above": 5}},
            -1,
            "<4 %",
        ),
    ],
)
def test_a_bound_is_sound_on_the_side_that_is_better(
    bands: dict[str, dict[str, float]], least: float, typed: str
) -> None:
    rules = of_one(bands, least)
    assert read(rules, "alarm", typed) == typed
    # Regression: ends were judged at nought, which may be none of what can be.
    other = typed.translate(str.maketrans("<>", "><"))
    with pytest.raises(NotAResult, match="is not sound"):
        read(rules, "alarm", other)


@pytest.mark.parametrize("typed", [">21 %", "<21 %"])
def test_no_bound_is_sound_where_either_end_is_bad(typed: str) -> None:
    """Regression: over 3.5 in wc lifted the STOP of a burner that was fired over its plate.

    Over 23.5 % of oxygen the air itself feeds a fire (29 CFR 1910.146(b), from memory).
    """
    rich = {"above": 23.5}
    rules = of_one({"thin": THIN, "normal": {"at_least": 19.5, "at_most": 23.5}, "rich": rich}, 0)
    assert read(rules, "alarm", "21 %")
    with pytest.raises(NotAResult, match="is not sound"):
        read(rules, "alarm", typed)


@pytest.mark.parametrize(("typed", "sound"), [("100 %", True), ("101 %", False), (">19 %", False)])
def test_what_can_be_is_sound_up_to_its_end_and_a_bound_from_its_number_on(
    typed: str, sound: bool
) -> None:
    rules = of_one({"normal": {"at_least": 19.5}, "thin": THIN}, 0)
    if sound:
        assert read(rules, "alarm", typed) == typed
    else:
        with pytest.raises(NotAResult, match="is not sound"):
            read(rules, "alarm", typed)


@pytest.mark.parametrize(("unit", "can_be"), [("percent-LEL", (0, 2)), ("percent-LFL", None)])
def test_ends_in_another_unit_and_none_at_all_end_nothing(
    unit: str, can_be: tuple[float, float] | None
) -> None:
    quantity = Quantity("air", unit, "air", can_be=can_be)
    assert read(base([AIR], hazards=[ALARM], quantities=[quantity]), "alarm", "3 % LFL")


def test_whoever_tells_nothing_is_told_in_which_unit_to_read(shipped: Knowledge) -> None:
    with pytest.raises(NotAResult, match=r"with its unit \(% LEL or % LFL or ppm\) and nothing"):
        read(shipped, "gas-odour", "yes")


LOOK = "heat-exchanger-look"


@pytest.mark.parametrize("typed", ["1", "sound", "Sound."])
def test_a_look_is_one_of_its_sound_outcomes(typed: str, shipped: Knowledge) -> None:
    look = shipped.tests[LOOK]
    assert seen_as(look)[0] == "sound"
    assert not read_in(shipped, shipped.hazards["heat-exchanger-breach"], look)
    assert as_seen(look, typed) == f"{look.name}: sound"


@pytest.mark.parametrize("typed", ["2", "crack", "hole", "soot"])
def test_a_look_that_is_not_sound_lifts_nothing(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult, match="the danger is still there"):
        as_seen(shipped.tests[LOOK], typed)


@pytest.mark.parametrize("typed", ["", "0", "9", "yes", "fine", "looks sound", "sound, I guess"])
def test_no_other_words_of_a_look_are_taken(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult, match="Give a number from 1 to"):
        as_seen(shipped.tests[LOOK], typed)


def test_every_stop_for_the_whole_job_can_be_shown_gone(shipped: Knowledge) -> None:
    for each in shipped.hazards.values():
        if each.stops_the_job:
            test = shipped.tests[each.all_clear or ""]
            assert read_in(shipped, each, test) or as_seen(test, "1"), each.id
