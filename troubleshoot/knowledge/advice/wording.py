"""One plain form of a text, so that case, hyphens and spelling do not decide what is seen."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.advice.disguise import undisguised
from troubleshoot.outside.look_alike import as_seen

ANY: Final = r"(?:\x20\S+)"
"""One word, whatever it is, after a space."""

_CLAUSE_END: Final = re.compile(r"[.;:!?]+(?=\s|$|[)\"'])|\s[-\u2013\u2014]+\s|\n\s*\n")
_APOSTROPHES: Final = str.maketrans({"\u2019": "'", "\u2018": "'", "\u02bc": "'"})
_WORD: Final = re.compile(r"\d+(?:\.\d+)?|[^\W_]+|,")
_SHORT_FORMS: Final = (
    (re.compile(r"\bcan't\b|\bcannot\b"), "can not"),
    (re.compile(r"\bwon't\b"), "will not"),
    (re.compile(r"n't\b"), " not"),
    (re.compile(r"'(?:s|re|ll|ve|d|m)\b"), ""),
    (re.compile(r"(\d)\s*(?:a|amps?|amperes?)\b"), r"\1 amp"),
    (re.compile(r"\bamperes?\b|\bamps\b"), "amp"),
)
_SPELLINGS: Final = (
    (re.compile(r"\b(high|low)(pressure|limit)"), r"\1 \2"),
    (re.compile(r"\b(\w*(?:erg|ur|ral|ut|ulf))is(e[ds]?|ing)\b"), r"\1iz\2"),
    (re.compile(r"\b(col|od|vap|fav|lab|behavi)our"), r"\1or"),
    (re.compile(r"\bearth(?=(?:s|ed|ing)?\b)"), "ground"),
    (re.compile(r"\bspanner"), "wrench"),
    (re.compile(r"\b(?:a?round)\b"), "round"),
    (re.compile(r"\bby pass"), "bypass"),
    (re.compile(r"\b(cut|roll|lock) (outs?)\b"), r"\1\2"),
    (re.compile(r"\bthermal cut off"), "thermal cutoff"),
    (re.compile(r"\bdisc\b"), "disk"),
    (re.compile(r"\bgages?\b"), "gauge"),
    (re.compile(r"\bfreezestats?\b"), "freeze switch"),
)


_FORBIDDING_HEADS: Final = ("never", "do not", "forbidden", "illegal", "not allowed", "must not")


def clauses(text: str) -> list[str]:
    """Split a text where sentences and their halves end; each clause is words with one space.

    A comma stays, as a word of its own. A head that ends in a forbidding word and a colon
    ("Never: ...") stays with what it forbids.
    """
    text = undisguised(as_seen(text))
    parts: list[str] = []
    joined = ""
    start = 0
    for end in _CLAUSE_END.finditer(text):
        part = _plain(text[start : end.start()])
        start = end.end()
        head = end.group().startswith(":") and part.endswith(_FORBIDDING_HEADS)
        joined = f"{joined} {part}".strip()
        if not head:
            parts.append(joined)
            joined = ""
    parts.append(f"{joined} {_plain(text[start:])}".strip())
    return [part for part in parts if part]


def gap(most: int) -> str:
    """A pattern for a space, or for up to `most` words between spaces."""
    return rf"{ANY}{{0,{most}}}?\x20"


def compiled(pattern: str) -> re.Pattern[str]:
    """Compile a pattern in which every plain space also lets one word in ("take it right out")."""
    return re.compile(r"\b" + pattern.replace(" ", r"(?:\x20\w+)??\x20"))


def deeds(*verbs: str) -> str:
    """A pattern for verbs as they command or as they are named: jumper, bridge, bridging."""
    return "(?:" + "|".join(_command(verb) for verb in verbs) + ")"


def _command(verb: str) -> str:
    first, space, particle = verb.partition(" ")
    named = f"{first[:-1]}(?:e|ing)" if first.endswith("e") else f"{first}(?:{first[-1]}?ing)?"
    return f"{named}{space}{particle}"


def one_of(*terms: str) -> str:
    """A pattern for any of some terms, the longest first; two words may stand inside a term."""
    longest_first = sorted(terms, key=len, reverse=True)
    return "(?:" + "|".join(term.replace(" ", gap(2)) for term in longest_first) + ")"


def _plain(text: str) -> str:
    lower = text.translate(_APOSTROPHES).casefold()
    for pattern, instead in _SHORT_FORMS:
        lower = pattern.sub(instead, lower)
    plain = " ".join(_WORD.findall(lower))
    for pattern, instead in _SPELLINGS:
        plain = pattern.sub(instead, plain)
    return plain
