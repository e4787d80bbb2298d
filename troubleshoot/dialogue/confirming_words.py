"""The word of a step among plain words that confirm the same thing: locked out, my lock on it.

Each clause has to be one that is foreseen here, word for word, and one of them has to hold the
step's own word. What denies, doubts, asks, orders, counts, or tells of another's lock or of another
matter is in none, and is judged as it stands. How people put it is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety import steps

_PARTED: Final = re.compile(r"\s*[,;.]\s+|\s+(?:and|&)\s+")
_ALL: Final = r"(?:(?:all|both|every|the) )*"
_ARE: Final = r"(?: (?:is|are|all|both|back|now))*"
_LOCK: Final = r"(?:(?:my|own|the) )*(?:pad)?lock"
_THEM: Final = (
    r"(?:them|em|him|her|everybody|everyone|"
    r"(?:(?:all|the|store|shop|site|building|office|floor|kitchen) )*(?:super|superintendent|"
    r"manager|owner|tenants?|occupants|people|staff|caretaker|customer|chef|front desk|kitchen))"
)
_THEY: Final = r"(?:they|he|she)(?: ?(?:is|are|re|s))?(?: all)?"
_WELL: Final = r"(?:ok|okay|fine|good|happy|alright|all right)"
_HOW_LONG: Final = (
    r"(?:for|up to) (?:an?|half an|one|two|three|\d+) ?(?:h|hrs?|hours?|min|mins|minutes?)|"
    r"(?:until|till|til) (?:noon|\d{1,2}(?::\d\d)?(?: ?[ap]m)?)"
)
"""For what time the people agreed to have no air."""
_PART: Final = r"(?:the )?(?:blower|fans?|cond(?:enser)? fans?|comp(?:ressor)?s?|burners?|inducer)"
_SCREWS: Final = rf"{_ALL}screws{_ARE} (?:in|tight)"
_CLOSED: Final = r"(?:shut|closed|latched)(?: up)?(?: tight)?"
_WE: Final = r"(?:(?:i|we)(?: ?(?:ve|have|just))* )?"
_LIVE_VOLTS: Final = r"(?:1[12]\d|2[0-4]\d|27\d|4[4-9]\d) ?(?:v|vac|volts?)"
"""What a known live source shows."""
_WEIGHT: Final = r"\d+(?:\.\d+)? ?(?:lbs?|pounds?|kg|oz|ounces?)(?: \d+(?:\.\d+)? ?(?:oz|ounces?))?"


@frozen
class _Ways:
    """Clauses that hold a step's word, and those that may stand beside such a one."""

    own: re.Pattern[str]
    beside: re.Pattern[str]


def _ways(own: str, *beside: str) -> _Ways:
    return _Ways(re.compile(own), re.compile("|".join((own, *beside))))


_LOCKED: Final = _ways(
    rf"{_WE}locked (?:it|them|the (?:switch|disconnect))(?: (?:out|off|both|all))?|"
    r"(?:(?:its|it is|all|both|disconnect|switch|disconnect is|switch is) )*locked(?: (?:out|off))?"
    r"(?: (?:all|both|now))*",
    rf"{_LOCK}(?: and tag)?(?: is| are)? on(?: it)?(?: now)?",
    r"(?:my )?tags?(?: is)? on(?: it)?",
    r"tagged(?: it)?(?: out)?",
    r"tried it(?: dead)?",
    r"(?:the )?(?:switch|disconnect)(?: is)? (?:pulled|off|open)",
    r"key(?: is)? in my pocket",
)
_PANELS_OPEN: Final = _ways(
    rf"{_ALL}panels?{_ARE} (?:off|open)|"
    rf"{_WE}took {_ALL}(?:(?:blower|control|filter|access|end|side) )?panels? off",
    r"(?:set|laid) (?:(?:it|them) )?(?:flat|down|aside)",
)
_STEPS: Final[Mapping[str, _Ways]] = {
    steps.LOCKOUT: _LOCKED,
    steps.SECOND_SOURCE: _LOCKED,
    steps.TELL_OCCUPANTS: _ways(
        rf"(?:(?:i|we|just|have) )*told {_THEM}(?: (?:inside|downstairs))?",
        _THEM,
        rf"(?:{_THEY} )?{_WELL}(?: with (?:it|that))?(?: (?:{_HOW_LONG}))?|{_HOW_LONG}",
        rf"{_THEY} (?:know|knows|agree|agrees|agreed)",
        "all agreed",
    ),
    steps.STOP_BY_CONTROLS: _ways(
        r"(?:(?:its|it is|everything|all|all of it|it all|(?:the )?unit)"
        r"(?: (?:has|is|have|are))? )?stopped",
        r"(?:(?:the )?(?:fans?|blower) )?coasted (?:down|to a stop)|everything (?:has )?quit",
        r"(?:the )?(?:stat|thermostat|call)(?: is)? off",
    ),
    steps.METER_PROOF: _ways(
        r"(?:(?:the |my )?meter )?(?:is )?(?:proved|proven)(?: (?:ok|fine|again|once more))?"
        rf"(?: {_LIVE_VOLTS})?"
        r"(?: (?:on|at) (?:the|a) "
        r"(?:service )?(?:receptacle|recept|outlet|(?:known )?live source))?",
        _LIVE_VOLTS,
    ),
    steps.PANELS_OFF: _PANELS_OPEN,
    steps.PANELS_OFF_ENERGISED: _PANELS_OPEN,
    steps.PANELS_ON: _ways(
        rf"{_ALL}panels?{_ARE} on|closed up|buttoned up",
        _SCREWS,
        r"(?:all )?screw(?:s|ed)(?: back)? (?:down|tight)",
    ),
    steps.DOORS_SHUT: _ways(
        rf"{_ALL}(?:(?:doors?|panels?|doors and panels)(?: (?:is|are|all))* )?"
        rf"{_CLOSED}|(?:everything|all)(?: ?(?:is|s))? {_CLOSED}",
        _SCREWS,
    ),
    steps.GAUGES_ON: _ways(
        rf"{_ALL}(?:my )?(?:gauges|hoses){_ARE} (?:hooked )?(?:up )?on"
        r"(?: (?:it|(?:both|the)(?: ports)?))?",
        r"(?:(?:hoses|lines) )?purged",
    ),
    steps.GAUGES_OFF: _ways(
        rf"(?:{_ALL}(?:my )?(?:gauges|hoses){_ARE} )?off",
        rf"{_ALL}caps{_ARE} on(?: tight)?",
        r"no (?:bubbles|leaks)",
    ),
    steps.RECHARGE: _ways(
        rf"(?:{_WEIGHT} )?(?:weighed|charged)(?: it)?(?: back)?(?: in)?(?: {_WEIGHT})?",
        _WEIGHT,
        "same as the (?:data )?plate",
    ),
    steps.CIRCUIT_HELD: _ways(
        r"(?:it )?(?:held|holds|holding)(?: (?:at )?\d+(?: ?psig?)?)?"
        r"(?: for (?:half an|an|\d+) ?(?:h|hours?|min|minutes?))?",
        "no (?:drop|bubbles)(?: anywhere)?",
    ),
    steps.GAS_SHUT: _ways(
        r"(?:(?:(?:the|gas) )*cock(?: is)? )?shut",
        r"turned (?:it )?crosswise",
        r"handle(?: is)? (?:across(?: the pipe)?|crosswise)",
    ),
    steps.TELL_FIRE_PANEL: _ways(
        r"(?:(?:the|fire) )*panel(?: is)? on test",
        r"(?:talked to|called) (?:the )?(?:fire |alarm )?(?:monitoring|alarm|monitor)"
        r"(?: (?:company|people))?",
    ),
    steps.TOOLS_CLEAR: _ways(
        rf"(?:all )?clear|(?:(?:all|my|the) )*tools{_ARE} out|(?:everybody|everyone)(?: is)? clear",
        rf"(?:{_ALL}tools{_ARE} )?counted",
        rf"hands(?: are)? out|{_ALL}tools{_ARE} in (?:the|my) (?:bag|bucket|pouch)",
        r"nothing left (?:in there|in it|in the unit|inside)",
    ),
    steps.LOCK_OFF: _ways(
        rf"{_LOCK}(?: and tag)?(?: (?:is|are))? off|switched on|power(?: is)?(?: back)? on",
        r"(?:the )?(?:switch|disconnect|breaker)(?: is)?(?: back)? (?:closed|on)",
        r"(?:power )?restored|(?:the )?(?:unit|units)(?: is)? on",
    ),
    steps.RESTART: _ways(
        rf"(?:(?:it|everything|all|it all|all of it|the unit|unit) )?(?:runs|running)(?: {_WELL})?",
        rf"{_PART}(?: {_PART})*(?: (?:is|are|all|both))*(?: (?:going|running|turning))?",
        r"everything(?: is)? (?:going|running|turning)|(?:came|comes)(?: right)? up",
        r"(?:good )?air (?:everywhere|(?:at|out of) (?:the|every|all) vents?)",
    ),
}


def among_confirming(test: Test, confirmed: str, typed: str) -> str:
    """The word that confirms a step, where all clauses of what was typed say just that.

    As it stands where any other word is said.
    """
    ways = _STEPS.get(test.id)
    return test.spoken(confirmed) if ways is not None and _says(ways, typed) else typed


def tells_how_long(typed: str) -> bool:
    """Whether a time is told for which people agreed: it is to be kept."""
    return re.search(rf"\b(?:{_HOW_LONG})\b", typed.lower()) is not None


def confirms_some_step(typed: str) -> bool:
    """Whether all clauses are such a report of any step: it is typed a prompt early, or late."""
    return any(_says(ways, typed) for ways in _STEPS.values())


def _says(ways: _Ways, typed: str) -> bool:
    said = " ".join(without_apostrophes(typed.lower()).rstrip(" .!").split())
    clauses = [clause for clause in _PARTED.split(said) if clause]
    is_own = any(map(ways.own.fullmatch, clauses))
    return is_own and all(map(ways.beside.fullmatch, clauses))
