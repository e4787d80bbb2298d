"""What a record is trusted with: nothing by which the work would be done less carefully."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.on_record import OnRecord, unit_told
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.events import FactTold, FromRegister, Named, Started, Undone, replay
from troubleshoot.visit.kept.on_record import looked_at_afresh, split_record

TAME = {
    "refrigerant": "R-410A",
    "heat": "none",
    "duct-smoke-detector": "not-fitted",
    "nameplate-volts": "208/1/60",
    "supply-phase": "single",
    "blower-motor": "single-phase-capacitor",
    "variable-speed-drive": "not-fitted",
    "compressor-phase": "three",
    "condenser-fan-phase": "three",
    "circuits": "1",
}
"""A unit of which each fact makes the work lighter."""


@pytest.mark.parametrize("key", sorted(TAME))
def test_nothing_that_makes_the_work_lighter_is_trusted(shipped: Knowledge, key: str) -> None:
    unknown = unit_at_work(unit_told(shipped, OnRecord(), {}))
    record = split_record(shipped, {key: TAME[key]})
    assert unit_at_work(unit_told(shipped, record, {})) == unknown
    assert record.afresh == {key: TAME[key]}


def test_every_fact_and_value_of_a_typical_unit_leaves_the_work_as_careful(
    shipped: Knowledge,
) -> None:
    unknown = unit_at_work(unit_told(shipped, OnRecord(), {}))
    for typical in shipped.typical_units.values():
        record = split_record(shipped, dict(typical.unit))
        assert record.trusted
        assert unit_at_work(unit_told(shipped, record, {})) == unknown


def test_what_implies_something_looked_at_afresh_is_looked_at_too(shipped: Knowledge) -> None:
    afresh = looked_at_afresh(shipped)
    for implied in shipped.implications:
        if afresh & {*implied.then}:
            assert {*implied.when} <= afresh


def test_what_is_told_stands_above_the_record_and_undo_leads_back_to_it(
    shipped: Knowledge,
) -> None:
    events = (
        Named("RTU-7"),
        FromRegister({"metering": "txv", "compressor-rla": {"compressor 2": "9 A"}}, {}),
        Started("RTU-7"),
    )
    state = replay(shipped, events)
    assert state.unit.facts["metering"] == "txv"
    assert state.unit.plate == {}
    told = (*events, FactTold("circuits", "2"), FactTold("metering", "fixed-orifice"))
    state = replay(shipped, told)
    assert state.unit.facts["metering"] == "fixed-orifice"
    assert {str(place): value for (_, place), value in state.unit.plate.items()} == {
        "compressor 2": 9.0
    }
    assert replay(shipped, (*told, Undone())).unit.facts["metering"] == "txv"


def test_what_the_register_knows_is_known_before_the_visit_begins(shipped: Knowledge) -> None:
    """Of the unit, and of what makes the work on it heavier."""
    state = replay(shipped, (Named("RTU-7"), FromRegister({"heat": "gas", "metering": "txv"})))
    assert state.unit.facts["metering"] == "txv"
    assert state.at_work.burns_gas and not replay(shipped, (Named("RTU-7"),)).at_work.burns_gas


def test_another_name_takes_another_record(shipped: Knowledge) -> None:
    events = (FromRegister({"metering": "txv"}, {}), Named("RTU-8"), FromRegister())
    assert replay(shipped, events).unit.facts == {}
