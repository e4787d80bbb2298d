"""What somebody says, as words that tell: clauses, endings, words alike.

Words that mean the same count as the same, endings and accents do not matter. What is denied is
known as denied.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final
from unicodedata import combining, normalize

from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety.hearing.typing_errors import Mend
from troubleshoot.safety.hearing.vocabulary import (
    ALIKE,
    ALSO_DOING,
    BY_STEM,
    CANNOT,
    CHANGING,
    DENYING,
    DROPPED,
    FILLING,
    FIRE,
    GONE,
    LONG_AGO,
    LOOSE,
    NEUTRAL,
    NOBODY,
    OFTEN_DENIED,
    ON_FIRE,
    PERCEIVING,
    PERSON,
    SUBJECTS,
    THINGS,
    TOGETHER,
    stem,
)

Words = tuple[str, ...]

_WORD: Final = re.compile(r"[a-z0-9]+")
_CLAUSE: Final = re.compile(
    r"[,.;:!?]+(?:\s|$)|\s[-/]+\s|(?<!should be dead )\bbut\b"
    r"|\bwhile\b(?!\s+(?:inside|(?:my|his|her) (?:hand|arm|finger)s?"
    r"|(?:(?:i|we|he|she|they|(?:the|my|our) \w+|somebody) )?(?:still )?(?:(?:had|have|has|got) )?"
    r"(?:my|his|her|our|their|a|an|one) (?:hand|arm|finger)s? (?:in|inside|into|near)"
    r"|(?:i|we|he|she|they|somebody) (?:was|were) (?:still )?reaching)\b)"
)
"""Where one thing said ends. While I had my hand in it is part of what happened to it, and what
should be dead but is not is one thing.
"""
_MEASURED: Final = re.compile(r"([0-9]+)(?:ppm|f)?")
_VOLTS: Final = re.compile(r"([0-9])\s*(?:v|vac|volt)\b")
_SPELT_OUT: Final = tuple(
    re.compile(rf"\b{' ?'.join(word)}\b") for word in ("fire", "gas", "leak", "shock", "smoke")
)
"""Words of danger that blanks have fallen into: g a s, ga s."""
_IS_A_WORD: Final = frozenset({"as", "fir", "he", "hock", "ire", "le", "re"})
"""Where a part is a word itself, nothing has fallen apart: terminal g as found."""
_NO_FOR_NOT: Final = re.compile(r"\bno (?:esta |es |est )?(?=[a-z]{2,}[^\W\d_e]ed\b)")
"""What is said by whoever has little English: no locked is not locked, and not no lock."""
_GAP: Final = "..."
"""In a phrase it stands for a few words of any kind."""
_WIDEST_GAP: Final = 5
"""Words that may stand in a gap, beside loose ones."""


def clauses(text: str, mend: Mend) -> tuple[Words, ...]:
    """The words of each clause, a denial with what it denies: gas smell? no."""
    found: list[Words] = []
    for part in _CLAUSE.split(_plain(text)):
        said = spoken_words(part, mend)
        if found and said and (set(said) <= DENYING or _goes_on_denying(found[-1], said)):
            found[-1] += said
        elif said:
            found.append(said)
    return tuple(found)


def _goes_on_denying(before: Words, said: Words) -> bool:
    """Whether a clause is more of a row that began with a denial: no smoke, fire or gas smell."""
    return (
        before[0] in DENYING
        and before[1:2] != ()
        and (before[1] in OFTEN_DENIED and not {*said} & (SUBJECTS | DENYING) and "or" in said)
    )


@lru_cache(maxsize=4_000)
def phrase_words(phrase: str) -> Words:
    """The words of a phrase that somebody has to say; where it is all filling, all of them."""
    parts = [spoken_words(part, str) for part in _plain(phrase).split(_GAP)]
    said = tuple(word for part in parts for word in (*part, _GAP))[:-1]
    return tuple(w for w in said if w not in FILLING) or said


def spoken_words(text: str, mend: Mend) -> Words:
    """All words as they count."""
    joined: list[str] = []
    for word in (mend(word) for word in _WORD.findall(_VOLTS.sub(r"\1 volts", text))):
        together = TOGETHER.get((joined[-1], word)) if joined else None
        if together is not None:
            joined.pop()
        joined.append(together or word)
    return tuple(_canonical(word) for word in joined)


def span(said: Words, phrase: Words) -> tuple[int, int] | None:
    """Where a phrase is said: its words in order, with loose words between, or a gap's."""
    first = phrase[0]
    met = {word for word in {*said} if same(first, word)} if _is_met_by_others(first) else {first}
    if met.isdisjoint(said):
        return None
    for start, word in enumerate(said):
        if word not in met:
            continue
        end = _end(said, phrase, start)
        if end is not None:
            return start, end
    return None


def alone(said: Words, at: tuple[int, int], of_things: bool, told: Words = ()) -> bool:
    """Whether nothing beside what is said there changes it: somebody, here, really.

    `of_things`: nor does the thing of which it is said, or what else that does ("the can is humming
    and smoking"). `told`: words that are dangers themselves ("sick and dizzy").
    """
    beside = {*said[: at[0]], *said[at[1] :]} - NEUTRAL - {*said[at[0] : at[1]]} - {*told}
    return beside <= (LOOSE - CHANGING) | (THINGS | ALSO_DOING if of_things else frozenset())


def denies(phrase: Words) -> bool:
    """Whether a phrase itself is a lack: no gloves."""
    return phrase[0] in DENYING


def denied(said: Words, at: tuple[int, int]) -> bool:
    """Whether what is said there is denied, before it or by all that follows, or is long past."""
    start, end = at
    for index in range(start - 1, -1, -1):
        word = said[index]
        if word in DENYING:
            return True
        if word == CANNOT and said[index + 1] in PERCEIVING:
            return True
        if word in SUBJECTS and index:
            break
    after = [w for w in said[end:] if w not in LOOSE]
    return bool(after) and (set(after) <= GONE - NOBODY or after[-1] == stem(LONG_AGO))


def numbers(words: Words) -> tuple[int, ...]:
    """The numbers among them."""
    return tuple(n for word in words if (n := whole_number(word)) is not None)


def telling(said: Words) -> frozenset[str]:
    """The words that tell one danger from another; where none does, all."""
    return frozenset(w for w in said if w not in LOOSE and w not in (PERSON, _GAP)) or frozenset(
        said
    )


def raw_words(text: str) -> list[str]:
    """The words of a text as they are spelt."""
    return _WORD.findall(_plain(text))


def alike() -> frozenset[str]:
    """Every word that counts as another."""
    return frozenset(ALIKE) | {DROPPED}


def _plain(text: str) -> str:
    said = without_apostrophes(text.lower())
    if not said.isascii():
        said = "".join(c for c in normalize("NFKD", said) if not combining(c))
    said = _NO_FOR_NOT.sub("not ", said)
    for spelt in _SPELT_OUT:
        said = spelt.sub(_joined, said)
    return said


def _joined(found: re.Match[str]) -> str:
    return found[0] if _IS_A_WORD.intersection(found[0].split()) else found[0].replace(" ", "")


def _end(said: Words, phrase: Words, start: int) -> int | None:
    wanted, left_in_gap = 0, 0
    for index in range(start, len(said)):
        if same(phrase[wanted], said[index]):
            wanted += 1
            if wanted == len(phrase):
                return index + 1
            is_gap = phrase[wanted] == _GAP
            wanted, left_in_gap = wanted + is_gap, _WIDEST_GAP if is_gap else 0
        elif said[index] in LOOSE:
            continue
        elif not left_in_gap or said[index] in DENYING:
            return None
        else:
            left_in_gap -= 1
    return None


def has_gap(phrase: Words) -> bool:
    """Whether words of any kind may stand within it."""
    return _GAP in phrase


def same(wanted: str, said: str) -> bool:
    """A number is met by one as high or higher, fire by what is on fire."""
    if wanted == said:
        return True
    if not _is_met_by_others(wanted):
        return False
    least, read = whole_number(wanted), whole_number(said)
    if least is None or read is None:
        return (wanted, said) == (FIRE, ON_FIRE)
    return read >= least


@lru_cache(maxsize=4_000)
def _is_met_by_others(wanted: str) -> bool:
    """Whether a word of a phrase may be met by another than itself."""
    return wanted == FIRE or whole_number(wanted) is not None


@lru_cache(maxsize=4_000)
def _canonical(word: str) -> str:
    if (measured := _MEASURED.fullmatch(word)) is not None:
        return measured[1].lstrip("0") or "0"
    short = stem(word)
    return stem(ALIKE[word]) if word in ALIKE else BY_STEM.get(short, short)
