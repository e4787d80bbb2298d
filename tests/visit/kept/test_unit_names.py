"""A unit is known by its number however that is said, and two units are told apart by theirs."""

from __future__ import annotations

import pytest

from troubleshoot.visit.kept.unit_names import may_be_same, same_unit

OF_AN_ATTACKER = [
    "RTU three", "RTU III", "RTU-\u0417", "rooftop three", "third RTU", "RTU-3/4", "RTU-3-1",
]  # fmt: skip
MAY_BE = [
    "rtu iii", "Rooftop unit no. three", "the third rooftop unit", "3rd unit", "unit \u2162",
    "RTU \u2462", "RTU \u4e09", "RTU-\u01b7", "RTU \u2778", "RTU-three", "RTUthree", "RTU-2/3",
    "RTU 2 & 3", "RTU 1 to 4", "RTU one through four", "RTU-3-A", "RTU 3 west curb", "number III",
    "RTU no 3 (second floor)", "Third one from the hatch", "RTU 03-1", "same unit as before",
    "RTU-3, building 2", "RTU-3 3rd floor", "R3", "RTU-3rd", "RTU: 3", "the three", "RTU #III",
    "RTU-iii-b", "unit nr. 3", "Rtu3A", "RTU 3 and 4", "RTU-1..5", "units 1-4", "RTU III/IV",
]  # fmt: skip
ANOTHER = [
    "RTU-30", "RTU-2", "RTU-13", "RTU two", "RTU II", "RTU IV", "second RTU", "RTU-4/5", "RTU-1-2",
    "RTU thirteen", "RTU thirty", "RTU-33", "RTU-2 building 3", "AHU two", "RTU 1 to 2", "RTU XIII",
    "RTU VIII", "RTU-\u04170", "RTU twenty-three", "unit 2, third floor", "Third Street RTU-4",
    "RTU 4 and 5", "RTU-31", "RTU XXXIII", "RTU-4-1", "RTU sixty three", "units 1-2",
    "thirteenth unit", "RTU six", "RTU IX", "RTU 1..2", "Suite 3 RTU-1", "floor three RTU-9",
    "RTU 5 & 6", "4th unit", "unit \u2161", "",
]  # fmt: skip


@pytest.mark.parametrize("typed", [*OF_AN_ATTACKER, *MAY_BE])
def test_a_number_is_the_same_however_it_is_said(typed: str) -> None:
    """Regression: in words, in Roman figures or beside another number it passed a STOP."""
    assert may_be_same("RTU-3", typed) and may_be_same(typed, "RTU-3")


@pytest.mark.parametrize("typed", ANOTHER)
def test_another_number_is_another_unit_however_it_is_said(typed: str) -> None:
    assert not may_be_same("RTU-3", typed) and not may_be_same(typed, "RTU-3")


@pytest.mark.parametrize(
    ("one", "other", "may"),
    [
        ("RTU-3-1", "RTU-3-2", False), ("RTU-3/4", "RTU-4/5", True), ("RTU-C", "RTU-3", False),
        ("RTU-V", "RTU v", True), ("RTU-V", "RTU-5", True), ("RTU-V", "RTU-A", False),
        ("Building 2 RTU-3", "Building 4 RTU-3", False), ("Building 2 RTU-3", "RTU-2", False),
        ("Building 2 RTU-3", "bldg two, third unit", True), ("Building 2 RTU-3", "RTU-3", True),
        ("RTU-12", "RTU twelve", True), ("RTU-12", "twelfth unit", True),
        ("RTU-21", "RTU XXI", True), ("RTU-21", "twenty-first unit", True),
        ("RTU-20", "the twentieth", True), ("", "RTU", True), ("", "RTU-3", False),
        ("RTU-15", "RTU one five", True), ("RTU IV", "RTU-4", True), ("RTU XIV", "RTU-14", True),
        ("North yard RTU-3", "Norfolk yard RTU-3", False),
        ("RTU-3/4", "RTU-3-1", True), ("RTU 1 to 4", "RTU 3 to 6", True),
        ("School RTU-3", "units 4 to 1", True), ("School RTU-3", "units 6 to 4", False),
        ("RTU 1 to 4", "RTU-4", True), ("RTU 61 to 64", "RTU-62", True),
        ("RTU 1 to 62", "RTU-1", True), ("RTU 1 to 62", "RTU-62", True),
        ("RTU 1 to 61", "RTU-30", True), ("RTU 1 to 62", "RTU-30", False),
        ("\u00c9cole RTU-3", "RTU-3 ecole", True), ("RTU-1\u3007", "RTU-10", True),
        ("RTU-\u00bd", "RTU-0", False),
        ("Gate 7 RTU-3", "RTU-7", False), ("Rooftop 2, unit 3", "RTU-2", False),
    ],
)  # fmt: skip
def test_numbers_that_stand_beside_each_other_are_told_apart(
    one: str, other: str, may: bool
) -> None:
    assert may_be_same(one, other) is may and may_be_same(other, one) is may


@pytest.mark.parametrize(
    "typed",
    [
        "rtu", "the rtus", "units", "rooftop", "rooftops", "roof top", "roof tops", "unit number",
        "unit no", "at the unit", "same unit", "the same again", "as before",
    ],
)  # fmt: skip
def test_what_names_only_a_kind_or_the_one_before_may_be_any(typed: str) -> None:
    """Regression: roof tops, in two words, was another unit than the one that is stopped."""
    assert may_be_same("School RTU-3", typed) and may_be_same(typed, "School RTU-3")


@pytest.mark.parametrize(
    ("ordinal", "number"),
    [
        ("first", 1), ("second", 2), ("third", 3), ("fourth", 4), ("fifth", 5), ("sixth", 6),
        ("seventh", 7), ("eighth", 8), ("ninth", 9), ("tenth", 10), ("eleventh", 11),
        ("twelfth", 12), ("thirteenth", 13), ("twentieth", 20), ("thirty-fifth", 35),
    ],
)  # fmt: skip
def test_a_unit_is_counted_as_well_as_numbered(ordinal: str, number: int) -> None:
    assert may_be_same(f"{ordinal} unit", f"RTU-{number}")
    assert not may_be_same(f"{ordinal} unit", f"RTU-{number + 1}")


def test_what_was_left_off_at_an_address_is_found_by_its_short_spelling() -> None:
    assert same_unit("Attic Lane depot, unit 4", "ATTIC LN. DEPOT UNIT 04")
    assert same_unit("Building 2, third floor, Pier Street", "bldg 2 third fl Pier St")
    assert not same_unit("Attic Lane depot, unit 4", "Attic Rd depot unit 4")
    assert not same_unit("St Swithin's hall", "Saint Swithin's hall")


def test_what_only_may_be_the_same_is_not_called_so() -> None:
    assert not any(same_unit("RTU-3", typed) for typed in ("RTU three", "RTU III", "RTU-3/4"))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Attic Lane depot, unit 4", "Attic Ln depot unit 4"),
        ("Kiln Road works RTU-2", "Kiln Rd. works RTU-2"),
        ("12 Pier Street, RTU-1", "12 Pier St RTU 1"),
        ("Saint Swithin's hall, unit 2", "St Swithin's hall unit 2"),
        ("Fern Avenue school RTU-3", "Fern Av school RTU 3"),
        ("Fern Avenue school RTU-3", "Fern Ave school RTU 3"),
        ("Mill Drive shed, unit 5", "Mill Dr shed unit 5"),
        ("Salt Boulevard RTU-6", "Salt Blvd RTU-6"),
        ("Salt Boulevard RTU-6", "Salt Bl. RTU-6"),
        ("Highway 9 depot, unit 4", "Hwy 9 depot unit 4"),
        ("Route 9 depot, unit 4", "Rt 9 depot unit 4"),
        ("Building 2, RTU-3", "Bldg 2 RTU-3"),
        ("Second floor, RTU-3", "2nd Fl RTU-3"),
        ("Suite 12, RTU-3", "Ste 12 RTU-3"),
        ("Apartment 8, unit 1", "Apt 8 unit 1"),
        ("North yard, unit 1", "N yard unit 1"),
        ("Northeast yard, unit 1", "NE yard unit 1"),
        ("North east yard, unit 1", "N.E. yard unit 1"),
        ("Loom Court RTU-1", "Loom Ct RTU-1"),
        ("Mount Fen school RTU-1", "Mt Fen school RTU-1"),
        ("Otter Parkway RTU-1", "Otter Pkwy RTU-1"),
        ("Ore Crossing RTU-1", "Ore Xing RTU-1"),
    ],
)
def test_an_address_is_the_same_in_its_short_spelling(one: str, other: str) -> None:
    """Regression: Ln and Rd went past the STOP of Lane and Road. USPS Publication 28, appendix C
    (street suffixes, secondary unit designators), from memory."""
    assert may_be_same(one, other) and may_be_same(other, one)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Attic Lane depot, unit 4", "Attic Rd depot unit 4"),
        ("Attic Lane depot, unit 4", "Attic Ln depot unit 5"),
        ("12 Pier Street, RTU-1", "14 Pier St RTU 1"),
        ("Suite 12, RTU-3", "Ste 14 RTU-3"),
        ("Highway 9 depot, unit 4", "Hwy 7 depot unit 4"),
        ("North yard, unit 1", "S yard unit 1"),
        ("Northeast yard, unit 1", "NW yard unit 1"),
        ("Mill Drive shed, unit 5", "Mill Ct shed unit 5"),
    ],
)
def test_another_address_is_another_in_its_short_spelling(one: str, other: str) -> None:
    assert not may_be_same(one, other) and not may_be_same(other, one)
