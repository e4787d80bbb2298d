"""What somebody says, as words that count: typing errors, endings, words alike, denials.

What is alike and what is idle stands in the rules (`synonyms.yaml`). A denial is one with what it
denies: "won't start" is the word not-start, which is no start.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.reasoning.matching.spelling import mended
from troubleshoot.reasoning.matching.stems import stem

Words = tuple[str, ...]

NOT: Final = "not"
_WORD: Final = re.compile(r"[a-z]+|[0-9]+")
_WITH: Final = re.compile(r"\bw/")


@frozen
class Lexicon:
    """`alike`: words as they are said -> as they count, by their stems. `spelt`: its own words."""

    alike: Mapping[Words, Words]
    idle: frozenset[str]
    loose: frozenset[str]
    spelt: frozenset[str]
    longest: int

    def words(self, text: str, spelt: Collection[str] = ()) -> Words:
        """The words of a text that count, in order. `spelt`: those to which errors are mended."""
        return self.telling(self.all_words(text, spelt))

    def telling(self, words: Words) -> Words:
        """Those of all words that are not idle."""
        return tuple(word for word in words if word not in self.idle)

    def all_words(self, text: str, spelt: Collection[str] = ()) -> Words:
        """The same with the idle ones; no word denies one of them."""
        stems = tuple(stem(mended(word, spelt)) for word in raw_words(text))
        return tuple(self._denied(self._as_they_count(stems)))

    def _as_they_count(self, stems: Words) -> Iterator[str]:
        """Each run of words as what it is alike, the longest run first."""
        at = 0
        while at < len(stems):
            sizes = range(min(self.longest, len(stems) - at), 0, -1)
            runs = (stems[at : at + size] for size in sizes)
            run = next((run for run in runs if run in self.alike), stems[at : at + 1])
            yield from self.alike.get(run, run)
            at += len(run)

    def _denied(self, words: Iterable[str]) -> Iterator[str]:
        """A denial and the next word that counts as one."""
        denying = False
        for word in words:
            if word == NOT:
                denying = True
            elif word in self.idle or not denying:
                yield word
            else:
                yield f"{NOT}-{word}"
                denying = False
        if denying:
            yield NOT


def raw_words(text: str) -> list[str]:
    """Runs of letters and of figures, in small letters, with no apostrophe: dont, 24, v."""
    return _WORD.findall(without_apostrophes(_WITH.sub("with ", text.lower())))


def stems_of(text: str) -> Words:
    """The stems of all words of a text."""
    return tuple(map(stem, raw_words(text)))


@lru_cache(maxsize=2)
def lexicon_of(knowledge: Knowledge) -> Lexicon:
    """The words alike and the idle ones of a rule base."""
    alike = {
        stems_of(said): stems_of(name)
        for name, others in knowledge.alike.items()
        for said in (name, *others)
    }
    said = (other for others in knowledge.alike.values() for other in others)
    texts = (*knowledge.alike, *said, *knowledge.idle, *knowledge.loose)
    spelt = {word for text in texts for word in raw_words(text)}
    idle, loose = (frozenset(map(stem, words)) for words in (knowledge.idle, knowledge.loose))
    return Lexicon(alike, idle, loose, frozenset(spelt), max(map(len, alike), default=0))
