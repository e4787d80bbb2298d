"""How a hazard is said, everywhere alike: on screens, in assess, in reports and in practice."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard

MOST_FIRST: Final = 200
"""Letters of the first orders, beyond their first sentence."""


def said_hazard(hazard: Hazard, stops: bool = False, where: str | None = None) -> str:
    """The caution in one paragraph; `stops`: the STOP it may have stands now."""
    head: str = f"{hazard.signal}, {where}" if where else hazard.signal
    if stops and hazard.stop is not None:
        head += " - STOP THIS STEP" if hazard.stop.scope == "this-step" else " - STOP"
    return f"{head}: {hazard.what_to_do}"


def first_orders(hazard: Hazard) -> str:
    """What is to be done first: the first sentences of what to do, as many as are short."""
    first, *more = re.split(r"(?<=[.!]) +", hazard.what_to_do)
    for sentence in more:
        longer = f"{first} {sentence}"
        if len(longer) > MOST_FIRST:
            break
        first = longer
    return f"First: {first}"


def said_standing(hazard: Hazard, stops: bool, where: str | None = None) -> tuple[str, ...]:
    """A hazard that stands, and who takes over what its STOP stops, a single step too."""
    said = said_hazard(hazard, stops, where)
    if not stops or hazard.stop is None:
        return (said,)
    return (said, f"Hand over to: {hazard.defer_to}") if hazard.defer_to else (said,)


def also_stands(hazard: Hazard) -> str:
    """A STOP that stands beside the one that is told whole, in a line."""
    orders = first_orders(hazard)
    return f"Also stands: {hazard.signal} - STOP, {hazard.spoken}. {orders} To: {hazard.defer_to}"


def forbids(hazard: Hazard) -> str:
    """Why a test is not done now, in a few words."""
    return f"{hazard.spoken} stands in the way"


def once_gone(hazard: Hazard) -> str:
    """When what a hazard forbids may be done again."""
    return f"not before this has gone: {hazard.spoken}"


def danger_gone(hazard: Hazard) -> str:
    """The same as what a test needs first."""
    return f"the danger gone: {hazard.spoken}"
