"""What makes a deed harmless that is bad advice without it.

A way round was found and is taken away; hands go in where it is dead; a detector is unplugged with
its panel told and plugged in again; a lead is that of a meter.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.advice.defeats import WAY_ROUND
from troubleshoot.knowledge.advice.practices import LIVE

_LATER: Final = r"(?!.*\b(?:after|until|till|next|tomorrow|later|again|when|once|monday)\b)"
_FOUND_AND_GONE: Final = re.compile(
    r"(?:\S+ ){0,4}(?:found|left|discovered|seen) (?:on|across|over|in|between|at|past) .*?"
    r"\b(?:is|are|comes?|gets?) (?:\S+ )?(?:taken (?:out|off|away)|removed|pulled|cut out|off|out)"
    rf"\b{_LATER}"
)
_DEAD: Final = re.compile(
    r"\b(?:when|once|after|with|while)(?: (?!not|never|no|without|nobody|even)\S+){0,5} "
    r"locked out (?:, )?and (?:proved|tested|verified|metered) dead\b"
)
_LIVE: Final = re.compile(r"\b(?:live|hot|energized|power on|under load|humm?ing|hums|running)\b")
_PULLED_IN: Final = re.compile(r"\w+ (?:\S+ ){0,3}(?:contactor|armature|plunger)s? (?!and\b)")
_UNPLUGS: Final = re.compile(
    r"(?:unplug|disconnect|unhook|pull|remov|tak|lift)\w* (?:\S+ ){0,4}"
    r"(?:detectors?|smoke heads?)\b"
)
_TOLD: Final = re.compile(
    r"\b(?:tell|told|telling|call|inform|notify)(?: \S+){0,3} (?:fire panel|fire service|panel|"
    r"monitoring (?:company|station|center)|alarm company)\b|\b(?:fire )?panel (?:is |was )?told\b"
    r"|\b(?:fire )?panel (?:is )?on test\b"
)
_BACK: Final = re.compile(
    r"\b(?:plug|put|hook|clip|fit|screw|connect)\w* (?:it|them) (?:back|in again|on again|again)\b"
    r"|\b(?:refit|reconnect|replug|reinstall)\b"
)
_OF_A_METER: Final = re.compile(
    r"\w+ (?:\S+ ){0,2}(?:meter|tester|voltmeter|ohmmeter)(?: (?:leads?|probes?|clips?))?\b"
    r"(?=.*\b(?:read|measure|volts|ohms)\b)(?!.*\b(?:runs?|stays?|lights?|heats?|start)\b)"
)


def is_excused(what: str, clause: str, start: int) -> bool:
    """Whether a clause says of what it names at `start`, bad as `what`, why it is harmless."""
    deed = clause[start:]
    if what == LIVE[0] or _PULLED_IN.match(deed):
        return bool(_DEAD.search(deed)) and not _LIVE.search(deed)
    if what != WAY_ROUND[0]:
        return False
    is_told = _UNPLUGS.match(deed) and _TOLD.search(clause) and _BACK.search(deed)
    return bool(is_told or _FOUND_AND_GONE.match(deed) or _OF_A_METER.match(deed))
