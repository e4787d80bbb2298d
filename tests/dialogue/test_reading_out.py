"""Readings are typed as gauges are read out: each is echoed, judged and kept as its own answer."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.player import Player, play
from tests.dialogue.read_out import UNIT, kept, typed_at
from troubleshoot.knowledge.model import Knowledge

AT = "circuit 1"
TWO = {"circuits": 2}


@pytest.mark.parametrize(
    ("line", "taken"),
    [
        ("suction 128 liquid 340 sl 62",
         [("suction-pressure", AT, "128"), ("head-pressure", AT, "340"),
          ("suction-line-temperature", AT, "62")]),
        ("sh 25", [("superheat", AT, "25")]),
        ("128 over 340", [("suction-pressure", AT, "128"), ("head-pressure", AT, "340")]),
        ("128/340", [("suction-pressure", AT, "128"), ("head-pressure", AT, "340")]),
        ("one twenty eight over three forty",
         [("suction-pressure", AT, "128"), ("head-pressure", AT, "340")]),
        ("one twenty eight psi", [("suction-pressure", AT, "128 psi")]),
        ("340 on the head and 128 on the suction",
         [("head-pressure", AT, "340"), ("suction-pressure", AT, "128")]),
    ],
)  # fmt: skip
def test_a_line_is_kept_reading_by_reading(
    shipped: Knowledge, tmp_path: Path, line: str, taken: list[tuple[str, str, str]]
) -> None:
    _, book = typed_at(shipped, tmp_path, "suction-pressure", line)
    assert kept(book) == taken


def test_each_is_echoed_and_what_follows_is_told_by_name(
    shipped: Knowledge, tmp_path: Path
) -> None:
    text, _ = typed_at(shipped, tmp_path, "suction-pressure", "suction 128 sl 62")
    assert "Taken: suction pressure: 128 psig." in text
    assert "Taken: suction line temperature: 62 °F." in text
    assert "Superheat at the compressor: 17.9 +/-2.3 F: normal" in text


def test_what_was_asked_stays_open_until_it_is_answered(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "suction-pressure", "head 340", "128")
    assert text.count("Test: Suction pressure") == 1
    assert kept(book) == [("head-pressure", AT, "340"), ("suction-pressure", AT, "128")]


@pytest.mark.parametrize("line", ["head 340", "head 340 c2", "ckt 2 head 340", "head B 340"])
def test_a_reading_is_at_its_own_place_or_at_that_of_the_question(
    shipped: Knowledge, tmp_path: Path, line: str
) -> None:
    lines = (line.replace("head B", "circuit b head"),)
    text, book = typed_at(shipped, tmp_path, "suction-pressure at circuit 2", *lines, unit=TWO)
    assert kept(book) == [("head-pressure", "circuit 2", "340")]
    assert "Taken: head pressure, circuit 2: 340 psig." in text


PORTS_OUT = {**TWO, "service-ports": "outside"}


def test_where_no_gauge_is_on_nothing_was_read(shipped: Knowledge, tmp_path: Path) -> None:
    test = "suction-pressure at circuit 2"
    text, book = typed_at(shipped, tmp_path, test, "c1 head 340", "n", unit=PORTS_OUT)
    assert "head 340: are the gauges on, at circuit 1?" in text
    assert "Not taken: Head pressure" in text and "gauges on at circuit 1. Kept as a note" in text
    assert kept(book) == []


def test_where_the_question_has_no_place_it_is_asked(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "blower-amps", "comp 12 amps", "2", unit=TWO)
    assert "comp 12 amps: which is it?" in text
    assert kept(book) == [("compressor-amps", "compressor 2", "12 amps")]


def test_a_place_is_heard_in_its_own_words(shipped: Knowledge, tmp_path: Path) -> None:
    _, book = typed_at(shipped, tmp_path, "blower-amps", "comp 1 12 amps", unit=TWO)
    assert kept(book) == [("compressor-amps", "compressor 1", "12 amps")]


def test_of_a_word_for_two_readings_the_one_that_can_be_read_is_taken(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """The discharge pipe is read behind an open panel, and the pressures with it on."""
    _, book = typed_at(shipped, tmp_path / "a", "suction-pressure", "discharge 210")
    assert kept(book) == [("head-pressure", AT, "210")]
    _, book = typed_at(shipped, tmp_path / "b", "suction-pressure", "liquid 340")
    assert kept(book) == [("head-pressure", AT, "340")]


def test_what_the_work_does_not_allow_is_told_and_kept_as_a_note(
    shipped: Knowledge, tmp_path: Path
) -> None:
    test = "capacitance-out-of-circuit at capacitor condenser fan 1"
    text, book = typed_at(shipped, tmp_path, test, "suction 128")
    assert "Not taken: Suction pressure" in text and "gauges on at circuit 1" in text
    assert kept(book) == []
    assert book.state.notes[-1] == "typed, and not taken as a reading: suction 128"


def test_at_a_step_only_what_can_be_read_as_the_work_stands_is_taken(
    shipped: Knowledge, tmp_path: Path
) -> None:
    lines = ["do air filters", "suction 128", "suction 128 or so", "outdoor 95"]
    player = Player(shipped, {}, lines, ["q"])
    _, book = play(shipped, tmp_path, player, {"complaint": "weak-cooling", "unit": UNIT})
    said = " ".join(player.text.split())
    assert "Not taken: Suction pressure" in said and "gauges on" in said
    assert kept(book) == [("outdoor-temperature", None, "95")]


@pytest.mark.parametrize(("meant", "many"), [("y", 2), ("n", 0)])
def test_what_was_read_while_it_ran_may_be_typed_a_prompt_late(
    shipped: Knowledge, tmp_path: Path, meant: str, many: int
) -> None:
    """Regression: return 66 supply 168 rise 102, typed at the next step, were lost."""
    late = ("do blower belt", "proved", "stopped", "return 66 supply 168 rise 102", meant, "q")
    asked = "heating-supply-temperature"
    player = Player(shipped, {asked: "s"}, ["do heat rise"], ["q"], {asked: ["; ".join(late)]}, 200)
    unit = {**UNIT, "blower-drive": "belt"}
    _, book = play(shipped, tmp_path, player, {"complaint": "weak-heating", "unit": unit})
    assert 'was that read before "Stop' in player.text
    assert ("Temperature rise of the heat: 102 +/-2.3 F: high" in player.text) == (meant == "y")
    assert len(kept(book)) == many


def test_readings_of_the_whole_unit_stand_beside_those_of_each_circuit(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: all were put to c1, and refused; or 128 over 385 was put to the other circuit."""
    line = "outdoor 95 c1 128 over 385 c2 82 over 290"
    _, book = typed_at(shipped, tmp_path, "suction-pressure at circuit 1", line, "n", unit=TWO)
    one = [("suction-pressure", AT, "128"), ("head-pressure", AT, "385")]
    assert kept(book) == [
        ("outdoor-temperature", None, "95"), *one,
    ]  # fmt: skip
    assert "82" in book.state.notes[-1]  # no gauge is on there


def test_words_that_are_not_understood_are_asked_about(shipped: Knowledge, tmp_path: Path) -> None:
    line = "suction 128 and it rattles a bit"
    text, book = typed_at(shipped, tmp_path, "suction-pressure", line, "y")
    assert 'Not understood: "rattles a bit". Take what was understood? (y/n)' in text
    assert kept(book) == [("suction-pressure", AT, "128")]
    assert any(line in note for note in book.state.notes)
    _, book = typed_at(shipped, tmp_path / "b", "suction-pressure", line, "n")
    assert kept(book) == [] and any(line in note for note in book.state.notes)


def test_a_danger_is_heard_before_any_reading(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "suction-pressure", "suction 128 and i smell gas")
    assert "DANGER - STOP" in text and kept(book) == []


def test_what_is_dangerous_in_a_reading_calls_it_up(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "head-pressure", "suction -2")
    assert kept(book) == [("suction-pressure", AT, "-2")]
    assert "STOP" in text


def test_what_the_plate_says_is_kept_beside_it(shipped: Knowledge, tmp_path: Path) -> None:
    test = "capacitance-out-of-circuit at capacitor condenser fan 1"
    lines = {"cap reads 6.1 rated 7.5": "6.1", "6.1 on a 7.5": "6.1", "6.1 mfd on 7.5": "6.1 mfd"}
    for number, (line, read) in enumerate(lines.items()):
        text, book = typed_at(shipped, tmp_path / str(number), test, line)
        assert kept(book) == [("capacitance-out-of-circuit", "capacitor condenser fan 1", read)]
        assert "Taken from the data plate: capacitor rated 7.5 µF." in text
        assert "very low" in text


def test_a_pressure_at_a_question_for_its_temperature_is_the_pressure(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: 340 psi was refused where a temperature that follows from it was asked for."""
    text, book = typed_at(shipped, tmp_path, "condensing-temperature", "340 psi")
    assert kept(book) == [("head-pressure", AT, "340 psi")]
    assert "Taken: head pressure: 340 psi." in text


def test_a_line_that_cannot_be_taken_is_told_once_and_noted_with_its_places(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: four refusals of six rows each, and notes without the circuit."""
    test = "capacitance-out-of-circuit at capacitor condenser fan 1"
    line = "c1 suction 88 liquid 318 sl 62 ll 85"
    text, book = typed_at(shipped, tmp_path, test, line)
    assert text.count("Not taken:") == len(book.state.notes)
    noted = " ".join(book.state.notes)
    assert all(each in noted for each in ("88", "318", "62", "85"))
    assert noted.count("c1") == 4


@pytest.mark.parametrize(
    "line", ["no flame, 3 tries", "inducer runs, igniter glows, no flame, 3 tries then locks out"]
)
def test_a_word_that_is_denied_takes_no_number(
    shipped: Knowledge, tmp_path: Path, line: str
) -> None:
    """Regression: no flame, 3 tries was a flame of 3."""
    text, book = typed_at(shipped, tmp_path, "suction-pressure", line)
    assert kept(book) == [] and "flame 3" not in text


@pytest.mark.parametrize("line", ["suction 3 tries", "3 tries", "suction 5 times"])
def test_a_number_that_counts_something_is_no_reading(
    shipped: Knowledge, tmp_path: Path, line: str
) -> None:
    _, book = typed_at(shipped, tmp_path, "suction-pressure", line)
    assert kept(book) == []


@pytest.mark.parametrize("line", ["gas, TXV, scroll", "gas, R-410A, belt"])
def test_a_line_off_the_plate_is_taken_at_a_test_and_is_no_leak(
    line: str, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: gas in a list of what the plate says stopped the visit for a leak of gas."""
    text, book = typed_at(shipped, tmp_path, "thermostat-settings", line)
    assert "heat is gas, as told before" in text and " is now " in text
    assert not book.state.stops and book.state.unit.facts["heat"] == "gas"
    assert len(book.state.unit.facts) > 2


def test_a_number_that_the_test_does_not_take_is_kept_as_a_note(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: it was told to be no answer, and nothing was kept of it."""
    _, book = typed_at(shipped, tmp_path, "thermostat-settings", "2.1 uF")
    assert any("and not taken: 2.1 uF" in note for note in book.state.notes), book.state.notes


def test_what_is_read_with_heat_called_is_refused_for_that(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: of a gas unit it was said to have no such place as its gas valve."""
    unit = {**UNIT, "heat": "gas", "fuel": "natural-gas"}
    text, _ = typed_at(shipped, tmp_path, "suction-pressure", "gas valve has 24 volts", unit=unit)
    assert "it is read with heat called, and this call is for cooling" in text
    assert "no such place" not in text


@pytest.mark.parametrize(
    ("answer", "taken"),
    [
        ("y", [("suction-pressure", AT, "71"), ("head-pressure", AT, "222")]),
        ("n; ", []),
    ],
)
def test_the_high_side_told_first_is_asked_about(
    shipped: Knowledge, tmp_path: Path, answer: str, taken: list[tuple[str, str, str]]
) -> None:
    """Regression: the suction was kept as 222, "not kept: read it again" or not."""
    lines = ("222 over 71", *answer.split(";"))
    text, book = typed_at(shipped, tmp_path, "suction-pressure", *lines)
    assert "Head 222, suction 71: is that meant?" in text
    assert kept(book) == taken
