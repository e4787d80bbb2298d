"""Every usable reference value against what the program computes, each under its own source."""

import re

import pytest

from tests.checks import (
    air_checks,
    electrical_checks,
    instrument_checks,
    motor_checks,
    refrigerant_checks,
)
from tests.checks.reference_entries import Entry, differences, entries

CHECKS = {
    **electrical_checks.CHECKS,
    **motor_checks.CHECKS,
    **refrigerant_checks.CHECKS,
    **air_checks.CHECKS,
    **instrument_checks.CHECKS,
}

ELSEWHERE = {
    r"FLT-.*": "signs, surveys and fault impacts: knowledge for rules, nothing to compute here",
    r"DIA-.*": "ranking and choice of tests: belongs to the reasoning",
    r"SAF-0(?!27).*|CAP-025": "safety limits and classes: belong to the hazards",
    r"ECO-.*": "economizer settings by climate zone: belong to the limits",
    r"REF-0(0[3-9]|10)": "safety groups and compositions: facts of refrigerants",
    r"UNB-01[34]|GAS-0(15|17|34|35|36|37|39|40)|INS-00[2-5]|NEC-00[79]|WDG-00[47]|LRA-001|"
    r"MOT-016|VP-006|COA-001": "a limit or rule of thumb that belongs to the limits of the rules",
    r"WDG-002|GAS-042|GAS-020|VP-004|ECO-006": "no named calculation asks for it",
    r"DR-00[789]|DR-021": "another distribution, or a definition in words",
}
"""Entries that no calculation answers, by pattern of their id, with the reason."""

WRONG_FIGURES = {
    "CAP-009": ("right_uF", ["wrong_uF"]),
    "UNB-006": ("unbalance_percent", ["published_wrong_value"]),
    "UNB-007": ("unbalance_percent", ["published_wrong_value"]),
    "REF-001": ("dew_psig", ["published_as_dew", "published_as_bubble", "bubble_psig"]),
    "SH-009": ("right_superheat", ["wrong_superheat"]),
    "TSH-TRAP": ("likely_K", ["printed_K"]),
    "GAS-014": ("right_btuh", ["printed_btuh"]),
}
"""Traps: the key of the right figure, and the keys of the wrong ones in print beside it."""

LAST_DIGIT = {"PSY-013": 0.0001, "PSY-014": 0.0001, "PSY-015": 0.0001}
"""One step of the last digit in print, psia, where the tolerance stated beside it is finer than
that digit: at 41 F even the IAPWS value, 0.12656, misses the printed 0.1266 by it."""


def usable() -> list[Entry]:
    return [entry for entry in entries().values() if not entry.from_memory and entry.id in CHECKS]


@pytest.mark.parametrize("entry", usable(), ids=lambda entry: entry.id)
def test_a_computed_value_agrees_with_its_source(entry: Entry) -> None:
    print(f"{entry.id}: {entry.quantity}. Source: {entry.source}. Confirmed: {entry.confirmed}.")
    got = CHECKS[entry.id](entry)
    if entry.id in LAST_DIGIT:
        assert abs(got - entry.expected) <= LAST_DIGIT[entry.id]
    else:
        assert differences(entry, got) == []


@pytest.mark.parametrize("name", sorted(WRONG_FIGURES))
def test_an_error_in_print_is_not_repeated(name: str) -> None:
    entry = entries()[name]
    print(f"{entry.id}: {entry.quantity}. Source: {entry.source}.")
    right, wrong = WRONG_FIGURES[name]
    got = CHECKS[name](entry)[right]
    for key in wrong:
        printed = float(re.sub(r"[^0-9.]", "", str(entry.expected[key])))
        assert abs(got - printed) > 0.05 * abs(printed), key


def test_no_value_from_memory_is_a_check() -> None:
    assert [name for name in CHECKS if entries()[name].from_memory] == []


def test_every_reference_value_is_a_check_or_has_a_reason_not_to_be() -> None:
    left_over = [
        entry.id
        for entry in entries().values()
        if not entry.from_memory
        and entry.id not in CHECKS
        and not any(re.fullmatch(pattern, entry.id) for pattern in ELSEWHERE)
    ]
    assert left_over == []


def test_every_trap_is_among_the_checks() -> None:
    traps = {entry.id for entry in entries().values() if entry.kind == "trap"}
    assert traps - set(CHECKS) == set()
    assert set(WRONG_FIGURES) <= traps
