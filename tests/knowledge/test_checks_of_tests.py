"""Checks of tests and their limits: exact words, exact places."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import (
    CAPACITORS,
    FILES,
    REFRIGERANT,
    Change,
    said,
    write_files,
    write_rules,
)
from troubleshoot.knowledge.checks import check_rules

CANS = "rules/tests/capacitors.yaml"
CIRCUITS = "rules/tests/refrigerant.yaml"
SECTION = "capacitance-one-side-off"


UNKNOWABLE = "superheat can never be known; let a test read it, or give it a formula"
ADD_SOURCE = "have no source; name a source, or write: common practice, no source [sourced-limits]"


@pytest.mark.parametrize(
    ("change", "messages"),
    [
        (
            (CAPACITORS, "severity: [[low, open]]", "severity: [[normal, low, open]]"),
            [
                f"{CANS}:29:16: {SECTION} has the healthy outcome normal in a chain of severity; "
                "keep to bad outcomes of one side [rows-of-tests]"
            ],
        ),
        (
            (CAPACITORS, "severity: [[low, open]]", "background: {low: 0.6, high: 0.5}"),
            [
                f"{CANS}:29:5: {SECTION} has background chances that pass 1; "
                "let them add up to 1 or less [rows-of-tests]"
            ],
        ),
        (
            (REFRIGERANT, "{quantity: line-temperature}]\n    outcomes: []",
             "{quantity: line-temperature}]\n    outcomes: [{id: warm}]"),
            [
                f"{CIRCUITS}:9:5: line-temperature is an input with outcomes; "
                "write outcomes: [] [rows-of-tests]"
            ],
        ),
        (
            (CAPACITORS, "healthy: sound", "healthy: [sound, swollen, oil]"),
            [
                f"{CANS}:11:5: capacitor-look calls every outcome healthy; "
                "leave out those that are not [rows-of-tests]"
            ],
        ),
        (
            (CAPACITORS, "            above: 6\n", "            above: 5\n"),
            [
                f"{CANS}:41:9: normal and high both fit capacitance 84.4 against "
                "capacitor-rated 80; let only one include the number [limits-meet]"
            ],
        ),
        (
            (CAPACITORS, "            above: 6\n", "            above: 8\n"),
            [
                f"{CANS}:31:5: no outcome of {SECTION} fits capacitance 85.6 against "
                "capacitor-rated 80; let two limits meet [limits-meet]"
            ],
        ),
        (
            (REFRIGERANT, "superheat, between: [4, 25]", "superheat, between: [3, 25]"),
            [
                f"{CIRCUITS}:30:9: low and normal-txv both fit superheat 3 where metering txv; "
                "let only one include the number [limits-meet]"
            ],
        ),
        (
            (REFRIGERANT, "superheat, between: [8, 25]", "superheat, between: [9, 25]"),
            [
                f"{CIRCUITS}:23:5: no outcome of superheat fits superheat 8 where metering "
                "fixed-orifice; let two limits meet [limits-meet]"
            ],
        ),
        (
            (REFRIGERANT, "superheat, above: 25}]\n    source: common practice, no source\n",
             "superheat, above: 25}]\n"),
            [
                f"{CIRCUITS}:25:9: the limits of superheat: low {ADD_SOURCE}",
                f"{CIRCUITS}:30:9: the limits of superheat: normal-txv {ADD_SOURCE}",
                f"{CIRCUITS}:33:9: the limits of superheat: normal-fixed {ADD_SOURCE}",
                f"{CIRCUITS}:35:9: the limits of superheat: high {ADD_SOURCE}",
            ],
        ),
        (
            ("round.yaml", "    unit: uF\n    source: common practice, no source\n",
             "    unit: uF\n"),
            [f"rules/round.yaml:14:5: the change of sections-fall {ADD_SOURCE}".replace(
                "have no", "has no")],
        ),
        (
            (CAPACITORS, "            between: [-6, 6]\n", "            between: [6, -6]\n"),
            [
                f"{CANS}:31:5: no outcome of {SECTION} fits capacitance 75.2 against "
                "capacitor-rated 80; let two limits meet [limits-meet]",
                f"{CANS}:35:13: no number is above 6 and below -6; "
                "change the two numbers round [known-quantities]",
            ],
        ),
        (
            (CAPACITORS, "reads: zero}", "reads: zero, as: times}"),
            [f"{CANS}:53:18: times of nothing; name what it is relative to [known-quantities]"],
        ),
        (
            ("equipment.yaml", "id: capacitor-rated, unit: uF", "id: capacitor-rated, unit: V"),
            [
                f"{CANS}:{line}:13: capacitance in uF is compared with V; compare like with like "
                "[known-quantities]"
                for line in (35, 42, 48)
            ],
        ),
        (
            ("quantities.yaml", "    computed: [{formula: difference, inputs: [line-temperature, "
             "evaporating-temperature]}]\n", ""),
            [
                f"{CIRCUITS}:11:5: no fault, complaint, hazard, procedure or round uses "
                "evaporating-temperature; grade it in a card, or delete it [idle-tests]",
                *(
                    f"{CIRCUITS}:{place}: {UNKNOWABLE} [known-quantities]"
                    for place in ("26:13", "27:13", "30:18", "33:18", "35:18")
                ),
            ],
        ),
        (
            (CAPACITORS, "    how: [Look at it from outside.]\n",
             f"    how: [Look at it from outside.]\n    after: [{SECTION}]\n"),
            [
                f"{CANS}:9:5: capacitor-look comes after itself, by way of {SECTION}; "
                "leave one step out [order-of-tests]",
                f"{CANS}:27:5: {SECTION} comes after itself, by way of capacitor-look; "
                "leave one step out [order-of-tests]",
            ],
        ),
    ],
)  # fmt: skip
def test_a_slip_in_a_test_is_named_at_its_place(
    tmp_path: Path, change: Change, messages: list[str]
) -> None:
    assert said(write_rules(tmp_path, change)) == messages


def test_a_test_that_nothing_uses_is_told(tmp_path: Path) -> None:
    idle = (
        "format: 1\narea: looks\ntests:\n  - id: look-about\n    name: Look about\n"
        "    kind: look\n    outcomes: [{id: seen}, {id: unseen}]\n"
    )
    assert said(write_files(tmp_path / "rules", {**FILES, "tests/looks.yaml": idle})) == [
        "rules/tests/looks.yaml:4:5: no fault, complaint, hazard, procedure or round uses "
        "look-about; grade it in a card, or delete it [idle-tests]"
    ]


def test_limits_on_several_quantities_are_only_worth_a_notice(tmp_path: Path) -> None:
    together = (
        "        limits:\n"
        "          - all:\n"
        "              - {quantity: superheat, above: 25}\n"
        "              - {quantity: line-temperature, above: 9}"
    )
    change = (REFRIGERANT, "        limits: [{quantity: superheat, above: 25}]", together)
    problems = check_rules(write_rules(tmp_path, change))
    assert {problem.level for problem in problems} == {"notice"}
    assert [problem.what for problem in problems] == [
        "no outcome of superheat fits superheat 51, line-temperature -1 "
        "where metering fixed-orifice"
    ]


def test_a_limit_relative_to_a_value_must_say_how(tmp_path: Path) -> None:
    change = (CAPACITORS, "            as: percent-difference\n            above: 6\n",
              "            above: 6\n")  # fmt: skip
    assert (
        f"{CANS}:42:13: relative to capacitor-rated, but how; "
        "write as: difference, percent-of, ... [known-quantities]"
    ) in said(write_rules(tmp_path, change))
