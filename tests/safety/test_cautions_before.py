"""The cautions before a step or test: its own, those its state calls up, the gravest first."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, test_of, unit_of
from troubleshoot.knowledge.model import EquipmentFact, Finding, Hazard, Knowledge, Test, Trigger
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.steps import RESTART
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.work_state import UnitAtWork
from troubleshoot.visit.state import VisitState

LIVE = test_of("live", "bad", work_state="energised-open", exposes="line", hazards=("own",))
DRY = test_of("dry", "bad", hazards=("own", "gone-by-now"))
FACTS = (
    EquipmentFact("line-volts-class", ("120-volt", "480-volt"), "Volts?"),
    EquipmentFact("refrigerant-class", ("a1", "a2l"), "Class?"),
    EquipmentFact("circuits", ("one", "two-or-more"), "How many?", counts="circuit"),
)
ORDER = ("NOTICE", "CAUTION", "WARNING", "DANGER")


def called_up_by(signal: str = "WARNING", **trigger: Any) -> Hazard:
    return Hazard("called-up", signal, "look out", (Trigger(**trigger),))  # type: ignore[arg-type]


def cautions(
    hazard: Hazard, test: Any, unit: dict[str, Any] | None = None, **more: Any
) -> list[str]:
    own = Hazard("own", "CAUTION", "mind it")
    knowledge = base([LIVE, DRY], hazards=(own, hazard), facts=FACTS)
    state = VisitState(unit=unit_of(knowledge, **(unit or {})), **more)
    return [each.id for each in cautions_before(knowledge, state, test)]


@pytest.mark.parametrize(
    ("trigger", "shown"),
    [
        ({"work_state": "energised-open"}, True), ({"work_state": "running"}, False),
        ({"exposes": "line"}, True), ({"exposes": "control"}, False),
        ({"test": "live"}, True), ({"test": "dry"}, False),
        ({"work_state": "energised-open", "profile": "gas"}, True),
        ({"work_state": "energised-open", "profile": "apprentice"}, False),
        ({"work_state": "energised-open", "complaint": "no-heat"}, True),
        ({"work_state": "energised-open", "complaint": "no-cooling"}, False),
        ({"work_state": "energised-open", "exposes": "control"}, False),
        ({"test": "live", "findings": (Finding("dry", ("bad",)),)}, False),
        ({"complaint": "no-heat"}, False),
    ],
)  # fmt: skip
def test_a_trigger_that_speaks_of_the_step_holds_with_all_its_parts(
    trigger: dict[str, Any], shown: bool
) -> None:
    found = cautions(
        called_up_by(**trigger), LIVE, profiles=frozenset({"gas"}), complaint="no-heat"
    )
    assert found == (["called-up", "own"] if shown else ["own"])


@pytest.mark.parametrize(
    ("equipment", "unit", "volts_480", "shown"),
    [
        ({"line_volts_class": "480-volt"}, {}, True, True),
        ({"line_volts_class": "480-volt"}, {}, False, False),
        ({"line_volts_class": "120-volt"}, {"line_volts_class": "120-volt"}, False, True),
        ({"line_volts_class": "120-volt"}, {"line_volts_class": "120-volt"}, True, False),
        ({"line_volts_class": "120-volt"}, {}, True, False),
        ({"refrigerant_class": "a2l"}, {"refrigerant_class": "a2l"}, True, True),
        ({"refrigerant_class": "a2l"}, {}, True, False),
        ({"refrigerant_class": "a2l"}, {"refrigerant_class": "a1"}, True, False),
    ],
)
def test_a_supply_that_may_be_480_volts_counts_as_one_and_other_facts_are_proved(
    equipment: dict[str, str], unit: dict[str, Any], volts_480: bool, shown: bool
) -> None:
    needed = {fact.replace("_", "-"): (word,) for fact, word in equipment.items()}
    hazard = called_up_by(work_state="energised-open", equipment=needed)
    found = cautions(hazard, LIVE, unit, at_work=UnitAtWork(volts_480=volts_480))
    assert ("called-up" in found) is shown


@pytest.mark.parametrize(("signal", "first"), [*((s, i > 1) for i, s in enumerate(ORDER))])
def test_the_gravest_comes_first(signal: str, first: bool) -> None:
    found = cautions(called_up_by(signal, test="live"), LIVE)
    assert (found[0] == "called-up") is first and len(found) == 2


def test_hazards_that_the_rules_do_not_have_are_left_out() -> None:
    assert cautions(called_up_by(test="other"), DRY) == ["own"]


@pytest.mark.parametrize(
    ("test", "flammable", "known", "burns"),
    [
        (test_of("refrigerant-sweep-a2l", "leak"), True, None, True),
        (test_of("refrigerant-sweep-a2l", "leak"), True, "a2l", True),
        (test_of("refrigerant-sweep-a2l", "leak"), False, "a1", False),
        (test_of("panels-off", "stuck", kind="step"), True, None, True),
        (test_of("gauges-off", "stuck", kind="step"), True, "a2l", True),
        (test_of("lockout", "cannot-lock", kind="step"), True, None, False),
        (test_of("reading", "high", needs_state=("gauges-on",)), True, None, True),
        (test_of("reading", "high"), True, None, False),
        (test_of("panels-off", "stuck", kind="step"), False, None, False),
    ],
)
def test_a_refrigerant_that_burns_or_may_is_cautioned_for_where_the_air_is_swept(
    test: Any, flammable: bool, known: str | None, burns: bool
) -> None:
    both = [Hazard(n, "DANGER", n) for n in ("refrigerant-not-known", "flammable-refrigerant")]
    knowledge = base([test], hazards=both, facts=FACTS)
    unit = unit_of(knowledge, **({} if known is None else {"refrigerant_class": known}))
    state = VisitState(unit=unit, at_work=UnitAtWork(flammable=flammable))
    names = [hazard.id for hazard in cautions_before(knowledge, state, test)]
    unknown = ["refrigerant-not-known"] if known is None else []
    assert names == ([*unknown, "flammable-refrigerant"] if burns else [])


def test_a_caution_of_both_kinds_is_shown_once() -> None:
    own = replace(called_up_by(test="live"), id="own")
    assert cautions(own, LIVE) == ["own"]


def test_the_call_that_lights_a_burner_shows_what_the_test_it_is_for_can_do() -> None:
    """The burner was lit with the words on fans alone; a late light was told at the test after."""
    call = test_of(RESTART, kind="step", hazards=("fans",))
    burns = test_of("flame", hazards=("own",))
    hazards = (Hazard("own", "DANGER", "mind it"), Hazard("fans", "CAUTION", "they turn"))
    knowledge = base([burns, call], hazards=hazards, facts=FACTS)
    state = VisitState(unit=unit_of(knowledge))

    def shown(aim: Spot | None, step: Test = call) -> list[str]:
        before = cautions_before(knowledge, replace(state, aim=aim), step)
        return [each.id for each in before]

    assert shown(("flame", None)) == ["own", "fans"]
    assert shown(None) == ["fans"]
    assert shown(("flame", None), test_of("tell-occupants", kind="step")) == []


@pytest.mark.parametrize(
    ("unit", "lights"),
    [
        (UnitAtWork(burns_gas=True), True), (UnitAtWork(), False),
        (UnitAtWork(burns_gas=True, called_to_cool=True), False),
    ],
)  # fmt: skip
def test_a_call_that_may_be_for_heat_is_cautioned_for_as_a_light(
    unit: UnitAtWork, lights: bool, shipped: Knowledge
) -> None:
    """Regression: a full sequence on a heat call said no more than that fans turn."""
    trials = {*shipped.tests["ignition-trials"].hazards}
    state = VisitState(unit=unit_of(shipped), at_work=unit, aim=("operating-sequence", None))
    for name in ("operating-sequence", RESTART):
        shown = {each.id for each in cautions_before(shipped, state, shipped.tests[name])}
        assert trials and (trials <= shown) is lights and "rotating-parts" in shown
