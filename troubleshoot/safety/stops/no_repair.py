"""Deeds that repair nothing: the opposite of a repair, at another unit, not done, or not held.

What a sentence tells is judged part by part, in its order: what came back or was left open is
mended only by what is told after it. Where gas or smoke came from a part, one has to be told that
puts it right; only off, only waited and only looked at leave it as it was.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR
from troubleshoot.safety.stops.at_the_exchanger import why_at_the_exchanger
from troubleshoot.safety.stops.by_its_orders import HAVE_IT_TESTED
from troubleshoot.safety.stops.only_dried import is_only_dried
from troubleshoot.safety.stops.wrong_part import WRONG_PART, is_of_another_size, why_wrong_part

PART: Final = re.compile(
    r"[,;:]|\.(?!\d)|\b(?:and|but|then|so|until|till|instead|which|still|yet(?! to))\b"
)
"""Where one deed ends and the next begins."""
_MENDED: Final = (
    r"replac\w+|repair\w*|fixed|mended|re-?tighten\w*|tighten\w*|torqu\w+|remade|redone|new|"
    r"(?:re-?)?fitted|reinstalled|renewed|(?:re-?)?sealed|(?:re)?brazed|soldered|welded|clean(?:ed|ing)|"
    r"crimped|put in the (?:right|correct|proper)|"
    r"re-?wired|re-?terminated|made (?:off|new|tight|right)|landed|reconnected|bonded|insulated|"
    r"dried|"
    r"chang(?:ed|ing)|swapped|exchanged|adjusted|recovered|condemned|disconnected|released|bled|"
    r"cut (?:out|back)|refilled|put (?:it |them )?(?:back|right)|relocated|rerouted|brushed|"
    r"vacuumed|wrenched|snugged|rebuilt|purged|set (?:it )?to|scanned|unblocked|was (?:an?|sewer)|"
    r"it was (?:an?|the|our|his|their|sewer)|moved|took (?:him|her|them)|"
    r"taken (?:outdoors|outside|away)|"
    r"(?:removed|pulled|took|taken|dug|cut|cleared) [^.;,]{0,25}(?:blockage|rags?|nests?|jumpers?|"
    r"tape|bags?|debris|soot|webs?|obstruction)|(?:blockage|rags?|nests?|jumpers?|tape|bags?|debris|"
    r"soot|webs?|towel)(?: \w+){0,3} (?:removed|pulled|taken|out)|"
    r"clear(?:ed|ing) (?!up\b|out\b|now\b|away\b|by\b|on\b)\w+|"
    r"(?:flue|vent|screen|drain|tube)s? (?:was |were )?cleared"
)
_HELD: Final = (
    r"shut|clos(?:ed|ing)|lock(?:ed|s)?|tagged|capped|plugged|isolat\w+|turned off|switched off|"
    r"stopped|gas off"
)
_AT_A_PART: Final = re.compile(rf"\b(?:{_MENDED})\b")
_OR_SHUT: Final = re.compile(rf"\b(?:{_MENDED}|{_HELD})\b")

_CAME_AGAIN: Final = re.compile(
    r"\b(?:burn(?:t|ed|s)|smok(?:ed|es|ing)|leak(?:ed|s|ing)|tripp?(?:ed|s|ing)|blew|melt(?:ed|s)|"
    r"arc(?:ed|s|ing)|fell|came|come|comes|broke|failed|smell(?:ed|s)?|smelt|alarmed|went|cracked|"
    r"dripp?(?:ed|s)|opened|happened|rolled|glowed|sparked|(?:glow|spark|burn|smok|leak|smell|"
    r"melt|dripp|bubbl|hiss)ing)(?: \w+){0,2} again\b"
    r"|\b(?:came|comes|come|is|was|are|crept) back\b(?! (?:in|on|to|together|where))"
    r"|\b(?:smell|leak|smoke|alarm|gas|heat|it) (?:has )?returned\b"
    r"|\bdid(?: not|n't) (?:hold|help)\b"
)
_LEFT_OPEN: Final = re.compile(
    r"\b(?:left|leaving|leave|stays?|stayed|kept|with|stands?)\b(?: \w+){0,3} (?:open|off|out|bare|"
    r"loose|uncapped|unplugged|hanging|exposed|undone|missing|disconnected|unsealed|unfused)\b"
    r"|\b(?:nothing|none) (?:\w+ ){0,2}in (?:its|the|their) place\b|\b(?:did|was|were|has|have)"
    r"(?: not|n't) (?:put|fit|fitted|get|got|been) (?:\w+ )?(?:one|any|back|another|in)\b"
    r"|\bwithout (?:an? |any )?(?:new|replacement|cap|plug)\b|\bno (?:new|replacement|spare)\b"
)
_NOT_DONE: Final = re.compile(
    r"\bhas ?n[o']t\b|\bhave ?n[o']t\b|\b(?:has|have|is|was|are|were|did|do|does) not\b[^.;,]{0,25}"
    r"\b(?:yet|so far|happened|done)\b|\bnot\b[^.;,]{0,20}\b(?:yet|so far)\b|\byet to\b"
    r"|\bsupposed(?:ly)?\b|\b(?:told|asked|made|wants?|wanted|ordered|instructed|expected)"
    r"(?: (?:me|us|him|her|them))? to (?:have |say|write|put|note|enter|type|claim|report|tell)"
    r"|\bas (?:i|we|he) (?:was|were) (?:asked|told|ordered)\b|\b(?:half|not) (?:done|finished)\b"
    r"|\?|\bin (?:my|his|her) (?:head|mind)\b|\bby mistake\b|\bin error\b|\bin the mail\b"
    r"|\b(?:says|according to|as per) (?:the |his |my )?(?:work order|ticket|invoice|paper\w*|"
    r"log|sheet|job card)\b"
)
_DENIED: Final = re.compile(
    r"\b(?:not|never|n't|without|nothing|nobody)(?: \w+){0,2} $"
    r"|\b(?:hardly|barely|nearly) $"
)
_ELSEWHERE: Final = re.compile(
    r"\bnext door\b"
    r"|\b(?:(?:the |an)?other|adjacent|adjoining|different|another|next) (?:(?:roof|cooling) )?"
    r"(?:unit|rtu|roof(?:top)?|machine|building|site|house|one)\b"
    r"|\bneighbou?r\w*(?:'s)? (?:\w+ )?(?:unit|rtu|machine|house|lines?|pipes?|valve|contactor)\b"
    r"|\b(?:at|of|on|in) the neighbou?r\w*\b|\bacross the (?:street|road|way|hall)\b"
    r"|\bthe (?:unit|one|rtu|machine) (?:beside|behind|opposite)\b"
    r"|\b(?:moved|relocated|hung|carried) (?:the |that |a |its )?(?:\w+ )?"
    r"(?:alarm|detector|sensor|monitor|probe|sniffer)s?\b"
    r"|\bwrong (?!size|fuse|breaker|one with)\w+(?! with\b)(?! for\b)"
    r"|\b(?:water|drain|air|condensate) (?:union|line|pipe|valve|joint|fitting)s?\b"
)
_OF_AIR: Final = frozenset({GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR})

CAME_AGAIN: Final = (
    "That says that it came again, so what caused it is still there. Give what was done since, or "
    "q."
)
LEFT_OPEN: Final = "That leaves it open or undone. Give how it was made whole again, or q."
NOT_DONE: Final = (
    "That says that it was not done, or only told so. Give what was done and seen, or q."
)
OF_ANOTHER: Final = (
    "That is of another unit or part. Give what was done where the danger was, or q."
)
NO_REPAIR: Final = (
    "That tells of no repair: off, waited, looked at or turned, it is as it was. Give the part and "
    "how it was put right, or q."
)


def why_no_repair(said: str, hazard: Hazard | None) -> str:
    """Why a deed, in small letters and single blanks, repairs nothing; empty where it may."""
    if hazard is not None and hazard.keeps_off == "nothing":
        return ""  # people and weather have no part that is repaired
    if hazard is not None and (why := why_at_the_exchanger(said, hazard)):
        return why
    parts = PART.split(said)
    spoiled = {n: why for n in range(len(parts)) if (why := _why_spoiled(parts, n))}
    if not spoiled and hazard is not None and is_only_dried(said, hazard):
        return HAVE_IT_TESTED
    wanted = _wanted(hazard)
    good = [n for n, part in enumerate(parts) if n not in spoiled and _is_done(wanted, part)]
    if spoiled and not any(n > max(spoiled) for n in good):
        return spoiled[max(spoiled)] if _is_grave(spoiled[max(spoiled)]) or not good else ""
    return NO_REPAIR if hazard is not None and _has_a_part(hazard) and not good else ""


def _is_grave(why: str) -> bool:
    """Whether what was told last spoils also what was told before it."""
    return why != OF_ANOTHER


def _wanted(hazard: Hazard | None) -> re.Pattern[str]:
    return _AT_A_PART if hazard is not None and hazard.stays_off else _OR_SHUT


def _has_a_part(hazard: Hazard) -> bool:
    """Whether the danger came from a part that is put right before it has gone."""
    return hazard.stays_off or (hazard.stops_the_job and hazard.all_clear in _OF_AIR)


def _is_done(wanted: re.Pattern[str], part: str) -> bool:
    return any(not _DENIED.search(part[: at.start()]) for at in wanted.finditer(part))


def _why_spoiled(parts: list[str], n: int) -> str:
    part = parts[n]
    if _NOT_DONE.search(part):
        return NOT_DONE
    if _CAME_AGAIN.search(part):
        return CAME_AGAIN
    if _LEFT_OPEN.search(part):
        return LEFT_OPEN
    if why_wrong_part(part) or _is_of_another_size(parts, n):
        return WRONG_PART
    return OF_ANOTHER if _ELSEWHERE.search(part) else ""


def _is_of_another_size(parts: list[str], n: int) -> bool:
    """Whether a part tells so, or ends what the one before it begins: took the 25s out, 35s in."""
    if is_of_another_size(parts[n]):
        return True
    before = parts[n - 1] if n else ""
    both = " ".join(f"{before} and {parts[n]}".split())
    return bool(before) and not is_of_another_size(before) and is_of_another_size(both)
