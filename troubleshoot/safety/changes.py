"""The changes that steps and events make to a work state, to be put together in declarations."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from troubleshoot.safety.declaration import Change, Otherwise, Outcomes
from troubleshoot.safety.work_state import Calls, Circuit, WorkState


def sets(**facts: Any) -> Change:
    """These facts become so, whatever they were."""
    return lambda state, place: state.with_facts(**facts)


def adds(fact: str) -> Change:
    """The place joins those of which the fact is known."""
    return lambda state, place: state.with_facts(**{fact: getattr(state, fact) | {place}})


def drops(fact: str) -> Change:
    """The place is no longer among those of which the fact is known."""
    return lambda state, place: state.with_facts(**{fact: getattr(state, fact) - {place}})


def clears(sweep: str) -> Change:
    """This sweep found nothing."""
    return lambda state, place: state.with_facts(clear=state.clear | {sweep})


def unclears(sweep: str) -> Change:
    """This sweep counts no more."""
    return lambda state, place: state.with_facts(clear=state.clear - {sweep})


def circuit_is(condition: Circuit) -> Change:
    """The circuit at the place is in this condition."""
    return lambda state, place: state.with_circuit(place, condition)


def all_of(*changes: Change) -> Change:
    """One change after the other."""

    def together(state: WorkState, place: str) -> WorkState:
        for change in changes:
            state = change(state, place)
        return state

    return together


def any_other(change: Change) -> Otherwise:
    """The same change for every outcome that does not confirm a step."""

    def otherwise(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
        return change(state, place)

    return otherwise


def may_start(state: WorkState, place: str) -> WorkState:
    """Whoever has put the power back may have called for the unit as well."""
    return state.with_facts(calls="on" if state.calls == "off" else state.calls)


def not_dead(state: WorkState, place: str) -> WorkState:
    """Nothing is dead or discharged any more, and nobody relies on it."""
    return state.with_facts(dead="not-shown", discharged=frozenset(), clips_dead=False)


def power_back(state: WorkState, calls: Calls) -> WorkState:
    """The power counts as on, so nothing is dead or discharged any more."""
    return not_dead(state, "").with_facts(power="on", calls=calls)


def only_if(stands: Callable[[WorkState], bool], change: Change) -> Change:
    """The change where something stands; nothing elsewhere."""
    return lambda state, place: change(state, place) if stands(state) else state
