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

PART: Final = re.compile(
    r"[,;:]|\.(?!\d)|\b(?:and|but|then|so|until|till|instead|which|still|yet(?! to))\b"
)
"""Where one deed ends and the next begins."""
_MENDED: Final = (
    r"replac\w+|repair\w*|fixed|mended|re-?tighten\w*|tighten\w*|torqu\w+|remade|redone|new|"
    r"(?:re-?)?fitted|reinstalled|renewed|(?:re-?)?sealed|(?:re)?brazed|soldered|welded|clean(?:ed|ing)|"
    r"crimped|"
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
_WRONG_PART: Final = re.compile(
    # Larger than the circuit's (NEC 240.4), or thinner wire.
    r"\b(?:with|for|by|to|in|fitted|installed|used?|put|set)(?: (?:an?|the|some|in|much))* "
    r"(?:bigger|larger|heavier|oversized?|higher|stronger|hotter|thinner|smaller|lighter|finer)\b"
    r"|\b(?:upsized|uprated)\b|\b(?:an?|one|two|three|next|[0-9]) (?:gauges?|sizes?) "
    r"(?:up|bigger|larger|higher|smaller|thinner)\b"
    r"|\b(?:with|by|used?|put|fitted|ran|run|pushed|spliced|as)\b(?: \w+){0,5}? "
    r"(?:(?:garden|radiator|heater|rubber|water|air|fuel|vacuum|washing machine|plastic|vinyl|"
    r"nylon) ?(?:hoses?|tub(?:e|es|ing)|pipes?|lines?)|pvc|pex|(?:lamp|extension|zip) cords?|"
    r"(?:speaker|bell|telephone|phone|coat hanger) ?wires?|coat ?hangers?)\b"
    r"|\b(?:contact(?:or)?s?|terminals?|lugs?|relays?) with (?:some |a bit of )?(?:oil|wd-? ?40|"
    r"grease|gasoline|water|a file|sandpaper)\b"
    r"|\b(?:twisted|tied|taped)(?: \w+){0,4} together\b"
    r"|\b(?:with|by) (?:an? |some )?(?:piece|bit|scrap|strip) of (?:\w+ )?(?:pipe|tube|tubing|"
    r"metal|foil|tin|wood|plastic|rubber|cardboard)\b"
    # What has to breathe.
    r"|\b(?:capped|plugged|blocked|stuffed|covered|closed)(?: off)?(?: \w+){0,3} "
    r"(?:vents?|breathers?|relief|louvers?|combustion air)\b(?! (?:line|pipe|joint)s?\b)"
)
_AMPS: Final = re.compile(
    r"\b(?P<now>[0-9]+) ?(?:a|amps?)\b[^.;]{0,25}\b(?:where|instead of|in place of|for)"
    r"(?: \w+){0,2}? (?P<was>[0-9]+)\b(?! ?(?:gauge|ga|awg|in|min)\b)"
)
_PATCHED: Final = re.compile(
    r"\b(?:weld|braz|solder|patch|seal|cement|caulk|pack|putti|glu|fill)\w*(?: up| over)? "
    r"(?:the |a |that )?(?:\w+ )?(?:cracks?|holes?|splits?|tubes?|seams?|cells?|pinholes?|leaks?)\b"
)
_EXCHANGED: Final = re.compile(
    r"\b(?:replac|chang|swapp|renew|condemn)\w*\b[^.;]{0,25}\b(?:exch\w*|hx|cells?|tubes?|furnace|"
    r"unit|it)\b|\b(?:new|another) (?:heat )?(?:exch\w*|hx|cells?|tubes?|furnace|unit)\b"
)
_WIPED: Final = re.compile(
    r"\b(?:wip|dri|dabb|mopp|dry)\w*\b[^.;,]{0,25}\b(?:rags?|towels?|cloths?|sleeve|sun|shirt|paper|"
    r"leaf blower|itself|by hand)\b"
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
WRONG_PART: Final = (
    "That is no part or way that belongs there, and makes nothing safe: have what the data plate "
    "or the maker names fitted first."
)
NO_REPAIR: Final = (
    "That tells of no repair: off, waited, looked at or turned, it is as it was. Give the part and "
    "how it was put right, or q."
)


def stays_off(hazard: Hazard) -> bool:
    """Whether off is no remedy: it burns again once somebody switches it on."""
    return hazard.stops_the_job and hazard.off_until is not None


def why_no_repair(said: str, hazard: Hazard | None) -> str:
    """Why a deed, in small letters and single blanks, repairs nothing; empty where it may."""
    if hazard is not None and hazard.keeps_off == "nothing":
        return ""  # people and weather have no part that is repaired
    if _is_of_an_exchanger(hazard) and _is_patched(said):
        return WRONG_PART
    parts = PART.split(said)
    spoiled = {n: why for n, part in enumerate(parts) if (why := _why_spoiled(part, hazard))}
    wanted = _wanted(hazard)
    good = [n for n, part in enumerate(parts) if n not in spoiled and _is_done(wanted, part)]
    if spoiled and not any(n > max(spoiled) for n in good):
        return spoiled[max(spoiled)] if _is_grave(spoiled[max(spoiled)]) or not good else ""
    return NO_REPAIR if hazard is not None and _has_a_part(hazard) and not good else ""


def _is_grave(why: str) -> bool:
    """Whether what was told last spoils also what was told before it."""
    return why != OF_ANOTHER


def _wanted(hazard: Hazard | None) -> re.Pattern[str]:
    return _AT_A_PART if hazard is not None and stays_off(hazard) else _OR_SHUT


def _has_a_part(hazard: Hazard) -> bool:
    """Whether the danger came from a part that is put right before it has gone."""
    return stays_off(hazard) or (hazard.stops_the_job and hazard.all_clear in _OF_AIR)


def _is_of_an_exchanger(hazard: Hazard | None) -> bool:
    """Whether what is welded or sealed may be an exchanger, which is replaced and never patched."""
    return hazard is not None and (hazard.all_clear == ROOM_AIR or hazard.exchanger)


def _is_patched(said: str) -> bool:
    """Whether a crack was closed, and what cracked not replaced or taken out of use after it."""
    patches = [*_PATCHED.finditer(said)]
    return bool(patches) and not _EXCHANGED.search(said, patches[-1].end())


def _is_done(wanted: re.Pattern[str], part: str) -> bool:
    return any(not _DENIED.search(part[: at.start()]) for at in wanted.finditer(part))


def _why_spoiled(part: str, hazard: Hazard | None) -> str:
    if _NOT_DONE.search(part):
        return NOT_DONE
    if _CAME_AGAIN.search(part):
        return CAME_AGAIN
    if _LEFT_OPEN.search(part):
        return LEFT_OPEN
    amps = _AMPS.search(part)
    if _WRONG_PART.search(part) or (amps and int(amps["now"]) > int(amps["was"])):
        return WRONG_PART
    if _WIPED.search(part):
        return WRONG_PART
    return OF_ANOTHER if _ELSEWHERE.search(part) else ""
