"""A number within the limits of a danger's own all-clear is none, however it is said.

Outside the project: the monitor limits of 9 and 70 ppm stand in the rules with their sources; here
they are counted up number by number. The phrasings are a gas fitter's, common practice, no source.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.netted import read_in_doubt

KNOWLEDGE = load_shipped()
CO_LIMIT_PPM = 9
OF_CARBON_MONOXIDE = (
    "CO monitor reads {} ppm",
    "CO in the rooms {} ppm",
    "CO in the room: {} ppm",
    "{} ppm CO in the rooms",
    "{} ppm carbon monoxide in the rooms, monitor",
    "{} ppm CO in the rooms after 20 min of burner running",
    "carbon monoxide in the room is {} ppm",
    "my monitor shows CO at {} ppm in the kitchen",
    "monitor shows co {}",
    "co monitor is reading {} ppm right now",
    "CO meter reads {} ppm and the filters are dirty",
    "CO alarm on the wall reads {} ppm",
)
OF_GAS = ("gas leak detector reads {} % lel", "lel {} %", "combustible gas {} % lel")
OF_VOLTS = ("voltage on the cabinet {} V", "voltage on the cabinet is {} volts")


def heard(typed: str) -> set[str]:
    told = (*spoken_of(KNOWLEDGE, typed), *told_among(KNOWLEDGE, typed))
    return {hazard.id for hazard in told}


@given(st.sampled_from(OF_CARBON_MONOXIDE), st.integers(0, 1_200))
def test_carbon_monoxide_is_a_danger_from_its_limit_on(said: str, ppm: int) -> None:
    assert bool(heard(said.format(ppm))) is (ppm >= CO_LIMIT_PPM)


@given(st.sampled_from(OF_CARBON_MONOXIDE), st.integers(0, 89))
def test_a_tenth_below_the_limit_is_below_it(said: str, tenths: int) -> None:
    assert not heard(said.format(f"{tenths / 10:.1f}"))


@given(st.sampled_from(OF_GAS), st.integers(0, 100))
def test_of_gas_anything_is_a_danger_and_nothing_none(said: str, percent: int) -> None:
    assert bool(heard(said.format(percent))) is (percent > 0)


@given(st.sampled_from(OF_VOLTS), st.integers(0, 600))
def test_a_cabinet_is_live_over_5_volts_and_not_up_to_2(said: str, volts: int) -> None:
    """What lies between its words still tell; over 5 V is the test's own limit, from memory."""
    if not 2 < volts <= 5:
        assert bool(heard(said.format(volts))) is (volts > 5)


@pytest.mark.parametrize(
    "typed",
    [
        "CO monitor reads 2 ppm and climbing",
        "CO monitor reads 4 ppm, was 20 before",
        "CO in the room 0 ppm, 12 ppm in the office",
        "CO in the rooms 0 to 15 ppm",
        "CO in room 5",
        "CO in the room, unit 3",
        "CO in the room 1 %",
        "CO in the room, cabinet 0 V",
        "CO detector going off, reads 5 ppm",
        "CO alarm at 5 ppm",
        "0 ppm of CO in the room but people are sick",
        "CO monitor reads 0 ppm, smell gas",
        "monitor shows co",
        "exhaust smell in the room, 0 ppm CO",
        "smell of gas, detector reads 0 %",
        "cabinet is live at 0 V",
    ],
)
def test_what_is_no_plain_reading_is_heard_as_ever(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) and told_among(KNOWLEDGE, typed)


@pytest.mark.parametrize("said", OF_CARBON_MONOXIDE)
def test_nor_is_it_asked_about(said: str) -> None:
    assert not read_in_doubt(KNOWLEDGE, said.format(2))
