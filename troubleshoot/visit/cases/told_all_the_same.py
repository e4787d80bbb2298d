"""The dangers that a file tells which is refused: a typo in one line takes none of them away.

They are told before what is not understood, by the lines that are and by all its free words. The
file stays refused: nothing else is made of it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import islice
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.text import MOST_TYPED, plain_words
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import meant
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.unit_words import FUELS
from troubleshoot.safety.hearing.words import phrase_words
from troubleshoot.safety.stops.standing import standing_hazards
from troubleshoot.visit.cases.file import read_in_part
from troubleshoot.visit.cases.nothing_lifts import conclude_file

_NO_WORDS: Final = frozenset({"test", "at", "instrument", "unit", "own-record"})
"""Keys under which stand names and numbers, and no words of a person."""
MOST_HEARD: Final = 600
"""Different lines that are listened to; a long visit has a few hundred, and each takes its time."""
MOST_LETTERS: Final = 40_000
"""Of all lines together: what nobody can have written in a visit is not listened to for long."""
_LINE: Final = re.compile(r"[\s-]*(?:([\w-]+) *: *)?(.*)")


def dangers_all_the_same(knowledge: Knowledge, data: object) -> tuple[str, ...]:
    """What to tell of the dangers in the plain data of a file, or in its text, a sentence a line.

    Of a text that is no data every line is taken for itself. What is said again is not heard again.
    """
    data = _lines_of(knowledge, data) if isinstance(data, str) else data
    said = islice(dict.fromkeys(_words(knowledge, data)), MOST_HEARD)
    heard = {h.id: h for words in _in_bounds(said) for h in _told(knowledge, words)}
    case = replace(read_in_part(knowledge, data), stops=tuple(heard))
    conclusions = conclude_file(Reasoner(knowledge), case)
    found = {fired.hazard.id for fired in conclusions.hazards if fired.found}
    standing = standing_hazards(conclusions)
    told = (each for each in standing if each.stops or each.hazard.id in found)
    return tuple(line for each in told for line in each.lines)


def _in_bounds(said: Iterable[str]) -> Iterator[str]:
    """The beginnings of lines, until so many letters have been listened to."""
    left = MOST_LETTERS
    for words in said:
        heard = words[: min(MOST_TYPED, left)]
        left -= len(heard)
        if heard:
            yield heard


def _told(knowledge: Knowledge, words: str) -> Iterator[Hazard]:
    """The hazards that halt a visit and are told in words."""
    for hazard in (*spoken_of(knowledge, words), *told_among(knowledge, words)):
        if hazard.stop is not None and hazard.stop.scope != "this-step":
            yield hazard


def _words(knowledge: Knowledge, data: object, key: str = "") -> Iterator[str]:
    """The words of people in plain data: what is no name of the rules, nor stands for one."""
    if isinstance(data, Mapping):
        for name, value in data.items():
            yield from _words(knowledge, value, str(name))
    elif isinstance(data, list):
        for value in data:
            yield from _words(knowledge, value, key)
    elif isinstance(data, str) and key not in _NO_WORDS and not _is_name(knowledge, data, key):
        yield plain_words(data)


def _is_name(knowledge: Knowledge, word: str, key: str) -> bool:
    test = knowledge.tests.get(key)
    outcomes = {outcome.id for outcome in test.outcomes} if test is not None else set()
    return (
        word in outcomes
        or _is_of_the_unit(knowledge, word, key)
        or any(word in names for names in (knowledge.tests, knowledge.complaints, knowledge.faults))
    )


def _is_of_the_unit(knowledge: Knowledge, word: str, key: str) -> bool:
    """Whether it is what a fact of the unit may be; a fuel under the fact of another is one too."""
    fact = knowledge.facts.get(key)
    return fact is not None and (
        meant(fact, plain_words(word)) is not None or phrase_words(word) in FUELS
    )


def _lines_of(knowledge: Knowledge, text: str) -> Mapping[str, object]:
    """The readings and the words of a text, line by line."""
    readings: list[Mapping[str, str]] = []
    words = []
    for line in text.splitlines():
        key, value = _LINE.fullmatch(line.strip("\r")).groups()  # type: ignore[union-attr]
        value = value.strip(" \"'{}[],")
        if key in knowledge.tests and value:
            readings.append({"test": key, "answer": value})
        if value:
            words.append({key or "": value})
    return {"readings": readings, "words": words}
