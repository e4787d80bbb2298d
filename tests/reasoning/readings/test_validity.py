"""Which readings count: void rules, stated validity, and a reading's own conditions."""

from __future__ import annotations

from typing import Any

import pytest

from tests.building import base, case, fault, measured, test_of, unit_of
from troubleshoot.knowledge.model import (
    Bound,
    Condition,
    Finding,
    Hazard,
    Knowledge,
    NamedLimit,
    Procedure,
    Quantity,
    Read,
    Stop,
    Trigger,
    Void,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.unit.places import Place

BANDS = {"normal": {"at_most": 10}, "high": {"above": 10}}
AMPS = measured("amps", BANDS, reads=(Read("amps"),))
SHELL = test_of("shell", "hot", per="circuit")
LOOK = test_of("look", "bad", per="circuit")
QUANTITIES = [Quantity("amps", "A", "amps"), Quantity("minutes-running", "min", "run")]
EARLY = NamedLimit("early", "readings", (Bound("minutes-running", below=15),))
CARDS = [
    fault("open", {"almost-always": [{"look": "bad"}]}, subsystem="windings", per="circuit"),
    fault("protector", {"often": [{"look": "bad"}]}, subsystem="protection", per="circuit"),
    fault("weak", {"often": [{"amps": "high"}]}, subsystem="power"),
]
HOT = Condition("finding", finding=Finding("shell", ("hot",)))
SETTLING = Condition("state", name="early")


def knowing(*rules: Procedure, hazards: tuple[Hazard, ...] = ()) -> Knowledge:
    return base([AMPS, SHELL, LOOK], CARDS, rules, hazards, quantities=QUANTITIES, limits=[EARLY])


def rule(when: Condition, void: Void | None, name: str = "rule", **more: Any) -> Procedure:
    return Procedure(name, when, "it does not count yet", void=void, **more)


def concluded(knowledge: Knowledge, *answers: Answer, **conditions: str) -> Conclusions:
    stated = {name.replace("_", "-"): text for name, text in conditions.items()}
    return Reasoner(knowledge).conclude(case(knowledge, *answers, conditions=stated))


def reading(found: Conclusions, test: str) -> Reading:
    return next(r for r in found.readings if r.test == test)


def chances(found: Conclusions) -> dict[str, float]:
    return {f"{c.fault.id} {c.at}": c.probability for c in found.causes}


def test_a_void_rule_sets_the_reading_aside_for_every_fault() -> None:
    knowledge = knowing(rule(HOT, Void(("look",))))
    found = concluded(knowledge, Answer("look", ("bad",)), Answer("shell", ("hot",)))
    without = concluded(knowledge, Answer("shell", ("hot",)))
    assert not reading(found, "look").valid
    assert reading(found, "look").why_invalid == "it does not count yet"
    assert reading(found, "look").seen == ("bad",)
    assert chances(found) == chances(without)


def test_a_rule_that_does_not_hold_sets_nothing_aside() -> None:
    knowledge = knowing(rule(HOT, Void(("look",))))
    for shell in ((), (Answer("shell", ("normal",)),)):
        assert reading(concluded(knowledge, Answer("look", ("bad",)), *shell), "look").valid


def test_a_stated_validity_wins_over_the_rule() -> None:
    knowledge = knowing(rule(HOT, Void(("look",))))
    answers = (Answer("look", ("bad",), valid=True), Answer("shell", ("hot",)))
    found, plain = concluded(knowledge, *answers), concluded(knowing(), *answers)
    assert reading(found, "look").valid and chances(found) == chances(plain)


@pytest.mark.parametrize(
    "void",
    [Void(("look",), for_faults=("open",)), Void(("look",), for_subsystems=("windings",))],
)
def test_a_reading_may_be_void_for_some_faults_and_the_very_evidence_for_others(
    void: Void,
) -> None:
    found = concluded(knowing(rule(HOT, void)), Answer("look", ("bad",)), Answer("shell", ("hot",)))
    weights = {c.fault.id: c.weights for c in found.causes}
    assert reading(found, "look").valid
    assert weights["open"] == () and weights["protector"]


def test_void_for_a_subsystem_without_faults_is_void_for_nobody() -> None:
    knowledge = knowing(rule(HOT, Void(("look",), for_subsystems=("heating",))))
    found = concluded(knowledge, Answer("look", ("bad",)), Answer("shell", ("hot",)))
    assert reading(found, "look").valid and all(
        c.weights for c in found.causes if c.fault.id in ("open", "protector")
    )


def test_a_rule_that_holds_at_one_circuit_leaves_the_other_alone() -> None:
    knowledge = knowing(rule(HOT, Void(("look",))))
    unit = unit_of(knowledge, circuits=2)
    one, two = (Place("circuit", n) for n in (1, 2))
    answers = (
        Answer("look", ("bad",), places=(one,)),
        Answer("look", ("bad",), places=(two,)),
        Answer("shell", ("hot",), places=(two,)),
    )
    found = Reasoner(knowledge).conclude(case(knowledge, *answers, unit=unit))
    valid = {r.at: r.valid for r in found.readings if r.test == "look"}
    assert valid == {one: True, two: False}


@pytest.mark.parametrize(
    ("case_minutes", "own_minutes", "valid"),
    [
        (None, None, True), ("20 min", None, True), ("5 min", None, False),
        ("5 min", "20 min", True), ("20 min", "5 min", False), (None, "5 min", False),
        ("15 min", None, True), ("14.9 min", None, False), ("5 min", "15 min", True),
    ],
)  # fmt: skip
def test_a_reading_s_own_conditions_go_before_the_case_s(
    case_minutes: str | None, own_minutes: str | None, valid: bool
) -> None:
    knowledge = knowing(rule(SETTLING, Void(("amps",))))
    own = {} if own_minutes is None else {"minutes-running": own_minutes}
    stated = {} if case_minutes is None else {"minutes_running": case_minutes}
    found = concluded(knowledge, Answer("amps", text="12 A", conditions=own), **stated)
    assert reading(found, "amps").valid is valid
    assert ("weak None" in chances(found)) and bool(
        next(c for c in found.causes if c.fault.id == "weak").weights
    ) is valid


def test_own_conditions_that_say_nothing_about_the_rule_leave_it_as_it_is() -> None:
    derived = rule(HOT, None, "deriving", derives="overheated")
    voiding = rule(Condition("derived", name="overheated"), Void(("look",)))
    knowledge = knowing(derived, voiding)
    own = {"minutes-running": "20 min"}
    answers = (Answer("look", ("bad",), conditions=own), Answer("shell", ("hot",)))
    assert not reading(concluded(knowledge, *answers), "look").valid


def test_what_a_void_reading_seemed_to_say_concludes_nothing() -> None:
    seemed = Condition("finding", finding=Finding("look", ("bad",)))
    follows = rule(seemed, None, "follows", derives="starved", look_first=("shell",))
    knowledge = knowing(rule(HOT, Void(("look",))), follows)
    found = concluded(knowledge, Answer("look", ("bad",)), Answer("shell", ("hot",)))
    assert [p.procedure.id for p in found.procedures] == ["rule"]
    counted = concluded(knowledge, Answer("look", ("bad",)), Answer("shell", ("normal",)))
    assert [p.procedure.id for p in counted.procedures] == ["follows"]


def test_a_rule_may_void_the_very_reading_it_rests_on() -> None:
    itself = rule(Condition("finding", finding=Finding("look", ("bad",))), Void(("look",)))
    found = concluded(knowing(itself), Answer("look", ("bad",)))
    assert [p.procedure.id for p in found.procedures] == ["rule"]
    assert not reading(found, "look").valid


def test_hazards_fire_on_a_void_reading() -> None:
    stop = Stop("whole-job", "everything")
    hazard = Hazard("shock", "DANGER", "stop", (Trigger((Finding("look", ("bad",)),)),), stop)
    knowledge = knowing(rule(HOT, Void(("look",))), hazards=(hazard,))
    found = concluded(knowledge, Answer("look", ("bad",)), Answer("shell", ("hot",)))
    assert not reading(found, "look").valid
    assert found.stop is not None and found.stop.hazard.id == "shock"
