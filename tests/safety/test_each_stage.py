"""What is wanted at one point of the way to a test, and which step is led to for it.

By hand from the order of work: 29 CFR 1910.147(d) and 1910.333(b)(2), NFPA 70E 120.5, from memory.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.safety.work_state_samples import TWO_CIRCUITS
from troubleshoot.safety.needs import Needs
from troubleshoot.safety.route import next_step
from troubleshoot.safety.steps import Step
from troubleshoot.safety.way import Way
from troubleshoot.safety.work_state import UnitAtWork, WorkState

AS_FOUND = WorkState(roof="go", occupants_told=True)
LOCKED = replace(AS_FOUND, power="locked-out", calls="off")
HANDS_IN = replace(
    LOCKED, panels="off", meter="proved", dead="proved", only_steps_since_proof=True,
    clear=frozenset({"combustible-gas-sweep", "refrigerant-sweep-a2l"}),
)  # fmt: skip
PLAIN = UnitAtWork()
RECOVERED = (("circuit 1", "charge-recovered"),)


def led_to(
    state: WorkState, facts: dict[str, Any], needs: dict[str, Any], unit: UnitAtWork = PLAIN
) -> Step | None:
    return next_step(replace(state, **facts), Needs(**needs), unit)


def way(facts: dict[str, Any], needs: dict[str, Any]) -> Way:
    return Way(replace(AS_FOUND, **facts), Needs(**needs), PLAIN, leaving=False)


@pytest.mark.parametrize(
    ("facts", "needs", "wanted"),
    [
        ({}, {"energy": "locked-out"}, True),
        ({}, {"energy": "locked-closed"}, False),
        ({"panels": "off"}, {"energy": "locked-closed"}, True),
        ({"panels": "unsure"}, {"energy": "locked-closed"}, True),
        ({"panels": "off"}, {}, False),
        ({"panels": "off"}, {"energy": "running-open"}, False),
        ({"leads_off": frozenset({"lead"})}, {"energy": "running"}, True),
        ({"leads_off": frozenset({"lead"})}, {}, False),
        ({}, {"energy": "running-open", "hook_ups": ("flame rod lead",)}, True),
        ({"taps_open": frozenset({"inlet tap"})}, {"energy": "running"}, True),
        ({"taps_open": frozenset({"inlet tap"})}, {}, False),
    ],
)
def test_dead_is_proved_where_hands_come_near_an_electrical_part(
    facts: dict[str, Any], needs: dict[str, Any], wanted: bool
) -> None:
    """Behind the filter door the lock does, as long as no other panel stands open."""
    assert way(facts, needs).dead_wanted is wanted


@pytest.mark.parametrize(
    ("facts", "energy", "hands_in"),
    [
        ({}, "energised-open", False),
        ({"power": "locked-out"}, "energised-open", False),
        ({"power": "locked-out", "dead": "tested-again"}, "energised-open", False),
        ({"power": "locked-out", "dead": "proved"}, "energised-open", True),
        ({"power": "locked-out", "circuits": RECOVERED}, "running", True),
        ({"power": "locked-out", "circuits": RECOVERED}, "locked-out", False),
        ({"power": "on", "circuits": RECOVERED}, "running", False),
        ({"power": "unsure", "circuits": RECOVERED}, "running", False),
        ({"power": "locked-out", "circuits": (("circuit 1", "gauges-on"),)}, "running", False),
    ],
)
def test_nobody_dresses_for_an_arc_before_the_work_that_is_done_dead_is_over(
    facts: dict[str, Any], energy: str, hands_in: bool
) -> None:
    assert way(facts, {"energy": energy}).hands_in is hands_in
    at_480 = {"energy": energy, "second_person": True, "arc_clothing": True}
    step = led_to(AS_FOUND, facts, at_480, UnitAtWork(circuits=("circuit 1",)))
    assert (step == Step("second-person")) is not hands_in


@pytest.mark.parametrize(
    ("needs", "asked"),
    [
        ({"energy": "running"}, True), ({"energy": "energised-open"}, True),
        ({"energy": "locked-out", "no_vacuum": True}, True),
        ({"circuits": (("circuit 2", "gauges-on"),)}, True),
        ({"energy": "locked-out", "roof": True}, False), ({"energy": "locked-closed"}, False),
        ({}, False),
    ],
)  # fmt: skip
def test_whether_a_repair_opened_a_circuit_is_asked_first_where_it_matters(
    needs: dict[str, Any], asked: bool
) -> None:
    """Before roof and people: nothing is touched for it, and it may spare all the rest."""
    circuits = (("circuit 1", "opened-unsure"), ("circuit 2", "gauges-on"))
    step = led_to(WorkState(), {"circuits": circuits}, needs, TWO_CIRCUITS)
    assert (step == Step("circuit-opened", "circuit 1")) is asked
    known = (("circuit 1", "opened"), ("circuit 2", "gauges-on"))
    told = led_to(WorkState(), {"circuits": known}, needs, TWO_CIRCUITS)
    assert told is None or told.id != "circuit-opened"


VACUUM: dict[str, Any] = {"energy": "locked-out", "no_vacuum": True}


@pytest.mark.parametrize(
    ("condition", "step"),
    [
        ("evacuated", "circuit-to-zero"), ("under-vacuum", "circuit-to-zero"),
        ("opened", "circuit-held"), ("opened-unsure", "circuit-opened"),
        ("charge-unsure", "charge-recovered"),
        ("charge-recovered", None), ("under-nitrogen", None), ("gauges-on", None),
    ],
)  # fmt: skip
def test_no_winding_is_tested_in_what_may_be_a_vacuum(condition: Any, step: str | None) -> None:
    """What a repair opened may have been drawn down since: a megger arcs over in a vacuum."""
    found = led_to(HANDS_IN, {"circuits": (("circuit 1", condition),)}, VACUUM, TWO_CIRCUITS)
    assert found == (None if step is None else Step(step, "circuit 1"))


@pytest.mark.parametrize(
    ("state", "facts", "needs", "step"),
    [
        # Stopped by its controls for a reading at rest; a lock does as well.
        (AS_FOUND, {}, {"stopped": True}, Step("stop-by-controls")),
        (AS_FOUND, {"calls": "off"}, {"stopped": True}, None),
        (LOCKED, {"calls": "on"}, {"stopped": True}, None),
        # The line side of a fuse stays live: its clips are tested once all else is dead.
        (HANDS_IN, {}, {"energy": "locked-out", "clips": True}, Step("fuse-clips-dead")),
        (HANDS_IN, {"clips_dead": True}, {"energy": "locked-out", "clips": True}, None),
        (HANDS_IN, {}, {"energy": "locked-out"}, None),
        # Nobody walks off from a cabinet that stands open live.
        (AS_FOUND, {"panels": "off", "calls": "off"}, {"away": True}, Step("lockout")),
        (AS_FOUND, {"panels": "off", "calls": "on"}, {"away": True}, Step("stop-by-controls")),
        (AS_FOUND, {"panels": "on"}, {"away": True}, None),
        (LOCKED, {"panels": "off"}, {"away": True}, None),
        (AS_FOUND, {"panels": "off", "calls": "off"}, {}, None),
        # A second source feeds what one lock leaves live, whether or not a panel comes off, and
        # however far the proof of dead had come.
        (LOCKED, {"second_source": "found"}, {"energy": "locked-closed", "lock": True},
         Step("second-source-locked")),
        (HANDS_IN, {"second_source": "found"}, {"energy": "locked-out"},
         Step("second-source-locked")),
        (LOCKED, {"second_source": "found"}, {"lock": True}, None),
        # A joint is looked at under gas with nothing that may light.
        (AS_FOUND, {}, {"unlit": True, "gas": "on"}, Step("stop-by-controls")),
        (AS_FOUND, {"calls": "off"}, {"unlit": True, "gas": "on"}, None),
        (AS_FOUND, {}, {"gas": "on"}, None),
    ],
)  # fmt: skip
def test_what_does_not_stand_is_led_to_where_it_is_wanted(
    state: WorkState, facts: dict[str, Any], needs: dict[str, Any], step: Step | None
) -> None:
    assert led_to(state, facts, needs) == step


GAUGED: dict[str, Any] = {"energy": "locked-out", "circuits": (("circuit 1", "gauges-on"),)}


@pytest.mark.parametrize(
    ("outside", "first"), [(True, Step("gauges-on", "circuit 1")), (False, Step("lockout"))]
)
def test_hoses_go_on_before_the_lock_only_where_the_ports_are_outside(
    outside: bool, first: Step
) -> None:
    unit = UnitAtWork(circuits=("circuit 1",), ports_outside=outside)
    stopped = {"calls": "off", "meter": "proved", "clear": HANDS_IN.clear}
    assert led_to(AS_FOUND, stopped, GAUGED, unit) == first


def test_hoses_come_off_only_what_they_are_on_or_may_be() -> None:
    circuits = (("circuit 1", "charge-recovered"), ("circuit 2", "gauges-unsure"))
    state = replace(AS_FOUND, circuits=circuits)
    assert Way(state, Needs(), PLAIN, leaving=True).to_ungauge == ("circuit 2",)
    assert Way(state, Needs(), PLAIN, leaving=False).to_ungauge == ()
