"""What may be either way is taken as the more careful of the two, fact by fact, and said."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

import pytest

from troubleshoot.safety.work_state import UnitAtWork, WorkState, cautious, is_as_found, open_items

LADDERS: dict[str, tuple[Any, ...]] = {
    "calls": ("stuck-on", "on", "off"),
    "dead": ("not-shown", "tested", "shown", "tested-again", "proved"),
    "only_steps_since_proof": (False, True),
    "meter": ("failed", "not-proved", "proved"),
    "second_source": ("found", "locked", "none-known"),
    "roof": ("no-go", "not-checked", "edge-near", "go"),
    "unburnt": (True, False),
    "occupants_told": (False, True),
    "second_person": (False, True),
    "arc_clothing": (False, True),
    "area_clear": (False, True),
    "clips_dead": (False, True),
    "doors_open": (True, False),
}
"""Fact -> its values, the one that asks for more care first."""

UNSURE = {
    "power": ("on", "locked-out"), "panels": ("on", "off"), "fire_panel": ("in-service", "on-test"),
    "gas": ("on", "shut"),
}  # fmt: skip

SETS = {
    "discharged": "both", "clear": "both", "leads_off": "either", "jumpers": "either",
    "hooked_up": "both", "taps_open": "either", "hoses_on": "both", "plugs_untested": "either",
}  # fmt: skip
A, B, BOTH = frozenset({"a"}), frozenset({"b"}), frozenset({"a", "b"})


def of_two(fact: str, one: Any, other: Any) -> Any:
    """A fact of the more careful of two states, whichever comes first."""
    states = replace(WorkState(), **{fact: one}), replace(WorkState(), **{fact: other})
    found = {cautious(*states), cautious(*reversed(states))}
    assert len(found) == 1
    return getattr(found.pop(), fact)


def test_no_fact_is_forgotten_here() -> None:
    spoken_of = {*LADDERS, *UNSURE, *SETS, "circuits", "gas_swept"}
    assert spoken_of == {fact.name for fact in fields(WorkState)}


@pytest.mark.parametrize("fact", LADDERS)
def test_the_lower_rung_counts(fact: str) -> None:
    ladder = LADDERS[fact]
    for low, lower in enumerate(ladder):
        assert of_two(fact, lower, lower) == lower
        for higher in ladder[low + 1 :]:
            assert of_two(fact, lower, higher) == lower


@pytest.mark.parametrize("fact", UNSURE)
def test_what_could_be_either_is_unsure(fact: str) -> None:
    one, other = UNSURE[fact]
    assert of_two(fact, one, other) == "unsure"
    assert of_two(fact, one, one) == one
    assert of_two(fact, other, other) == other


@pytest.mark.parametrize("fact", SETS)
def test_what_protects_must_be_so_in_both_and_what_is_left_behind_in_either(fact: str) -> None:
    wanted = B if SETS[fact] == "both" else frozenset({"a", "b", "c"})
    assert of_two(fact, BOTH, frozenset({"b", "c"})) == wanted


@pytest.mark.parametrize(
    ("one", "other", "swept"),
    [
        (("on", True), ("on", True), True),
        (("shut", True), ("shut", True), True),
        (("on", True), ("shut", True), False),
        (("on", True), ("on", False), False),
        (("on", False), ("on", False), False),
    ],
)
def test_gas_that_was_shut_or_not_is_swept_for_again(one: Any, other: Any, swept: bool) -> None:
    states = [WorkState(gas=gas, gas_swept=done) for gas, done in (one, other)]
    assert cautious(*states).gas_swept is swept
    assert cautious(*reversed(states)).gas_swept is swept


CIRCUITS = (
    "closed", "gauges-unsure", "gauges-on", "charge-unsure", "charge-recovered", "under-nitrogen",
    "under-vacuum", "evacuated", "opened", "opened-unsure",
)  # fmt: skip
EMPTY = ("under-vacuum", "under-nitrogen", "charge-recovered", "evacuated")


@pytest.mark.parametrize("one", CIRCUITS)
@pytest.mark.parametrize("other", CIRCUITS)
def test_a_circuit_that_may_be_empty_or_full_is_neither(one: Any, other: Any) -> None:
    state = WorkState()
    found = cautious(state.with_circuit("c", one), state.with_circuit("c", other)).circuit("c")
    if one == other:
        assert found == one
    elif "opened-unsure" in (one, other):
        assert found == "opened-unsure"
    elif "opened" in (one, other):
        assert found == ("opened" if {one, other} <= {*EMPTY, "opened"} else "opened-unsure")
    elif one in EMPTY and other in EMPTY and "evacuated" in (one, other):
        assert found == "under-vacuum"  # no compressor bears it, and no charge goes in
    elif one in EMPTY and other in EMPTY:
        assert found == min(one, other, key=EMPTY.index)
    elif {one, other} & {*EMPTY, "charge-unsure"}:
        assert found == "charge-unsure"
    else:
        assert found == "gauges-unsure"


def test_closed_circuits_are_left_out_and_the_others_stand_in_order() -> None:
    state = WorkState().with_circuit("c 2", "gauges-on").with_circuit("c 1", "under-vacuum")
    assert state.circuits == (("c 1", "under-vacuum"), ("c 2", "gauges-on"))
    assert state.with_circuit("c 1", "closed").circuits == (("c 2", "gauges-on"),)
    assert state.circuit("c 3") == "closed"


@pytest.mark.parametrize("now", CIRCUITS)
def test_a_circuit_that_may_have_no_charge_is_not_run(now: Any) -> None:
    without = WorkState().with_circuit("c", now).circuits_without_charge
    may_be = (*EMPTY, "charge-unsure", "opened", "opened-unsure")
    assert without == (("c",) if now in may_be else ())


@pytest.mark.parametrize(
    ("facts", "word"),
    [
        ({}, "running"),
        ({"calls": "off"}, "stopped"),
        ({"calls": "stuck-on"}, "running"),
        ({"panels": "off"}, "running-open"),
        ({"panels": "unsure"}, "running-open"),
        ({"panels": "off", "calls": "off"}, "energised-open"),
        ({"power": "unsure", "panels": "off"}, "running-open"),
        ({"power": "locked-out"}, "locked-out"),
        ({"power": "locked-out", "dead": "tested-again"}, "locked-out"),
        ({"power": "locked-out", "dead": "proved"}, "proved-dead"),
        ({"dead": "proved"}, "running"),
    ],
)
def test_the_state_of_energy_is_one_word(facts: dict[str, Any], word: str) -> None:
    assert WorkState(**facts).energy == word


LIVE = ("power on: live parts stand open",)


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ({}, ()),
        ({"jumpers": BOTH}, ("temporary jumper still in: a", "temporary jumper still in: b")),
        ({"leads_off": BOTH}, ("leads off: a", "leads off: b")),
        ({"leads_off": frozenset({"unit"})}, ("leads not known to be all back on",)),
        ({"circuits": (("c 1", "charge-recovered"),)}, ("c 1: charge recovered",)),
        ({"gas": "shut"}, ("gas cock shut",)),
        ({"gas": "unsure"}, ("gas cock not known to be shut, nor to be open",)),
        ({"unburnt": True}, ("unburnt gas of a light that failed",)),
        ({"taps_open": frozenset({"inlet tap"})}, ("plug out and manometer on: inlet tap",)),
        (
            {"plugs_untested": frozenset({"outlet tap"})},
            ("the plug of the outlet tap has not been tested under gas",),
        ),
        (
            {"plugs_untested": frozenset({"outlet tap"}), "taps_open": frozenset({"outlet tap"})},
            ("plug out and manometer on: outlet tap",),
        ),
        ({"gas_swept": False}, ("gas not swept for leaks",)),
        ({"panels": "off"}, ("panels off", *LIVE, "called to run")),
        ({"panels": "off", "calls": "off"}, ("panels off", *LIVE, "stopped by its controls")),
        ({"panels": "off", "power": "locked-out"}, ("panels off", "locked out")),
        (
            {"panels": "unsure"},
            ("panels not known to be on", "power on: live parts may stand open"),
        ),
        ({"power": "locked-out", "calls": "off"}, ("locked out",)),
        ({"power": "unsure"}, ("locked out",)),
        ({"calls": "off"}, ("stopped by its controls",)),
        ({"calls": "stuck-on"}, ()),
        ({"fire_panel": "on-test"}, ("fire panel still on test",)),
        ({"fire_panel": "unsure"}, ("fire panel still on test",)),
        ({"doors_open": True}, ("a door or panel opened for a look, not known to be shut",)),
        (
            {"doors_open": True, "panels": "off", "power": "locked-out"},
            ("panels off", "locked out"),
        ),
    ],
)
def test_what_is_left_behind_is_said_and_nothing_else(
    facts: dict[str, Any], said: tuple[str, ...]
) -> None:
    assert open_items(WorkState(**facts)) == said


def test_a_unit_as_found_is_live_closed_unproved_and_unwatched() -> None:
    assert WorkState() == WorkState(
        "on", "on", "on", "not-shown", "not-proved", False, "none-known", frozenset(), frozenset(),
        frozenset(), frozenset(), "on", True, False, frozenset(), frozenset(), frozenset(), (),
        frozenset(), False, "in-service", "not-checked", False, False,
    )  # fmt: skip
    assert UnitAtWork() == UnitAtWork((), (), (), False, False, False, False)


@pytest.mark.parametrize(
    ("facts", "untouched"),
    [
        ({}, True), ({"roof": "go"}, True), ({"clear": frozenset({"room-carbon-monoxide"})}, True),
        ({"occupants_told": True}, True), ({"fire_panel": "on-test"}, True),
        ({"second_person": True}, True), ({"arc_clothing": True}, True),
        ({"area_clear": True}, True), ({"power": "locked-out"}, False), ({"panels": "off"}, False),
        ({"calls": "off"}, False), ({"meter": "proved"}, False), ({"gas": "shut"}, False),
        ({"gas_swept": False}, False), ({"unburnt": True}, False),
        ({"jumpers": frozenset({"a"})}, False), ({"circuits": (("c 1", "gauges-on"),)}, False),
    ],
)  # fmt: skip
def test_a_unit_is_as_found_until_a_hand_was_on_it_whoever_was_told_or_dressed(
    facts: dict[str, Any], untouched: bool
) -> None:
    assert is_as_found(WorkState(**facts)) is untouched
