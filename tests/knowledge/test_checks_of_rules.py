"""Checks of procedures, hazards, complaints, the round and work states: words and places."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import (
    CAPACITORS,
    ELECTRICAL,
    FILES,
    REFRIGERANT,
    WEAK,
    Change,
    said,
    write_files,
    write_rules,
)

CANS = "rules/tests/capacitors.yaml"
CIRCUITS = "rules/tests/refrigerant.yaml"
SECTION = "capacitance-one-side-off"


@pytest.mark.parametrize(
    ("change", "messages"),
    [
        (
            (ELECTRICAL, "- {finding: {capacitor-look: swollen}}",
             f"- {{finding: {{{SECTION}: high}}}}"),
            [
                "rules/procedures/electrical.yaml:4:5: swollen-and-low can never hold: "
                f"{SECTION} cannot read two outcomes; put them into one list [idle-procedures]"
            ],
        ),
        (
            (ELECTRICAL, "- {finding: {capacitor-look: swollen}}", "- {derived: can-worn-out}"),
            [
                "rules/procedures/electrical.yaml:4:5: swollen-and-low waits for a finding that "
                "only follows from itself; break the circle [idle-procedures]",
                "rules/procedures/electrical.yaml:13:5: worn-out-twice waits for a finding that "
                "only follows from itself; break the circle [idle-procedures]",
            ],
        ),
        (
            (ELECTRICAL, "    when: {derived: can-worn-out}\n",
             "    when: {at-least: {count: 2, of: [{derived: can-worn-out}]}}\n"),
            [
                "rules/procedures/electrical.yaml:13:5: worn-out-twice can never hold: "
                "2 of 1 parts; lower the count [idle-procedures]",
                "rules/procedures/electrical.yaml:13:5: worn-out-twice waits for a finding that "
                "only follows from itself; break the circle [idle-procedures]",
            ],
        ),
        (
            (ELECTRICAL, "    then: {look-first: [capacitance-one-side-off]}\n",
             "    then: {}\n"),
            [
                "rules/procedures/electrical.yaml:14:11: then says nothing; write at least one of: "
                "derives, void, look-first, clears, clears-subsystems, first-on-the-roof, "
                "save-before-power-cut [form]"
            ],
        ),
        (
            ("hazards.yaml", "    when: [{complaint: smells-gas}]\n", ""),
            [],
        ),
        (
            ("hazards.yaml", "    defer-to: the gas utility\n", ""),
            [
                "rules/hazards.yaml:13:5: gas-smell stops the whole job and defers to nobody; "
                "say who takes over under defer-to [hazards-speak]"
            ],
        ),
        (
            ("quantities.yaml", "    can-be: [-400, 500]\n", ""),
            [
                "rules/quantities.yaml:6:5: superheat does not say between what it can be; "
                "write can-be: [LOW, HIGH] [known-quantities]"
            ],
        ),
        (
            ("quantities.yaml", "    can-be: [-400, 500]\n", "    can-be: [500, -400]\n"),
            [
                "rules/quantities.yaml:6:5: superheat does not say between what it can be; "
                "write can-be: [LOW, HIGH] [known-quantities]"
            ],
        ),
        (
            ("hazards.yaml", "    cleared-by: [gas-utility]\n", ""),
            [
                "rules/hazards.yaml:13:5: gas-smell stops the work and does not say who may clear "
                "it; name the roles under cleared-by [hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    remedies: [The leak was made tight]\n", ""),
            [
                "rules/hazards.yaml:13:5: gas-smell stops the whole job and does not say what "
                "takes it away; list what may be done under remedies [hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    keeps-off: unit\n", ""),
            [
                "rules/hazards.yaml:13:5: gas-smell stops the work and does not say what may run "
                "while it stands; write keeps-off: unit, heat, circuit or nothing [hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    keeps-off: unit\n",
             "    keeps-off: unit\n    words: ['read:capacitance + gas + smell']\n"),
            [
                "rules/hazards.yaml:15:13: no finding of gas-smell is read in capacitance; "
                "write a phrase: nothing that calls it up is read [hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    what-to-do: Lock it out and test every leg.\n",
             "    what-to-do: Lock it out and test every leg.\n"
             "    forbids: [{work-states: [running]}]\n"),
            [
                "rules/hazards.yaml:24:5: lockout-and-verify-dead forbids what runs and does not "
                "say what stays off at the end; write keeps-off: unit, heat, circuit or nothing "
                "[hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    signal: DANGER\n", "    signal: NOTICE\n"),
            [
                "rules/hazards.yaml:10:5: gas-smell stops the work, but is only a NOTICE; "
                "write CAUTION, WARNING or DANGER [hazards-speak]"
            ],
        ),
        (
            ("hazards.yaml", "    when: [{work-state: locked-out}]\n", ""),
            [
                "rules/hazards.yaml:3:5: nothing ever shows stored-charge; "
                "name it in a test, or give it a trigger [hazards-speak]",
                f"{CANS}:18:9: {SECTION} lacks stored-charge under hazards, which discharged "
                "capacitors implies: a charge that comes back or was missed can kill "
                "(29 CFR 1910.333(b)(2)(ii)(C)); add stored-charge [implied-cautions]",
            ],
        ),
        (
            ("hazards.yaml", "when: [{work-state: locked-out}]",
             "when: [{work-state: locked-out, equipment: {metering: txv}}]"),
            [
                f"{CANS}:18:9: {SECTION} lacks stored-charge under hazards, which discharged "
                "capacitors implies: a charge that comes back or was missed can kill "
                "(29 CFR 1910.333(b)(2)(ii)(C)); add stored-charge [implied-cautions]",
            ],
        ),
        (
            (CAPACITORS, "    work-state: locked-out\n", "    work-state: energised-open\n"),
            [
                f"{CANS}:18:9: {SECTION} exposes nothing though it is open with the power on; "
                "write exposes: control or line [safe-tests]",
                f"{CANS}:18:9: {SECTION} lacks live-work under hazards, which an open unit with "
                "its power on implies: only a qualified and equipped person works near live parts "
                "(29 CFR 1910.333(c)(2); 29 CFR 1910.335(a)); add live-work [implied-cautions]",
                f"{CANS}:18:9: {SECTION} lacks stored-charge under hazards, which discharged "
                "capacitors implies: a charge that comes back or was missed can kill "
                "(29 CFR 1910.333(b)(2)(ii)(C)); add stored-charge [implied-cautions]",
                f"{CANS}:24:5: {SECTION} is not locked-out work, which discharged capacitors "
                "implies: a charge that comes back or was missed can kill "
                "(29 CFR 1910.333(b)(2)(ii)(C)); write work-state: locked-out [implied-cautions]",
            ],
        ),
        (
            (CAPACITORS, "    work-state: locked-out\n",
             "    work-state: locked-out\n    exposes: control\n"),
            [
                f"{CANS}:25:5: {SECTION} exposes live parts though locked out; "
                "write exposes: none [safe-tests]"
            ],
        ),
        (
            (REFRIGERANT, "    kind: step\n",
             "    kind: step\n    reads: [{quantity: superheat}]\n"),
            [
                f"{CIRCUITS}:41:5: area-cleared reads superheat by its sign; "
                "write legs: size [safe-tests]",
            ],
        ),
        (
            (REFRIGERANT, "    kind: computed\n", "    kind: computed\n    exposes: line\n"),
            [
                f"{CIRCUITS}:18:9: superheat exposes line voltage with the panels on; "
                "write energised-open or running-open [safe-tests]",
            ],
        ),
        (
            ("complaints.yaml", "never: [low-charge]", "often: [fan-capacitor-weak]"),
            [
                "rules/complaints.yaml:7:63: how often fan-capacitor-weak brings fan-dead is said "
                "twice; keep one [complaints-lead]"
            ],
        ),
        (
            (WEAK, "evidence:\n  almost-always:", "calls: {often: fan-dead}\nevidence:\n"
             "  almost-always:"),
            [
                "rules/complaints.yaml:7:34: how often fan-capacitor-weak brings fan-dead is said "
                "twice; keep one [complaints-lead]"
            ],
        ),
        (
            ("complaints.yaml", "    brought-by: {almost-always: [fan",
             "    pointless-tests: [capacitor-look]\n    brought-by: {almost-always: [fan"),
            [
                "rules/complaints.yaml:7:5: fan-dead calls capacitor-look worth taking first and "
                "pointless; keep one [complaints-lead]"
            ],
        ),
        (
            ("complaints.yaml", "    brought-by: {almost-always: [low-charge]}\n", ""),
            [
                "rules/complaints.yaml:10:9: smells-gas leads to no fault; name it under calls of "
                "the cards that bring it [complaints-lead]"
            ],
        ),
        (
            ("complaints.yaml", "    all-clear: area-cleared\n", ""),
            [
                "rules/complaints.yaml:10:5: smells-gas stops the visit and has no all-clear; "
                "name the test under all-clear [complaints-lead]"
            ],
        ),
        (
            ("round.yaml", "    number: 1\n", "    number: 0\n"),
            [
                "rules/round.yaml:4:13: number cannot be 0; "
                "write a whole number from 1 to 1000 [form]"
            ],
        ),
    ],
)  # fmt: skip
def test_a_slip_in_a_rule_is_named_at_its_place(
    tmp_path: Path, change: Change, messages: list[str]
) -> None:
    assert said(write_rules(tmp_path, change)) == messages


def test_points_of_the_round_stand_in_their_order_and_ask_for_something(tmp_path: Path) -> None:
    point = "  - {id: again, number: 1, point: Once more, season: spring}\ndrift-alarms:\n"
    files = {**FILES, "round.yaml": FILES["round.yaml"].replace("drift-alarms:\n", point)}
    assert said(write_files(tmp_path / "rules", files)) == [
        "rules/round.yaml:10:17: again has the number 1 after 1; number the points in their order "
        "[round-order]",
        "rules/round.yaml:10:28: again asks for nothing; name its tests, or its limit in words "
        "[round-order]",
    ]
