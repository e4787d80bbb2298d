"""What a start and a fact of the unit change of a visit: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace

from tests.visit.events.effects import THEN, UNIT, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.events import FactTold, Started, after, replay
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
