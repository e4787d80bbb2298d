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
from troubleshoot.visit.events import Called, FactTold, LeftBefore, Started, after, replay
from troubleshoot.visit.state import RepairSaid, VisitState


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
