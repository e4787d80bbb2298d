"""Deeds that do nothing where a danger came from, and what was done before its STOP.

A paper is signed, a room aired, a meter seen to, the unit tried. Beside a remedy each is part of a
good report, so they are judged part by part, and count only where no part tells of a remedy.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date, datetime
from types import MappingProxyType
from typing import Final

from troubleshoot.safety.stops.no_remedy import DEALT, NOT_THE_CAUSE

_PART: Final = re.compile(r"[,;]|\.(?!\d)|\b(?:and|but|then|so|until|till|instead)\b")
_HAND_HELD: Final = (
    r"(?:(?:four|4|multi)[- ]gas meters?|(?<!gas )meters?|sniffers?|instruments?|testers?|"
    r"analy[sz]ers?|probes?)"
)
_READS: Final = rf"(?:{_HAND_HELD}|detectors?|alarms?|sensors?|monitors?)"
_BESIDE: Final = re.compile(
    r"\b(?:waivers?|disclaimers?|release forms?|liabilit(?:y|ies)|responsibilit(?:y|ies)|"
    r"indemnit\w+|insurance|lawyers?|legal|(?:on|in) (?:the )?files?|"
    r"took (?:it|that|this) (?:up)?on (?:himself|herself|themselves|myself)|"
    r"at (?:his|her|their|our|own) (?:own )?risk|the risk)\b|\bsigned\b"
    # The air, and what reads it.
    r"|\b(?:vented|venting|ventilat\w+|aired|airing)\b"
    r"|\bpurged (?:the )?(?:\w+ )?(?:rooms?|space|building|floor|penthouse|hall)\b"
    rf"|\b(?:swapped|changed|replaced|exchanged)(?: \w+){{0,2}} {_HAND_HELD}\b"
    rf"|\bbatter(?:y|ies)\b[^.;]*\b{_READS}\b|\b{_READS}\b[^.;]*\bbatter(?:y|ies)\b"
    rf"|\b(?:re-?)?(?:zeroed|calibrat\w+|spanned)(?: \w+){{0,3}} {_READS}\b"
    rf"|\b(?:new|fresh|another)(?: \w+)? (?:sensor|cell|filter|battery) (?:in|into|for|on) "
    rf"(?:\w+ ){{1,3}}{_HAND_HELD}\b"
    r"|\b(?:set|raised|turned|moved|changed)(?: \w+)? (?:alarm|trip) (?:point|level|limit|"
    r"threshold|set ?point)s?\b"
    # Who stands apart from it, and it stays as it is.
    r"|\b(?:put|laid|lay|spread|hung|placed|wore|wearing|used|stood on)(?: \w+){0,3} "
    r"(?:mats?|gloves?|boots?|blankets?|boards?|planks?|cones?|barriers?|ropes?)\b"
    # Where it is read, and the unit tried.
    r"|\b(?:moved|stood|stepped|walked|went|stayed)(?: \w+){0,3} (?:spot|place|away|farther|"
    r"further|upwind|outside)\b|\btook the reading\b"
    r"|\b(?:measured|checked|read|swept|tested) (?:\w+ )?(?:from|at) (?:the |an)?"
    r"(?:other|hatch|ladder|door|far|different|distance)\b"
    r"|\b(?:tested|checked|proved|tried) by (?:running|firing|starting|lighting)\b"
    r"|\b(?:ran|fired|started|tried|lit)(?: the)? (?:it|unit|burners?|heat|system|them)\b"
    r"|\b(?:test|trial) (?:run|fire|firing)\b|\A *(?:it |all |that )?cleared *\Z"
)
"""A part of what is told that says nothing of the cause."""
_CLEARED_THERE: Final = re.compile(r"\bcleared (?:the |that )?(?:board|code|fault|alarm)\b")
_OF_THE_SUPPLY: Final = re.compile(r"(?<!four )(?<!4 )(?<!multi )\bgas meter\b|\bswivel\b")
"""A meter that gas comes through, and not one that is held to it."""

_UNSAID: Final = re.compile(
    r"\b(?:the|that|a) (?:day|week|month|year|season|visit) before\b"
    r"|\b(?:on|at|during|in) (?:the |our |my |his )?(?:last|previous|earlier) "
    r"(?:visit|service|pm|call|round|inspection)\b"
    r"|\b(?:before|prior to|ahead of) (?:the|this|that|our|my|your) "
    r"(?:calls?|stop|smell|odou?r|alarm|leak|danger|visit)\b"
    r"|\bbefore (?:we|i|he|she|they|anybody|anyone) (?:was |were )?(?:came|called|smelled|here)\b"
)
"""Before the STOP, whatever day it is of."""


def _week(day: date) -> tuple[int, int]:
    return day.isocalendar()[:2]


_LAST: Final = MappingProxyType[re.Pattern[str], Callable[[date], object]](
    {
        re.compile(r"\b(?:yesterday|last night|the day before)\b"): lambda day: day,
        re.compile(r"\blast week\b|\b(?:a|one) week ago\b"): _week,
        re.compile(r"\blast month\b|\b(?:a|one) month ago\b"): lambda day: (day.year, day.month),
        re.compile(
            r"\blast (?:year|season)\b|\b(?:a|one) year ago\b"
            r"|\b(?:last|in the|during the) (?:spring|summer|fall|autumn|winter)\b"
        ): lambda day: day.year,
    }
)
"""What is said of a time that is over -> what two days of the same such time have in common."""


def why_beside_the_cause(said: str) -> str:
    """Why a deed, in small letters, does nothing about the cause; empty where it may."""
    held = re.sub(r"\bmeters?\b", " ", said) if _OF_THE_SUPPLY.search(said) else said
    parts = _PART.split(held)
    others = [part for part in parts if not _BESIDE.search(part)]
    is_dealt_with = any(DEALT.search(_CLEARED_THERE.sub(" ", part)) for part in others)
    return "" if len(others) == len(parts) or is_dealt_with else NOT_THE_CAUSE


def is_before_the_stop(said: str, stopped: date, now: datetime) -> bool:
    """Whether all that was dealt with, in small letters, was so before the day of a STOP.

    "Last week" of a STOP of last week may be after it.
    """
    dealt = [part for part in _PART.split(said) if DEALT.search(part)]
    return bool(dealt) and all(_is_over(part, stopped, now.date()) for part in dealt)


def _is_over(part: str, stopped: date, today: date) -> bool:
    if _UNSAID.search(part):
        return True
    return any(
        pattern.search(part) and span(stopped) == span(today) for pattern, span in _LAST.items()
    )
