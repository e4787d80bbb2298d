"""A wait that protects a life: no word says that it is over before it is."""

from __future__ import annotations

import math
from datetime import datetime

from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.declaration import Moment
from troubleshoot.safety.declared import STEPS
from troubleshoot.visit.absence import minutes_since
from troubleshoot.visit.state import VisitState


def has_waited(state: VisitState, test: Test, now: datetime) -> None:
    """Raise NotAnAnswer while the wait of a step, if it has one, is not over."""
    moment = STEPS[test.id].waits_from
    if moment is None:
        return
    time, happened = _since(state, moment)
    minutes = minutes_since(time, now)
    left = test.wait_minutes - (minutes or 0.0)
    if minutes is None or left > 0:
        instead = "Wait, or meter it and type the volts." if test.reads else "Wait."
        to_come = max(1, math.ceil(left))
        raise NotAnAnswer(
            f"{to_come} min of the wait {'is' if to_come == 1 else 'are'} still to come since "
            f"{happened}. {instead}"
        )


def _since(state: VisitState, moment: Moment) -> tuple[str, str]:
    """The time of what a wait is counted from, and what it was."""
    match moment:
        case "lock-on":
            return state.power_off_time, "the lock went on"
        case "cock-shut":
            return state.gas_shut_time, "the gas cock was shut"
