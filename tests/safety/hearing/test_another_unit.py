"""Of which unit something is told, and whether it is one's own: a lock, a proof, a shut cock.

The sentences are made up: common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.reasoning.unit.unit_numbers import said_numbers
from troubleshoot.safety.hearing.another_unit import (
    as_done,
    joined,
    may_be_of_own,
    names_another,
    only_another,
    told_of_own,
)

OURS = "School, RTU-07"
OWN = said_numbers(OURS)
LONG = "123456789012"
"""A serial number on a unit is its name too, and longer than any count."""


def test_a_unit_is_known_by_every_number_in_its_name() -> None:
    assert said_numbers("Bay 0, RTU-07 of 12") == {"0", "7", "12"}
    assert not names_another("the lock is on rtu-00", said_numbers("RTU-0"))


@pytest.mark.parametrize(
    ("name", "numbers"),
    [
        ("RTU three", {"3"}), ("RTU III", {"3"}), ("Bay 2, third unit", {"2", "3"}),
        ("RTU-V", {"5"}), ("Wing V, unit 3", {"3"}), ("rooftop twenty-one", {"21"}),
        ("Shed", set()),
    ],
)  # fmt: skip
def test_a_units_number_is_read_here_as_where_its_stop_is_looked_up(
    name: str, numbers: set[str]
) -> None:
    """Regression: told "my lock is on unit 3" of RTU three, the lock counted as another unit's."""
    assert said_numbers(name) == numbers


@pytest.mark.parametrize(
    ("part", "another"),
    [
        ("power is on at rtu 6", True), ("power is on at rtu 7", False),
        ("power is on at rtu 07", False), ("power is on at unit six", True),
        ("power is on at unit seven", False), ("power is on at the other unit", True),
        ("power is on", False), ("my lock is on one", False),
        ("power is on at unit thirteen", True), ("power is on at unit twenty one", True),
        ("power is on at unit 7 and unit 8", True),
    ],
)  # fmt: skip
def test_another_is_named_by_its_number_or_its_place(part: str, another: bool) -> None:
    assert names_another(part, OWN) is another


def test_a_number_longer_than_a_count_names_its_unit() -> None:
    assert not names_another(f"power is on at rtu {LONG}", said_numbers(f"RTU-{LONG}"))
    assert names_another(f"power is on at rtu {LONG}", OWN)


@pytest.mark.parametrize(
    ("part", "own"),
    [
        ("my lock is on rtu 6", True), ("that cock is on rtu 6", True),
        ("hung the lock on rtu 6", True), ("hung his lock on rtu 6", False),
        ("my helper hung the lock on rtu 6", False), ("the fan on rtu 6 moved", False),
        ("my lock is on rtu 6 too", False),
    ],
)  # fmt: skip
def test_what_is_told_of_another_is_of_it_alone_unless_it_is_ones_own(part: str, own: bool) -> None:
    assert told_of_own(part, OWN) is own
    assert only_another(part, OWN) is not own


@pytest.mark.parametrize("part", ["my lock is on rtu 7", "the fan moved", "my lock is on"])
def test_what_names_no_other_unit_is_not_of_another(part: str) -> None:
    assert not only_another(part, OWN) and not told_of_own(part, OWN)


@pytest.mark.parametrize("part", ["the lock hangs there by mistake", "my lock is on the exhaust"])
def test_a_mistake_and_other_equipment_say_that_ones_own_is_not_here(part: str) -> None:
    assert told_of_own(part, OWN)


@pytest.mark.parametrize(
    ("part", "may_be"),
    [
        ("my lock is on the north unit", True), ("my lock is on the same unit", False),
        ("my lock is on the school unit", False), ("the fan of the north unit moved", False),
        ("my lock is on", False),
    ],
)  # fmt: skip
def test_a_word_that_is_not_this_units_may_name_another(part: str, may_be: bool) -> None:
    assert may_be_of_own(part, OURS.replace(",", "")) is may_be


def test_what_points_back_and_the_words_of_a_mistake_are_taken_out() -> None:
    assert joined("hung it on rtu 6, not this one; done") == "hung it on rtu 6 not this one; done"
    assert as_done("hung it on the other unit by mistake").split() == ["hung", "it", "on", "the"]
