"""What is done about a cracked exchanger: it is replaced or condemned, and never patched.

A gasket, a sight glass, a cleaned tube or a mended crack leaves the crack as it is.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.steps import ROOM_AIR
from troubleshoot.safety.stops.wrong_part import WRONG_PART

_PATCHED: Final = re.compile(
    r"\b(?:weld|braz|solder|patch|seal|cement|caulk|pack|putti|glu|fill)\w*(?: up| over)? "
    r"(?:the |a |that )?(?:\w+ )?(?:cracks?|holes?|splits?|tubes?|seams?|cells?|pinholes?|leaks?)\b"
    r"|\b(?:repair|fix|mend)\w* (?:the |a |that |its )?(?:\w+ )?"
    r"(?:cracks?|exchangers?|hx|cells?)\b(?!'s)"
    r"|\b(?:cracks?|exchangers?|hx|cells?) (?:(?:is|was|were|got|has been|now) )*"
    r"(?:repaired|fixed|mended)\b"
)
_EXCHANGED: Final = re.compile(
    r"\b(?:replac|chang|swapp|renew|condemn)\w*\b[^.;]{0,25}\b(?:exch\w*|hx|cells?|tubes?|furnace|"
    r"unit|it)\b|\b(?:new|another) (?:heat )?(?:exch\w*|hx|cells?|tubes?|furnace|unit)\b"
)
_ITS_PARTS: Final = (
    r"(?!'s|'| (?:\w+ )?(?:gaskets?|seals?|doors?|covers?|sight|glass|mounts?|mounting|screws?|"
    r"bolts?|nuts?|panels?|brackets?|ports?|plugs?|baffles?|supports?|hangers?|insulation|access)\b)"
)
"""Beside it these are what was replaced: the exchanger's gasket."""
_IT: Final = (
    r"(?:(?:heat )?exch\w*|hx|cells?|furnace(?: section)?|(?:exchanger )?sections?|(?:whole )?unit|"
    rf"rtu|tubes?|it|them|one)\b{_ITS_PARTS}"
)
_RENEWED: Final = (
    r"replac\w*|chang(?:ed|ing)|swapp(?:ed|ing)|exchanged|renewed|scrapped|new|another"
)
_WORDS: Final = (
    r"(?: (?:out|the|an?|all|both|whole|entire|complete|cracked|old|bad|leaking|rusted|split|burnt|"
    r"failed|holed|that|this|its|our|new|heat|primary|secondary|tubular|clamshell|gas|two|three|four|"
    r"five|six|[0-9]+))*"
)
_MADE_NEW: Final = re.compile(
    rf"\b(?:{_RENEWED}){_WORDS} {_IT}"
    rf"|\b{_IT}(?: (?:and|with|plus|its|the|\w*gaskets?|seals?|burners?|flue|collector|box|was|"
    r"were|is|are|has|have|been|got|now|all|both|being))* "
    rf"(?:{_RENEWED})\b"
    r"|\bcondemned\b|\bred[- ]?tagged\b|\bprov(?:ed|en) sound\b"
)
_DENIED: Final = re.compile(
    r"(?:\b(?:not|never|cannot|without|nobody|nothing|no|dont|didnt|wasnt|isnt|hasnt|werent)|n't)"
    r"(?: \w+){0,2} $"
)

NOT_REPLACED: Final = (
    "An exchanger is replaced, proved sound, or its unit condemned: cleaned, mended or with a new "
    "gasket it is as cracked as it was. Give which was done, or q."
)


def why_at_the_exchanger(said: str, hazard: Hazard) -> str:
    """Why a deed, in small letters, leaves an exchanger cracked; empty where it may not."""
    if not hazard.exchanger and hazard.all_clear != ROOM_AIR:
        return ""
    if _is_patched(said):
        return WRONG_PART
    is_breach = hazard.exchanger and hazard.stays_off
    return NOT_REPLACED if is_breach and not _is_made_new(said) else ""


def _is_patched(said: str) -> bool:
    """Whether a crack was closed, and what cracked not replaced or taken out of use after it."""
    patches = [each for each in _PATCHED.finditer(said) if not _DENIED.search(said[: each.start()])]
    return bool(patches) and not _EXCHANGED.search(said, patches[-1].end())


def _is_made_new(said: str) -> bool:
    return any(not _DENIED.search(said[: at.start()]) for at in _MADE_NEW.finditer(said))
