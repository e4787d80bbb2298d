"""Whether what was read is of the danger, and of now: not of another gas, nor before the repair."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.text import as_said
from troubleshoot.safety.estimates import leads_to_estimate
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR

_SHARE: Final = r"\b(?:lel|lfl)\b"
_FUEL: Final = r"methane|ch4|natural gas|propane|lp gas|combustibles?|combustible gas|fuel gas"
_MONOXIDE: Final = r"co|carbon monoxide|monoxide"
_REFRIGERANT: Final = r"refrigerant|freon|r ?-?[0-9]{2,4}[a-z]?|a2l"
_OTHERS: Final = r"co2|carbon dioxide|dioxide|h2s|hydrogen sul\w+|o2|oxygen|humidity|nox|no2"
_OWN: Final[Mapping[str, str]] = MappingProxyType(
    {
        GAS_SWEEP: rf"{_SHARE}|\b(?:{_FUEL})\b",
        ROOM_AIR: rf"\b(?:{_MONOXIDE})\b",
        REFRIGERANT_SWEEP: rf"{_SHARE}|\b(?:{_REFRIGERANT})\b",
    }
)
"""The gas that each sweep of the air reads, as people name it."""
_ANY: Final = rf"(?:{_FUEL}|{_MONOXIDE}|{_REFRIGERANT}|{_OTHERS})"
_NAMED: Final = re.compile(
    rf"(?:\bppm|%|\bpct|\bper ?cent) ?(?:of )?{_ANY}\b"
    rf"|\b(?<!gas ){_ANY}(?: (?:is|was|at|reads?|reading|shows?|level|now))* ?[:=]? ?<?-?[0-9]"
)
"""A gas that is named beside a number."""
_ITS_INSTRUMENT: Final = re.compile(
    rf"\b{_ANY} (?:leak )?(?:meter|detector|monitor|analy[sz]er|alarm|sensor|tester|sniffer)\b"
)
"""An instrument that shows one gas."""

_REPAIR: Final = (
    r"(?:repair|fix|replac|work|job|mend|remade|remaking|chang|tighten|shut|clos|seal|we (?:came|"
    r"arrived|started|began)|he (?:came|arrived|started|began)|they (?:came|arrived|started|began)|"
    r"anything|any of)"
)
_BEFORE: Final = re.compile(
    rf"\b(?:before|prior to|ahead of|until)\b[^.;,]{{0,30}}?\b{_REPAIR}|\bbefore(?:hand)?\W*$"
    r"|\b(?:when|as) (?:we|i|they|he|she) (?:arrived|came|got (?:here|there|up))\b"
    r"|\b(?:on|at|upon) (?:our |his |their |my )?arrival\b|\bat first\b|\bto begin with\b"
)
_COCK_OPENED: Final = re.compile(r"\bbefore [^.;,]{0,30}?\bopen(?:ed|ing|s)?\b(?!.*\bafter)")
_SINCE: Final = re.compile(r"\b(?:after\w*|now|since|then|again|finally|at the end|still)\b")

_ANOTHER_DAY: Final = re.compile(
    r"\byesterday\b|\blast (?:night|week|month|time|visit|year|season)\b"
    r"|\b(?:days?|weeks?|months?|years?) (?:ago|back)\b|\bthe (?:day|week|other day) before\b"
    r"|\bthe other day\b"
)
_ANOTHER_PLACE: Final = re.compile(
    r"\bat (?:home|my (?:house|place|desk)|(?:the )?other (?:unit|roof|site|job|building))\b"
    r"|\bin (?:the|my|our|his) (?:truck|van|car|cab|pickup)\b"
    r"|\b(?:on|at|of|in) (?:the |an)?other (?:unit|roof|site|job|building)\b"
    r"|\b(?:on|at|of|in|by) (?:the |an? )?(?:next|neighbou?r\w*|adjacent|another|different) "
    r"(?:unit|rtu|machine|roof|site|job|building|house|one)\b|\bnext door\b"
    r"|\b(?:in|on|across|down on) the (?:street|parking lot|lot)\b|\bupwind\b"
    r"|\b(?:at|by|near|outside) the (?:gate|fence|road|alley|entrance)\b(?! valve)"
    r"|\b(?:at|by|near|from|beside) (?:the|my|our|his) (?:truck|van|car|cab|pickup|ladder)\b"
    r"|(?<!zeroed )(?<!zeroed it )(?<!bumped )(?<!set )"
    r"\bin (?:the )?(?:fresh|open|outside|outdoor|clean) air\b|\bon the ground\b"
    r"|\b(?:[0-9]+|a few|ten|twenty|several) ?(?:ft|feet|foot|yards?|meters?|metres?|steps|paces) "
    r"(?:away|off|from|up|above|upwind)\b|\bfrom (?:a distance|afar|across|far)\b"
    r"|\bfar (?:away|off)\b"
)
_BELOW: Final = re.compile(
    r"\bdown ?stairs\b|\bdown below\b|\b(?:in|at|by|near|from|of) (?:the |an? )?(?:shop|office|"
    r"lobby|kitchen|hall(?:way)?|basement|cellar|cafeteria|"
    r"(?:store|class|rest|bath|dining|living|break|mail) ?room|"
    r"corridor|garage|foyer|reception|bar|gym)s?\b(?! (?:unit|rtu|roof|exhaust))"
)
"""Where the rooms are, and no part of the unit."""
_NO_READING: Final = re.compile(
    r"\b(?:from|by) memory\b|\bas (?:i|we|he) (?:recall|remember)|\bif i remember\b"
    r"|\b(?:sensor|probe|monitor|instrument|sniffer|meter|detector)(?: (?:was|is|were|switched|"
    r"turned|still))* (?:off|dead|failed|faulty|expired|unplugged|covered|capped)\b"
    r"|\b(?:sensor|probe|monitor|instrument|sniffer|meter|detector)(?: (?:was|is))? "
    r"not (?:on|working|warmed up|zeroed|bump|calibrated)"
    r"|\b(?:not|never|without) (?:a |being |been )?(?:bump|calibrat|zero|warm)\w*"
    r"|\b(?:uncalibrated|untested|unzeroed)\b|\bout of (?:date|calibration|cal)\b"
    r"|\bbatter(?:y|ies)(?: (?:is|was|were|are|got|getting|went))? (?:low|weak|dying|down|dead|"
    r"flat)\b|\b(?:low|weak|dying) batter(?:y|ies)\b"
    r"|\b(?:alarm|sensor|horn|detector|monitor|buzzer|sounder)s?(?: (?:is|was|were|still|being))* "
    r"(?:muted|silenced|disconnected|disabled|bypassed|taped|bagged)\b"
    r"|\b(?:from|off|by|in|on|per) (?:his|her|their|the|an? (?:old )?)(?: \w+)? ?"
    r"(?:report|sheet|log|paper\w*|record|note|e-?mail|text)s?\b"
    r"|\b(?:made|guessed|invented) (?:it )?up\b|\bwould (?:read|be|show)\b"
    r"|\b(?:dead|broken|faulty|failed|expired|untested|unproved|covered|capped|bagged|empty) "
    r"(?:\w+ ){0,2}(?:sensor|probe|monitor|instrument|sniffer|meter|detector)\b"
    r"|\b(?:bump|bump ?test|calibration|zero|self[- ]?test)(?: \w+)? (?:failed|fails?|skipped|"
    r"missed|overdue|expired|lapsed|not done|left out)\b"
    r"|\b(?:failed|skipped|missed|overdue|no) (?:the |its )?(?:bump|calibration|self[- ]?test)\b"
    r"|\bhoses?(?: (?:is|was|were|came|got))? (?:kinked|pinched|off|blocked|plugged|cracked|wet)\b"
)
_BY_NO_INSTRUMENT: Final = re.compile(
    r"\bby (?:the |his |her |my |our |their )?(?:nose|smell|feel|ear)\b"
    r"|\bsniff(?:s|ed|ing)?\b|\bno (?:smell|odou?r)\b|\b(?:can|could|did) ?(?:not|n't) smell\b"
    r"|\bsmell\w* (?:fine|ok(?:ay)?|good|clean|nothing|of nothing)\b"
    r"|\b(?:looks?|seems?|appears?) (?:to be )?(?:tight|fine|ok(?:ay)?|good|safe|sound)\b"
    r"|\bfelt (?:ok(?:ay)?|fine|tight|good|right|snug|secure)\b"
    r"|\bin (?:the |its |his |her |my )?(?:case|bag|box|pouch|holster|pocket)\b"
    r"|\b(?:display|screen|readout)(?: (?:is|was|were|kept))? (?:flash|blank|dead|off|error|fault)"
)
_QUIET: Final = re.compile(
    r"\b(?:alarm|sensor|horn|buzzer|it)s?(?: \w+){0,2} "
    r"(?:quiet|silent|stopped|gone off|off|went quiet|not (?:sounding|beeping|in alarm))\b"
)
_SHUT_OFF: Final = re.compile(
    r"\bwith (?:the )?(?:gas )?(?:cock|gas|valve|supply|main|shut-?off)(?: \w+)? "
    r"(?:shut|closed|off)\b|\b(?:while|when) (?:the )?(?:gas )?(?:cock|gas|valve|supply|main) "
    r"(?:was|is) (?:shut|closed|off)\b|\bgas (?:is |was )?still (?:off|shut|closed)\b"
    r"|\bbefore (?:the )?gas (?:was |is |came |went )?(?:back )?on\b"
    r"|\b(?:gas )?(?:cock|gas|valve|supply|main|shut-?off|pipe|line)"
    r"(?: (?:is|was|were|being|now))* (?:shut|closed|isolated|off)\b"
    r"|\b(?:shut|closed|isolated|dead) (?:off )?(?:gas )?(?:pipe|line|manifold|train)s?\b"
    r"|\b(?:shut|closed) (?:gas )?(?:cock|valve|supply|main)s?\b"
    r"|\bgas (?:is |was )?not (?:yet )?(?:back )?on\b|\b(?:cock|valve|handle)"
    r"(?: (?:is|was|still|turned|set))* across\b"
    r"|\bnothing in (?:the )?(?:pipe|line|manifold|train)s?\b"
    r"|\bno gas (?:on|there|yet|up (?:here|to it))\b"
    r"|\bbefore (?:turning|putting|switching|letting) (?:the |any )?gas\b"
    r"|\bno (?:gas|pressure|supply)(?: \w+)? (?:in|on) (?:the )?"
    r"(?:pipe|line|manifold|train|hose)s?\b"
    r"|\b(?:tank|bottle|cylinder|line|pipe|meter|manifold)s?(?: (?:is|was|were|being|now))* "
    r"(?:empty|dry|de-?pressuri[sz]ed|not (?:under pressure|pressuri[sz]ed)|bled|dead)\b"
    r"|\bempty (?:tank|bottle|cylinder|line|pipe)\b|\bde-?pressuri[sz]ed\b"
)
_CLOSED_FOR_GOOD: Final = re.compile(r"\b(?:capped|tagged|plugged|blanked|removed|locked)\b")
"""A pipe that was closed for good is a remedy, and no state that a reading was taken in."""
_OR_SO: Final = re.compile(
    r" ?\S*(?: \S+)?? ?(?:or so|or thereabouts|or something|give or take|ish|-ish|more or less)\b"
)

ELSEWHERE: Final = (
    "That was read at another time or place, and shows nothing of here and now. Have it read where "
    "the danger was, then give what was shown."
)
ANOTHER_UNIT: Final = (
    "That is of another unit than this one. Give what was done and read here, or q."
)
NO_READING: Final = (
    "That was read by no instrument that was on and proved. Have it read again, then give what was "
    "shown."
)
SHUT_OFF: Final = (
    "With the gas shut nothing leaks, whatever is open. Have it read with the gas on as far as the "
    "new joint, then give what was shown; or say how it was made tight and looked at."
)
BEFORE: Final = (
    "That was read before it was made safe, and shows nothing of now. Have it read again, then "
    "give what was shown."
)
ANOTHER_GAS: Final = (
    "That is of another gas than the danger, and shows nothing of it. Have the danger's own gas "
    "read, then give what was shown."
)
BELOW_ZERO: Final = (
    "There is no gas below zero: the instrument was not zeroed in clean air. Have it read again, "
    "then give what was shown."
)
A_GUESS: Final = "That is about so much, and nobody can rest on it. Give the number that was read."


def why_not_now(said: str) -> str:
    """Why a reading, in small letters, is not of now; empty where it may be."""
    if _ANOTHER_DAY.search(said) or _ANOTHER_PLACE.search(said):
        return ELSEWHERE
    if _NO_READING.search(said):
        return NO_READING
    return BEFORE if _BEFORE.search(said) and not _SINCE.search(said) else ""


def why_by_no_instrument(said: str, sweep: str) -> str:
    """Why gas in the air, in small letters, was read by nothing that shows it; empty as above.

    An alarm that is quiet is no number; what leaks at a unit does not show in the rooms.
    """
    if sweep in (GAS_SWEEP, REFRIGERANT_SWEEP) and _BELOW.search(said):
        return ELSEWHERE
    if sweep in _OWN and _QUIET.search(said) and not re.search(r"\d", said):
        return NO_READING
    return NO_READING if sweep in _OWN and _BY_NO_INSTRUMENT.search(said) else ""


def why_of_a_dead_pipe(said: str, sweep: str) -> str:
    """Why a sweep for gas, in small letters, was of pipes without any; empty where it may not be.

    Only what is told as the state it was read in: capped and tagged is a remedy.
    """
    shut = _SHUT_OFF.search(said) and not _CLOSED_FOR_GOOD.search(said)
    dead = shut or _COCK_OPENED.search(said)
    return SHUT_OFF if sweep == GAS_SWEEP and dead else ""


def why_another_gas(said: str, sweep: str) -> str:
    """Why a reading, in small letters, is not of the gas of a sweep; empty where it may be."""
    own = _OWN.get(sweep)
    if own is None or re.search(own, said):
        return ""
    return ANOTHER_GAS if _NAMED.search(said) or _ITS_INSTRUMENT.search(said) else ""


def why_no_number(said: str, number: str, of_gas: bool) -> str:
    """Why a number as it stands in what was said is none of an instrument; empty where it may be.

    `of_gas`: it is of gas in the air; volts may stand below zero.
    """
    if of_gas and number.startswith("-"):
        return BELOW_ZERO
    before, _, behind = said.partition(number)
    return A_GUESS if leads_to_estimate(before) or _OR_SO.match(behind) else ""


_UNIT: Final = re.compile(
    r"\b(?:rtu|ahu|mau|doas|erv|ac|cu|hp|unit|roof ?top)[ #.-]{0,3}(?:no\.? ?)?(\d+)\b"
)


def why_another_unit(said: str, name: str) -> str:
    """Why what is told is of another unit than the one of this `name`; empty where it may not be.

    By the numbers of both; a unit whose name has none is called as its people like.
    """
    own = {int(number) for number in re.findall(r"\d+", name)}
    told = {int(number) for number in _UNIT.findall(as_said(said))}
    return ANOTHER_UNIT if own and told and own.isdisjoint(told) else ""
