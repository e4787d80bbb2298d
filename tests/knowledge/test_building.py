"""From rule files to the model: what each key becomes."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import ELECTRICAL, LOW_CHARGE, WEAK, write_rules
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.model import (
    Bound,
    Condition,
    Derivation,
    Evidence,
    Finding,
    Given,
    Implication,
    Knowledge,
    LimitLine,
    Override,
    Picture,
    Proof,
    Read,
    Repair,
    Stop,
    Trigger,
    Void,
)

SECTION = "capacitance-one-side-off"


@pytest.fixture
def knowledge(tmp_path: Path) -> Knowledge:
    return load_rules(write_rules(tmp_path), cache=tmp_path / "cache")


def test_a_test_keeps_its_area_and_what_it_leaves_out_has_a_usual_value(
    knowledge: Knowledge,
) -> None:
    look = knowledge.tests["capacitor-look"]
    assert (look.area, look.kind, look.per, look.choose) == (
        "capacitors", "look", "capacitor", "several",
    )  # fmt: skip
    assert (look.work_state, look.exposes, look.minutes, look.wait_minutes) == ("any", "none", 1, 0)
    assert look.healthy == ("sound",)
    section = knowledge.tests[SECTION]
    assert section.reads == (Read("capacitance"),)
    assert section.severity == (("low", "open"),)
    assert section.needs_state == ("meter-proved", "capacitors-discharged")


def test_limits_become_lines_of_bounds(knowledge: Knowledge) -> None:
    normal, _, _, dead = knowledge.tests[SECTION].outcomes
    between = Bound("capacitance", "capacitor-rated", "percent-difference", at_least=-6, at_most=6)
    assert normal.limits == (LimitLine((between,)),)
    assert normal.source == "invented-standard"
    assert dead.limits == (LimitLine((Bound("capacitance", reads="zero"),)),)
    low = knowledge.tests["superheat"].outcomes[0]
    assert low.limits[0] == LimitLine((Bound("superheat", below=4),), {"metering": ("txv",)})


def test_bounds_together_keep_their_own_conditions(tmp_path: Path) -> None:
    change = (
        "tests/refrigerant.yaml",
        "limits: [{quantity: superheat, above: 25}]",
        "limits: [{when: {circuits: one}, all: [{quantity: superheat, above: 25}, "
        "{quantity: line-temperature, above: 60, when: {metering: [txv]}}]}]",
    )
    knowledge = load_rules(write_rules(tmp_path, change), cache=tmp_path / "cache")
    assert knowledge.tests["superheat"].outcomes[-1].limits == (
        LimitLine(
            (
                Bound("superheat", above=25),
                Bound("line-temperature", above=60, when={"metering": ("txv",)}),
            ),
            {"circuits": ("one",)},
        ),
    )


def test_a_card_becomes_a_fault(knowledge: Knowledge) -> None:
    weak = knowledge.faults["fan-capacitor-weak"]
    assert (weak.subsystem, weak.is_effect, weak.how_common) == ("capacitors", False, "very-common")
    assert weak.exists_when == {"fan-phase": ("single",)}
    assert weak.evidence == (
        Evidence("almost-always", (Finding(SECTION, ("low", "open")),)),
        Evidence("sometimes", (Finding("capacitor-look", ("swollen",)),)),
        Evidence("never", (Finding(SECTION, ("normal",)),)),
    )
    assert weak.repair == Repair(
        "Fit one of the same microfarads and volts.", 25, "under-50", ("electrical",)
    )
    assert weak.proof == (Proof("Microfarads right", Finding(SECTION, ("normal",))),)
    named, near_miss = weak.examples
    assert (named.names_it, named.complaint, near_miss.names_it) == (True, "fan-dead", False)
    assert named.unit == {"fan-phase": "single", "capacitor-rated": "5 uF"}
    assert named.readings == (
        {"test": SECTION, "at": "capacitor condenser fan 1", "text": "2.1 uF"},
    )
    assert knowledge.faults["low-charge"].repair.who_rule == "any"


def test_overrides_pictures_any_of_and_given(tmp_path: Path) -> None:
    knowledge = load_rules(
        write_rules(
            tmp_path,
            (
                WEAK,
                "    - capacitor-look: swollen\n",
                "    - any-of: [{capacitor-look: [swollen, oil]}, {superheat: low}]\n",
            ),
            (
                LOW_CHARGE,
                "overrides:\n",
                "given:\n  - {finding: {superheat: high}, given: [{capacitor-look: oil}], "
                "grade: seldom}\npictures:\n  - {name: mild, evidence: {often: []}}\noverrides:\n",
            ),
        ),
        cache=tmp_path / "cache",
    )
    assert knowledge.faults["fan-capacitor-weak"].evidence[1] == Evidence(
        "sometimes", (Finding("capacitor-look", ("swollen", "oil")), Finding("superheat", ("low",)))
    )
    charge = knowledge.faults["low-charge"]
    assert charge.given == (
        Given("seldom", Finding("superheat", ("high",)), (Finding("capacitor-look", ("oil",)),)),
    )
    assert charge.pictures == (Picture("mild", ()),)
    assert charge.overrides == (
        Override(
            "",
            (Evidence("often", (Finding("superheat", ("normal-txv",)),)),),
            when={"metering": ("txv",)},
        ),
    )


def test_procedures_become_condition_trees(knowledge: Knowledge) -> None:
    swollen, twice, settled = knowledge.procedures.values()
    assert swollen.when == Condition(
        "all",
        (
            Condition("finding", finding=Finding("capacitor-look", ("swollen",))),
            Condition("finding", finding=Finding(SECTION, ("low", "open"))),
        ),
    )
    assert swollen.derives == "can-worn-out"
    assert twice.when == Condition("derived", name="can-worn-out")
    assert twice.look_first == (SECTION,)
    assert settled.when == Condition("state", name="warm-line")
    assert settled.void == Void(("superheat",), ("low-charge",))


@pytest.mark.parametrize(
    ("text", "condition"),
    [
        (
            "{not: {fact: {metering: txv}}}",
            Condition("not", (Condition("fact", name="metering", words=("txv",)),)),
        ),
        (
            "{fact: {metering: txv, fan-phase: [single, three]}}",
            Condition(
                "all",
                (
                    Condition("fact", name="metering", words=("txv",)),
                    Condition("fact", name="fan-phase", words=("single", "three")),
                ),
            ),
        ),
        (
            "{at-least: {count: 1, of: [{state: warm-line}, {derived: can-worn-out}]}}",
            Condition(
                "at-least",
                (Condition("state", name="warm-line"), Condition("derived", name="can-worn-out")),
                count=1,
            ),
        ),
    ],
)
def test_every_root_of_a_condition(tmp_path: Path, text: str, condition: Condition) -> None:
    change = (ELECTRICAL, "    when: {state: warm-line}", f"    when: {text}")
    knowledge = load_rules(write_rules(tmp_path, change), cache=tmp_path / "cache")
    assert knowledge.procedures["warm-line-says-little"].when == condition


def test_hazards_complaints_and_the_rest(knowledge: Knowledge) -> None:
    gas = knowledge.hazards["gas-smell"]
    assert gas.triggers == (Trigger(complaint="smells-gas"),)
    assert gas.stop == Stop("whole-job", "everything until the gas is found")
    assert knowledge.hazards["stored-charge"].triggers == (Trigger(work_state="locked-out"),)
    dead, smell = knowledge.complaints.values()
    assert dead.brought_by == {"fan-capacitor-weak": "almost-always", "low-charge": "never"}
    assert (smell.hazards_first, smell.all_clear) == (("gas-smell",), "area-cleared")
    assert knowledge.facts["circuits"].counts == "circuit"
    assert knowledge.plate_values["capacitor-rated"].origin == "nameplate"
    assert knowledge.implications == (Implication({"fan-phase": ("three",)}, {"metering": "txv"}),)
    assert knowledge.quantities["superheat"].computed == (
        Derivation("difference", ("line-temperature", "evaporating-temperature")),
    )
    assert knowledge.limits["warm-line"].bounds == (Bound("line-temperature", above=80),)
    assert knowledge.round_points["sections"].season == ("spring",)
    assert knowledge.drift_alarms["sections-fall"].change == 3
    assert knowledge.sources == {"invented-standard": "An invented standard"}
    assert knowledge.aliases == {("fan-section", "weak"): (SECTION, "low")}


def test_several_sources_are_joined(tmp_path: Path) -> None:
    change = (
        LOW_CHARGE,
        "source: common practice, no source\n",
        "source: [invented-standard, from memory]\n",
    )
    knowledge = load_rules(write_rules(tmp_path, change), cache=tmp_path / "cache")
    assert knowledge.faults["low-charge"].source == "invented-standard; from memory"
