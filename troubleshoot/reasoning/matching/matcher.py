"""Which of several things somebody's words mean.

Each thing has phrases: its name, and what people say for it. A phrase is said where all its words
stand together. A thing is taken where

- the words are one of its phrases, word for word or but for idle ones, and no other thing's; or
- one of its phrases is said and makes up most of the words, and no other thing has one said that
  is not part of it; or
- the words are all in one phrase of it, and in none of any other thing.

Where a clause besides tells of something else nothing is taken. Else it is asked which is meant,
the likeliest first; nothing is taken by a guess. A word tells the
more, the fewer things it may mean; one that no phrase holds speaks against taking anything.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.matching.lexicon import Lexicon, Words, raw_words

MOST_ASKED: Final = 4
_MOST_OF_THE_WORDS: Final = 0.5
_LEAST_OF_THE_BEST: Final = 0.4
"""What fits less than this, beside what fits best, is not asked about."""
_STRAY_WORDS: Final = 3
"""Of any kind may stand within a phrase that is said."""
_AS_IF_OF: Final = 4
"""How many things a word is taken to mean that is in no phrase of any."""
_LEAST_TOLD: Final = 2
"""Words in which something is told."""
_CLAUSE: Final = re.compile(r"[,.;:!?]|\b(?:and|but)\b")
_OUT_OF_ORDER: Final = 0.8
_OF_A_PHRASE, _OF_ALL_PHRASES = 2.0, 0.25


@frozen
class Heard:
    """`taken`: what is meant without doubt. `which`: what it may be, the likeliest first.

    `said`: those of which a whole phrase was said.
    """

    taken: str | None
    which: tuple[str, ...]
    said: frozenset[str]


UNHEARD: Final = Heard(None, (), frozenset())
"""Where no word is known."""


@frozen
class _Fit:
    """How well a thing fits. `said`: its longest phrase that was said; `holds`: all that was."""

    name: str
    score: float
    said: Words
    holds: bool


class Matcher:
    """Tells things apart by words. `named`: the phrases of each, by its id."""

    def __init__(self, lexicon: Lexicon, named: Mapping[str, Sequence[str]]) -> None:
        texts = [phrase for phrases in named.values() for phrase in phrases]
        self._lexicon = lexicon
        self._spelt = lexicon.spelt.union(*map(raw_words, texts))
        whole = {name: tuple(map(lexicon.all_words, own)) for name, own in named.items()}
        self._word_for_word: dict[Words, set[str]] = {}
        for name, phrases in whole.items():
            for each in phrases:
                self._word_for_word.setdefault(each, set()).add(name)
        self._phrases = {
            name: tuple(dict.fromkeys(words for words in map(lexicon.telling, phrases) if words))
            for name, phrases in whole.items()
        }
        met: Counter[str] = Counter()
        for own in self._phrases.values():
            met.update({word for phrase in own for word in phrase})
        self._tells = {word: math.log(1 + len(named) / count) for word, count in met.items()}
        self._of_no_phrase = math.log(1 + len(named) / _AS_IF_OF)

    def heard(self, text: str, most: int = MOST_ASKED) -> Heard:
        """What the words mean, or may mean; of what fits much less than the best nothing."""
        said = self._lexicon.words(text, self._spelt)
        fits = self._fits(said)
        least = _LEAST_OF_THE_BEST * fits[0].score if fits else 0.0
        which = tuple(fit.name for fit in fits if fit.score >= least)
        whole = frozenset(fit.name for fit in fits if fit.said)
        taken = self._called_so(text) or self._taken(said, fits)
        if taken is not None and not self._speaks_in_every_clause(taken, text):
            taken = None
        if taken is not None:
            which = (taken, *(name for name in which if name != taken))
        return Heard(taken, which[:most], whole)

    def ranked(self, text: str) -> tuple[str, ...]:
        """All that have a word of it, the likeliest first."""
        said = self._lexicon.words(text, self._spelt)
        return tuple(fit.name for fit in self._fits(said))

    def _called_so(self, text: str) -> str | None:
        """The one thing of which this is a phrase, word for word."""
        called = self._word_for_word.get(self._lexicon.all_words(text, self._spelt), set())
        return min(called) if len(called) == 1 else None

    def _speaks_in_every_clause(self, name: str, text: str) -> bool:
        """Whether nothing else is told beside it: each part of a sentence has a word of its own."""
        own = {word for phrase in self._phrases[name] for word in phrase}
        clauses = (self._lexicon.words(each, self._spelt) for each in _CLAUSE.split(text.lower()))
        return all(len(clause) < _LEAST_TOLD or not own.isdisjoint(clause) for clause in clauses)

    def _taken(self, said: Words, fits: Sequence[_Fit]) -> str | None:
        """The one thing that the words say without doubt."""
        exact = [fit for fit in fits if {*fit.said} == {*said}]
        spoken = [fit for fit in fits if fit.said]
        if len(exact) == 1:
            return exact[0].name
        if not spoken:
            holding = [fit for fit in fits if fit.holds]
            return holding[0].name if len(holding) == 1 else None
        best = max(spoken, key=lambda fit: self._telling(fit.said))
        if self._telling(best.said) < _MOST_OF_THE_WORDS * self._telling(said):
            return None
        others = (fit for fit in spoken if fit is not best)
        return best.name if all({*fit.said} < {*best.said} for fit in others) else None

    def _fits(self, said: Words) -> list[_Fit]:
        found = (self._fit(name, own, said) for name, own in self._phrases.items())
        return sorted((fit for fit in found if fit.score > 0), key=lambda fit: -fit.score)

    def _fit(self, name: str, phrases: tuple[Words, ...], said: Words) -> _Fit:
        words, all_said = {*said}, self._telling(said)
        score, longest, holds = 0.0, Words(), False
        for phrase in phrases:
            in_both = words.intersection(phrase)
            if in_both <= self._lexicon.loose:
                continue
            shared = self._telling(in_both)
            fit = _OF_A_PHRASE * shared / (all_said + self._telling(phrase))
            if _is_said(phrase, said):
                fit += shared / all_said * (1.0 if _in_order(phrase, said) else _OUT_OF_ORDER)
                longest = max(longest, phrase, key=self._telling)
            score, holds = max(score, fit), holds or words <= {*phrase}
        if score:
            own = {word for phrase in phrases for word in phrase}
            score += _OF_ALL_PHRASES * self._telling(words & own) / all_said
        return _Fit(name, score, longest, holds)

    def _telling(self, words: Iterable[str]) -> float:
        """How much words tell, each once."""
        return math.fsum(self._tells.get(word, self._of_no_phrase) for word in sorted({*words}))


def _is_said(phrase: Words, said: Words) -> bool:
    """Whether all words of a phrase stand together, in any order, with few others between."""
    wanted = {*phrase}
    if not wanted <= {*said}:
        return False
    widest = len(phrase) + _STRAY_WORDS
    return any(wanted <= {*said[at : at + widest]} for at in range(len(said)))


def _in_order(phrase: Words, said: Words) -> bool:
    """Whether the words of a phrase come one after the other, whatever stands between."""
    rest = iter(said)
    return all(word in rest for word in phrase)
