"""Which hazards stand, where, what they forbid and until when: edges that a unit rarely shows."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, case, measured, unit_of
from tests.safety.stops.test_bans import (
    AMPS,
    CURE,
    FAN,
    LOOK,
    ONE,
    ROOM,
    TWO,
    bad_at,
    concluded,
    hazard,
    knowing,
)  # fmt: skip
from tests.safety.stops.test_parts import SPLIT, SWEEP
from troubleshoot.knowledge.model import (
    Ban,
    Complaint,
    Finding,
    Hazard,
    Knowledge,
    Quantity,
    Read,
    Stop,
    Trigger,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.standing import (
    EVERYTHING,
    Forbidden,
    Standing,
    bans_of,
    called_up,
    standing_hazards,
)
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.events import Answered, Halted, Started, replay

TESTS = (LOOK, CURE, AMPS, FAN, ROOM)


@pytest.mark.parametrize(
    ("circuits", "count", "where"),
    [((1,), 2, "circuit 1"), ((2,), 2, "circuit 2"), ((1, 2), 2, None), ((1,), 1, None)],
)
def test_a_hazard_of_one_circuit_of_several_says_which(
    circuits: tuple[int, ...], count: int, where: str | None
) -> None:
    knowledge = knowing(hazard())
    found = Reasoner(knowledge).conclude(case(knowledge, unit=unit_of(knowledge, circuits=count)))
    fired = FiredHazard(hazard(scope="whole-job"), circuits, (), found=True)
    assert called_up(found, fired) == Standing(fired.hazard, True, where)


def test_what_the_call_brings_up_stands_until_the_all_clear() -> None:
    first = Hazard("first", "DANGER", "out")
    call = Complaint("smells", "it smells", hazards_first=("first",), all_clear="room")
    knowledge = knowing(hazard(), first, complaints=[call])

    def standing(*answers: Answer, complaint: str | None = "smells") -> list[str]:
        found = concluded(knowledge, *answers, complaint=complaint)
        return [each.hazard.id for each in standing_hazards(found)]

    assert standing() == ["first"]
    assert standing(complaint=None) == [] == standing(complaint="gone-by-now")
    assert standing(Answer("room", ("normal",))) == []
    assert standing(*bad_at(ONE)) == ["first", "bite"], "the gravest first"
    assert standing_hazards(concluded(knowledge, complaint="smells")) == (Standing(first),)


def test_a_likely_fault_or_the_kind_of_unit_is_no_hazard_that_stands() -> None:
    found = concluded(knowing(hazard()), *bad_at(ONE))
    unfound = tuple(replace(each, found=False) for each in found.hazards)
    quiet = replace(found, hazards=unfound)
    assert standing_hazards(found) and not standing_hazards(quiet)
    assert Forbidden(replace(found, hazards=unfound)).by(ROOM, None) is None


@pytest.mark.parametrize(
    ("scope", "bans", "forbids"),
    [
        ("whole-job", (), EVERYTHING), ("until-made-safe", (), EVERYTHING), ("this-step", (), ()),
        (None, (), ()), ("whole-job", (Ban(tests=("x",)),), (Ban(tests=("x",)),)),
        (None, (Ban(tests=("x",)),), (Ban(tests=("x",)),)),
    ],
)  # fmt: skip
def test_a_wide_stop_that_says_nothing_forbids_all(scope: Any, bans: Any, forbids: Any) -> None:
    stop = None if scope is None else Stop(scope, "it")
    assert bans_of(Hazard("h", "DANGER", "x", stop=stop, forbids=bans)) == forbids
    assert (Ban(),) == EVERYTHING


@pytest.mark.parametrize(
    ("keeps_off", "circuits", "kept"),
    [
        ("unit", (ONE,), "unit"),
        ("circuit", (ONE,), "circuits"),
        ("circuit", (ONE, TWO), "unit"),
        ("heat", (ONE,), "unit"),
        ("nothing", (ONE, TWO), None),
        (None, (ONE, TWO), None),
    ],
)
def test_what_stays_off_is_the_unit_wherever_the_circuit_or_the_heat_cannot_be_alone(
    keeps_off: Any, circuits: tuple[Place, ...], kept: str | None
) -> None:
    """The unit of this rule base says nothing of its heat: that it is gas counts only if known."""
    bite = replace(hazard(), keeps_off=keeps_off)
    off = left_off(concluded(knowing(bite), *bad_at(*circuits)))
    assert [fired.hazard.id for fired in off.all] == (["bite"] if kept else [])
    assert kept is None or getattr(off, kept)


@pytest.mark.parametrize(
    ("ban", "test", "at", "barred"),
    [
        (Ban(tests=("room",)), ROOM, None, True),
        (Ban(tests=("room",)), FAN, None, False),
        (Ban(areas=("area",)), ROOM, None, True),
        (Ban(areas=("other",)), ROOM, None, False),
        (Ban(work_states=("running",)), FAN, None, True),
        (Ban(work_states=("running",)), AMPS, None, False),
        (Ban(places=("circuit",)), CURE, ONE, True),
        (Ban(places=("compressor",)), CURE, ONE, False),
        (Ban(places=("circuit",)), CURE, None, False),
        (Ban(at="circuit"), CURE, ONE, True),
        (Ban(at="circuit"), CURE, TWO, False),
        (Ban(at="circuit"), ROOM, None, False),
        (Ban(at="unit"), ROOM, None, True),
        (Ban(until=(Finding("cure", ("normal",)),)), CURE, ONE, False),
        (Ban(until=(Finding("cure", ("normal",)),)), ROOM, None, True),
    ],
)
def test_each_part_of_a_ban_bars_by_itself(
    ban: Ban, test: Any, at: Place | None, barred: bool
) -> None:
    found = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE)))
    assert (found.by(test, at) is not None) is barred


def cured(at: Place | None, outcome: str = "normal", **more: Any) -> Answer:
    return Answer("cure", (outcome,), places=(at,), **more)


@pytest.mark.parametrize(
    ("answers", "barred"),
    [
        ([], True),
        ([cured(ONE)], True),
        ([cured(ONE), cured(TWO)], False),
        ([cured(ONE), cured(TWO, "bad")], True),
        ([cured(ONE), cured(TWO, valid=False)], True),
        ([Answer("room", ("normal",))], True),
        ([cured(ONE), Answer("look", ("normal",), places=(TWO,))], True),
        ([cured(TWO, "bad"), cured(ONE), cured(TWO)], False),
        ([Answer("cure", ("normal",), places=(ONE, TWO))], False),
        ([Answer("cure", ("normal",), places=(ONE, TWO), shared=True)], False),
        ([Answer("cure", ("bad",), places=(ONE, TWO), shared=True)], True),
    ],
)
def test_a_ban_lasts_until_it_was_read_sound_at_every_place(
    answers: list[Answer], barred: bool
) -> None:
    ban = Ban(tests=("fan",), until=(Finding("cure", ("normal",)),))
    found = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE), *answers))
    assert (found.by(FAN, None) is not None) is barred


def test_a_ban_of_several_findings_lasts_until_all_of_them_were_read() -> None:
    ban = Ban(tests=("fan",), until=(Finding("cure", ("normal",)), Finding("room", ("normal",))))
    knowledge = knowing(hazard(ban))
    room = Answer("room", ("normal",))
    for answers, barred in (
        ([room], True), ([cured(ONE), cured(TWO)], True), ([room, cured(ONE), cured(TWO)], False),
    ):  # fmt: skip
        found = Forbidden(concluded(knowledge, *bad_at(ONE), *answers))
        assert (found.by(FAN, None) is not None) is barred


def test_a_person_may_look_at_the_finding_itself_once_more() -> None:
    found = Forbidden(concluded(knowing(hazard(Ban())), *bad_at(ONE)))
    assert found.by(LOOK, ONE) is not None and found.even_if_chosen(LOOK, ONE) is None
    chosen = found.even_if_chosen(ROOM, None)
    assert chosen is not None and chosen.id == "bite"


VOLTS = measured("volts", {"normal": {"at_most": 5}}, reads=(Read("volts"),))


@pytest.mark.parametrize(("typed", "barred"), [("3 V", False), ("900 V", True)])
def test_a_number_that_shows_no_outcome_ends_no_ban(typed: str, barred: bool) -> None:
    ban = Ban(tests=("room",), until=(Finding("volts", ("normal",)),))
    knowledge = base([LOOK, ROOM, VOLTS], hazards=[hazard(ban)],
                     quantities=[Quantity("volts", "V", "volts")])  # fmt: skip
    found = concluded(knowledge, *bad_at(ONE), Answer("volts", (), typed))
    assert (Forbidden(found).by(ROOM, None) is not None) is barred


def test_what_stands_on_record_stands_though_the_rules_have_lost_it(shipped: Knowledge) -> None:
    stop = Halted("gone-by-now", on_record=True)
    state = replay(shipped, [Started(complaint="no-heat"), stop])
    found = standing_hazards(conclude_visit(Reasoner(shipped), state))
    assert "gone-by-now" in [each.hazard.id for each in found]


def test_what_a_finding_is_computed_from_may_be_read_once_more(shipped: Knowledge) -> None:
    events = [
        Started(complaint="no-heat", unit={"heat": "gas"}),
        Answered("flue-carbon-monoxide", text="900 ppm"),
        Answered("flue-oxygen", text="7 %"),
    ]
    found = conclude_visit(Reasoner(shipped), replay(shipped, events))
    stop = found.standing_stops[0].hazard
    forbidden = Forbidden(found)
    assert stop.id == "flue-carbon-monoxide-extreme"
    assert stop.id in [each.hazard.id for each in forbidden.holding()]
    for name in ("flue-gas-analysis", "flue-carbon-monoxide", "flue-oxygen"):
        test = shipped.tests[name]
        assert forbidden.by(test, None) is not None and forbidden.even_if_chosen(test, None) is None
    other = shipped.tests["gas-manifold-pressure"]
    assert forbidden.even_if_chosen(other, None) is not None


def test_what_only_another_circuits_finding_is_computed_from_stays_forbidden() -> None:
    """At the first circuit the split is typed itself, at the second it is computed."""
    high = hazard(trigger=Trigger((Finding("split", ("high",)),)), scope="whole-job")
    knowledge = base([SPLIT, SWEEP], hazards=[high], quantities=[Quantity("volts", "V", "volts")])
    unit = replace(unit_of(knowledge, circuits=2), plate={("target", TWO): 12.0})
    found = case(knowledge, Answer("split", ("high",), places=(ONE,)), unit=unit)
    forbidden = Forbidden(Reasoner(knowledge).conclude(found))
    assert forbidden.even_if_chosen(SPLIT, ONE) is None
    assert forbidden.even_if_chosen(SWEEP, None) is not None
