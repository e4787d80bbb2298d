"""What came of one choice of the apprentice, and where a safety step has to be done."""

from __future__ import annotations

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.scenario import Shown
from troubleshoot.practice.slips import Slip
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety import steps
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.needs import TAPS
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import UnitAtWork, WorkState


@frozen
class Done:
    """One thing done. `gain`: bits it could have been expected to tell then; None for a step."""

    test: Test
    at: Place | str | None
    shown: tuple[Shown, ...]
    minutes: float
    gain: float | None


@frozen
class Moment:
    """What followed once a thing was done, and the minutes that had been paid by then."""

    done: Done
    minutes: float
    conclusions: Conclusions


@frozen
class Stopped:
    """What was tried did not happen."""

    slip: Slip


@frozen
class Unavailable:
    """A test that cannot be done here, and why."""

    test: Test
    why: str


@frozen
class Partly:
    """A computed test of which one input needs another work state; the others have been read."""

    done: Done
    lacking: Test
    missing: tuple[str, ...]


Result = Done | Partly | Stopped | Unavailable


def step_at(name: str, place: str | None, work: WorkState) -> Step:
    """A step as the work state stands: a proof that is done twice knows its second time."""
    again = (name == steps.DEAD_TEST and work.dead != "not-shown") or (
        name == steps.METER_PROOF and work.dead in ("tested", "tested-again")
    )
    return Step(name, place, again)


def places_of_step(name: str, work: WorkState, unit: UnitAtWork) -> tuple[str | None, ...]:
    """Where a step has to be done: each section still charged, each circuit, each jumper, once.

    Of the taps of a gas train those that it can be done at: which of them is for whoever does it.
    """
    at = STEPS[name].at
    if at == "tap":
        taps = tuple(TAPS.values())
        could = {
            steps.TAP_OPENED: {*taps} - work.hoses_on,
            steps.TAP_PLUGGED: work.taps_open,
            steps.PLUG_TEST: work.plugs_untested,
        }[name]
        return tuple(tap for tap in taps if tap in could) or taps
    if at == "jumper":
        return tuple(sorted(work.jumpers)) or (None,)
    if at == "circuit":
        return unit.circuits or (None,)
    stored = {"capacitor": unit.capacitors, "drive": unit.drives}.get(at, ())
    return tuple(place for place in stored if place not in work.discharged) or (None,)


def like(place: Place | None, places: tuple[Place | None, ...]) -> Place | None:
    """The place of another kind that goes with this one: the same number, else the first."""
    same = (p for p in places if p is not None and place is not None and p.number == place.number)
    return next(same, places[0])


def until_made_safe(stop: FiredHazard) -> bool:
    """Whether a STOP holds only until the unit is made safe."""
    return stop.hazard.stop is not None and stop.hazard.stop.scope == "until-made-safe"
