"""A gas cock that an earlier visit left shut: what is known of it before any hand is on it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.safety.work_state_samples import GAS_UNIT
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, left_shut
from troubleshoot.safety.work_state import WorkState, is_as_found

NONE, OUTLET = frozenset[str](), frozenset({"outlet tap"})
COMES_TO = left_shut(WorkState(), OUTLET)


@pytest.mark.parametrize(
    ("gas", "swept", "then"),
    [
        ("on", True, ("unsure", False)),
        ("on", False, ("unsure", False)),
        ("unsure", False, ("unsure", False)),
        ("shut", True, ("shut", True)),
        ("shut", False, ("shut", False)),
    ],
)
def test_a_cock_left_shut_is_neither_open_nor_shut_before_it_is_seen_and_what_we_know_stays(
    gas: Any, swept: bool, then: tuple[str, bool]
) -> None:
    """A sweep of a train that may have had no gas on it tells nothing of its joints."""
    told = left_shut(WorkState(gas=gas, gas_swept=swept), NONE)
    assert (told.gas, told.gas_swept) == then


def test_the_plugs_it_left_untested_are_untested_beside_our_own() -> None:
    ours = WorkState(plugs_untested=frozenset({"another tap"}), roof="go")
    assert left_shut(ours, OUTLET).plugs_untested == {"another tap", "outlet tap"}
    assert left_shut(ours, OUTLET).roof == "go"


@pytest.mark.parametrize("plugs", [NONE, OUTLET])
def test_it_is_as_found_before_any_hand_so_that_the_walk_round_comes_first(plugs: Any) -> None:
    assert is_as_found(replace(left_shut(WorkState(), plugs), roof="go", occupants_told=True))


@pytest.mark.parametrize("step", ["gas-cock-shut", "panels-off", "lockout", "stop-by-controls"])
def test_it_is_so_no_more_once_a_hand_was_on_it(step: str) -> None:
    came = replace(COMES_TO, roof="go", occupants_told=True, fire_panel="on-test")
    assert not is_as_found(after_step(came, Step(step), (CONFIRMED[step],), GAS_UNIT))


def test_a_plug_that_we_had_out_is_a_hand_on_it_though_the_gas_is_on() -> None:
    assert not is_as_found(WorkState(plugs_untested=OUTLET))
