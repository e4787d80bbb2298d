"""What always holds between readings, beyond what their meters may be off."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.relations import broken_relations
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place

AT = Place("circuit", 1)


def broken(knowledge: Knowledge, *, beyond: bool, **typed: tuple[float, float]) -> set[str]:
    unit = read_unit(knowledge, {"refrigerant": "R-410A", "circuits": 1})
    per = {name: knowledge.quantities[name.replace("_", "-")].per for name in typed}
    values = {
        (name.replace("_", "-"), AT if per[name] else None): Value(number, u)
        for name, (number, u) in typed.items()
    }
    found = broken_relations(knowledge, Values(knowledge, unit, values), beyond_meters=beyond)
    return {each.relation.id for each in found}


@given(st.floats(0, 400), st.floats(0, 600))
def test_no_accuracy_explains_head_far_under_suction(
    shipped: Knowledge, suction: float, head: float
) -> None:
    found = broken(shipped, beyond=True, suction_pressure=(suction, 2.0), head_pressure=(head, 4.0))
    assert ("suction-below-head" in found) == (suction - head > 2.5 * 6.0)


@pytest.mark.parametrize(("u", "refused"), [(0.8, True), (3.0, False)])
def test_the_meter_decides_how_far_is_too_far(shipped: Knowledge, u: float, refused: bool) -> None:
    found = broken(shipped, beyond=True, superheat=(-4.0, u))
    assert ("suction-line-above-evaporating" in found) is refused


def test_a_scenario_is_held_to_the_number_itself(shipped: Knowledge) -> None:
    assert broken(shipped, beyond=False, superheat=(-1.0, 3.0)) == {
        "suction-line-above-evaporating"
    }


def test_what_a_fault_can_break_is_no_relation_of_visits_unless_it_says_so(
    shipped: Knowledge,
) -> None:
    """A weak compressor gives no heat to the air, a stuck heater warms the supply."""
    visits = {each.id for each in shipped.relations.values() if each.on_visits}
    assert visits.isdisjoint({"condenser-gives-heat", "cooled-air-is-cooler", "amps-within-load"})
    assert "suction-below-head" in visits
    for each in shipped.relations.values():
        assert each.on_visits or not each.read_so_by
