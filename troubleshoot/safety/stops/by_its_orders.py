"""What a danger's own orders want shown before it counts as gone: tested, or so many feet away."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.quantities.typed import Expected, read
from troubleshoot.safety.stops.numbers_shown import numbers_in

_CLEARANCE: Final = re.compile(
    r"\b(?P<feet>[0-9]+(?:\.[0-9]+)?) ?(?:ft|feet|foot)\b(?: (?:away|off|clear|of|clearance))*"
    r"(?: from (?:it|(?:the |that |any |every )?(?:overhead |power |live )?"
    r"(?:lines?|wires?|powerlines?|conductors?|mast|antennas?)))?"
)
_INSULATION, _VOLTS = "Mohm", "V"
_LEAST_MOHM: Final = 1.0
"""Under it no circuit of this size is put back (common practice, no source); a new one has more."""
_MOST_VOLTS: Final = 2.0
"""More than that after the switch is no dead circuit (common practice, no source)."""

HAVE_IT_TESTED: Final = (
    "Dry to the eye may be wet inside: have it tested, and give the insulation to ground "
    "(200 Mohm) or what the meter shows dead (0 V)."
)


def shown_by_a_test(hazard: Hazard) -> tuple[str, ...]:
    """The units of the test that the orders want; empty where they want none."""
    return (_INSULATION, _VOLTS) if hazard.off_until == "tested" else ()


def why_untested(said: str, hazard: Hazard) -> str:
    """Why what is told shows no test, where the orders want one; empty where it may.

    By the insulation, or by the volts of a dead test: wiped and dry is what it looks like.
    """
    if not (units := shown_by_a_test(hazard)):
        return ""
    told = [*numbers_in(said, units)]
    if not told:
        return HAVE_IT_TESTED
    bad = next((number for number, unit in told if not _is_sound(number, unit)), "")
    return f"{bad} is not sound. The STOP stands until it is dry and tests sound." if bad else ""


def _is_sound(number: str, unit: str) -> bool:
    leg = read(number, Expected(unit)).values[0]
    if unit == _INSULATION:
        return leg.value >= _LEAST_MOHM and leg.bound != "less-than"
    return abs(leg.value) <= _MOST_VOLTS and leg.bound != "more-than"


def why_too_near(said: str, hazard: Hazard) -> str:
    """Why a distance in small letters is less than the orders want; empty where it may be enough.

    `hazard`: one whose orders keep people so many feet away.
    """
    least = hazard.least_feet
    near = next((at[0] for at in _CLEARANCE.finditer(said) if float(at["feet"]) < least), "")
    return f"{near.strip()} is less than the {least:g} ft of its orders." if near else ""


def without_clearance(said: str, hazard: Hazard) -> str:
    """What is told without how far away it is, where that is what has to be measured."""
    return _CLEARANCE.sub(" ", said) if hazard.least_feet else said
