"""Which parts somebody says were put right before: already replaced the contactor, changed the cap.

What is still to be done, was not done or is only asked for is no repair, nor is a part alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.text import as_said

_DEEDS: Final = (
    r"(?:replaced|changed|swapped|renewed|rebuilt|repaired|cleaned|washed|rewired|fitted|"
    r"installed|freed|tightened|unclogged|unblocked|straightened|reconnected|"
    r"fixed(?= (?:the|that|an?|my|our|his|her)\b)|"
    r"put (?:in|on|a new|new)|put(?= (?:an? )?(?:fresh|[0-9]))|"
    r"(?:dropped|hung|mounted|popped|slapped|stuck|threw)(?= (?:in )?(?:(?:an?|some|both|two) )?"
    r"(?:brand )?(?:new|fresh)\b)|"
    r"(?:ran|pulled)(?= (?:a |some )?new\b)|"
    r"(?:closed|opened)(?= (?:up )?(?:[a-z]+ ){0,3}(?:dampers?|grill?es?|louvers?|registers?)\b))"
    r"(?: out| in| on| up)?"
)
_WAS: Final = r"(?:(?:was|were|is|are|has|have|had|been|got|already|just|all) )*"
_NOT_DONE: Final = re.compile(
    r"\b(?:not|never|no|nobody|nothing|need\w*|should|must|wants?|wanted|to be|going to|will|"
    r"would|(?:was|were|has|have|did|do|could|would|should|is|are|ca)n'?t|if|before (?:i|we)|"
    r"cannot|could|may|"
    r"might|wrong|badly)\b"
)
"""Beside these words nothing is said to be put right."""
_PARTED: Final = re.compile(r"[,;:!?()]|\.(?![0-9])|\b(?:but|then|because|so|though|although)\b")
_ENDS: Final = frozenset(
    """again ago already and are at back because by comes didnt doesnt dont down earlier for from
    goes had has have he i in is isnt it its keeps last like me no nobody nothing now off on once
    out same she since still sure that they this today twice us was we went were when while with
    months weeks wont years yesterday""".split()  # noqa: SIM905
)
"""Words that no part's name goes on beyond."""
_LOOKS: Final = frozenset(
    {"bright", "clean", "dry", "fine", "good", "nice", "ok", "okay", "shiny", "tight"}
)
"""What a new part is like as it is looked at: new faces clean is a finding, and no repair."""
_ALONG: Final = re.compile(
    r"\b(?:adjusted|greased|lubed|lubricated|oiled|retightened|snugged|tightened|torqued|wiped)\b"
)
"""Done along with a repair that was told before it; alone it may be one."""
_IDLE: Final = frozenset(
    """a all an another any both brand couple different fresh her his my new of old one our over
    owner pair said say says set some somebody spare tells tenant the their to told two
    whole""".split()  # noqa: SIM905
)
"""Words that name no part."""
_ASIDE: Final = frozenset(
    """ago already also and been by day days did earlier for guy has have he i in it its just last
    maintenance man month months on she somebody someone the them there they times today tech twice
    we week weeks were year yesterday""".split()  # noqa: SIM905
)
"""Words beside a repair that tell no complaint: by whom, and when."""
_SEASONS: Final = (
    r"(?:spring|summer|fall|autumn|winter|january|february|march|april|may|june|july|august|"
    r"september|october|november|december|(?:19|20)[0-9]{2})\b"
)
_IN_A_SEASON: Final = re.compile(rf"(?<!\bput) in (?:(?:the|early|late|mid) )*{_SEASONS}")
"""When it was, and no part: the sensor was replaced in spring. One may put in a spring."""
_TO_NOTHING_ELSE: Final = (
    r"(?!(?: out| in| on| up)? (?:the|an?|his|her|its|my|our|their|your|both|some|that)\b)"
)
"""Behind a deed they begin what it was done to: the gas company changed the meter."""
_PART_BEHIND: Final = (
    re.compile(rf"\b{_DEEDS} (?P<what>.+)"),
    re.compile(r"^\s*(?:(?:got|has|have|with) )?(?:a )?(?:brand )?new (?P<what>.+)"),
)
"""Replaced the contactor; new contactor."""
_FORMS: Final = (
    _PART_BEHIND[0],
    re.compile(rf"(?P<what>.+?) {_WAS}{_DEEDS}{_TO_NOTHING_ELSE}(?: |$)"),
    re.compile(r"(?P<what>.+?) are (?:all )?(?:brand )?new\b"),
    re.compile(r"(?:^.*\band )?(?P<what>.+?) is (?:all )?(?:brand )?new\b"),
    _PART_BEHIND[1],
)
_OF_IT: Final = re.compile(
    rf"^\s*(?:(?:i|just|so|we) )*{_DEEDS} (?:it|them|ones?|(?:an? )?new (?:ones?|set))\b"
)
_READ_ON_IT: Final = re.compile(
    r"^\s*(?:(?:got|has|have|with|the) )*(?:a )?(?:brand )?new (?:[a-z-]+ ){1,4}"
    r"(?:at|draws?|is|measured|measures?|pulls?|reading|reads?|shows?|tested|tests) "
    r"(?:at |about )?\.?[0-9]"
)
"""What is read on a new part tells its number, and no repair: new cap reads 10.1."""
_TOLD_OF: Final = re.compile(
    r"^\s*(?:the )?(?P<what>[a-z0-9 -]+?) (?:had|has|is|are|looked|was|were)\b"
)
"""A deed at what was told of just before it: damper was stuck closed, freed it up."""
_OF_NOW: Final = re.compile(r"\b(?:just now|right now|a minute ago|while i was here)\b")
_OF_BEFORE: Final = re.compile(
    r"\b(?:already|ago|before|earlier|last|yesterday|previous\w*|months?|weeks?|days?|years?|"
    r"somebody|someone|they|he|she|other (?:guy|tech)|maintenance)\b"
)
_TOOLS: Final = frozenset(
    """clamp clamps drill flashlight gauge gauges glove gloves goggles hammer leads meter meters
    multimeter multimeters pliers probe probes screwdriver sniffer sniffers tester testers
    thermometer thermometers tool tools torch visor wrench""".split()  # noqa: SIM905
)
"""Whose they are: they are swapped, and get new batteries, and no unit is put right by it."""
_OF_NO_UNIT: Final = _TOOLS | frozenset(
    """apprentice building carpet ceiling clothes company contractor crew customer day deck floor
    guardrail gutter guy hatch helper job ladder manager mechanic mind owner paint parapet places
    rail roof roofing seats shift skylight store super tech tenant tenants truck utility wall walls
    week""".split()  # noqa: SIM905
)
"""What may be new, and whoever may, without any unit being put right."""
_IN_A_TOOL: Final = re.compile(
    rf"\b(?:for|in|inside|of|on) (?:\w+ ){{0,2}}(?:{'|'.join(sorted(_TOOLS))})\b"
)
"""A fuse in the meter is none of the unit's."""
_OF_A_SIZE: Final = (
    r"(?:a|amps?|f|hp|in|inch|kw|lbs?|mfd|mm|ohms?|poles?|rows?|tons?|uf|v|va|volts?|w|watts?)"
)
_SIZE: Final = re.compile(
    rf"\b[0-9][0-9./x-]*(?:[ -]?{_OF_A_SIZE})\b|"
    r"\b[0-9]+(?:\.[0-9]+)?(?:[/+x][0-9]+(?:\.[0-9]+)?)+\b|"
    r"\b[0-9]+\.[0-9]+\b|\b(?:208|230|240|370|440|460|480)\b"
)
"""How large a part is: 30 amp, 3 pole, a 40/5 can, for 440 volts."""
_PLACE: Final = re.compile(
    r"(?<=[a-z])(?: (?:on|of|at))?(?: (?:circuit|ckt|comp|compressor|no|number|stage|unit))? "
    r"[a-z]?[0-9][0-9/x.-]*$"
)
"""Where on the unit it was put right, behind the part: the drier c2."""
_MOST: Final = 4
"""Words of a part's name."""
_PRONOUNS: Final = frozenset(
    {"it", "that", "this", "them", "ones", "everything", "something", "stuff", "test"}
    | {"none", "nothing", "anything", "nobody", "mind", "about"}
)
"""None of these is a part, nor goes one on beyond it: it was put on test, none fitted."""


@frozen
class Told:
    """A repair that is told of: the part, and the clause in which it is told."""

    part: str
    clause: str


def is_told_of_now(words: str) -> bool:
    """Whether a repair is told as of this moment."""
    return _OF_NOW.search(_plain(words)) is not None


def is_told_of_before(words: str) -> bool:
    """Whether a repair is told as of another day, or as of somebody else."""
    said = _plain(words)
    return any(of.search(said) is not None for of in (_OF_BEFORE, _IN_A_SEASON))


def repairs_told(words: str) -> tuple[Told, ...]:
    """The parts that somebody says were put right, in the order in which they are told."""
    clauses = _PARTED.split(_timeless(words))
    found: list[Told] = []
    for before, clause in zip(["", *clauses], clauses, strict=False):
        if not (found and _ALONG.search(clause)):
            found += [*_in_clause(clause)] or _at_it(before, clause)
    return tuple({told.part: told for told in found}.values())


def besides(words: str, told: tuple[Told, ...]) -> str:
    """What is said besides the repairs: the complaint, where it is told along with them."""
    rest = _timeless(words)
    for each in sorted(told, key=lambda each: -len(each.clause)):
        rest = rest.replace(each.clause, " ")
    return " ".join(word for word in re.findall(r"[a-z0-9']+", rest) if word not in _ASIDE)


def _plain(words: str) -> str:
    return " ".join(as_said(words).split())


def _timeless(words: str) -> str:
    """What was said, without the season or the month of it."""
    return _IN_A_SEASON.sub("", _plain(words))


def _in_clause(clause: str) -> Iterator[Told]:
    is_no_repair = _IN_A_TOOL.search(clause) or _READ_ON_IT.match(clause)
    if is_no_repair or _NOT_DONE.search(_before_the_end(clause)):
        return
    for form in _FORMS:
        found = form.search(clause)
        said = "" if found is None else found["what"]
        parts = tuple(_parts(said if form in _PART_BEHIND else " ".join(said.split()[-_MOST:])))
        if found is not None and parts:
            is_behind = form in _PART_BEHIND
            if is_behind and " new " in f" {clause}" and parts[-1].split()[-1] in _LOOKS:
                return
            begin = 0 if is_behind else found.start("what")
            end = _end(clause, parts[-1]) if is_behind else found.end()
            yield from (Told(part, clause[begin:end]) for part in parts)
            return


def _at_it(before: str, clause: str) -> Iterator[Told]:
    """What was put right at the thing that the clause before tells of."""
    told_of = _TOLD_OF.match(before)
    if told_of is not None and _OF_IT.match(clause) and not _NOT_DONE.search(clause):
        yield from (Told(part, clause) for part in _parts(told_of["what"]))


def _before_the_end(clause: str) -> str:
    """A clause up to what is said of the unit behind it: still wont light."""
    return re.split(r"\b(?:still|and its?|now|same)\b", clause)[0]


def _parts(said: str) -> Iterator[str]:
    """The names of parts that stand first in a phrase, joined by and."""
    for phrase in re.split(r"\band\b|/|&|\+", _SIZE.sub(" ", said)):
        phrase = _PLACE.sub("", f" {phrase}".rstrip())
        words = re.findall(r"[a-z0-9-]+", phrase)
        if words and _ALONG.fullmatch(words[0]):
            return
        own: list[str] = []
        for word in words:
            if word in _ENDS or word in _PRONOUNS:
                break
            if word not in _IDLE:
                own.append(word)
        if not own or len(own) > _MOST or not own[-1].isalpha() or own[-1] in _OF_NO_UNIT:
            return
        yield " ".join(own)
        if len(own) < len([w for w in words if w not in _IDLE]):
            return


def _end(clause: str, part: str) -> int:
    """Where the last word of a part's name ends."""
    return clause.rfind(part.split()[-1]) + len(part.split()[-1])
