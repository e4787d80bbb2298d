"""The plug of an outlet tap: on it stands gas only while the burner fires, so it is tested then.

A joint of a gas train that was opened is tested for leaks under its working pressure before the
unit is left (NFPA 54, leak check after service, from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.work_state_samples import BURNING, GAS_UNIT, MANIFOLD, RUNNING, a_test
from tests.safety.work_state_ways import way
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, steps_to_leave, steps_to_leave_cold
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, expire, failed
from troubleshoot.safety.work_state import WorkState, cautious, open_items

PLUG = Step("plug-under-gas", "outlet tap")
INLET = a_test(
    "pressure-before-the-valve",
    area="gas",
    work_state="running-open",
    needs_state=("manometer-at-inlet",),
)
NOT_TESTED = "the plug of the outlet tap has not been tested under gas"


def confirmed(state: WorkState, *steps: Step) -> WorkState:
    """The state after steps that were confirmed."""
    for step in steps:
        state = after_step(state, step, (CONFIRMED[step.id],), GAS_UNIT)
    return state


def manifold_read() -> WorkState:
    """The unit as it burns with a manometer on its outlet tap."""
    needs = needs_of(MANIFOLD, None, GAS_UNIT)
    return confirmed(WorkState(), *steps_to(WorkState(), needs, GAS_UNIT))


def fired_again() -> WorkState:
    """The tap plugged, the panels on, and the unit called to run."""
    state = manifold_read()
    back = steps_to_leave(state, GAS_UNIT)
    return confirmed(state, *back[: back.index(PLUG)])


def test_a_plug_behind_the_valve_is_tested_once_the_unit_fires_before_it_is_left() -> None:
    """Regression: one sentence of the call for the unit spoke of it, and `runs` closed it."""
    back = [step.id for step in steps_to_leave(manifold_read(), GAS_UNIT)]
    assert back.index("manometer-off") < back.index("restart-and-watch") < back.index(PLUG.id)
    state = fired_again()
    assert state.gas == "on" and state.calls == "on"
    assert steps_to_leave(confirmed(state, PLUG), GAS_UNIT) == ()


def test_it_is_tested_before_any_further_test_with_the_burner_and_before_no_other() -> None:
    state = replace(fired_again(), clear=frozenset({"combustible-gas-sweep"}))
    assert "the plug tested under gas: outlet tap" in allowed(state, BURNING, None, GAS_UNIT)
    assert way(state, BURNING, GAS_UNIT)[-1] == PLUG.id
    assert PLUG.id in way(state, INLET, GAS_UNIT)
    assert "the plug tested under gas: outlet tap" in allowed(state, INLET, None, GAS_UNIT)
    assert PLUG.id not in way(state, RUNNING, GAS_UNIT)
    assert PLUG.id not in way(state, MANIFOLD, GAS_UNIT)


@pytest.mark.parametrize("work_state", ["running", "energised-open"])
def test_it_waits_for_a_burner_and_not_for_the_cock_alone(work_state: str) -> None:
    """The open cock puts no gas on it: without a call it would be swept and found tight."""
    sequence = a_test("operating-sequence", area="site", work_state=work_state)
    assert needs_of(sequence, None, GAS_UNIT).gas == "on"
    lit = work_state == "running"
    assert (PLUG.id in way(fired_again(), sequence, GAS_UNIT)) is lit
    missing = allowed(fired_again(), sequence, None, GAS_UNIT)
    assert any("plug" in each for each in missing) is lit


@pytest.mark.parametrize("outcome", ["leaks", "cannot"])
def test_untight_or_untried_it_leaves_gas_unburnt_though_the_call_was_to_cool(
    outcome: str,
) -> None:
    """The burner is lit for the plug, whatever the unit was called for."""
    cooled = replace(GAS_UNIT, called_to_cool=True)
    assert after_step(fired_again(), PLUG, (outcome,), cooled).unburnt
    assert not after_step(fired_again(), PLUG, ("tight",), cooled).unburnt


def test_the_open_cock_tests_the_plug_before_the_valve() -> None:
    opened = after_step(manifold_read(), Step("manometer-on", "inlet tap"), ("on",), GAS_UNIT)
    assert opened.plugs_untested == {"outlet tap"}


@pytest.mark.parametrize("outcome", ["leaks", "cannot"])
def test_nothing_but_its_word_closes_it(outcome: str) -> None:
    state = fired_again()
    tried = after_step(state, PLUG, (outcome,), GAS_UNIT)
    tight = confirmed(state, PLUG)
    ways = [
        tried, expire(state, "resumed"), expire(state, "reopened"), cautious(state, tight),
        failed(state, tight, PLUG, GAS_UNIT), confirmed(replace(state, calls="off"), PLUG),
    ]  # fmt: skip
    for each in ways:
        assert PLUG in steps_to_leave(each, GAS_UNIT), each


def test_it_is_not_asked_where_the_cock_stays_shut_but_stands_among_what_is_open() -> None:
    state = fired_again()
    left = steps_to_leave_cold(state, GAS_UNIT)
    assert PLUG not in left and "gas-cock-shut" in [step.id for step in left]
    assert NOT_TESTED in open_items(state) and NOT_TESTED not in open_items(confirmed(state, PLUG))
