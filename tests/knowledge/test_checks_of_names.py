"""Unknown names, ids used twice, retired ids: exact words, exact places."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import (
    CAPACITORS,
    ELECTRICAL,
    LOW_CHARGE,
    REFRIGERANT,
    WEAK,
    Change,
    said,
    write_rules,
)

FAULT = "rules/faults/capacitors/fan-capacitor-weak.yaml"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            (LOW_CHARGE, "  often:\n    - superheat: high\n", "  often:\n    - superheet: high\n"),
            "rules/faults/refrigerant/low-charge.yaml:10:7: no test is called superheet; "
            "did you mean superheat",
        ),
        (
            (WEAK, "    - capacitance-one-side-off: [low, open]", "    - capacitor-look: [lou]"),
            f"{FAULT}:11:24: no outcome of capacitor-look is called lou; write one of: oil, "
            "sound, swollen",
        ),
        (
            (WEAK, "exists-when: {fan-phase: single}", "exists-when: {fan-phase: singel}"),
            f"{FAULT}:8:26: no value of fan-phase is called singel; did you mean single",
        ),
        (
            (WEAK, "exists-when: {fan-phase: single}", "exists-when: {fan-phas: single}"),
            f"{FAULT}:8:15: no equipment fact is called fan-phas; did you mean fan-phase",
        ),
        (
            (WEAK, "look-alikes: [low-charge]", "look-alikes: [high-charge]"),
            f"{FAULT}:22:15: no fault is called high-charge; did you mean low-charge",
        ),
        (
            (WEAK, "    complaint: fan-dead\n", "    complaint: fan-dedd\n"),
            f"{FAULT}:27:16: no complaint is called fan-dedd; did you mean fan-dead",
        ),
        (
            (WEAK, "{fan-phase: single, capacitor-rated: 5 uF}", "{fan-phase: single, rated: 5}"),
            f"{FAULT}:28:31: no fact or plate value is called rated; write one of: "
            "capacitor-rated, circuits, fan-phase, metering",
        ),
        (
            (CAPACITORS, "healthy: normal", "healthy: norml"),
            "rules/tests/capacitors.yaml:28:14: no outcome of capacitance-one-side-off is called "
            "norml; did you mean normal",
        ),
        (
            (CAPACITORS, "meter: capacitance-meter", "meter: capacity-meter"),
            "rules/tests/capacitors.yaml:23:12: no meter is called capacity-meter; "
            "did you mean capacitance-meter",
        ),
        (
            (CAPACITORS, "source: invented-standard", "source: invented-standart"),
            "rules/tests/capacitors.yaml:39:17: no source is called invented-standart; "
            "did you mean invented-standard",
        ),
        (
            (CAPACITORS, "after: [capacitor-look]", "after: [capacitor-looks]"),
            "rules/tests/capacitors.yaml:26:13: no test is called capacitor-looks; "
            "did you mean capacitor-look",
        ),
        (
            (REFRIGERANT, "{quantity: superheat, above: 25}", "{quantity: superhot, above: 25}"),
            "rules/tests/refrigerant.yaml:35:29: no quantity is called superhot; "
            "did you mean superheat",
        ),
        (
            ("quantities.yaml", "unit: F-diff", "unit: F-dif"),
            "rules/quantities.yaml:7:11: no unit is called F-dif; did you mean F-diff",
        ),
        (
            ("quantities.yaml", "[line-temperature, ", "[lime-temperature, "),
            "rules/quantities.yaml:11:47: no input is called lime-temperature; "
            "did you mean line-temperature",
        ),
        (
            (ELECTRICAL, "when: {state: warm-line}", "when: {state: warm}"),
            "rules/procedures/electrical.yaml:19:19: no state is called warm; "
            "did you mean warm-line",
        ),
        (
            (ELECTRICAL, "when: {derived: can-worn-out}", "when: {derived: can-worn}"),
            "rules/procedures/electrical.yaml:13:21: no derived finding is called can-worn; "
            "did you mean can-worn-out",
        ),
        (
            ("complaints.yaml", "hazards-first: [gas-smell]", "hazards-first: [gas-smel]"),
            "rules/complaints.yaml:13:21: no hazard is called gas-smel; did you mean gas-smell",
        ),
        (
            ("retired.yaml", "to: {capacitance-one-side-off: low}", "to: {superheat: lo}"),
            "rules/retired.yaml:3:55: no outcome of superheat is called lo; did you mean low",
        ),
    ],
)
def test_an_unknown_name_is_told_with_the_nearest(
    tmp_path: Path, change: Change, message: str
) -> None:
    assert said(write_rules(tmp_path, change)) == [f"{message} [unknown-names]"]


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            (REFRIGERANT, "  - id: area-cleared\n", "  - id: capacitor-look\n"),
            "rules/tests/refrigerant.yaml:38:9: the test capacitor-look is already defined in "
            "rules/tests/capacitors.yaml, line 4; choose another id",
        ),
        (
            ("hazards.yaml", "  - id: gas-smell\n", "  - id: stored-charge\n"),
            "rules/hazards.yaml:9:9: the hazard stored-charge is already defined in "
            "rules/hazards.yaml, line 3; choose another id",
        ),
        (
            (CAPACITORS, "      - {id: oil, means: oil about it}", "      - {id: swollen}"),
            "rules/tests/capacitors.yaml:15:14: capacitor-look has the outcome swollen already, "
            "on line 14; choose another word",
        ),
        (
            ("retired.yaml", "retired: [fan-section-bad]", "retired: [low-charge]"),
            "rules/faults/refrigerant/low-charge.yaml:2:8: the id low-charge is retired; "
            "choose a new id",
        ),
    ],
)
def test_an_id_that_is_not_the_entrys_own_is_told(
    tmp_path: Path, change: Change, message: str
) -> None:
    assert f"{message} [unique-ids]" in said(write_rules(tmp_path, change))


def test_an_outcome_named_after_a_reading_is_looked_up_in_its_test(tmp_path: Path) -> None:
    folder = write_rules(
        tmp_path,
        (LOW_CHARGE, "condenser fan 1, outcome: low}", "condenser fan 1, outcome: high-ish}"),
    )
    assert said(folder) == [
        "rules/faults/refrigerant/low-charge.yaml:31:82: no outcome of capacitance-one-side-off is "
        "called high-ish; did you mean high [unknown-names]"
    ]


def test_a_limit_may_ask_whether_a_quantity_is_known_and_a_card_may_not(tmp_path: Path) -> None:
    """Cards hang on what is known of the unit, limits on the numbers of the case as well."""
    asks = (
        "{quantity: superheat, below: 4, when: {metering: txv}}",
        "{quantity: superheat, below: 4, when: {metering: txv, line-temperature: %s}}",
    )
    known = (REFRIGERANT, asks[0], asks[1] % "known")
    assert not any("is called" in each for each in said(write_rules(tmp_path / "a", known)))
    word = (REFRIGERANT, asks[0], asks[1] % "low")
    assert any(
        "no value of line-temperature is called low" in each
        for each in said(write_rules(tmp_path / "b", word))
    )
    card = (WEAK, "exists-when: {fan-phase: single}", "exists-when: {superheat: known}")
    assert any(
        "no equipment fact is called superheat" in each
        for each in said(write_rules(tmp_path / "c", card))
    )
