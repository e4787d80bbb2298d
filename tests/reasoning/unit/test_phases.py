"""What only three phases can show is no answer where one phase is known, and is asked about before.

Two wires carry one current: no leg of a single-phase motor can differ from the other (Kirchhoff's
current law).
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.visit.deciding.nameplate import facts_of_place

BY_LEGS = {
    "blower-amps": "unbalanced",
    "condenser-fan-volts": "one-leg-missing",
    "compressor-windings": "shorted",
}
PHASES = ("supply-phase", "compressor-phase", "condenser-fan-phase")


@pytest.mark.parametrize(("test", "outcome"), BY_LEGS.items())
def test_one_phase_has_no_leg_that_differs(test: str, outcome: str, shipped: Knowledge) -> None:
    """Regression: a leg missing and legs unlike were among the answers on a single phase."""
    shown = {
        supply: {
            o.id
            for o in shipped.tests[test].outcomes
            if read_unit(shipped, {"supply-phase": supply} if supply else {}).allows(o.exists_when)
        }
        for supply in ("single", "three", "")
    }
    assert outcome not in shown["single"]
    assert outcome in shown["three"] and outcome in shown[""]


def test_a_capacitor_motor_has_no_leg_that_differs_on_any_supply(shipped: Knowledge) -> None:
    unit = read_unit(shipped, {"supply-phase": "three", "blower-motor": "single-phase-capacitor"})
    outcomes = {o.id: o.exists_when for o in shipped.tests["blower-amps"].outcomes}
    assert not unit.allows(outcomes["unbalanced"])


def test_before_a_test_of_three_phases_it_is_asked_whether_there_are_three(
    shipped: Knowledge,
) -> None:
    nothing = read_unit(shipped, {})
    of_three = [
        test
        for test in shipped.tests.values()
        if any(test.exists_when.get(phase) == ("three",) for phase in PHASES)
    ]
    assert {"voltage-unbalance", "phase-rotation", "compressor-amp-unbalance"} <= {
        test.id for test in of_three
    }
    for test in of_three:
        asked = {fact.id for fact in facts_of_place(shipped, nothing, test, frozenset())}
        assert {*test.exists_when} & {*PHASES} <= asked, test.id
        assert not read_unit(shipped, {"supply-phase": "single"}).allows(test.exists_when)


def test_a_three_phase_blower_without_a_drive_has_a_three_phase_supply(
    shipped: Knowledge,
) -> None:
    """A drive makes three phases of one."""
    blower = {"blower-motor": "three-phase"}
    bare = read_unit(shipped, blower | {"variable-speed-drive": "not-fitted"})
    assert bare.facts["supply-phase"] == "three"
    driven = read_unit(shipped, blower | {"variable-speed-drive": "fitted"})
    assert "supply-phase" not in driven.facts
