"""Which hazards a case calls up, and the STOP that stands over it."""

from __future__ import annotations

from typing import Any

import pytest

from tests.building import base, case, fault, measured, test_of, unit_of
from troubleshoot.knowledge.model import (
    Complaint,
    Finding,
    Hazard,
    Knowledge,
    Quantity,
    Read,
    Stop,
    Trigger,
)
from troubleshoot.knowledge.vocabulary import StopScope
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place

SWEEP = test_of("sweep", "none", "trace", "gas", healthy="none", kind="measurement")
LOOK = test_of("look", "bad")
SMELL = Complaint("smell", "It smells", all_clear="sweep")


def gas(*triggers: Trigger, scope: StopScope = "whole-job", name: str = "gas") -> Hazard:
    return Hazard(name, "DANGER", "leave", triggers, Stop(scope, "everything"))


FOUND = Trigger((Finding("sweep", ("gas",)),))
CALLED = Trigger(complaint="smell")


def knowing(*hazards: Hazard, **more: Any) -> Knowledge:
    cards = more.pop("faults", [fault("f", {"often": [{"look": "bad"}]}), fault("g")])
    return base([SWEEP, LOOK], cards, hazards=hazards, complaints=[SMELL], **more)


def concluded(knowledge: Knowledge, *answers: Answer, **more: Any) -> Conclusions:
    return Reasoner(knowledge).conclude(case(knowledge, *answers, **more))


def said(test: str, outcome: str, **more: Any) -> Answer:
    return Answer(test, (outcome,), **more)


def stopped(found: Conclusions) -> list[str]:
    return [fired.hazard.id for fired in found.hazards if fired.stops]


def test_a_complaint_that_is_a_stop_stands_until_the_all_clear() -> None:
    knowledge = knowing(gas(CALLED))
    assert stopped(concluded(knowledge, complaint="smell")) == ["gas"]
    cleared = concluded(knowledge, said("sweep", "none"), complaint="smell")
    assert stopped(cleared) == [] and [h.hazard.id for h in cleared.hazards] == ["gas"]
    assert cleared.stop is None


@pytest.mark.parametrize(
    "answer",
    [said("sweep", "gas"), said("sweep", "trace"), said("sweep", "none", valid=False),
     said("look", "normal")],
)  # fmt: skip
def test_nothing_but_a_valid_healthy_all_clear_lifts_it(answer: Answer) -> None:
    assert stopped(concluded(knowing(gas(CALLED)), answer, complaint="smell")) == ["gas"]


@pytest.mark.parametrize(("typed", "stops"), [("3 V", []), ("900 V", ["gas"])])
def test_a_number_that_shows_no_outcome_is_no_all_clear(typed: str, stops: list[str]) -> None:
    metered = measured("volts", {"normal": {"at_most": 5}}, reads=(Read("volts"),))
    call, volts = (
        Complaint("smell", "It smells", all_clear="volts"),
        Quantity("volts", "V", "volts"),
    )
    knowledge = base([metered], hazards=[gas(CALLED)], complaints=[call], quantities=[volts])
    assert stopped(concluded(knowledge, Answer("volts", (), typed), complaint="smell")) == stops


def test_a_doubtful_reading_after_the_all_clear_brings_the_stop_back() -> None:
    answers = (said("sweep", "none"), said("sweep", "gas", valid=False))
    assert stopped(concluded(knowing(gas(CALLED)), *answers, complaint="smell")) == ["gas"]


@pytest.mark.parametrize("triggers", [(CALLED, FOUND), (FOUND, CALLED)])
def test_a_finding_stops_whatever_became_of_the_complaint(triggers: tuple[Trigger, ...]) -> None:
    leak = Trigger((Finding("look", ("bad",)),))
    knowledge = knowing(gas(*triggers, leak))
    answers = (said("sweep", "none"), said("look", "bad"))
    found = concluded(knowledge, *answers, complaint="smell")
    assert stopped(found) == ["gas"] and len(found.hazards) == 1
    assert "possible:look:bad" in found.hazards[0].because


def test_a_likely_fault_shows_its_hazard_but_does_not_stop() -> None:
    knowledge = knowing(gas(Trigger(fault="f")))
    answers = (said("look", "bad"),) * 3
    found = concluded(knowledge, *answers)
    assert found.causes[0].fault.id == "f" and found.causes[0].probability >= 0.3
    assert [h.hazard.id for h in found.hazards] == ["gas"] and stopped(found) == []
    assert concluded(knowledge, said("look", "normal")).hazards == ()


def test_the_stop_that_ends_the_diagnosis_is_one_for_the_whole_job() -> None:
    step = gas(Trigger((Finding("look", ("bad",)),)), scope="this-step", name="a-step")
    safe = gas(Trigger((Finding("look", ("bad",)),)), scope="until-made-safe", name="b-safe")
    knowledge = knowing(step, safe, gas(FOUND))
    assert concluded(knowledge, said("look", "bad")).stop is None
    both = concluded(knowledge, said("look", "bad"), said("sweep", "gas"))
    assert both.stop is not None and both.stop.hazard.id == "gas"
    assert both.causes, "causes are still ranked at a STOP"


def test_a_hazard_without_a_stop_only_warns() -> None:
    knowledge = knowing(Hazard("hot", "CAUTION", "let it cool", (FOUND,)))
    found = concluded(knowledge, said("sweep", "gas"))
    assert [h.hazard.id for h in found.hazards] == ["hot"] and found.stop is None


@pytest.mark.parametrize(
    ("text", "fires"), [("7 ppm", False), ("8.6 ppm", True), ("9.4 ppm", True), ("12 ppm", True)]
)
def test_hazards_fire_on_the_worse_side_of_a_reading_too_close_to_call(
    text: str, fires: bool
) -> None:
    test = measured("co", {"normal": {"below": 9}, "high": {"at_least": 9}}, reads=(Read("co"),))
    hazard = gas(Trigger((Finding("co", ("high",)),)), name="co")
    knowledge = base(
        [test], [fault("f")], hazards=[hazard], quantities=[Quantity("co", "ppm", "co")]
    )
    near = text.replace(" ppm", " +/- 0.5 ppm")
    for valid in (None, False):
        found = concluded(knowledge, Answer("co", text=near, valid=valid))
        assert (stopped(found) == ["co"]) == fires


def test_a_finding_at_one_circuit_does_not_complete_a_trigger_at_another() -> None:
    tests = [test_of("a", "bad", per="circuit"), test_of("b", "bad", per="circuit")]
    both = Trigger((Finding("a", ("bad",)), Finding("b", ("bad",))))
    knowledge = base(tests, [fault("f")], hazards=[gas(both)])
    unit = unit_of(knowledge, circuits=2)

    def fired(at_a: int, at_b: int) -> list[str]:
        answers = (said("a", "bad", places=(Place("circuit", at_a),)),
                   said("b", "bad", places=(Place("circuit", at_b),)))  # fmt: skip
        return stopped(concluded(knowledge, *answers, unit=unit))

    assert fired(1, 1) == fired(2, 2) == ["gas"] and fired(1, 2) == []


def test_a_reading_of_which_the_place_is_open_may_complete_it_anywhere() -> None:
    tests = [test_of("a", "bad", per="circuit"), test_of("b", "bad", per="circuit")]
    both = Trigger((Finding("a", ("bad",)), Finding("b", ("bad",))))
    knowledge = base(tests, [fault("f")], hazards=[gas(both)])
    unit = unit_of(knowledge, circuits=2)
    places = unit.layout.places("circuit")
    answers = (said("a", "bad", places=places, shared=True),
               said("b", "bad", places=(Place("circuit", 2),)))  # fmt: skip
    assert stopped(concluded(knowledge, *answers, unit=unit)) == ["gas"]


def test_the_gravest_comes_first_and_of_those_as_grave_the_first_in_the_rules() -> None:
    sure = Finding("sweep", ("gas",))
    rules = [
        Hazard("b", "WARNING", "mind it", (Trigger((sure,)),)),
        gas(FOUND, scope="this-step", name="d"),
        gas(FOUND, name="z"),
        gas(FOUND, name="a"),
        Hazard("c", "WARNING", "mind it", (Trigger((sure,)),), Stop("whole-job", "it")),
    ]
    found = concluded(knowing(*rules), Answer("sweep", ("gas",)))
    assert [fired.hazard.id for fired in found.hazards] == ["z", "a", "d", "c", "b"]
    assert found.stop is not None and found.stop.hazard.id == "z"
