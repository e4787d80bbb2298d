"""What the shipped hazards tell a person in danger: what a good supervisor would say."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hazard_words import MOST_FIRST, first_orders
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("he was electrocuted", ("still be on the current", "power is off", "911",
                                 "chest compressions", "defibrillator", "even a mild one")),
        ("chest pain", ("sit them down", "911", "no ladder")),
        ("got a tingle", ("doctor today",)),
        ("refrigerant in my eyes", ("rinse with clean water",)),
        ("ladder fell", ("stay back from the edge", "climb down a pipe", "Phone", "911")),
        ("got oil in my eye", ("15 minutes", "do not rub", "911")),
        ("cap blew up in my face", ("rinse with clean water", "cool running water", "911")),
        ("hand stuck in belt", ("Switch off and lock it before anybody frees",
                                "by hand", "Never jog", "911")),
        ("stopped sweating and confused", ("Cool them at once", "ice", "911", "monoxide")),
        ("mate collapsed", ("chest compressions", "defibrillator")),
        ("lug glowing red", ("switch upstream", "do not touch the one that glows")),
        ("someone turned the breaker back on", ("Hands out now, touch nothing: it is live",)),
        ("meter says 480 on the cabinet", ("Hands out now, touch nothing",)),
        ("its live", ("Hands out now, touch nothing",)),
        ("someone took my lock off", ("Hands out now, touch nothing: it is live",)),
        ("wire down across the roof", ("35 ft",)),
        ("i feel faint", ("no ladder alone", "carbon monoxide", "after a shock", "911")),
        ("thunder", ("first thunder", "hatch or a stair before a ladder", "not safe",
                     "30 minutes", "touched at once")),
        ("lit with a bang", ("One bang is enough", "shut the gas cock")),
        ("roof is spongy", ("go back the way you came",)),
    ],
)  # fmt: skip
def test_it_holds_what_helps_that_person(said: str, told: tuple[str, ...]) -> None:
    what_to_do = reported(KNOWLEDGE, said)[0].what_to_do
    assert [words for words in told if words not in what_to_do] == []


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("feel sick dizzy", "fresh air first"),
        ("lock is gone", "Hands out now, touch nothing: it is live"),
        ("still hot 120v", "Hands out now, touch nothing"),
        ("480 volts on the cabinet", "Hands out now, touch nothing"),
        ("hand stuck in belt", "Switch off and lock it"),
        ("stopped sweating and confused", "Cool them at once"),
        ("cap blew up in my face", "Eyes: rinse"),
        ("acid cleaner in my eyes", "Rinse at once"),
        ("breathing that phosgene smell after brazing, throat burns", "Out into fresh air at once"),
        ("nitrogen regulator failed and the line is swelling", "Get away now"),
        ("the roof deck is soft and sagging under me", "Stop, and go back the way you came"),
        ("the janitor is passed out in the boiler room", "Out into fresh air first"),
        ("fan blade got my finger, tip is gone", "Press hard on the wound"),
    ],
)
def test_what_is_done_first_is_said_first(said: str, first: str) -> None:
    """Met by strangers: shade before fresh air, how to lock before hands out."""
    assert first in first_orders(reported(KNOWLEDGE, said)[0])


def test_nobody_is_sent_down_a_ladder_in_a_storm_or_dizzy() -> None:
    lightning = KNOWLEDGE.hazards["lightning"]
    assert lightning.what_to_do.startswith("Off the roof at the first thunder")
    assert "osha-noaa-lightning" in lightning.source
    assert "no ladder alone" in first_orders(KNOWLEDGE.hazards["roof-heat"])


@pytest.mark.parametrize("name", [h.id for h in KNOWLEDGE.hazards.values() if h.stop])
def test_what_comes_first_is_short_and_from_the_beginning(name: str) -> None:
    hazard = KNOWLEDGE.hazards[name]
    first = first_orders(hazard).removeprefix("First: ")
    assert hazard.what_to_do.startswith(first) and first.endswith(".")
    assert len(first) <= MOST_FIRST or ". " not in first


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("the ladder slipped and he's lying on the concrete not moving", "somebody-hurt"),
        ("charged it, 118 suction, the hose burst and it got in my eye", "refrigerant-on-skin"),
        ("cleaner flew up and got in his eyes", "burns-and-eyes"),
    ],
)
def test_the_page_is_of_who_is_hurt(typed: str, hazard: str) -> None:
    assert hazard in [found.id for found in reported(KNOWLEDGE, typed)[:2]]


def test_flames_that_roll_out_send_people_back_and_call_for_help() -> None:
    typed = "flames are rolling out the front of the burner box onto the wires"
    what_to_do = reported(KNOWLEDGE, typed)[0].what_to_do
    assert what_to_do.startswith("Flames out of the box now: get back") and "911" in what_to_do


def test_a_chemical_is_rinsed_for_the_time_that_is_published() -> None:
    """OSHA 1910.151(c) wants it drenched quickly; ANSI Z358.1 for 15 minutes (from memory)."""
    told = KNOWLEDGE.hazards["chemical-on-skin-or-in-eyes"].what_to_do
    assert told.index("15 minutes") < told.index("911")


def test_no_hot_part_is_felt_with_the_hand() -> None:
    """ISO 13732-1: bare metal over about 150 F burns within a second (from memory)."""
    told = KNOWLEDGE.hazards["hot-surfaces"].what_to_do
    assert "Feel with" not in told and "infrared thermometer" in told
    by_hand = " ".join(KNOWLEDGE.tests["lines-by-hand"].how)
    assert "None is felt by touch, not with the back of the hand either" in by_hand
    assert "back of the hand" not in KNOWLEDGE.tests["lines-by-hand"].name
