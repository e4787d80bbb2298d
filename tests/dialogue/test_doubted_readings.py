"""Readings that cannot be right together, a digit that decides, a temperature for a difference."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue.read_out import kept, typed_at
from troubleshoot.knowledge.model import Knowledge

AT = "circuit 1"
SUCTION, HEAD, LINE = "suction-pressure", "head-pressure", "suction-line-temperature"


def test_head_under_suction_is_refused_with_both_named(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: head 62 psig beside suction 98 was taken, and gave subcooling of -84 F."""
    text, book = typed_at(shipped, tmp_path, HEAD, "suction 98", "head 62", "1")
    assert "That cannot be: circuit 1: suction is not below head." in text
    assert "98 psig" in text and "62 psig (typed now)" in text
    assert "Read again, or say which is wrong." in text and "Not kept: read it again." in text
    assert kept(book) == [(SUCTION, AT, "98")]


def test_nobody_need_say_which_and_what_was_typed_is_a_note(
    shipped: Knowledge, tmp_path: Path
) -> None:
    _, book = typed_at(shipped, tmp_path, HEAD, "suction 98", "head 62", "")
    assert kept(book) == [(SUCTION, AT, "98")] and "head 62" in book.state.notes[-1]


def test_the_earlier_one_may_be_wrong_and_is_asked_again(
    shipped: Knowledge, tmp_path: Path
) -> None:
    text, book = typed_at(shipped, tmp_path, SUCTION, "head 62", "98", "2")
    assert "Does not count any more: Head pressure" in text
    assert [(a.test, a.valid) for a in book.state.answers if a.text][-2:] == [
        (HEAD, False), (SUCTION, None),
    ]  # fmt: skip
    assert text.rpartition("Test: ")[2].startswith("Head pressure")


def test_undo_takes_back_first_the_reading_then_what_was_said_of_the_other(
    shipped: Knowledge, tmp_path: Path
) -> None:
    _, book = typed_at(shipped, tmp_path, SUCTION, "head 62", "98", "2", "u", "u")
    assert [(a.test, a.valid) for a in book.state.answers if a.text][-1:] == [(HEAD, None)]


@pytest.mark.parametrize(
    ("lines", "refused"),
    [
        (("suction 128", "sl 40"), True),  # 44 F by the table
        (("suction 128", "sl 43"), False),  # the gauge and the clamp may explain that
        (("sh -7",), True),
        (("sh -1",), False),
        (("oat 95", "ll 84"), True),
        (("oat 95", "ll 92"), False),
        (("head 340", "ll 120"), True),  # 105 F by the table
        (("suction 130", "head 129"), False),  # a compressor that does not pump
    ],
)  # fmt: skip
def test_only_what_no_meter_explains_is_refused(
    shipped: Knowledge, tmp_path: Path, lines: tuple[str, ...], refused: bool
) -> None:
    text, _ = typed_at(shipped, tmp_path, SUCTION, *lines)
    assert ("That cannot be" in text) is refused, text[-1500:]


def test_a_wet_bulb_over_its_dry_bulb_is_refused(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "return-wet-bulb", "db 70", "80", "1")
    assert "That cannot be: wet bulb above dry bulb." in text
    assert kept(book) == [("return-air-temperature", None, "70")]


def test_what_a_fault_can_really_do_may_be_kept(shipped: Knowledge, tmp_path: Path) -> None:
    """Another refrigerant in the circuit makes a superheat under zero of the table."""
    text, book = typed_at(shipped, tmp_path, SUCTION, "suction 128", "sl 38", "3")
    assert "None of them: all read again (Mixed or wrong refrigerant in the circuit)" in text
    assert kept(book) == [(SUCTION, AT, "128"), (LINE, AT, "38")]


def test_it_is_asked_once_and_not_at_every_reading_after(
    shipped: Knowledge, tmp_path: Path
) -> None:
    lines = ("suction 128", "sl 38", "3", "oat 95")
    text, book = typed_at(shipped, tmp_path, SUCTION, *lines)
    assert text.count("That cannot be") == 1
    assert kept(book)[-1] == ("outdoor-temperature", None, "95")


def test_a_temperature_is_no_difference(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: 78 at the thermometer beside the thermostat was taken for a difference."""
    text, book = typed_at(shipped, tmp_path, "space-temperature", "78", "Room temperature")
    assert "78 °F is odd" in text and "What was read as 78 °F?" in text
    assert kept(book) == [("room-temperature", None, "78")]
    assert text.rpartition("Test: ")[2].startswith("Own thermometer")


def test_what_was_typed_and_what_others_make_are_both_told(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """12 and 4 F are both normal, and more apart than the meters."""
    text, _ = typed_at(shipped, tmp_path, SUCTION, "suction 128 sl 62", "sh 11")
    assert "Superheat was typed as 11 °F, and the other readings make it 17.9 °F." in text
    assert "What was typed counts." in text
    text, _ = typed_at(shipped, tmp_path / "b", SUCTION, "sh 11", "suction 128 sl 62")
    assert "Superheat was typed as 11 °F, and the readings since make it 17.9 °F." in text
    text, _ = typed_at(shipped, tmp_path / "c", SUCTION, "suction 128 sl 62", "sh 16")
    assert "was typed as" not in text


def test_what_is_typed_after_it_was_computed_counts(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: one typed before and again after was taken for older than what makes it."""
    lines = ("sh 24", "suction 128 sl 62", "sh 11")
    text, _ = typed_at(shipped, tmp_path, SUCTION, *lines)
    assert "It does not count" not in text.rpartition("sh 11")[2]


@pytest.mark.parametrize(
    ("lines", "text"),
    [
        (("22", "22.4"), "22.4"),
        (("22", ""), "22"),
        (("22", "twenty two point four"), "22.4"),
        (("22.4",), "22.4"),
        (("24",), "24"),
        (("22", "hm", "22.3 V"), "22.3 V"),
        (("22", "2.4", "21.9"), "21.9"),
    ],
)
def test_the_digit_that_decides_is_asked_for_once(
    shipped: Knowledge, tmp_path: Path, lines: tuple[str, ...], text: str
) -> None:
    said, book = typed_at(shipped, tmp_path, "contactor-coil-volts", *lines)
    assert kept(book) == [("contactor-coil-volts", "contactor 1", text)]
    asked = "22 may be 21.5 to 22.5 V, and the limit is 22: one more digit? Enter keeps it"
    assert (asked in said) is (lines[0] == "22")


def test_a_number_said_in_words_is_the_number(shipped: Knowledge, tmp_path: Path) -> None:
    lines = ("twenty four point two volts",)
    said, book = typed_at(shipped, tmp_path, "contactor-coil-volts", *lines)
    assert 'Taken as "24.2 volts".' in said
    assert kept(book) == [("contactor-coil-volts", "contactor 1", "24.2 volts")]


def test_a_bare_number_that_may_be_a_line_of_the_list_is_asked_about(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: 1 for the first line, "hot", was a bearing at 1 F, and normal."""
    text, book = typed_at(shipped, tmp_path, "blower-bearings", "1", "n", "150 F")
    assert "is no line of the list" in " ".join(text.split())
    assert [typed for _, _, typed in kept(book)] == ["150 F"]


@pytest.mark.parametrize(
    ("typed", "told"),
    [("128 lb", '"128 lb" is read as 128 psig.'), ("128 psig", ""), ("128", "")],
)
def test_a_weight_at_a_gauge_is_said_back(
    typed: str, told: str, shipped: Knowledge, tmp_path: Path
) -> None:
    text, book = typed_at(shipped, tmp_path, SUCTION, typed)
    assert (told in text) if told else ("is read as" not in text)
    assert kept(book) == [(SUCTION, AT, typed)]
