"""Typing errors: the words that are near one, and which of them is meant.

Shaken people type short and wrong. A word of five letters or more may hold one error, one of seven
two. A letter changed for another is seen through in long words alone: in a short one it makes
another word of it (store, storm).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from string import ascii_lowercase
from typing import Final

from troubleshoot.safety.hearing.everyday import EVERYDAY
from troubleshoot.safety.hearing.other_words import OF_OTHER_MATTERS
from troubleshoot.safety.hearing.vocabulary import (
    GONE,
    HARD_TO_SPELL,
    LOOSE,
    NAMED_SO,
    PERCEIVING,
    THINGS,
    stem,
)

Mend = Callable[[str], str]  # puts a mistyped word right and leaves all others

_DOUBLES: Final = re.compile(r"[^aeiou]+[aeiou][bdgmnpt]")
"""A word whose last letter doubles before an ending: stop, stopped, and never stoped."""
_LEAST_MISTYPED: Final = 5
"""Letters of a word in which one typing error is seen through."""
_LEAST_TWICE_MISTYPED: Final = 7
"""Letters of a word in which two are."""
_LEAST_CHANGED: Final = 6
"""Letters without the ending of a word in which a letter changed for another is seen through."""
LONGEST_WORD: Final = 40
"""Letters: no word that people say of a unit has as many."""


def mender(known: frozenset[str], ordinary: Callable[[], frozenset[str]]) -> Mend:
    """A function that puts right a word with one error or two, where it is no ordinary word.

    `known`: the words that dangers are told in. `ordinary` is asked only where it matters.
    """
    tables = LOOSE | THINGS | NAMED_SO | GONE | PERCEIVING | OF_OTHER_MATTERS
    forms = frozenset(form for word in known for form in _forms(word))

    @lru_cache(maxsize=1_000)
    def mended(word: str) -> str:
        if len(word) < _LEAST_MISTYPED - 1 or word in forms or not word.isalpha():
            return word
        if stem(word) in tables or word in EVERYDAY:
            return word
        near = [w for w in one_error(word) & forms if _slips(word, w, known)]
        near.sort(key=lambda w: (w not in known, w))
        if not near and len(word) >= _LEAST_TWICE_MISTYPED:
            near = [w for w in HARD_TO_SPELL if w[0] == word[0] and two_errors(word, w)]
        return near[0] if near and word not in ordinary() else word

    return mended


def _slips(typed: str, meant: str, known: frozenset[str]) -> bool:
    """Whether that one error is a slip of the fingers, and makes no other word of a short one."""
    if len(meant) < _LEAST_MISTYPED or typed[0] != meant[0]:
        return False
    is_changed = len(typed) == len(meant) and sorted(typed) != sorted(meant)
    return not is_changed or (len(stem(meant)) >= _LEAST_CHANGED and meant in known)


def _forms(word: str) -> tuple[str, ...]:
    """A word and how else it may end, where it has no ending itself."""
    if _DOUBLES.fullmatch(word):
        return word, f"{word}s"
    short = word.removesuffix("e")
    if stem(word) != short:
        return (word,)
    return word, f"{word}s", f"{short}ed", f"{short}ing"


def one_error(word: str) -> frozenset[str]:
    """Every word that one letter left out, put in, changed or swapped makes of it, and itself.

    None of one that is longer than any word: that is no slip of the finger.
    """
    if len(word) > LONGEST_WORD:
        return frozenset()
    cuts = [(word[:i], word[i:]) for i in range(len(word) + 1)]
    left_out = {a + b[1:] for a, b in cuts}
    swapped = {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
    changed = {a + c + b[1:] for a, b in cuts for c in ascii_lowercase}
    put_in = {a + c + b for a, b in cuts for c in ascii_lowercase}
    return frozenset(left_out | swapped | changed | put_in)


def two_errors(typed: str, meant: str) -> bool:
    """Whether a word is another but for two letters left out, put in, changed or swapped."""
    if abs(len(typed) - len(meant)) > 2:
        return False
    before: list[int] = []
    row = list(range(len(meant) + 1))
    for i, letter in enumerate(typed, start=1):
        above, row_before = row, before
        row = [i]
        for j, wanted in enumerate(meant, start=1):
            cost = min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (letter != wanted))
            if i > 1 < j and letter == meant[j - 2] and typed[i - 2] == wanted:
                cost = min(cost, row_before[j - 2] + 1)
            row.append(cost)
        before = above
    return row[-1] <= 2
