"""An answer in other grammar than the list's: fan's just hummin, won't turn; spins free, no play.

What is said is held clause by clause against the words and the text of each outcome. A clause
speaks for an outcome that holds all of it, and against one that holds what it denies. A word that
no outcome holds and that does not only fill, a clause that fits no outcome, and an outcome that
only a denial is left for are no answer: nothing is taken by the first word that fits.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Final

from troubleshoot.dialogue.by_word import WRITTEN_OUT
from troubleshoot.dialogue.idle_words import names_nothing
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Outcome, Test
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.stems import stem
from troubleshoot.safety.hearing.words import raw_words

_CLAUSE: Final = re.compile(r"[,;:.!]|\bbut\b")
_AND: Final = re.compile(r"\b(?:and|n)\b|&")
_NO_ANSWER: Final = re.compile(
    r"[?0-9]|\b(?:be|been|enough|if|may|might|should|used|was|were|would)\b"
)
"""A question, a number, a doubt or another day: none is an answer for its words."""
_DROPPED_G: Final = re.compile(r"\b([a-z]{3,})in\b")
_NOTS: Final = dict.fromkeys((*WRITTEN_OUT, "arent", "cannot", "never", "without"), "not")
_OF_ALL: Final = frozenset({"no", "nothing", "none", "neither", "nobody"})
"""They deny what a list behind them goes on with: no cracks, frays."""
_DENYING: Final = _OF_ALL | {"not"}
_ELSE: Final = frozenset({"or", "nor"})
_OWN_BEGINNING: Final = frozenset({"it", "its", "is", "are", "just", "only", "they", "got", "has"})
"""What begins a clause of its own behind a denial: no cracks, it's loose."""
_FILLING: Final = frozenset(
    """a all an and any are at both do does em for got has have here i in is it its just lays laying
    lying lies nope now of on only or sits sitting that the them there theres these they theyre this
    those to with yep yes""".split()  # noqa: SIM905
)
"""Words that name no outcome; a terminal's single letter neither."""
_SOUND: Final = frozenset({"fine", "good", "nice", "ok", "okay", "right", "well"})
"""Of whatever they are said, it is as it should be."""

Stems = frozenset[str]
Stemmed = Callable[[Iterable[str]], tuple[str, ...]]


@frozen
class _Clause:
    """What a clause affirms and what it denies, by stems; the first of what is denied.

    `sound`: it says of something that it is as it should be.
    """

    said: Stems = frozenset()
    denied: Stems = frozenset()
    first: str = ""
    sound: bool = False


@frozen
class _Text:
    """What an outcome's words and text affirm, and each thing that they deny."""

    said: Stems
    denied: tuple[_Clause, ...]

    def supports(self, clause: _Clause, names: Stems) -> bool:
        """Whether the outcome says all of a clause; the thing that is looked at adds nothing."""
        if clause.denied:
            return any(c.first == clause.first and clause.denied <= c.denied for c in self.denied)
        bare = clause.said - names
        return bool(clause.said) and (bare or clause.said) <= self.said

    def contradicts(self, clause: _Clause) -> bool:
        """Whether the outcome says what a clause denies."""
        return not clause.denied.isdisjoint(self.said)


def by_clauses(
    knowledge: Knowledge, test: Test, typed: str, outcomes: tuple[str, ...]
) -> tuple[str, ...]:
    """The outcomes that the clauses say, several where the test allows it; empty for none."""
    said = _DROPPED_G.sub(r"\1ing", without_apostrophes(typed.lower()))
    if _NO_ANSWER.search(said) is not None or any(map(_denies_twice, _CLAUSE.split(said))):
        return ()
    lexicon = lexicon_of(knowledge)
    manner = _FILLING | {*knowledge.manner}
    offered = [o for o in test.outcomes if o.id in outcomes]
    for stemmed in (_literally, lambda words: lexicon.all_words(" ".join(words))):
        if found := _meant(test, said, offered, manner, stemmed):
            return found
    return ()


def _literally(words: Iterable[str]) -> tuple[str, ...]:
    return tuple(map(stem, words))


def _meant(
    test: Test, typed: str, offered: list[Outcome], manner: frozenset[str], stemmed: Stemmed
) -> tuple[str, ...]:
    own = {w for o in offered for w in raw_words(" ".join((o.spoken, *o.words)))}
    sound = _SOUND - own
    names = frozenset(stemmed(raw_words(" ".join((test.name, *test.words)))))
    if names_nothing(raw_words(typed), names):
        return ()
    texts = {o.id: _text(o, manner, stemmed) for o in offered}
    told: list[set[str]] = []
    against: set[str] = set()
    for words, denies in _said_clauses(typed):
        for clause in _clauses(words, denies, manner, sound, stemmed):
            for_it = {o for o, text in texts.items() if text.supports(clause, names)}
            if clause.sound and not (for_it := for_it & {*test.healthy}):
                clause = _Clause(denied=clause.said)
            denied = {o for o, text in texts.items() if text.contradicts(clause)}
            if not for_it and not denied:
                return ()
            told += [for_it] if for_it else []
            against |= denied
    return _agreed(test, [each - against for each in told])


def _agreed(test: Test, told: list[set[str]]) -> tuple[str, ...]:
    """What all clauses that speak for something agree on; of several things each for itself."""
    if not told or not all(told):
        return ()
    both = set.intersection(*told)
    if len(both) == 1:
        return tuple(both)
    if both or test.choose != "several" or any(len(each) != 1 for each in told):
        return ()
    chosen = set.union(*told)
    return () if chosen & {*test.healthy} else tuple(o.id for o in test.outcomes if o.id in chosen)


def _said_clauses(typed: str) -> Iterator[tuple[list[str], bool]]:
    """The words of each clause, and whether a denial before it goes on over it."""
    goes_on = denied = False
    for part in _CLAUSE.split(typed):
        words = _written_out(part)
        begins_anew = not words or words[0] in _OWN_BEGINNING
        over = (goes_on and not begins_anew) or (denied and not _ELSE.isdisjoint(words))
        if not over and _DENYING.isdisjoint(words):
            yield from ((_written_out(piece), False) for piece in _AND.split(part))
        else:
            yield words, over
        denied = denied or not _DENYING.isdisjoint(words)
        goes_on = over or not _OF_ALL.isdisjoint(words)


def _denies_twice(clause: str) -> bool:
    return sum(word in _DENYING for word in _written_out(clause)) > 1


def _written_out(text: str) -> list[str]:
    return [_NOTS.get(word, word) for word in raw_words(text)]


def _clauses(
    words: list[str], denies: bool, manner: frozenset[str], sound: frozenset[str], stemmed: Stemmed
) -> Iterator[_Clause]:
    """What words affirm, and what they deny: hums, no spark."""
    at = next((n for n, word in enumerate(words) if word in _DENYING), len(words))
    before, after = words[:at], words[at + 1 :]
    if denies or at == len(words) - 1:  # no cracks, frays; the shaft does not
        before, after = [], [word for word in words if word not in _DENYING]
    said, denied = (
        stemmed(w for w in each if w not in manner and w not in sound and len(w) > 1)
        for each in (before, after)
    )
    if said:
        yield _Clause(frozenset(said), sound=not sound.isdisjoint(before))
    if denied:
        yield _Clause(denied=frozenset(denied), first=denied[0])


def _text(outcome: Outcome, manner: frozenset[str], stemmed: Stemmed) -> _Text:
    said: set[str] = set()
    denied: list[_Clause] = []
    for text in (outcome.spoken, *outcome.words, outcome.means):
        for piece in _AND.split(text.lower()):
            for part in _CLAUSE.split(piece):
                words = _written_out(part)
                for clause in _clauses(words, False, manner, frozenset(), stemmed):
                    said |= clause.said
                    if clause.denied and _ELSE.isdisjoint(words):
                        denied.append(clause)
    return _Text(frozenset(said), tuple(denied))
