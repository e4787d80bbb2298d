"""Dangers told among other words: in a note, beside a proof, in what was found and done.

Each part of what was said is heard for itself, so that words in front or behind hide nothing. What
is told as mended, gone or tested is none: there people write down what they put right.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import partial
from itertools import pairwise
from typing import Final

from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.burner_lit import as_watched
from troubleshoot.safety.hearing.dangers import ANY_DANGER, cried, named, said_of
from troubleshoot.safety.hearing.other_matters import lights_a_burner
from troubleshoot.safety.hearing.unit_words import without_ignition
from troubleshoot.safety.hearing.vocabulary import SPARK
from troubleshoot.safety.hearing.within_limits import beyond_limits
from troubleshoot.safety.hearing.words import clauses, raw_words, spoken_words, telling

_THEN: Final = re.compile(
    r"\b(?:then|when|after(?!\s+bleeding\b)|until|till|while|so|because|but|yet)\b"
    r"|\b(?:now|again)\b(?=\s+\w+\s+\w)"
)
"""Where something else is told: what was denied before it is not denied behind it.

Volts are left after bleeding, and nobody bleeds.
"""
_AND: Final = re.compile(
    r"[,.;:!?]+(?:\s|$)(?!\s*(?:no|none|nope)\W*$)|\s[-/]+\s|\b(?:and|n|also|plus)\b"
)
_MAY_END: Final = frozenset(
    {"as", "at", "by", "each", "every", "for", "from", "if", "in", "on", "once", "since", "with"}
)
"""Before these a danger may have been told whole: smoke out of the box on start."""

_MENDED: Final = frozenset({
    "changed", "cleaned", "corrected", "fixed", "mended", "redone", "reglued", "remade",
    "removed", "renewed", "repaired", "replaced", "resealed", "resoldered", "reterminated",
    "rewired", "sealed", "soldered", "swapped", "tightened",
})  # fmt: skip
_GONE: Final = frozenset({
    "cleared", "gone", "none", "nothing", "stopped",
})  # fmt: skip
_GONE_BAD: Final = frozenset({
    "black", "blue", "breathing", "cherry", "grey", "gray", "limp", "making", "moving", "numb",
    "pale", "red", "sweating", "white",
})  # fmt: skip
"""What somebody or something goes or stops, and is the worse for it."""
_MISSED: Final = frozenset({"guard", "ladder", "lock", "lockout", "rail", "tag"})
"""What protects, and is a danger gone."""
_TESTED: Final = frozenset({
    "check", "checked", "search", "searched", "sweep", "swept", "test", "tested", "testing",
})  # fmt: skip
_SOUND: Final = frozenset({
    "clean", "clear", "fine", "good", "negative", "normal", "ok", "okay", "passed", "passes",
    "sound",
})  # fmt: skip
_WARNS: Final = frozenset({
    "alarm", "alarms", "detector", "detectors", "sensor", "sensors",
})  # fmt: skip
_QUIET: Final = _SOUND | {"quiet", "reset", "silent"}
_SWITCHED: Final = _WARNS | {
    "are",
    "is",
    "now",
    "panel",
    "shut",
    "switched",
    "turned",
    "was",
    "were",
}
"""Straight before "off" they say that it is quiet: an alarm that went off was not."""
_NO_REPAIR: Final = frozenset({"coin", "foil", "gum", "jumper", "nail", "penny", "slug", "tape"})
_NO_FUSE: Final = frozenset({"bolt", "copper", "pipe", "rod", "tube", "tubing", "wire"})
_FOUND: Final = frozenset({
    "found", "had",
})  # fmt: skip
_STILL: Final = frozenset({
    "again", "keeps", "keep", "never", "not", "still",
})  # fmt: skip
_POINTING: Final = frozenset({
    "it", "that", "them", "these", "this", "which",
})  # fmt: skip
_LINKING: Final = frozenset({
    "all", "been", "is", "now", "was", "were",
})  # fmt: skip
_ARTICLES: Final = frozenset({
    "a", "an", "all", "another", "any", "my", "some", "the",
})  # fmt: skip
_LEAST_TOLD: Final = 2
"""Telling words of what is heard in the midst of others: smoke is a word of many tests too."""


def told_among(knowledge: Knowledge, text: str) -> tuple[Hazard, ...]:
    """The hazards told in any part of a text as being there, the gravest first.

    None that a plain reading in it shows to be none.
    """
    heard = partial(_in_parts, knowledge)
    return beyond_limits(knowledge, heard(text), text, heard)


def _in_parts(knowledge: Knowledge, text: str) -> tuple[Hazard, ...]:
    text = without_ignition(knowledge, as_watched(text))
    said, words = as_said(text), raw_words(text)
    found = {h.id: h for part in _THEN.split(said) for h in _told(knowledge, part, said)}
    if words and not is_put_right(words, words, said):
        found.update((hazard.id, hazard) for hazard in cried(knowledge, text))
    return gravest_first(h for h in found.values() if h.id != ANY_DANGER or len(found) == 1)


def _told(knowledge: Knowledge, part: str, whole: str) -> Iterator[Hazard]:
    """What one part tells; nothing that is denied in it."""
    told = {hazard.id for hazard in named(knowledge, part)}
    pieces = [raw_words(piece) for piece in _AND.split(part)] if told else []
    for piece in pieces:
        for words in _windows(piece):
            heard = () if words == ["stops"] else said_of(knowledge, " ".join(words))
            if heard and not (is_put_right(piece, words, whole) or _only_lights(words, whole)):
                yield from (hazard for hazard in heard if hazard.id in told)


def _only_lights(words: list[str], whole: str) -> bool:
    """Whether they tell of a spark, and the whole text of the burner that it lights."""
    said = spoken_words(" ".join(words), str)
    return SPARK in said and lights_a_burner(clauses(whole, str), said)


def pieces_of(said: str) -> list[list[str]]:
    """The words of each part of what was said."""
    return [raw_words(piece) for part in _THEN.split(said) for piece in _AND.split(part)]


def _windows(piece: list[str]) -> Iterator[list[str]]:
    """A piece, and what may have been told in the midst of it."""
    ends = [i for i, word in enumerate(piece) if word in _MAY_END] + [len(piece)]
    for start in range(len(piece)):
        for end in ends:
            words = piece[start:end]
            is_whole = words == piece
            if is_whole or len(telling(spoken_words(" ".join(words), str))) >= _LEAST_TOLD:
                yield words


def is_put_right(piece: list[str], words: list[str], whole: str) -> bool:
    """Whether a danger is told as mended, gone or looked for: in its piece, or right behind it."""
    said = {*piece}
    if said & _STILL:
        return False
    if (said & _TESTED and said & _SOUND) or _has_gone(piece) or _is_quiet(piece):
        return True
    if _is_makeshift(piece):
        return False
    return _is_mended(piece, words) or _is_mended_later(said, whole)


def _has_gone(piece: list[str]) -> bool:
    """Whether it is told as gone or stopped; not a lock that is gone, nor breath that stopped."""
    gone = {a for a, b in pairwise([*piece, ""]) if a in _GONE and b not in _GONE_BAD}
    return bool(gone - ({"gone"} if _MISSED & {*piece} else set()))


def _is_quiet(piece: list[str]) -> bool:
    """Whether something that warns is told as quiet or switched off."""
    said = {*piece}
    if said.isdisjoint(_WARNS) and not said >= {"fire", "panel"}:
        return False
    is_off = any(a in _SWITCHED and b == "off" for a, b in pairwise(piece))
    return is_off or not said.isdisjoint(_QUIET)


def _is_makeshift(piece: list[str]) -> bool:
    """Whether what was put in its place is none: the fuse was replaced with a copper tube."""
    by = next((i for i, word in enumerate(piece) if word in ("with", "by")), len(piece))
    put = {*piece[by + 1 :]}
    return bool(put & _NO_REPAIR) or ("fuse" in piece[:by] and bool(put & _NO_FUSE))


def _is_mended(piece: list[str], words: list[str]) -> bool:
    """Whether the thing itself was mended: burnt wire replaced, replaced the burnt wire.

    Where another thing was, the danger is told of what came of it: replaced fuse box is on fire.
    """
    at = next(i for i in range(len(piece)) if piece[i : i + len(words)] == words)
    before = [word for word in piece[:at] if word not in _ARTICLES]
    inside = [word for word in words if word not in _ARTICLES]
    is_behind = not _MENDED.isdisjoint(piece[at:]) and _MENDED.isdisjoint(inside[:1])
    return is_behind or not _MENDED.isdisjoint(before[-1:] or inside[:1])


def _is_mended_later(said: set[str], whole: str) -> bool:
    """Whether a later piece says that it was mended: found a gas leak, fixed it."""
    pieces = pieces_of(whole)
    at = next((i for i, piece in enumerate(pieces) if said <= {*piece}), len(pieces))
    for piece in pieces[at + 1 :]:
        if not _MENDED.isdisjoint(piece) and _STILL.isdisjoint(piece):
            same = {*piece} & (_POINTING | {word for word in said if word not in _ARTICLES})
            if same or said & _FOUND or not {*piece} - _MENDED - _LINKING:
                return True
        if (
            said.isdisjoint(_WARNS)
            and _has_gone(piece)
            and not {*piece} - _GONE - _POINTING - _LINKING
        ):
            return True
    return False
