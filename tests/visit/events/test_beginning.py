"""What a start and a fact of the unit change of a visit: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import AIM, THEN, UNIT, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.stops.record import LeftOn, Spot
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import (
    Called,
    DangerReported,
    Event,
    FactTold,
    LeftBefore,
    Started,
    StepDone,
    after,
    replay,
)
from troubleshoot.visit.state import RepairSaid, Round, VisitState


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
            unit_data=data, unit=unit, at_work=unit_at_work(unit, "cooling"))  # fmt: skip
    assert after(shipped, visit, FactTold("supply-phase", "single")
                 ).at_work.volts_480 is False  # fmt: skip


def test_plate_values_of_several_places_are_joined(shipped: Knowledge, visit: VisitState) -> None:
    state = visit
    for value in ({"circuit 1": "8 A"}, {"circuit 2": "9 A"}, {"circuit 1": "7 A"}):
        state = after(shipped, state, FactTold("compressor-rla", value))
    assert state.unit_data["compressor-rla"] == {"circuit 1": "7 A", "circuit 2": "9 A"}
    whole = after(shipped, state, FactTold("compressor-rla", "6 A"))
    assert whole.unit_data["compressor-rla"] == "6 A"


def test_the_call_and_what_was_left_off_before_are_kept(
    shipped: Knowledge, visit: VisitState
) -> None:
    changed(shipped, visit, Called("it is cold"), words="it is cold")
    left = (LeftOn("gas-odour", (), ("combustible-gas-sweep",)),)
    told = LeftBefore(("the gas cock is shut",), left)
    changed(shipped, visit, told, left_before=("the gas cock is shut",), left_on=left)


MANIFOLD = "manifold tap"
LEFT_SHUT = LeftBefore(("The gas cock was left shut.",), cock=True, plugs=(MANIFOLD,))
OTHER_UNIT = LeftBefore(())
UNSURE = WorkState(gas="unsure", gas_swept=False, plugs_untested=frozenset({MANIFOLD}))


def test_a_cock_that_was_left_shut_counts_as_neither_open_nor_shut(shipped: Knowledge) -> None:
    """Others may have opened it since, and its plug stays to be tested whoever opens it."""
    changed(
        shipped, VisitState(), LEFT_SHUT, left_before=LEFT_SHUT.lines, cock_left=True, work=UNSURE
    )  # fmt: skip


def test_a_name_taken_back_before_anything_is_done_takes_its_gas_cock_along(
    shipped: Knowledge,
) -> None:
    """The cock of another unit is nothing to be looked at on this one."""
    assert replay(shipped, [LEFT_SHUT, OTHER_UNIT]) == VisitState()


@pytest.mark.parametrize(
    "begun", [Started(complaint="no-heat"), StepDone("roof-conditions", ("safe",))]
)
def test_once_work_has_begun_no_other_name_makes_a_cock_known_again(
    begun: Event, shipped: Knowledge
) -> None:
    at_work = replay(shipped, [LEFT_SHUT, begun])
    named = replay(shipped, [LEFT_SHUT, begun, OTHER_UNIT])
    assert named.work == at_work.work and named.work.gas == "unsure"
    assert named.work.plugs_untested == {MANIFOLD} and not named.cock_left


@pytest.mark.parametrize("before", [(), (LEFT_SHUT,)])
def test_a_name_leaves_what_a_danger_told_before_it_has_made_unsure(
    before: tuple[Event, ...], shipped: Knowledge
) -> None:
    """Its orders were to shut the cock; the unit's name says nothing of that."""
    told = DangerReported("gas-odour", "smell", test="combustible-gas-sweep")
    danger = [*before, Started(), told]
    assert replay(shipped, danger).work.gas == "unsure"
    assert replay(shipped, [*danger, OTHER_UNIT]).work == replay(shipped, danger).work


def test_what_was_told_of_the_unit_before_the_start_holds(shipped: Knowledge) -> None:
    told = [
        FactTold("heat", "electric", {"circuits": "2"}),
        Started(unit={"supply-phase": "single"}),
    ]
    state = replay(shipped, told)
    assert state.unit_data == {"heat": "electric", "circuits": "2", "supply-phase": "single"}
    assert not state.at_work.burns_gas and state.at_work.circuits == ("circuit 1", "circuit 2")


@pytest.mark.parametrize("aim", [("weather-pattern", None), ("suction-pressure", None), AIM])
def test_a_fact_leaves_what_is_aimed_at_where_its_place_is_still_there(
    aim: Spot, shipped: Knowledge, visit: VisitState
) -> None:
    state = replace(visit, aim=aim)
    assert after(shipped, state, FactTold("heat", "electric")).aim == aim


def test_a_test_that_the_unit_has_not_is_aimed_at_no_more(
    shipped: Knowledge, visit: VisitState
) -> None:
    """Found by the long walk: a burner was called for on an electric unit, behind a shut cock."""
    state = replace(visit, aim=("gas-inlet-pressure-all-firing", None))
    assert after(shipped, state, FactTold("heat", "electric")).aim is None
    assert after(shipped, state, FactTold("heat", "gas")).aim == state.aim


def test_a_visit_that_starts_anew_walks_no_round(shipped: Knowledge, visit: VisitState) -> None:
    """What the round before kept for its end belongs to no finding of this one."""
    walked = replace(visit, round=Round("fall", kept=frozenset({AIM})))
    assert after(shipped, walked, Started(complaint="no-heat")).round is None
