"""What is said cut into clauses, and what each affirms and denies, by the stems of its words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Final

from troubleshoot.dialogue.by_word import WRITTEN_OUT
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Outcome
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety.hearing.words import raw_words

_DROPPED_G: Final = re.compile(r"\b([a-z]{3,}(?<!a))in\b")
"""No verb ends in a: drain, again."""
_LEG: Final = re.compile(r"\b(?:[lt]|(?:leg|phase|pole) ?#?)[123]\b")
_CLAUSE: Final = re.compile(r"[,;:.!]|\bbut\b")
_AND: Final = re.compile(r"\b(?:and|n)\b|&")
_NOTS: Final = dict.fromkeys((*WRITTEN_OUT, "arent", "cannot", "never", "without"), "not")
_OF_ALL: Final = frozenset({"no", "nothing", "none", "neither", "nobody"})
"""They deny what a list behind them goes on with: no cracks, frays."""
DENYING: Final = _OF_ALL | {"not"}
_ELSE: Final = frozenset({"or", "nor"})
_OWN_BEGINNING: Final = frozenset({"it", "its", "is", "are", "just", "only", "they", "got", "has"})
"""What begins a clause of its own behind a denial: no cracks, it's loose."""
FILLING: Final = frozenset(
    """a all an and any are at both do does em for got has have here i in is it its just lays laying
    lying lies nope now of on only or sits sitting that the them there theres these they theyre this
    those to with yep yes""".split()  # noqa: SIM905
)
"""Words that name no outcome; a terminal's single letter neither."""
SOUND: Final = frozenset({"fine", "good", "nice", "ok", "okay", "right", "well"})
"""Of whatever they are said, it is as it should be."""

Stems = frozenset[str]
Stemmed = Callable[[Iterable[str]], tuple[str, ...]]


@frozen
class Clause:
    """What a clause affirms and what it denies, by stems; the first of what is denied.

    `sound`: it says of something that it is as it should be.
    """

    said: Stems = frozenset()
    denied: Stems = frozenset()
    first: str = ""
    sound: bool = False


@frozen
class Text:
    """What an outcome's words and text affirm, and each thing that they deny."""

    said: Stems
    denied: tuple[Clause, ...]

    def supports(self, clause: Clause, names: Stems) -> bool:
        """Whether the outcome says all of a clause; the thing that is looked at adds nothing."""
        if clause.denied:
            return any(c.first == clause.first and clause.denied <= c.denied for c in self.denied)
        bare = clause.said - names
        return bool(clause.said) and (bare or clause.said) <= self.said

    def contradicts(self, clause: Clause) -> bool:
        """Whether the outcome says what a clause denies."""
        return not clause.denied.isdisjoint(self.said)


def plainly(typed: str) -> str:
    """What was typed in small letters, without apostrophes, and -ing for -in: fans hummin.

    The number of a leg is none that was read: fuse on l3 is open.
    """
    return _LEG.sub("leg", _DROPPED_G.sub(r"\1ing", without_apostrophes(typed.lower())))


def said_clauses(typed: str) -> Iterator[tuple[list[str], bool]]:
    """The words of each clause, and whether a denial before it goes on over it."""
    goes_on = denied = False
    for part in _CLAUSE.split(typed):
        words = _written_out(part)
        begins_anew = not words or words[0] in _OWN_BEGINNING
        over = (goes_on and not begins_anew) or (denied and not _ELSE.isdisjoint(words))
        if not over and DENYING.isdisjoint(words):
            yield from ((_written_out(piece), False) for piece in _AND.split(part))
        else:
            yield words, over
        denied = denied or not DENYING.isdisjoint(words)
        goes_on = over or not _OF_ALL.isdisjoint(words)


def denies_twice(typed: str) -> bool:
    """Whether a clause denies what it denies: not without cracks."""
    clauses = map(_written_out, _CLAUSE.split(typed))
    return any(sum(word in DENYING for word in words) > 1 for words in clauses)


def _written_out(text: str) -> list[str]:
    return [_NOTS.get(word, word) for word in raw_words(text)]


def clauses_of(
    words: list[str], denies: bool, manner: frozenset[str], sound: frozenset[str], stemmed: Stemmed
) -> Iterator[Clause]:
    """What words affirm, and what they deny: hums, no spark."""
    at = next((n for n, word in enumerate(words) if word in DENYING), len(words))
    before, after = words[:at], words[at + 1 :]
    if denies or at == len(words) - 1:  # no cracks, frays; the shaft does not
        before, after = [], [word for word in words if word not in DENYING]
    said, denied = (
        stemmed(w for w in each if w not in manner and w not in sound and len(w) > 1)
        for each in (before, after)
    )
    if said:
        yield Clause(frozenset(said), sound=not sound.isdisjoint(before))
    if denied:
        yield Clause(denied=frozenset(denied), first=denied[0])


def text_of(outcome: Outcome, manner: frozenset[str], stemmed: Stemmed) -> Text:
    """What an outcome's words and text say."""
    said: set[str] = set()
    denied: list[Clause] = []
    for text in (outcome.spoken, *outcome.words, outcome.means):
        for piece in _AND.split(text.lower()):
            for part in _CLAUSE.split(piece):
                words = _written_out(part)
                for clause in clauses_of(words, False, manner, frozenset(), stemmed):
                    said |= clause.said
                    if clause.denied and _ELSE.isdisjoint(words):
                        denied.append(clause)
    return Text(frozenset(said), tuple(denied))
