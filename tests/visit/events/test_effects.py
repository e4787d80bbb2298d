"""What each event changes of a visit: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import after_step, after_test, expire, failed
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    FactTold,
    HourPassed,
    MarkedInvalid,
    Named,
    Noted,
    Repaired,
    Resumed,
    SaysNothing,
    Skipped,
    Started,
    StepDone,
    after,
    replay,
)
from troubleshoot.visit.events.places import places_from, step_place
from troubleshoot.visit.state import Asked, RepairSaid, VisitState

UNIT: dict[str, Any] = {"circuits": 2, "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
ONE, TWO = Place("circuit", 1), Place("circuit", 2)
AIM: Spot = ("suction-pressure", ONE)
FRESH: Spot = ("heat-exchanger-look", None)
THEN = "2026-11-26T09:00:00+00:00"
DEAD = WorkState(
    power="locked-out", panels="off", calls="off", dead="proved", meter="proved", roof="go",
    occupants_told=True, discharged=frozenset({"capacitor blower"}),
)  # fmt: skip


@pytest.fixture(scope="module")
def visit(shipped: Knowledge) -> VisitState:
    """A visit under way with something of everything."""
    state = replay(shipped, [Started(complaint="no-cooling", unit=UNIT)])
    return replace(
        state, aim=AIM, aim_chosen=True, fresh=FRESH, work=replace(DEAD, roof="not-checked"),
        answers=(Answer("x"),), asked=(asked("x", None),),
        skipped=frozenset({("weather-pattern", None)}),
        not_known=frozenset({"heat"}), notes=("a",), repaired=("f",), work_before=WorkState(),
        closing=True, last_time=THEN, profiles=frozenset({"gas"}),
    )  # fmt: skip


def asked(test: str, at: Place | None, **more: Any) -> Asked:
    given = {"outcome": None, "text": None, "valid": True, "minutes": 1.0, "work_state": "any"}
    return Asked(test, at, **{**given, **more})


def changed(shipped: Knowledge, state: VisitState, event: Event, **changes: Any) -> None:
    """The event changes just these, but for the times that its own time settles."""
    now = replace(event, time=THEN)
    found = after(shipped, state, now)
    wanted = replace(state, **changes)
    assert found == replace(wanted, roof_time=found.roof_time, power_off_time=found.power_off_time)


def test_a_start_takes_all_that_is_said_of_the_unit_and_the_call(shipped: Knowledge) -> None:
    event = Started(
        unit=UNIT,
        complaint="no-heat",
        name="RTU-7",
        words="cold",
        routine=True,
        profiles=("gas",),
        conditions={"outdoor-temperature": "31 F"},
        repaired=("fuse-blown",),
    )
    unit = read_unit(shipped, UNIT)
    changed(
        shipped, VisitState(last_time=THEN), event, unit_data=UNIT, own_record={}, unit=unit,
        at_work=unit_at_work(unit), complaint="no-heat", name="RTU-7", words="cold", routine=True,
        profiles=frozenset({"gas"}), conditions={"outdoor-temperature": "31 F"},
        repaired=("fuse-blown",), repairs=(RepairSaid("fuse-blown"),),
    )  # fmt: skip
    kept = replay(shipped, [Started(own_record={"suction-pressure": "118 psig"})])
    assert kept.own_record == {"suction-pressure": "118 psig"}
    bare = replay(shipped, [Started()])
    assert bare == replace(VisitState(), unit=read_unit(shipped, {}),
                           at_work=unit_at_work(read_unit(shipped, {})))  # fmt: skip
    assert bare.profiles == FULLY_QUALIFIED and bare.routine is False


def test_counts_that_readings_named_belong_to_the_unit(shipped: Knowledge) -> None:
    state = replay(shipped, [Started(counts={"circuit": 2})])
    assert len(state.unit.layout.places("circuit")) == 2
    own = dict.fromkeys((), "1")
    assert replay(shipped, [Started(own_record=own)]).own_record == {}


def test_a_fact_joins_the_unit_and_one_that_nobody_knows_is_not_asked_again(
    shipped: Knowledge, visit: VisitState
) -> None:
    changed(shipped, visit, FactTold("supply-phase", None),
            not_known=frozenset({"heat", "supply-phase"}))  # fmt: skip
    data = {**UNIT, "supply-phase": "single"}
    unit = read_unit(shipped, data)
    changed(shipped, visit, FactTold("supply-phase", "single"),
            unit_data=data, unit=unit, at_work=unit_at_work(unit))  # fmt: skip
    assert after(shipped, visit, FactTold("supply-phase", "single")
                 ).at_work.volts_480 is False  # fmt: skip


def test_plate_values_of_several_places_are_joined(shipped: Knowledge, visit: VisitState) -> None:
    state = visit
    for value in ({"circuit 1": "8 A"}, {"circuit 2": "9 A"}, {"circuit 1": "7 A"}):
        state = after(shipped, state, FactTold("compressor-rla", value))
    assert state.unit_data["compressor-rla"] == {"circuit 1": "7 A", "circuit 2": "9 A"}
    whole = after(shipped, state, FactTold("compressor-rla", "6 A"))
    assert whole.unit_data["compressor-rla"] == "6 A"


def test_an_answer_is_kept_with_all_that_is_known_of_it(
    shipped: Knowledge, visit: VisitState
) -> None:
    test = shipped.tests["suction-pressure"]
    event = Answered(
        test.id,
        ("circuit 2",),
        text="128 psig",
        instrument="gauge",
        why_invalid="",
        conditions={"a": "b"},
    )
    answer = Answer(test.id, (), "128 psig", (TWO,), instrument="gauge", conditions={"a": "b"})
    record = Asked(test.id, TWO, None, "128 psig", True, test.minutes, test.work_state)
    changed(
        shipped, visit, event, answers=(*visit.answers, answer), asked=(*visit.asked, record),
        work=after_test(visit.work, test, "circuit 2", (), visit.at_work), work_before=visit.work,
        aim=None,
    )  # fmt: skip
    mended = after(shipped, replace(visit, mended_here=True), event)
    assert (
        mended.answers[-1].after_repair
        and not after(shipped, visit, event).answers[-1].after_repair
    )


def test_a_shared_answer_has_no_place_of_its_own(shipped: Knowledge, visit: VisitState) -> None:
    event = Answered("suction-pressure", ("circuit 1", "circuit 2"), text="128 psig", shared=True)
    state = after(shipped, visit, event)
    assert state.answers[-1].shared and state.answers[-1].places == (ONE, TWO)
    assert state.asked[-1].at is None
    told_apart = after(shipped, visit, replace(event, shared=False))
    assert not told_apart.answers[-1].shared and told_apart.asked[-1].at == ONE


def test_what_is_aimed_at_is_reached_by_its_own_answer_only(
    shipped: Knowledge, visit: VisitState
) -> None:
    other = Answered("weather-pattern", outcomes=("always",))
    state = after(shipped, visit, other)
    assert (state.aim, state.fresh) == (AIM, FRESH)
    assert state.asked[-1].outcome == "always"
    reached = after(shipped, visit, Answered(FRESH[0], outcomes=("sound",)))
    assert (reached.aim, reached.fresh) == (AIM, None)
    assert after(shipped, replace(visit, aim=None, fresh=None), other).aim is None
    unbidden = after(shipped, replace(visit, aim_chosen=False), other)
    assert (unbidden.aim, unbidden.fresh) == (None, FRESH), "what tells most is chosen afresh"


@pytest.mark.parametrize(
    "said", [{}, {"outcomes": ()}, {"text": ""}, {"outcomes": (), "text": None}]
)
def test_an_answer_that_says_nothing_is_none(
    said: dict[str, Any], shipped: Knowledge, visit: VisitState
) -> None:
    with pytest.raises(SaysNothing, match="weather-pattern names no outcome"):
        after(shipped, visit, Answered("weather-pattern", **said))


@pytest.mark.parametrize("valid", [None, True, False])
def test_an_answer_stated_invalid_changes_the_work_as_one_that_says_nothing(
    valid: bool | None, shipped: Knowledge, visit: VisitState
) -> None:
    sweep = shipped.tests["combustible-gas-sweep"]
    swept = replace(visit, work=replace(DEAD, clear=frozenset({sweep.id})))
    event = Answered(sweep.id, outcomes=("none",), valid=valid)
    state = after(shipped, swept, event)
    assert (sweep.id in state.work.clear) is (valid is not False)
    assert state.asked[-1].valid is (valid is not False)
    assert state.answers[-1].valid is valid and state.answers[-1].outcomes == ("none",)


def test_a_step_is_asked_answered_and_done(shipped: Knowledge, visit: VisitState) -> None:
    test = shipped.tests["drive-discharge"]
    state = replace(visit, work=DEAD)
    event = StepDone(test.id, ("discharged",), "blower drive", True, text="0 V")
    record = Asked(test.id, None, "discharged", "0 V", True, test.minutes + test.wait_minutes,
                   test.work_state, "blower drive")  # fmt: skip
    step = Step(test.id, "blower drive", again=True)
    changed(
        shipped, state, event, work=after_step(DEAD, step, ("discharged",), state.at_work),
        work_before=DEAD, asked=(*state.asked, record),
        answers=(*state.answers, Answer(test.id, ("discharged",), "0 V", (None,))),
    )  # fmt: skip
    assert test.wait_minutes > 0


@pytest.mark.parametrize(
    ("outcomes", "valid", "goes_on"),
    [
        (("proved",), None, True), (("proved",), True, True), (("failed",), None, False),
        (("proved",), False, False), (("proved", "failed"), None, False),
    ],
)  # fmt: skip
def test_only_a_step_that_counts_and_is_confirmed_leads_on_to_what_is_aimed_at(
    outcomes: tuple[str, ...],
    valid: bool | None,
    goes_on: bool,
    shipped: Knowledge,
    visit: VisitState,
) -> None:
    event = StepDone("tester-proof", outcomes, valid=valid)
    state = after(shipped, replace(visit, work=DEAD), event)
    assert state.aim == (AIM if goes_on else None)
    assert state.work.meter == ("proved" if goes_on else "failed")
    assert state.asked[-1].valid is (valid is not False)
    assert state.answers[-1].valid is (False if valid is False else None)


def test_a_step_that_is_the_fresh_finding_is_reached(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, fresh=("roof-conditions", None))
    roof = StepDone("roof-conditions", ("safe",))
    assert after(shipped, state, roof).fresh is None
    told = StepDone("tell-occupants", ("told",))
    assert after(shipped, state, told).fresh == ("roof-conditions", None)


def test_a_step_has_the_place_that_its_words_name(shipped: Knowledge) -> None:
    unit = read_unit(shipped, UNIT)
    assert step_place(Step("gauges-on", "circuit 2"), unit) == TWO
    capacitor = unit.layout.places("capacitor")[0]
    assert step_place(Step("capacitor-discharge", str(capacitor)), unit) == capacitor
    for place in (None, "None", "blower drive", "circuit 3"):
        assert step_place(Step("drive-discharge", place), unit) is None


@pytest.mark.parametrize(
    ("test", "at", "aim", "then"),
    [
        ("suction-pressure", ("circuit 1",), AIM, None),
        ("suction-line-temperature", ("circuit 1",), AIM, AIM),
        ("suction-line-temperature", ("circuit 1",), ("superheat", ONE), None),
        ("suction-line-temperature", ("circuit 1",), None, None),
    ],
)
def test_what_is_skipped_takes_along_only_what_hangs_on_it(
    test: str, at: tuple[str, ...], aim: Spot | None, then: Spot | None, shipped: Knowledge,
    visit: VisitState,
) -> None:  # fmt: skip
    gone = {("weather-pattern", None), (test, ONE)}
    changed(
        shipped, replace(visit, aim=aim), Skipped(test, at),
        skipped=frozenset(gone), aim=then, fresh=None,
    )  # fmt: skip


def test_without_a_place_every_place_of_it_is_skipped(
    shipped: Knowledge, visit: VisitState
) -> None:
    state = after(shipped, visit, Skipped("suction-pressure"))
    assert {("suction-pressure", ONE), ("suction-pressure", TWO)} <= state.skipped


def test_a_step_gone_on_without_has_failed(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, work=DEAD)
    skipped = after(shipped, state, Skipped("tester-proof")).work
    assert skipped == failed(DEAD, DEAD, Step("tester-proof"), state.at_work) != DEAD


def test_a_test_that_had_been_shown_may_have_been_begun_and_another_not(
    shipped: Knowledge, visit: VisitState
) -> None:
    test = shipped.tests["wiring-burn-marks"]
    measured = next(
        t for t in shipped.tests.values()
        if t.work_state == "locked-out" and t.kind == "measurement" and t.per is None
        and not t.needs_state and not t.exists_when
    )  # fmt: skip
    shown = replace(visit, at_work=unit_at_work(read_unit(shipped, {
        **UNIT, "blower-motor": "three-phase", "variable-speed-drive": "not-fitted"})),
        work=replace(DEAD, discharged=frozenset(visit.at_work.capacitors)))  # fmt: skip
    for each in (test, measured):
        event = Skipped(each.id)
        begun = after_test(shown.work, each, None, (), shown.at_work)
        assert after(shipped, shown, event).work == begun
        not_shown = replace(shown, work=replace(shown.work, roof="not-checked"))
        assert after(shipped, not_shown, event).work == not_shown.work


def test_an_aim_is_a_test_at_a_place_with_its_reason(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(
        visit, skipped=frozenset({("suction-pressure", TWO), ("suction-pressure", ONE)})
    )
    event = Aimed("suction-pressure", "circuit 2", reason="why")
    changed(shipped, state, event, aim=("suction-pressure", TWO), aim_reason="why",
            aim_chosen=False)  # fmt: skip
    changed(shipped, state, replace(event, chosen=True), aim=("suction-pressure", TWO),
            aim_reason="why", aim_chosen=True,
            skipped=frozenset({("suction-pressure", ONE)}))  # fmt: skip
    nowhere = Aimed("suction-pressure")
    changed(shipped, replace(state, aim_reason="old"), nowhere, aim=("suction-pressure", None),
            aim_reason="", aim_chosen=False)  # fmt: skip
    chosen = after(shipped, state, replace(nowhere, chosen=True))
    assert chosen.skipped == {("suction-pressure", TWO)}


def test_notes_names_repairs_and_the_way_out(shipped: Knowledge, visit: VisitState) -> None:
    changed(shipped, visit, Noted("b"), notes=("a", "b"))
    changed(shipped, visit, Named("RTU-7"), name="RTU-7")
    said = RepairSaid("g", THEN, answers=1)
    changed(shipped, visit, Repaired("g"), repaired=("f", "g"),
            repairs=(said,), mended_here=True, closing=False)  # fmt: skip
    changed(shipped, visit, Closing(cured=True), cured=True, aim=None)
    changed(shipped, replace(visit, closing=False, cured=True), Closing(), closing=True,
            cured=False, aim=None)  # fmt: skip


def test_an_invalid_reading_stays_and_an_invalid_proof_has_failed(
    shipped: Knowledge, visit: VisitState
) -> None:
    reason = MarkedInvalid("wrong leads")
    reading = Answered("weather-pattern", outcomes=("always",))
    before = after(shipped, visit, replace(reading, time=THEN))
    voided = replace(before.answers[-1], valid=False, why_invalid="wrong leads")
    changed(shipped, before, reason, answers=(*visit.answers, voided))
    proof = StepDone("capacitor-discharge", ("discharged",), "capacitor blower", time=THEN)
    before = after(shipped, replace(visit, work=DEAD), proof)
    assert before.aim == AIM
    step = Step("capacitor-discharge", "capacitor blower")
    voided = replace(before.answers[-1], valid=False, why_invalid="wrong leads")
    changed(
        shipped, before, reason, answers=(*visit.answers, voided),
        asked=(*visit.asked, replace(before.asked[-1], valid=False)),
        work=failed(DEAD, before.work, step, visit.at_work),
    )  # fmt: skip
    assert after(shipped, before, reason).work.discharged == frozenset()


@pytest.mark.parametrize("place", ["capacitor blower", "blower drive"])
@pytest.mark.parametrize("kind", ["step", "answer"])
def test_a_proof_declared_invalid_fails_where_it_was(
    kind: str, place: str, shipped: Knowledge, visit: VisitState
) -> None:
    """The place of a step stands in its words, that of an answer in the unit's tree."""
    test = "capacitor-discharge" if place.startswith("capacitor") else "drive-discharge"
    if kind == "answer" and test == "drive-discharge":
        return  # an answer names no place that is none of the tree
    bled = ("discharged",)
    event = StepDone(test, bled, place) if kind == "step" else Answered(test, place, bled)
    others = replace(DEAD, discharged=frozenset({place, "another"}))
    done = after(shipped, replace(visit, work=others), event)
    assert place in done.work.discharged
    voided = after(shipped, done, MarkedInvalid("x"))
    assert voided.work.discharged == {"another"}


def test_what_is_skipped_everywhere_has_failed_at_its_first_place(
    shipped: Knowledge, visit: VisitState
) -> None:
    first, *others = map(str, visit.unit.layout.places("capacitor"))
    assert others
    work = replace(DEAD, discharged=frozenset({first, *others}))
    skipped = after(shipped, replace(visit, work=work), Skipped("capacitor-discharge"))
    assert skipped.work.discharged == set(others)


@pytest.mark.parametrize(("minutes", "voids"), [(5, False), (45, True)])
def test_whoever_goes_on_takes_nothing_afresh_and_a_long_absence_voids(
    minutes: int, voids: bool, shipped: Knowledge, visit: VisitState
) -> None:
    event = Resumed(minutes, True)
    away = {"work": expire(visit.work, "resumed"), "aim": None} if voids else {}
    changed(shipped, visit, event, fresh=None, **away)
    changed(shipped, visit, replace(event, profiles=("technician",)), fresh=None,
            profiles=frozenset({"technician"}), **away)  # fmt: skip


def test_an_hour_voids_the_roof(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, work=DEAD)
    changed(shipped, state, HourPassed(), work=replace(DEAD, roof="not-checked"))


def test_places_are_those_named_or_all_of_the_kind(shipped: Knowledge) -> None:
    unit = read_unit(shipped, UNIT)
    assert places_from(None, "circuit", unit) == (ONE, TWO)
    assert places_from(None, None, unit) == (None,)
    assert places_from(None, "a-kind-it-has-none-of", unit) == (None,)
    assert places_from("circuit 2", "circuit", unit) == (TWO,)
    assert places_from(("circuit 2", "circuit 1"), "circuit", unit) == (TWO, ONE)
