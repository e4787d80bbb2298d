"""Dangers that are told, and plainly not of here and now: they are asked about, and stop nothing.

Of another year, of a unit next door that was put right, a monitor that chirps for its battery, an
alarm that never went off, dust that burns off each autumn, lights that flicker as a motor starts, a
tool that fell, a power line far off. Each is let go only in its own part of what was said, and only
where no word says that it is so now: the rest is heard as ever.
Approach: 29 CFR 1910.333(c)(3) wants 10 ft and more with the volts; 50 ft is beyond all of it; from
memory. The rest is common practice, no source.
"""

from __future__ import annotations

import re
from string import digits
from typing import Final

from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety.hearing.another_unit import is_next_door

_PARTED: Final = re.compile(
    r"(?:[,.;:!?]+(?=\s|$)|\s[-/]+\s|\b(?:and|but|so|because|when|while|then|though|although|"
    r"despite)\b)"
)
_NOW: Final = re.compile(
    r"\b(?:now|still|again|today|tonight|just|too|also|keeps?|since|currently|same|until|till|"
    r"smells|(?:i|we|you|they|can|to) smell|smell (?:it|gas)|reads?|sick|dizzy|headaches?|head|"
    r"faint\w*|nause\w*|vomit\w*|(?<!that )is|are|am|theres|im|right here|here (?:as well|it)|"
    r"a (?:minute|moment|second) ago)\b|\bppm\b"
)
"""Anywhere in what was said they say that something may be so now."""
_SINCE: Final = re.compile(
    r"\b(?:still|again|keeps?|sick|dizzy|headaches?|head|faint\w*|nause\w*|vomit\w*|ppm)\b"
)
"""Of a monitor that chirps for its battery they say that it is more than that."""
_OF_A_YEAR: Final = re.compile(
    r"\b(?:back )?(?:in|around|during) (?:19|20)\d\d\b(?! ?(?:ppm|psi|v|volts?|rpm)\b)"
    r"|\blast (?:winter|summer|spring|fall|year|season)\b|\b\w+ years? ago\b"
)
_HEARSAY: Final = re.compile(
    r"\b(?:\w+ )?told (?:me|us)\b|\b(?:we|i) (?:had|swapped|replaced|fixed|repaired|changed)\b"
)
_OURS: Final = re.compile(r"\b(?:i|im|ive|me|my|we|us|our|ours|myself)\b")
_DEED: Final = r"(?:fixed|repaired|replaced|swapped|rebuilt|condemned|scrapped)"
_SETTLED: Final = re.compile(
    rf"\b(?:(?<!not )(?<!never ){_DEED} (?:it|that|them|both)|(?:was|were|got|been) {_DEED}|"
    r"bought this one|new \w+ since)\b"
)
_LASTING: Final = re.compile(
    r"\b(?:crack\w*|exchanger|gas|leak\w*|jumper\w*|co|monoxide|refrigerant|freon|propane|wires?|"
    r"smell\w*|hole|bypass\w*)\b"
)
"""What does not pass with the year by itself: it has to be told as put right."""
_FORMER: Final = re.compile(r"\b(?:old|previous|former|other) (?:unit|one|rtu)\b")
_ALARM: Final = r"\b(?:alarm|detector|monitor|sensor|meter)s?\b"
_WANTS_A_BATTERY: Final = re.compile(
    rf"{_ALARM}.*\b(?:chirp|beep)\w*\b.*\b(?:(?:for|wants|needs) (?:a |its |new )*batter(?:y|ies)|"
    r"low batter(?:y|ies)|batter(?:y|ies) (?:is |was |are )?(?:low|dying|dead|weak))\b"
)
_NEVER_SOUNDED: Final = re.compile(
    rf"{_ALARM}.*\b(?:never|didnt|did not|hasnt|has not)\b (?:even |ever |once )?"
    r"(?:go off|goes off|went off|gone off|sound\w*|rang|beep\w*)\b"
)
_DENIED: Final = re.compile(r"\b(?:no|not|never|isnt|wasnt|dont|smoke|smell|with)\b")
_YEAR: Final = r"(?:autumn|fall|season|spring|winter|year)"
_DUST_OF_A_YEAR: Final = re.compile(
    rf"^(?=.*\b(?:burning|burnt) (?:dust )?(?:smell|odou?r)\b)(?=.*\bfirst\b)"
    rf"(?=.*\b(?:every|each) {_YEAR}\b)"
)
"""Dust that burns off with the first heat of each year: common practice, no source."""
_MORE_THAN_DUST: Final = re.compile(
    r"\b(?:smok\w*|plastic\w*|rubber\w*|wir\w+|electric\w*|spark\w*|flam\w+|fire|glow\w*|"
    r"melt\w*|hot|worse|strong\w*|bad|alarm\w*|gas|this time|wont|never|not)\b"
)
_INRUSH: Final = re.compile(
    r"\b(?:the )?lights? (?:dim and )?flicker(?:s|ing)?"
    r"(?: (?:a bit|a little|briefly|for a second|once))? "
    r"(?:at (?:startup|start up|start)|(?:as|when|whenever|every time|each time) "
    r"(?:it|the \w+|a \w+) (?:starts(?: up)?|kicks (?:in|on)|comes on))\b"
)
"""Volts fall for a moment as a motor starts: common practice, no source."""
_LOST_LEG: Final = re.compile(
    r"\b(?:hum\w*|buzz\w*|trip\w*|leg|phase|wont|cant|not|never|doesnt|still|stay\w*|dim|hot|"
    r"all the time|brown\w*|smok\w*|smell\w*|spark\w*|arc\w*|burn\w*|slow\w*|now)\b"
)
"""Beside lights that flicker they say that more than a start pulls the volts down."""
_TOOL: Final = re.compile(
    r"^\W*(?:(?:oops|the|my|his|a|our|some|damn) )*(?:\w+ )?(?:meter|multimeter|tester|wrench|"
    r"pliers|screwdriver|flashlight|phone|hat|glove|drill|radio|hammer|nutdriver|clipboard|bag|tape|pen|"
    r"pencil|knife|probe|lead|hose|bottle|cup|screw|bolt|nut)s?(?: just)? "
    r"(?:fell|slid|slipped|dropped|rolled|blew) (?:right |down )?(?:off|from|over) "
    r"(?:(?:the|my|a) )?(?:roof|ladder|edge|curb|truck|tailgate|parapet|hatch|bucket)\b"
)
_WHO_MAY_BE_HIT: Final = re.compile(
    r"\b(?:helper|partner|buddy|guy|man|woman|kid|he|she|him|her|"
    r"me|somebody|someone|people|they|them)\b"
)
_HITS: Final = re.compile(r"\b(?:onto?|hit|hits|struck|landed|head)\b")
_LEFT_BEHIND: Final = re.compile(
    r"^\W*(?:(?:the|some) )?(?:last|previous|other) (?:guy|tech|mechanic|crew|man|company)s? left "
    r"(?:behind )?(?:his|her|their|a|an|some|the) (?:\w+ )?(?:meter|tester|wrench|pliers|"
    r"screwdriver|flashlight|hat|glove|drill|hammer|nutdriver|clipboard|pen|knife|rag|tool|trash|"
    r"mess|filter|screw|note|sticker)s?(?: (?:behind|here|in here|up here|inside|in there))*\W*$"
)
"""Who was there before this visit left a thing, and nobody alone."""
_NEST: Final = re.compile(
    r"\b(?:wasps?|hornets?|bees?|yellow ?jackets?|birds?)\b.*\b(?:(?:one|two|three|four|few|\d) "
    r"(?:units?|roofs?|rows?) (?:over|down|away)|(?:on|at|in) the (?:next|other) (?:unit|roof))\b"
)
_NOT_OURS: Final = re.compile(r"\bnot (?:on |in |at |by )?(?:ours?|this (?:one|unit)|mine|here)\b")
_STUNG: Final = re.compile(
    r"\b(?:stung|sting\w*|bit\w*|swarm\w*|allerg\w*|attack\w*|chas\w*|everywhere|all over|but|"
    r"coming|fly\w*|around (?:me|us|here)|mad|angry|throat|breath\w*|swell\w*|swollen)\b"
)
"""Of a nest they say that what is in it has come here."""
_BEHIND: Final = re.compile(
    r"\bfell (?:asleep|short)\b|\bfell behind (?:with|on) (?:(?:the|his|her|their|our|my) )?"
    r"(?:filters?|paperwork|pms?|maintenance|work|schedule|bills?|payments?|rent|calls?|jobs?|"
    r"orders?|cleaning|inspections?)\b"
)
_LINE: Final = re.compile(
    r"\b(?:overhead|power|high|electric|utility) ?(?:voltage )?(?:line|wire)s?\b"
)
_DISTANCE: Final = re.compile(r"\b(\d{1,4}) ?(?:ft|feet|foot|yards?|yds?)\b")
_FAR_FT: Final = 50
_AT_A_LINE: Final = re.compile(
    r"\b(?:touch\w*|hit\w*|down|f[ae]ll\w*|arc\w*|crane|boom|lift|ladder|swing\w*|spark\w*|sag\w*|"
    r"broke\w*|snapped|lying|laying|live|near|close)\b"
)


def here_and_now(text: str) -> str:
    """What is left of a text without the parts that plainly tell of no danger here and now."""
    told = without_apostrophes(text.lower())
    said = told if _LOST_LEG.search(told) else _INRUSH.sub(" ", told)
    parts = [part for part in _PARTED.split(said) if part.strip()]
    kept = [part for part in parts if not _is_apart(part, said)]
    is_whole = said == told and len(kept) == len(parts)
    return text if is_whole else ", ".join(part.strip() for part in kept)


def _is_apart(part: str, whole: str) -> bool:
    if _TOOL.search(part):
        return not (_WHO_MAY_BE_HIT.search(part) or _HITS.search(whole))
    if _BEHIND.search(part) or _LEFT_BEHIND.search(part):
        return True
    if _NEST.search(part):
        return bool(_NOT_OURS.search(whole)) and not _STUNG.search(whole)
    if _LINE.search(part):
        return _is_far_off(whole)
    if _WANTS_A_BATTERY.search(part):
        return not (_DENIED.search(part) or _SINCE.search(whole) or _has_a_number(whole))
    if _NOW.search(whole):
        return False
    if _NEVER_SOUNDED.search(part):
        return not ("with" in part.split() or _has_a_number(whole))
    if _DUST_OF_A_YEAR.search(part):
        return not _MORE_THAN_DUST.search(whole)
    return _is_of_the_past(part, whole)


def _is_of_the_past(part: str, whole: str) -> bool:
    """Whether it is told of another year, or of a unit next door that was put right."""
    of_a_year, elsewhere = _OF_A_YEAR.search(part), is_next_door(part)
    if not (of_a_year or elsewhere):
        return False
    if _OURS.search(_HEARSAY.sub(" ", part)):
        return False
    is_settled = bool(_SETTLED.search(whole) or (of_a_year and _FORMER.search(part)))
    return is_settled or bool(of_a_year and not _LASTING.search(part))


def _is_far_off(whole: str) -> bool:
    """Whether a line is told to be well away, and nothing is told to be at it."""
    feet = [whole_number(each) or 0 for each in _DISTANCE.findall(whole)]
    return bool(feet) and min(feet) >= _FAR_FT and not _AT_A_LINE.search(whole)


def _has_a_number(said: str) -> bool:
    return not {*said}.isdisjoint(digits)
