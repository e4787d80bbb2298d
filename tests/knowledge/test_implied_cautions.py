"""What a test's instrument and work state imply is asked for, and nothing that is there is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from tests.knowledge.small_rules import ELECTRICAL, said, write_files, write_rules
from troubleshoot.knowledge.base import read_base
from troubleshoot.knowledge.checks import implied_cautions, safety_readings
from troubleshoot.knowledge.checks.implied import IMPLICATIONS
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Finding, Knowledge, Test
from troubleshoot.knowledge.rule_base import RuleBase, make_rule_base
from troubleshoot.knowledge.shown_cautions import hazards_shown


@pytest.fixture(scope="module")
def base() -> RuleBase:
    return make_rule_base(read_base([shipped_folder()]))


def told(base: RuleBase, test: Test) -> list[str]:
    """What the check says of one test of the shipped rules, changed or not."""
    known = replace(base.knowledge, tests={test.id: test})
    return [problem.what for problem in implied_cautions.find(replace(base, knowledge=known))]


def without(words: tuple[str, ...], word: str) -> tuple[str, ...]:
    return tuple(each for each in words if each != word)


@pytest.mark.parametrize("implied", IMPLICATIONS, ids=lambda implied: implied.of)
def test_every_implication_speaks_of_some_shipped_test(base: RuleBase, implied: object) -> None:
    assert isinstance(implied, implied_cautions.Implication)
    silent = {  # of what only a site's own test may ask for
        "a torch",
        "a head or a hand over what turns",
        "a plug, a cap or a union of a gas train that comes off",
    }
    speaks = [t.id for t in base.knowledge.tests.values() if implied_cautions.holds(implied, t)]
    assert speaks or implied.of in silent
    assert implied.why and implied.source


def test_nothing_implied_can_be_taken_from_a_shipped_test(base: RuleBase) -> None:
    """Each hazard, need, person and work state that a line asks for is missed when it is gone."""
    unnoticed = []
    for implied in IMPLICATIONS:
        for test in base.knowledge.tests.values():
            if not implied_cautions.holds(implied, test):
                continue
            for what, thinner in thinned(implied, test):
                shown = hazards_shown(base.knowledge, thinner, implied.on_units)
                if what not in shown and what not in " ".join(told(base, thinner)):
                    unnoticed.append((implied.of, test.id, what))
    assert unnoticed == []


def thinned(implied: implied_cautions.Implication, test: Test) -> Iterator[tuple[str, Test]]:
    for hazard in implied.hazards:
        if hazard in test.hazards:
            yield hazard, replace(test, hazards=without(test.hazards, hazard))
    for need in implied.needs_state:
        yield need, replace(test, needs_state=without(test.needs_state, need))
    for profile in implied.who:
        yield profile, replace(test, who=without(test.who, profile))
    if implied.work_states and not implied.states:
        yield implied.work_states[0], replace(test, work_state="any")


def test_a_caution_whose_trigger_is_gone_is_told_once(base: RuleBase) -> None:
    live = replace(base.knowledge.hazards["arc-flash-480-volt"], triggers=())
    hazards = {**base.knowledge.hazards, live.id: live}
    known = replace(base.knowledge, hazards=hazards)
    problems = list(implied_cautions.find(replace(base, knowledge=known)))
    arcs = [problem.what for problem in problems if "arc-flash" in problem.what]
    assert len(arcs) == 1
    assert "others" in arcs[0]


PACK = {"pack.yaml": "format: 1\nname: North\n"}
INSULATION = """format: 1
area: capacitors
tests:
  - id: insulation-of-the-fan
    name: Fan winding to frame
    kind: measurement
    work-state: any
    how: [Read the winding to the frame at 500 V.]
    outcomes: [{id: good}, {id: bad}]
    source: common practice, no source
"""


def test_a_500_volt_test_without_a_caution_is_no_test(tmp_path: Path) -> None:
    pack = write_files(tmp_path / "north", {**PACK, "tests/fan.yaml": INSULATION})
    implied = [line for line in said(write_rules(tmp_path), pack) if "[implied-cautions]" in line]
    assert [line.split("; add")[0].split(", which")[0] for line in implied] == [
        "north/tests/fan.yaml:4:9: insulation-of-the-fan lacks insulation-test-near-electronics, "
        "stored-charge under hazards",
        "north/tests/fan.yaml:4:9: insulation-of-the-fan lacks meter-proved, "
        "capacitors-discharged under needs-state",
        "north/tests/fan.yaml:7:5: insulation-of-the-fan is not locked-out work",
    ]


OPENED = [
    "Take the cover off and feel each lug at the line side with the back of a finger.",
    "Reach in past the cover and turn the wheel by hand.",
    "Open the access door and look at the contacts.",
    "Lay a flat hand on the terminals of the motor.",
    "Wiggle the wires of the contactor while it hums.",
    "Remove two screws of the blower panel and listen.",
    "Tighten the lug that hums.",
    "Spin the blower wheel by hand.",
    "Rock the belt pulley to and fro with your fingers.",
    "Turn the condenser fan a full round by hand.",
    "Push a blade with one finger and see how it swings.",
    "Give the wheel a turn and listen for the bearing.",
    "Look behind the blower door at the belt.",
    "Peer inside the control box with a lamp.",
    "Shine a lamp in past the blower door.",
    "Stick your head into the blower section and listen.",
    "Look under the access panel at the contactor.",
    "Loosen the set screw of the sheave a quarter turn.",
    "Feel the bearing of the blower for heat.",
    "Unlatch the blower compartment and watch the belt.",
    "Poke a finger at the contact plunger.",
    "Trace the low-volt wires with your hand back to the board.",
    "Strip the panel and photograph the lugs.",
    "Hold your palm at the burner tubes while it fires.",
    "Put your ear to the open blower section.",
    "Kneel beside the fan and reach down through the grille.",
    "Wipe the blades clean with a rag.",
]
GAS_OPENED = [
    "Loosen the plug at the gas valve outlet and put the hose on.",
    "Unscrew the test plug of the manifold.",
    "Crack the gas union a little and smell.",
    "Take the cap off the gas cock and look in.",
    "Open the drip leg and see what runs out.",
    "Ease the inlet plug out a turn and sniff.",
    "Back off the union at the cock until it hisses.",
    "Bleed a bit of gas at the test tap.",
]
CIRCUIT_OPENED = [
    "Undo the flare nut half a turn and listen.",
    "Slacken the flare at the liquid line.",
    "Take the core out of the service port.",
    "Crack the service valve and see whether it hisses.",
    "Unthread the hose from the liquid port.",
    "Press the pin of the suction port and listen.",
]
OVER_WHAT_TURNS = [
    "Lean over the fan guard with a lamp.",
    "Bend over the running fan and look down at the hub.",
    "Hold a strip of paper over the fan grille.",
    "Reach over the belt guard with a tachometer.",
    "Stand over the condenser fan and count its turns.",
    "Crouch above the condenser fan and look for the wobble.",
]
CLOSED = [
    "Look at the fan guards from the walkway.",
    "Stand at the disconnect and listen to the compressor.",
    "Read the thermostat and ask the tenant what it was set to.",
    "Take no panel off; listen at the cabinet.",
    "Open the roof hatch and look at the weather.",
    "Hold a hand into the air of the diffuser.",
    "Watch the fan through the grille from the walkway.",
    "Read the belt size off the job sheet.",
    "Listen to the blower from the curb.",
    "Look over the roof for the exhaust of another unit.",
    "Ask who turned the gas cock and when.",
    "Look at the dial of the gas meter with all else off.",
    "Read the gas pressure on the tag of the meter.",
    "Note whether the pilot flares up behind the sight glass.",
    "Lean the ladder where the hatch is.",
    "Hold a hand over the supply diffuser.",
    "Turn the thermostat up by hand.",
    "Turn the fan switch of the thermostat to on by hand.",
    "Push the button of the alarm panel with a finger.",
    "Look behind the unit for a blocked coil.",
    "Take the cap off the roof drain.",
    "Look under the unit for water.",
    "Open the cap of the drain trap and pour a cup of water in.",
    "Look in the logbook for the last filter change.",
    "Walk round to the fan side and feel the air with a hand held out.",
    "Stand upwind of the fans and listen.",
    "Feel the air beside the condenser fan, and read its temperature.",
    "Loosen the snow at the intake with a broom.",
    "Look at the nameplate and note the gas type.",
    "Stand back from the unit and watch the stack.",
    "Listen at the supply grille for a rattle.",
    "Feel the air at the return grille with a hand.",
    "Read the gauge of the gas company at the wall.",
    "Walk round the unit and note which fans turn.",
    "Ask the tenant to turn the thermostat to heat.",
    "Look down the hatch before you step.",
    "Count the fans that turn from two steps away.",
    "Look through the fan guard from the side at the blades.",
    "Wipe the rain off the nameplate.",
    "Trace the wires on the drawing with a finger.",
    "Hold the phone out to the fan and record its noise.",
    "Read the label beside the service valve.",
    "Take a photo of the blower section from outside.",
    "Take a look at the panels from the walkway.",
    "Clean the glass of the gauge at the meter.",
    "Bleed no time on it; ask for the last report.",
    "Undo the tie of the tarpaulin that lies over the intake.",
]


def implied_of(how: str, state: str, tmp_path: Path) -> list[str]:
    """What is implied by what a site's test has people do with their hands and heads."""
    lug = INSULATION.replace("Read the winding to the frame at 500 V.", f"'{how}'")
    lug = lug.replace("work-state: any", f"work-state: {state}")
    pack = write_files(tmp_path / "north", {**PACK, "tests/fan.yaml": lug})
    return [line for line in said(write_rules(tmp_path), pack) if "implied-cautions" in line]


def of_hands(how: str, state: str, tmp_path: Path) -> list[str]:
    return [line for line in implied_of(how, state, tmp_path) if "cover that is opened" in line]


@pytest.mark.parametrize("how", OPENED)
@pytest.mark.parametrize("state", ["any", "running"])
def test_hands_behind_a_cover_are_no_work_for_any_state(
    how: str, state: str, tmp_path: Path
) -> None:
    """Regression: a site's test had lugs felt at the line side, with no lock and no caution."""
    (line,) = of_hands(how, state, tmp_path)
    assert "is not locked-out or energised-open or running-open work" in line
    assert of_hands(how, "locked-out", tmp_path) == []


@pytest.mark.parametrize("how", GAS_OPENED)
@pytest.mark.parametrize("state", ["any", "running"])
def test_gas_is_opened_dead_shut_and_by_whoever_may(how: str, state: str, tmp_path: Path) -> None:
    """Regression: a site's test loosened a plug of the gas valve in any state of work."""
    told = " ".join(implied_of(how, state, tmp_path))
    for lack in ("gas-train-work", "gas-shut", "lacks gas under who", "is not locked-out work"):
        assert lack in told


@pytest.mark.parametrize("how", CIRCUIT_OPENED)
def test_a_circuit_is_opened_by_whoever_may(how: str, tmp_path: Path) -> None:
    """Regression: a site's test undid a flare nut, with no caution and for anybody."""
    told = " ".join(implied_of(how, "any", tmp_path))
    for lack in ("refrigerant-contact", "lacks refrigerant under who", "charge-recovered"):
        assert lack in told


@pytest.mark.parametrize("how", OVER_WHAT_TURNS)
@pytest.mark.parametrize("state", ["any", "running"])
def test_nobody_is_led_over_what_turns_without_a_word(how: str, state: str, tmp_path: Path) -> None:
    """Regression: a site's test had people lean over a fan guard, with no caution."""
    assert "lacks rotating-parts under hazards" in " ".join(implied_of(how, state, tmp_path))


@pytest.mark.parametrize("how", CLOSED)
def test_what_opens_nothing_may_be_done_in_any_state(how: str, tmp_path: Path) -> None:
    others = [line for line in implied_of(how, "any", tmp_path) if "ladder-and-hatch" not in line]
    assert others == []


@pytest.mark.parametrize("state", ["energised-open", "running-open"])
def test_open_with_the_power_on_exposes_something(state: str, tmp_path: Path) -> None:
    live = INSULATION.replace("work-state: any", f"work-state: {state}\n    exposes: none")
    pack = write_files(tmp_path / "north", {**PACK, "tests/fan.yaml": live})
    (line,) = [each for each in said(write_rules(tmp_path), pack) if "[safe-tests]" in each]
    assert "exposes nothing though it is open with the power on; write exposes:" in line


def test_an_instrument_that_a_step_forbids_is_not_used(tmp_path: Path) -> None:
    forbidden = INSULATION.replace("Read the winding", "Never read the winding")
    pack = write_files(tmp_path / "north", {**PACK, "tests/fan.yaml": forbidden})
    assert not [line for line in said(write_rules(tmp_path), pack) if "implied-cautions" in line]


def test_no_rule_voids_a_safety_step(tmp_path: Path) -> None:
    change = (ELECTRICAL, "{tests: [superheat], for-faults", "{tests: [area-cleared], for-faults")
    found = [line for line in said(write_rules(tmp_path, change)) if "safety-readings" in line]
    assert found == [
        "rules/procedures/electrical.yaml:21:22: warm-line-says-little voids area-cleared, which "
        "protects a person; leave it out [safety-readings]"
    ]


@pytest.mark.parametrize(
    "name",
    ["combustible-gas-sweep", "room-carbon-monoxide", "refrigerant-sweep-a2l", "verified-dead"],
)
def test_sweeps_and_steps_protect(shipped: Knowledge, name: str) -> None:
    assert safety_readings.protects(shipped.tests[name])


def test_readings_for_the_diagnosis_may_be_voided(shipped: Knowledge) -> None:
    assert not safety_readings.protects(shipped.tests["superheat"])


def test_only_the_failed_proof_of_a_meter_takes_the_test_for_dead(base: RuleBase) -> None:
    rule = base.knowledge.procedures["dead-by-unproved-meter"]
    assert rule.void is not None and "verified-dead" in rule.void.tests
    assert list(safety_readings.find(base)) == []
    other = replace(rule, when=replace(rule.when, finding=Finding("walk-round", ("water",))))
    gas = replace(rule, void=replace(rule.void, tests=("combustible-gas-sweep",)))
    for changed in (other, gas):
        known = replace(base.knowledge, procedures={rule.id: changed})
        assert len(list(safety_readings.find(replace(base, knowledge=known)))) == 1
