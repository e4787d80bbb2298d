"""Deeds that stop short of a remedy: a finding alone, a call, a note, fresh air, taken back again.

What is told beside them as dealt with is a result: found the union loose, tightened it.
"""

from __future__ import annotations

import re
from typing import Final

DEALT: Final = re.compile(
    r"\b(?:shut|clos(?:ed|ing)|lock(?:ed|s)|tagged|capped|plugged|replac\w+|isolat\w+|repaired|"
    r"fixed|mended|tighten\w+|torqued|remade|redone|new|purged|clear(?:ed|ing)|fitted|renewed|"
    r"sealed|reset|clean(?:ed|ing)|wrenched|soldered|brazed|welded|disconnected|cut|released|"
    r"switched|dried|bled|put (?:it |them )?(?:back|in|up|right)|was (?:an?|it|sewer)|it was|"
    r"chang(?:ed|ing)|swapped|exchanged|moved|recovered|removed|taken (?:off|out|away|to)|"
    r"took (?:off|out|away|him|her|them)|pulled|tied|bonded|landed|insulated|guarded|covered|"
    r"refilled|refitted|reinstalled|reconnected|adjusted|turned (?:off|down)|"
    r"opened (?:the |its |a |both |all )?(?:\w+ )?(?:feed|breaker|disconnect|switch|fuses?)|"
    r"(?:feed|breaker|disconnect|switch) (?:was |is )?opened|"
    r"condemned|wound|stopped|put out|cooled|treated|went to hospital|waited)\b"
)
"""Words of something that was dealt with."""
_ONLY_TOLD: Final = re.compile(
    r"\b(?:found|looked|looks|checked|inspected|saw|noticed|call(?:ed|s)|phoned|rang|told|informed|"
    r"notified|e-?mailed|texted|asked|warned|reported|wrote|photographed|soaped|"
    r"took (?:an? |some )?(?:photos?|pictures?)|(?:hung|put|left|stuck|taped)(?: up)? "
    r"(?:an? |the |my )?(?:note|sign|sticker|label|message|warning|post-?it)|(?:opened|cracked)"
    r"(?: the| some| all| an?| both)* (?:windows?|doors?))\b"
)
_SIGN: Final = re.compile(
    r"\b(?:hung|put|left|stuck|taped|wrote)(?: up)? (?:an? |the |my )?"
    r"(?:note|sign|sticker|label|message|warning|post-?it)\b"
)
_HANDLED: Final = re.compile(
    r"\b(?:paint(?:ed|ing)|wiggl(?:ed|ing)|jiggl(?:ed|ing)|waggl(?:ed|ing)|kick(?:ed)?|"
    r"bang(?:ed)? on|wip(?:ed|ing)|polish(?:ed|ing)|shook|tapped on|thump(?:ed)?|hit it|prayed)\b"
)
_NOT_DONE: Final = re.compile(
    r"\b(?:lock|tagg?|shut|clos|open|chang|replac|repair|tighten|touch|isolat|bled|bleed|seal|capp?)"
    r"(?:ed)? nothing\b|\bby (?:nobody|no one|no-one|none of us)\b"
    r"|\b(?:no|without an?|without any|without) (?:pad)?(?:lock|tag|hasp|cap|plug)s?"
    r"(?: \w+)? (?:at|to|on) hand\b|\bno (?:pad)?(?:lock|tag|hasp|cap|plug)s? "
    r"(?:with (?:me|us)|here|left|available|fits?|on (?:it|the truck|the van))\b"
    r"|\bwithout (?:an? |any |my |our )?(?:pad)?(?:lock|tag)s?\b"
    r"|\bnever (?:locked|tagged|shut|isolated|proved|tightened|sealed)\b"
    r"|\bnot (?:locked|tagged|isolated|tightened|sealed|bled|capped)(?: (?:it|out|off))?\W*$"
)
_STILL: Final = re.compile(
    r"\bstill (?:bubbl|foam|hiss|reek|drip|weep|spark|arc|tingl|trip|shock|glow|read|show|"
    r"seep|blow)"
    r"|\b(?:leak|smell|bubbl|hiss|smok|drip|weep|seep|spark)\w*(?: \w+)? less\b"
    r"|\bbut (?:it|there)(?: still)? (?:hiss|leak|smell|drip|bubbl|weep|seep|smok)"
    r"|\bnot as (?:much|bad|strong|bad(?:ly)?)\b|\bonly (?:a )?(?:little|bit|few|tiny|slight)"
)
_TAKEN_BACK: Final = re.compile(
    r"\b(?:then|and|later|again|after)\b[^.;]{0,15}\bunlocked\b|\bunlocked (?:it|again)\b"
    r"|\b(?:lock|tag)s? (?:is |was |came |taken |then )*off again\b"
    r"|\b(?:pulled|opened|removed|took (?:out|off)|lifted|switched off|turned off|shut|closed) "
    r"(?:the |a |its |my |our )?(?:\w+ )?(?:fuses?|breaker|locks?|tags?|disconnect|switch|feed|"
    r"cock|valve|main)(?: off)?,? (?:and|then)(?: then)? (?:put|pushed|switched|turned|set|closed|"
    r"opened|locked)(?: it| them)? (?:back|on|in|again)\b"
    r"|\b(?:off|out|shut) and (?:back )?(?:on|in|open)(?: again)?\W*$"
    r"|\b(?:undid|undone|unscrewed|loosened|slackened|reversed|backed (?:it )?off|took (?:it|them) "
    r"(?:off|out|apart))\b[^.;]{0,15}\b(?:again|afterwards?|later)\b"
    r"|\b(?:put|fitted|screwed) (?:the |its |that )?(?:old|bad|leaking|same|failed) "
    r"(?:\w+ ){0,2}back\b"
)
_VAGUE: Final = re.compile(
    r"\b(?:replaced|changed|fixed|repaired|tightened|did|moved|shut|closed|locked|put in|swapped) "
    r"(?:some ?thing|a thing|things|(?:some )?stuff|some parts?|whatever|a part|everything|"
    r"anything)\b"
)
_ANOTHER_LOCK: Final = re.compile(
    r"\block(?:ed)?(?: up)?(?: the| my| our| a| his| its)?(?: front| back| roof| shop| office)?"
    r" (?:doors?|gate|truck|van|hatch|building|shop|car|roof|ladder|gang ?box|tool ?box)\b"
)
_POWER: Final = re.compile(
    r"\b(?:feeds?|breakers?|switch|disconnect|fuses?|panel|cock|valve|main|supply|meter)\b"
)
_AIRED: Final = re.compile(
    r"\b(?:windows?|doors?|fans?|aired|airing|vent(?:ed|ing)|ventilat\w+)\b[^.,;]{0,30}"
    r"\b(?:smell|gas|odou?r|fumes|smoke|it)\b[^.;]{0,12}\b(?:went|gone|cleared|left|faded|over)\b"
)

_WENT: Final = re.compile(
    r"\b(?:smells?|odou?rs?|gas|leaks?|alarms?|hiss\w*|bubbl\w*|noise|fumes|smoke|it)"
    r"(?: (?:has|had|was|is|just|then|all|now))* (?:went|gone|stopped|quit|cleared|faded|"
    r"disappeared|blew)(?: (?:away|off|up|out|quiet|down|now|again))*\b"
)
_AIRED_OUT: Final = re.compile(
    r"\b(?:aired|airing|vent(?:ed|ing)|ventilat\w+)(?: (?:it|out|the|room|box|place|building|"
    r"unit|cabinet|everything))*"
)
_RESET: Final = re.compile(
    r"\b(?:reset(?:ting)?|cleared|re-?started|rebooted|power ?cycled|cycled)"
    r"(?: (?:it|the|a|its|power|main|control|alarm|board|code|fault|panel|unit|sensor|again))*"
)
_RELIT: Final = re.compile(
    r"\b(?:relit|relighted|re-?fired|(?:lit|fired|started|switched on|turned on) (?:it |them )?"
    r"(?:up )?again|back (?:on|in service|to work))\b"
)
_WAITED: Final = re.compile(
    r"\b(?:waited|waiting|let)\b[^.;]{0,20}\b(?:smells?|gas|odou?r|fumes|smoke)\b[^.;]{0,30}"
)
_SOAPED: Final = re.compile(
    r"\b(?:smear|rub|dab|brush|spray|put|paint|slapp?|wrapp?|cover)\w*"
    r"(?: (?:some|a bit of|on|it|them|all|in|with))* "
    r"(?:soap\w*|suds|leak (?:fluid|spray|detector)|bubbles?|dish ?soap)\b"
)
"""What shows a leak and closes none."""
_SAID: Final = re.compile(r"\b(?:said|says|claim(?:ed|s)|blam(?:ed|es)|thought|swore|argued)\b")
_UNTESTED: Final = re.compile(
    r"\b(?:not|never|no|without|n't|wasn't|nobody)(?: \w+)?(?: a| an| any)? "
    r"(?:(?:leak|pressure|soap|bubble|function)[- ]?)?(?:tests?|tested|testing|proved|proof)\b"
    r"|\b(?:tests?|testing|proof|soaping)(?: \w+)? (?:pending|to follow|to come|outstanding)\b"
    r"|\b(?:nobody|no one|not|never)(?: (?:has|have|was|been|yet|even))* (?:soaped|swept|bubbled)\b"
    r"|\buntested\b|\bno leak[- ](?:test|check)\b"
    r"|\b(?:forgot|forgotten|skipped|omitted|neglected|missed|left out|(?:ran |run )?out of time|"
    r"no time|did(?: not|n't) (?:get|have)|never got)(?: \w+){0,4} "
    r"(?:(?:leak|pressure|soap|bubble)[- ]?)?(?:tests?|testing|proof|proving|soap\w*)\b"
)
_NOT_REAL: Final = re.compile(
    r"\b(?:dream\w*|imagin\w*|pretend\w*|in theory|theoretical\w*|on paper|kidding|joking|"
    r"(?:would|could|should) have|wish(?:ed)?|meant to|wanted to|intended to)\b"
)
_QUIETER: Final = re.compile(
    r"\b(?:detector|alarm|sensor|monitor|horn|sounder)s?\b[^.;]{0,25}\b(?:quiet\w*|silent|"
    r"(?:does|do|did|will|would) ?(?:not|n't)(?: \w+)? (?:chirp|beep|alarm|sound|trip|ring|"
    r"complain)|less sensitive|without (?:a )?(?:horn|sounder|battery))\b"
)
_AT_THE_ALARM: Final = re.compile(
    r"\b(?:replaced|changed|swapped|exchanged) (?:the |that |a )?(?:\w+ )?"
    r"(?:sensor|detector|alarm|monitor)s? (?:that|which) "
    r"(?:alarmed|tripped|went off|beeped|rang|sounded|called)\b"
)
"""What goes by itself, or for a time, and what only answers the alarm."""

ONLY_FOUND: Final = (
    "That says what was found or told, and not what was done about it. Give both, or q."
)
NOT_DONE: Final = (
    "That says that it was not done, or is still there. The STOP stands until it is made safe: "
    "give what was done about it, or q."
)
BACK_AGAIN: Final = (
    "That says that it was taken back again, and so nothing is made safe. Give what stays done, or "
    "q."
)
NOT_NAMED: Final = "That does not say what was done. Name the part, or q."
UNTESTED: Final = (
    "That says that nobody tested it. Have it tested, then give what was done and how it was "
    "proved."
)
NOT_THE_CAUSE: Final = "That does nothing about where it came from. Give what was done there, or q."


def why_no_remedy(said: str) -> str:
    """Why a deed, in small letters and single blanks, is no remedy; empty where it may be one."""
    if _NOT_DONE.search(said) or _STILL.search(said):
        return NOT_DONE
    if _UNTESTED.search(said):
        return UNTESTED
    if _NOT_REAL.search(said):
        return NOT_DONE
    if _TAKEN_BACK.search(said):
        return BACK_AGAIN
    if _VAGUE.search(said):
        return NOT_NAMED
    if _ANOTHER_LOCK.search(said) and not _is_cut_off(_ANOTHER_LOCK.sub(" ", said)):
        return NOT_THE_CAUSE
    if _QUIETER.search(said):
        return NOT_THE_CAUSE
    rest = _AIRED.sub(" ", _SIGN.sub(" ", _SOAPED.sub(" ", said)))
    cause = _AT_THE_ALARM.sub(" ", _WENT.sub(" ", _WAITED.sub(" ", rest)))
    if _AIRED_OUT.search(cause):
        cause = _RESET.sub(" ", _AIRED_OUT.sub(" ", cause))
    if DEALT.search(cause):
        return ""
    if _RELIT.search(said) or _WAITED.search(rest):
        return NOT_THE_CAUSE
    if cause != rest and (DEALT.search(rest) or _WENT.search(rest)):
        return NOT_THE_CAUSE
    if _HANDLED.search(said) or _AIRED.search(said):
        return NOT_THE_CAUSE
    only = _ONLY_TOLD.search(said) or _SAID.search(said) or _SOAPED.search(said)
    return ONLY_FOUND if only else ""


def _is_cut_off(beside: str) -> bool:
    """Whether what is told beside a lock on a door or a van is of a feed or a cock dealt with."""
    return bool(_POWER.search(beside) and DEALT.search(beside))
