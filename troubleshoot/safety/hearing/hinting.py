"""Whether words hint at a danger that no hazard's own words name.

What is denied, mended, gone or tested is no hint, nor is what answers the question in hand.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from typing import Final

from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.among_words import is_put_right, pieces_of
from troubleshoot.safety.hearing.everyday import EVERYDAY
from troubleshoot.safety.hearing.hinting_words import (
    BODY,
    HARMLESS,
    HINTING,
    HINTS,
    IN_AIR,
    JOINED,
    LEAST_PPM,
    LEAST_VOLTS,
    MOST_AT_INLET,
    MOST_AT_MANIFOLD,
    MOST_VOLTS,
    OVER_INLET,
    OVER_MANIFOLD,
    OWNED,
    PARTS_IF_OWNED,
    VOLTS,
    Hint,
    short_of,
)
from troubleshoot.safety.hearing.typing_errors import one_error
from troubleshoot.safety.hearing.vocabulary import DENYING, MAKING_A_THING, NAMED_SO, THINGS, stem
from troubleshoot.safety.hearing.words import raw_words

_PLAIN_NUMBER: Final = re.compile(
    r"[-+<>~]?\s*[\d.,/]+(?:e[-+]?\d+)?\s*(?:[^\W\d_]{1,6}|%)?(?:\s[^\W\d_]{1,6})?"
)
"""A number with its unit, and nothing else."""
_PARTS_OF_A_MILLION: Final = frozenset({"ppm", "parts"})
_DENYING: Final = DENYING | {"isnt", "wasnt", "doesnt", "didnt", "arent", "wont", "hasnt", "havent"}


_SAID_SO: Final = (
    (re.compile(r"\bpins (?:and|n|&) needles\b"), "tingling"),
    (
        re.compile(r"\bgone (?=(?:all |very )?(?:pale|gr[ae]y|white|blue|limp|numb|quiet)\b)"),
        "turned ",
    ),
    (
        re.compile(
            r"\b\d+ (?:flashes|flash)\b(?=,? (?:and a pause|(?:ignition |soft |hard )?lockout|code|"
            r"fault|(?:open )?limit|pressure switch|no flame|flame fail\w*)\b)"
        ),
        "code",
    ),
)
"""What would fall apart at its "and"; who has gone pale is not gone; 3 flashes, lockout: a code."""
_PRESSURE: Final = re.compile(
    r"(?<![\d.])(?P<count>\d+(?:\.\d+)?) ?(?P<unit>\"|in(?:ch(?:es)?|wc)?\b|iwc\b|wc\b|psi\b)"
)
_INCHES_IN_A_PSI: Final = 27.7
_LEAST_MISTYPED: Final = 6
"""Letters of a word in which one typing error is seen through."""


def hints(text: str, own: Iterable[str] = ()) -> bool:
    """Whether any part of a text hints at a danger.

    `own`: the question in hand and its answers; what says nothing but words of one of them is its
    answer.
    """
    said = {stem(word) for word in raw_words(text)}
    if any(said <= {stem(word) for word in raw_words(answer)} for answer in own):
        return False
    return any(True for _ in _met(text))


def hinted(text: str) -> frozenset[str]:
    """The hazards that the hints in a text speak of, where they do."""
    return frozenset(hint.hazard for hint in _met(text) if hint.hazard)


def _met(text: str) -> Iterator[Hint]:
    if _PLAIN_NUMBER.fullmatch(text.strip()):
        return
    whole = as_said(text)
    for said_so, plainly in _SAID_SO:
        whole = said_so.sub(plainly, whole)
    whole = _PRESSURE.sub(_how_high, whole)
    denies_a_row = False
    for piece in filter(None, pieces_of(whole)):
        goes_on = denies_a_row and "or" in piece
        met = [] if goes_on else _met_in(piece)
        if not is_put_right(piece, piece, whole):
            yield from met
        denies_a_row = stem(piece[0]) in DENYING


def _how_high(found: re.Match[str]) -> str:
    """What a pressure is over; the number as it stands where it is over nothing."""
    inches = float(found["count"]) * (_INCHES_IN_A_PSI if found["unit"] == "psi" else 1)
    if inches > MOST_AT_INLET:
        return f"{OVER_MANIFOLD} {OVER_INLET}"
    return OVER_MANIFOLD if inches > MOST_AT_MANIFOLD else found.group()


def _met_in(piece: list[str]) -> list[Hint]:
    said = _as_told(piece)
    is_denied = not _DENYING.isdisjoint(said)
    return [hint for hint in HINTS if hint.denied_too or not is_denied if _is_met(hint, said)]


def _is_met(hint: Hint, said: frozenset[str]) -> bool:
    return hint.unless.isdisjoint(said) and not any(map(said.isdisjoint, hint.groups))


def _as_told(piece: list[str]) -> frozenset[str]:
    """The stems of a piece, what belongs together as one, and what its numbers are."""
    found: set[str] = set()
    for index, (word, after) in enumerate(pairwise([*piece, ""])):
        short, number = short_of(word), whole_number(word)
        if short not in MAKING_A_THING or stem(after) not in NAMED_SO | THINGS:
            found.add(_meant(word))
        if (together := JOINED.get((word, after))) is not None:
            found.add(short_of(together))
        if short in OWNED and stem(after) in PARTS_IF_OWNED:
            found.add(BODY)
        if number is not None and LEAST_VOLTS <= number <= MOST_VOLTS:
            found.add(VOLTS)
        if number is not None and _is_in_air(number, piece[index + 1 :]):
            found.add(IN_AIR)
    return frozenset(found)


def _is_in_air(number: int, behind: list[str]) -> bool:
    """Whether so much of a gas is in the air, in parts of a million or a share of what burns."""
    if not _PARTS_OF_A_MILLION.isdisjoint(behind[:1]):
        return number >= LEAST_PPM
    return number > 0 and "lel" in behind


@lru_cache(maxsize=1_000)
def _meant(word: str) -> str:
    """A word, or that of the net which was mistyped by a letter, by its stem."""
    short = short_of(word)
    if len(short) < _LEAST_MISTYPED or short in HINTING | HARMLESS or word in EVERYDAY:
        return short
    near = (each for each in sorted(one_error(short) & HINTING) if each[0] == short[0])
    return next(near, short)
