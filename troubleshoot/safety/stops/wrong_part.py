"""Parts and ways that belong in no repair: a bigger fuse, a slug, a smaller contactor, tape.

What is larger than the circuit's protects nothing (NEC 240.4); what is smaller than it carries
burns again.
"""

from __future__ import annotations

import re
from typing import Final

_WRONG_PART: Final = re.compile(
    # Larger than the circuit's (NEC 240.4), or thinner wire.
    r"\b(?:with|for|by|to|in|fitted|installed|used?|put|set)(?: (?:an?|the|some|in|much))* "
    r"(?:bigger|larger|heavier|oversized?|higher|stronger|hotter|thinner|smaller|lighter|finer)\b"
    r"|\b(?:with|for|by|to) (?:an? )?(?:[1-4]|one)[- ](?:pole|size) (?:smaller|less|short)\b"
    r"|\b(?:upsized|uprated)\b|\b(?:an?|one|two|three|next|[0-9]) (?:gauges?|sizes?) "
    r"(?:up|bigger|larger|higher|smaller|thinner)\b"
    r"|\b(?:with|by|used?|put|fitted|ran|run|pushed|spliced|as)\b(?: \w+){0,5}? "
    r"(?:(?:garden|radiator|heater|rubber|water|air|fuel|vacuum|washing machine|plastic|vinyl|"
    r"nylon) ?(?:hoses?|tub(?:e|es|ing)|pipes?|lines?)|pvc|pex|(?:lamp|extension|zip) cords?|"
    r"(?:speaker|bell|telephone|phone|coat hanger) ?wires?|coat ?hangers?)\b"
    r"|\b(?:contact(?:or)?s?|terminals?|lugs?|relays?) with (?:some |a bit of )?(?:oil|"
    r"grease|gasoline|water|a file|sandpaper)\b"
    r"|\b(?:twisted|tied|taped)(?: \w+){0,4} together\b"
    r"|\b(?:with|by) (?:an? |some )?(?:piece|bit|scrap|strip) of (?:\w+ )?(?:pipe|tube|tubing|"
    r"metal|foil|tin|wood|plastic|rubber|cardboard)\b"
    # What has to breathe.
    r"|\b(?:capped|plugged|blocked|stuffed|covered|closed)(?: off)?(?: \w+){0,3} "
    r"(?:vents?|breathers?|relief|louvers?|combustion air)\b(?! (?:line|pipe|joint)s?\b)"
)
_AMPS: Final = r"[1-9][0-9]+(?= ?(?:a|amps?)\b| (?:\w+ )?(?:fuse|breaker)\b)"
_FILLS: Final = r"(?: (?:an?|the|new|some|single|[1-3]|one|two|three|[1-3]?[- ]?poles?))*"
_SWAPPED: Final = r"(?:chang|swap|replac|exchang|trad|switch|upgrad|took|taken|pull|remov)\w*"
_PUT_IN: Final = (
    rf"(?: \w+){{0,3}}? (?:for|with|by|to|(?:and )?(?:put|fitted|installed)(?: in)?){_FILLS} "
    r"(?P<now>[1-9][0-9]+)(?=s?\b)(?! ?(?:v|volts?|awg|gauge|ga|in|inch|mfd|uf|va|min)\b)"
)
_FOR_MORE: Final = (
    re.compile(rf"\b{_SWAPPED}(?: \w+){{0,4}}? (?P<was>{_AMPS}){_PUT_IN}"),
    re.compile(rf"\b(?P<was>{_AMPS})(?: \w+){{0,3}} (?:was |were )?{_SWAPPED}{_PUT_IN}"),
)
"""Out came so many amperes, in went so many: changed the 30 A fuse for a 60."""
_UP_FROM: Final = re.compile(
    r"\b(?P<now>[1-9][0-9]+) ?(?:a|amps?)\b(?: \w+){0,2} from(?: \w+){0,2}? "
    r"(?P<was>[1-9][0-9]+) ?(?:a|amps?)\b"
)
_IN_PLACE_OF: Final = re.compile(
    r"\b(?P<now>[0-9]+) ?(?:a|amps?)\b[^.;]{0,25}\b(?:where|instead of|in place of|for)"
    r"(?: \w+){0,2}? (?P<was>[0-9]+)\b(?! ?(?:gauge|ga|awg|in|min)\b)"
)
_MORE_AMPS: Final = re.compile(
    r"\b(?:more|extra|additional|higher) amp(?:s|ere|eres|age)?\b"
    r"|\bamp(?:s|eres)? (?:more|extra|higher|bigger|larger|above|over)\b"
)
_DRAWN: Final = re.compile(r"\b(?:draw\w*|drew|pull(?:s|ing)|amped|read\w*|current|load\w*)\b")
"""Amperes that a motor takes, and no part's size."""
_POLES: Final = r"(?P<{}>[1-4]|one|single|two|double|three|four)[- ]poles?"
_FEWER: Final = re.compile(
    rf"\b{_SWAPPED}(?: \w+){{0,4}}? {_POLES.format('was')}[^.;]{{0,30}}?\b(?:for|with|by|to) "
    rf"(?:an? |the |new )*{_POLES.format('now')}"
)
_COUNT: Final = {"one": 1, "single": 1, "two": 2, "double": 2, "three": 3, "four": 4}
_SMALLER: Final = re.compile(
    rf"\b{_SWAPPED}(?: \w+){{0,3}}? (?P<was>[1-9][0-9]+) ?(?:a|amps?) (?:\w+ )?"
    rf"(?:contactor|relay|switch|disconnect)s? (?:for|with|by|to){_FILLS} "
    r"(?P<now>[1-9][0-9]+)\b"
)
_SLUG: Final = re.compile(
    r"(?<!the )\b(?:copper|brass|steel|metal|solid|dummy|blank) (?:slugs?|links?|rods?|fuses?)\b"
    r"|(?<!the )\bslugs?\b(?! of\b)"
)
_FOR_A_FUSE: Final = re.compile(
    r"\b(?:fuses?|fuse ?holders?|fuse ?clips?)\b[^.;,]{0,20}\b(?:with|by|for) "
    r"(?:(?:an?|some) )?(?:(?:bit|piece|strip|length) of (?:\w+ ){0,2}?)?"
    r"(?:nails?|bolts?|screws?|coins?|penn(?:y|ies)|wires?|foil|copper|links?|rods?|pins?|bars?)\b"
    r"|\b(?:nails?|bolts?|screws?|coins?|penn(?:y|ies)|wires?|foil|copper \w+|rods?) "
    r"(?:\w+ )?(?:in|into|across|for|as) (?:the |a |its )?fuse(?: ?(?:holder|clip|block))?s?\b"
)
_TAKEN_OUT: Final = re.compile(
    r"\b(?:found|had|removed|pulled|took|taken|swapped|replaced|changed)"
    r"(?: (?!with\b|by\b|for\b)\w+){0,3} $"
)
_CAME_BROKEN: Final = re.compile(
    r"\b(?:crack|damag|broke|dent|bent|split|smash|crush)\w* (?:in|during|by|on) (?:the |its )?"
    r"(?:shipping|shipment|transit|transport|deliver\w*|way|arrival|crate|handling)\b"
    r"|\b(?:fitted|used|put|installed)\b[^.;,]{0,25}\banyways?\b"
    r"|\b(?:came|arrived|delivered|turned up)(?: \w+){0,2}? (?:an? )?(?:crack|damag|broken|dent|"
    r"bent|split|hole|smash|crush|defect)\w*"
)
_GROUND: Final = (
    r"(?:(?:equipment|cabinet|safety|green) )?(?:ground(?:ing)?|earth(?:ing)?|bond(?:ing)?)\b"
    r"(?! (?:faults?|shorts?|path|screws?))(?: (?:wire|lead|conductor|strap|jumper|cable))?"
)
_UNGROUNDED: Final = re.compile(
    r"\b(?:disconnected|lifted|cut(?: off| out)?|snipped|unhooked|unlanded|removed|dropped)"
    rf"(?: off)? (?:the |its |that )?{_GROUND}(?! to\b)(?! \w+ to\b)"
    rf"|\b(?:moved|took|pulled|taken|swung|slid)(?: off)? (?:the |its |that )?{_GROUND} "
    r"(?:off|away|out|loose|aside|from)\b"
)
"""The metal then has no way back but whoever touches it (NEC 250.4)."""
_WIPED: Final = re.compile(
    r"\b(?:wip|dri|dabb|mopp|dry)\w*\b[^.;,]{0,25}\b(?:rags?|towels?|cloths?|sleeve|sun|shirt|paper|"
    r"leaf blower|itself|by hand)\b"
)

WRONG_PART: Final = (
    "That is no part or way that belongs there, and makes nothing safe: have what the data plate "
    "or the maker names fitted first."
)


def why_wrong_part(part: str) -> str:
    """Why a part of a deed, in small letters, is none that belongs; empty where it may be."""
    wrong = _WRONG_PART.search(part) or _WIPED.search(part) or _CAME_BROKEN.search(part)
    wrong = wrong or _UNGROUNDED.search(part) or _FOR_A_FUSE.search(part)
    return WRONG_PART if wrong or _is_slug(part) else ""


def is_of_another_size(said: str) -> bool:
    """Whether a protection is larger than before, or a switch smaller, however it is put."""
    more = _MORE_AMPS.search(said)
    if more and not _DRAWN.search(said):
        return True
    swapped = [found for pattern in _FOR_MORE for found in pattern.finditer(said)]
    if swapped:
        larger = any(int(found["now"]) > int(found["was"]) for found in swapped)
    else:
        larger = any(int(at["now"]) > int(at["was"]) for at in _IN_PLACE_OF.finditer(said))
    larger = larger or any(int(at["now"]) > int(at["was"]) for at in _UP_FROM.finditer(said))
    fewer = any(_poles(at["now"]) < _poles(at["was"]) for at in _FEWER.finditer(said))
    smaller = any(int(at["now"]) < int(at["was"]) for at in _SMALLER.finditer(said))
    return larger or fewer or smaller


def _poles(said: str) -> int:
    return _COUNT[said] if said in _COUNT else int(said)


def _is_slug(part: str) -> bool:
    return any(not _TAKEN_OUT.search(part[: at.start()]) for at in _SLUG.finditer(part))
