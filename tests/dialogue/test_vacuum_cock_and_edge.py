"""How a vacuum, a gas cock and a roof edge are said: taken where plain, asked where not.

A micron is a millitorr: 1e-3 torr of 101325/760 Pa (NIST SP 811, appendix B.8). That it is written
"u" on a vacuum is common practice, no source.
"""

from __future__ import annotations

from contextlib import suppress
from datetime import UTC, datetime

import pytest

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.units import unit
from troubleshoot.safety.steps import COCK_LOOK, EVACUATE, GAS_OPEN, GAS_SHUT, ROOF, Step
from troubleshoot.visit.events import StepDone
from troubleshoot.visit.state import VisitState


def step(shipped: Knowledge, name: str, typed: str) -> StepDone:
    place = "circuit 1" if name == EVACUATE else None
    now, test = datetime(2026, 11, 30, tzinfo=UTC), shipped.tests[name]
    return step_event_from(shipped, VisitState(), test, Step(name, place), typed, now)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("held at 350 microns", "held"), ("350 micron held", "held"), ("holding at 350", "held"),
        ("0.35 torr, held", "held"), ("350u held", "held"), ("350 mtorr and holding", "held"),
        ("pulled down to 350 microns and holding", "held"), ("held", "held"),
        ("2000 microns", "not-held"), ("held at 1200 microns", "not-held"),
        ("rose to 1500", "not-held"), ("2 torr", "not-held"), ("1000 microns held", "not-held"),
    ],
)  # fmt: skip
def test_a_vacuum_is_told_in_microns(typed: str, outcome: str, shipped: Knowledge) -> None:
    """Regression: "350 micron" was refused at the step that asks for a vacuum."""
    assert step(shipped, EVACUATE, typed).outcomes == (outcome,)


@pytest.mark.parametrize("typed", ["350", "350 micron", "350 microns", "350u", "0.35 torr"])
def test_whether_it_held_is_asked(typed: str, shipped: Knowledge) -> None:
    """It may be how far the pump drew it down, or where it stood with the pump shut off."""
    with pytest.raises(NotAnAnswer, match=f'{typed} is low enough.*"{typed} held"'):
        step(shipped, EVACUATE, typed)


@pytest.mark.parametrize("typed", ["350 microns, not held", "350 microns and climbing", "350 psi"])
def test_what_takes_the_number_back_is_no_vacuum_that_held(typed: str, shipped: Knowledge) -> None:
    with suppress(NotAnAnswer):
        assert step(shipped, EVACUATE, typed).outcomes == ("not-held",)


@pytest.mark.parametrize(
    "typed", ["2000 microns and the pump howls", "1500 microns but the gauge is broken"]
)
def test_what_else_is_said_of_one_that_did_not_hold_is_asked_about(
    typed: str, shipped: Knowledge
) -> None:
    """The number alone would do: what was said beside it, and not understood, is not swallowed."""
    with pytest.raises(NotAnAnswer, match="Say in words what came of it: held, not held"):
        step(shipped, EVACUATE, typed)


@pytest.mark.parametrize("typed", ["more than 300 microns held", "about 350 microns held"])
def test_a_vacuum_that_is_not_read_proves_nothing(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, EVACUATE, typed)


@pytest.mark.parametrize("typed", ["350u", "350 um", "350 mtorr", "0.35 torr"])
def test_the_rise_after_the_pump_is_read_in_the_same_units(typed: str, shipped: Knowledge) -> None:
    test = shipped.tests["vacuum-decay"]
    event = answer_event_from(shipped, test, None, typed, tuple(o.id for o in test.outcomes))
    assert event.text == typed
    assert 1000 * unit("micron").factor == pytest.approx(unit("torr").factor)
    assert unit("torr").factor == pytest.approx(101325 / 760, rel=1e-6)


@pytest.mark.parametrize(
    ("name", "typed", "outcome"),
    [
        (GAS_SHUT, "gas cock shut", "shut"), (GAS_SHUT, "gas cock off", "shut"),
        (GAS_SHUT, "cock off", "shut"), (GAS_SHUT, "gas shut off", "shut"),
        (GAS_SHUT, "manual valve off", "shut"), (COCK_LOOK, "gas cock closed", "shut"),
        (COCK_LOOK, "gas cock open", "open"), (GAS_OPEN, "gas cock open", "open"),
    ],
)  # fmt: skip
def test_the_cock_is_called_by_its_whole_name(
    name: str, typed: str, outcome: str, shipped: Knowledge
) -> None:
    assert step(shipped, name, typed).outcomes == (outcome,)


@pytest.mark.parametrize("name", [GAS_SHUT, COCK_LOOK, GAS_OPEN])
@pytest.mark.parametrize(
    "typed", ["gas valve off", "gas valve is off", "valve off", "gas valve shut", "gas valve's on"]
)
def test_the_gas_valve_may_be_the_burners_own(name: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NearlyAnAnswer, match="Only the cock counts"):
        step(shipped, name, typed)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        ("15 ft from the edge, safe", "safe"), ("safe, 20 ft from the roof edge", "safe"),
        ("20 feet away from the nearest edge and safe", "safe"),
        ("10 ft from the edge, safe", "edge-6-to-15-ft"),
        ("3 ft to the edge, safe", "edge-under-6-ft"),
    ],
)  # fmt: skip
def test_a_distance_says_from_what(typed: str, outcome: str, shipped: Knowledge) -> None:
    """Regression: "15 ft from the edge, safe" was refused, and "15 ft safe" was taken."""
    assert step(shipped, ROOF, typed).outcomes == (outcome,)


@pytest.mark.parametrize("typed", ["15 ft from the edge", "15 ft from the edge, not safe"])
def test_where_the_edge_is_says_nothing_of_the_rest(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, ROOF, typed)
