"""Checks of fault cards: parts, grades, groups, examples. Exact words, exact places."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import (
    FILES,
    LOW_CHARGE,
    WEAK,
    Change,
    said,
    write_files,
    write_rules,
)

FAULT = "rules/faults/capacitors/fan-capacitor-weak.yaml"
CHARGE = "rules/faults/refrigerant/low-charge.yaml"
SECTION = "capacitance-one-side-off"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            (LOW_CHARGE, "proof: [{text: Superheat right}]\n", ""),
            f"{CHARGE}:2:8: low-charge has no proof of repair; "
            "say which reading must be right afterwards [whole-cards]",
        ),
        (
            (LOW_CHARGE, "source: common practice, no source\n", ""),
            f"{CHARGE}:2:8: low-charge has no source; "
            "name it, or write: common practice, no source [whole-cards]",
        ),
        (
            (LOW_CHARGE, "    names-it: false\n", "    names-it: true\n"),
            f"{CHARGE}:23:1: low-charge has no example that must not name it; "
            "add one with names-it: false [whole-cards]",
        ),
        (
            (LOW_CHARGE, "    names-it: true\n", "    names-it: false\n"),
            f"{CHARGE}:23:1: low-charge has no example that must name it; "
            "add one with names-it: true [whole-cards]",
        ),
        (
            (LOW_CHARGE, "is: cause\n", "is: effect\n"),
            f"{CHARGE}:2:8: low-charge is an effect without a cause; "
            "list the faults behind it [whole-cards]",
        ),
        (
            (LOW_CHARGE, "proof: [", "look-alikes: [low-charge]\nproof: ["),
            f"{CHARGE}:21:1: low-charge names itself; name other faults [whole-cards]",
        ),
        (
            (LOW_CHARGE, "subsystem: refrigerant\n", "subsystem: charge\n"),
            f"{CHARGE}:4:1: the subsystem charge stands in the folder refrigerant; "
            "move it to charge/ [file-names]",
        ),
        (
            (WEAK, f"    - {SECTION}: normal\n", f"    - {SECTION}: low\n"),
            f"{FAULT}:15:7: {SECTION}: low is graded twice, almost-always and never; "
            "keep one grade [stated-twice]",
        ),
        (
            (LOW_CHARGE, "superheat: normal-txv", "superheat: [normal-txv, high]"),
            f"{CHARGE}:15:11: superheat: high is graded together with a healthy outcome; "
            "grade high by itself [mixed-sets]",
        ),
        (
            (WEAK, "  never:\n", "  sometimes-not:\n"),
            f"{FAULT}:14:3: unknown key sometimes-not in evidence; "
            "write one of: almost-always, often, sometimes, seldom, never [form]",
        ),
        (
            (WEAK, "  never:\n", "  seldom:\n"),
            f"{FAULT}:9:1: the grades on {SECTION} add up to 1.06 and are scaled to 0.98; "
            "make one list of them, or lower one, to have them as written [grade-sums]",
        ),
        (
            (WEAK, "  never:\n", "  often:\n"),
            f"{FAULT}:9:1: the grades on {SECTION} cannot all be true: they pass 100 %; "
            "make one list of them, or lower one [grade-sums]",
        ),
        (
            (
                WEAK,
                f"  almost-always:\n    - {SECTION}: [low, open]\n",
                f"  seldom:\n    - {SECTION}: [low, open, high]\n",
            ),
            f"{FAULT}:9:1: the grades on {SECTION} leave no outcome likely; "
            "raise one, or leave one without a grade [grade-sums]",
        ),
        (
            (
                LOW_CHARGE,
                "  - when: {metering: txv}\n",
                "  - when: {metering: fixed-orifice}\n",
            ),
            f"{CHARGE}:15:11: no unit with low-charge can show superheat: normal-txv; "
            "compare exists-when of the fault, the test and the outcome [evidence-can-show]",
        ),
        (
            (WEAK, "capacitor condenser fan 1, text: 2.1 uF}", "the fan, text: 2.1 uF}"),
            f"{FAULT}:30:42: the fan is no place; write a kind and number, such as circuit 2 or "
            "capacitor condenser fan 1 [places]",
        ),
        (
            (WEAK, "capacitor condenser fan 1, text: 2.1 uF}", "circuit 1, text: 2.1 uF}"),
            f"{FAULT}:30:42: {SECTION} is about a capacitor, not about circuit 1; write a kind "
            "and number, such as circuit 2 or capacitor condenser fan 1 [places]",
        ),
        (
            (WEAK, "condenser fan 1, text: 2.1 uF}", "condenser fan 1}"),
            f"{FAULT}:30:9: the reading of {SECTION} says nothing; "
            "give an outcome, or the text typed [example-readings]",
        ),
        (
            (WEAK, "- {test: superheat, outcome: high}", "- {test: superheat, text: 31 F}"),
            f"{FAULT}:34:9: superheat reads no number; give its outcome [example-readings]",
        ),
        (
            (WEAK, "{fan-phase: single, capacitor-rated", "{fan-phase: two, capacitor-rated"),
            f"{FAULT}:28:12: fan-phase cannot be two; write one of: single, three "
            "[example-readings]",
        ),
        (
            (WEAK, "superheat, outcome: high}", "superheat, outcome: [high, low]}"),
            f"{FAULT}:34:9: superheat has one outcome at a time; give one outcome "
            "[example-readings]",
        ),
    ],
)  # fmt: skip
def test_a_slip_on_a_card_is_named_at_its_place(
    tmp_path: Path, change: Change, message: str
) -> None:
    assert said(write_rules(tmp_path, change)) == [message]


def test_a_card_must_be_named_after_its_fault(tmp_path: Path) -> None:
    files = {**FILES, "faults/refrigerant/charge-low.yaml": FILES[LOW_CHARGE]}
    del files[LOW_CHARGE]
    assert said(write_files(tmp_path / "rules", files)) == [
        "rules/faults/refrigerant/charge-low.yaml:2:8: the fault low-charge stands in "
        "charge-low.yaml; name the file low-charge.yaml, or write fault: charge-low [file-names]"
    ]


def test_a_count_may_stand_for_a_fact_that_counts(tmp_path: Path) -> None:
    change = (WEAK, "{fan-phase: single, cap", "{fan-phase: single, circuits: 3, cap")
    assert said(write_rules(tmp_path, change)) == []


def test_a_finding_given_itself_and_a_cell_given_twice_are_told(tmp_path: Path) -> None:
    given = """\
given:
  - {finding: {superheat: high}, given: [{superheat: low}], grade: often}
  - {finding: {superheat: high}, given: [{capacitor-look: oil}], grade: often}
  - {finding: {superheat: [high, low]}, given: [{capacitor-look: [oil]}], grade: seldom}
"""
    assert said(write_rules(tmp_path, (LOW_CHARGE, "overrides:\n", f"{given}overrides:\n"))) == [
        f"{CHARGE}:12:5: superheat is graded given itself; name other tests under given "
        "[stated-twice]",
        f"{CHARGE}:14:5: superheat is graded twice given the same readings; keep one grade "
        "[stated-twice]",
    ]


@pytest.mark.parametrize(
    ("grades", "told"),
    [
        (
            ("often", "often"),
            "cannot all be true: they pass 100 %; make one list of them, or lower",
        ),
        (("almost-always", "sometimes"), "cannot all be true: they pass 100 %; make one list"),
        (("often", "sometimes"), "cannot all be true: they pass 100 %; make one list"),
        (("often", "seldom"), None),
    ],
)
def test_what_is_said_given_the_same_readings_has_to_agree(
    grades: tuple[str, str], told: str | None, tmp_path: Path
) -> None:
    """Regression: it passed, and a visit on such rules ended in a traceback."""
    given = f"""\
given:
  - {{finding: {{superheat: high}}, given: [{{capacitor-look: oil}}], grade: {grades[0]}}}
  - {{finding: {{superheat: low}}, given: [{{capacitor-look: oil}}], grade: {grades[1]}}}
"""
    found = said(write_rules(tmp_path, (LOW_CHARGE, "overrides:\n", f"{given}overrides:\n")))
    assert len(found) == (told is not None)
    if told is not None:
        assert found[0].startswith(
            f"{CHARGE}:11:1: the grades on superheat given the same readings {told}"
        )


def test_a_sign_and_what_is_sound_given_the_same_readings_have_to_agree(tmp_path: Path) -> None:
    given = """\
given:
  - {finding: {capacitor-look: oil}, given: [{superheat: high}], grade: often}
  - {finding: {capacitor-look: sound}, given: [{superheat: high}], grade: often}
"""
    (found,) = said(write_rules(tmp_path, (LOW_CHARGE, "overrides:\n", f"{given}overrides:\n")))
    assert "the grades on capacitor-look given the same readings cannot all be true" in found


def test_more_than_four_tests_in_a_group_are_told_with_their_names(tmp_path: Path) -> None:
    looks = "".join(
        f"  - id: look-{letter}\n    name: Look {letter}\n    kind: look\n"
        "    outcomes: [{id: seen}, {id: not-seen}]\n    source: from memory\n"
        for letter in "abcde"
    )
    given = "given:\n" + "".join(
        f"  - {{finding: {{look-{one}: seen}}, given: [{{look-{two}: seen}}], grade: often}}\n"
        for one, two in ("ab", "bc", "de", "cd")
    )
    files = {**FILES, "tests/looks.yaml": f"format: 1\narea: looks\ntests:\n{looks}"}
    files[LOW_CHARGE] = files[LOW_CHARGE].replace("overrides:\n", f"{given}overrides:\n")
    assert said(write_files(tmp_path / "rules", files))[0] == (
        f"{CHARGE}:11:1: 5 tests hang together: look-a, look-b, look-c, look-d, look-e; "
        "join 4 at most; derive a finding in a procedure [given-groups]"
    )
