"""What shows that a danger has gone: a sound number with its unit, or a sound look."""

from __future__ import annotations

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
]  # fmt: skip
UNSOUND = [
    ("gas-odour", "3 % LEL"), ("gas-odour", "<1 % LEL"), ("gas-odour", "5 ppm"),
    ("gas-odour", "5000 % LEL"), ("gas-odour", ">0 ppm"),
    ("carbon-monoxide-in-room", "40 ppm"), ("carbon-monoxide-in-room", ">5 ppm"),
    ("carbon-monoxide-in-room", "99999999 ppm"), ("unexplained-voltage", "277 V"),
    ("unexplained-voltage", "-277 V"), ("unexplained-voltage", ">1 V"),
    ("unexplained-voltage", "0/0/120 V"), ("unexplained-voltage", "99999 V"),
    ("flue-carbon-monoxide-extreme", "800 ppm"), ("wet-electrical", "0.2 Mohm"),
    ("wet-electrical", "120 V"), ("wet-electrical", "<500 Mohm"),
]  # fmt: skip
NO_NUMBER = [
    "", "yes", "0", "0 %", "none", "nothing", "about 0 ppm", "0 ppm or so", "0 ppm I guess",
    "0 ppm yesterday", "0 ppm next door", "0 ppm before, 9 now", "it shows 0 ppm", "-0 ppm",
    "0 ppm in the flue", "0 psi", "LEL 0", "0 % LEL, 4 joints tight", "1e-400 % LEL", "0e0 ppm",
    "0 ppm ± 5", "~0 ppm", "0 ppm?", "not 0 ppm", "0 to 5 ppm", "1.2.3 ppm", "²0 ppm", "0 % O2",
]  # fmt: skip


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


@pytest.mark.parametrize("typed", NO_NUMBER)
@pytest.mark.parametrize("name", ["gas-odour", "carbon-monoxide-in-room"])
def test_nothing_is_taken_but_a_number_and_its_unit(
    name: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult):
        read(shipped, name, typed)


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
