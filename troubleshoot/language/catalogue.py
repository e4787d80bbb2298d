"""A catalogue at work: English text to the other language, and what was typed back to English.

A text is looked up whole; else the sentence with holes that fits it, its holes looked up in their
turn; else its parts between marks and the sentences of a paragraph. Of several ways the one counts
that leaves the fewest letters in English. What nobody has translated stays English: no text is
ever lost, and no order, number or unit is changed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.language.catalogue_file import Entry
from troubleshoot.language.holes import Sentence, letters
from troubleshoot.language.notes import AS_IT_IS, COMMAND, HEARD, JOINED, TYPED
from troubleshoot.language.parts import MARKS, Parts
from troubleshoot.outside.text import plain_words

MOST_KEPT: Final = 20_000
"""Texts whose translation is kept ready; a visit shows a few thousand."""

MOST_PARTS: Final = 16
"""Parts between marks that are looked up together as one sentence with holes."""

LITTLE: Final = 8
"""Letters of a sentence that begins with a hole and says next to nothing."""

LONG: Final = 100
LEAST_OF_LONG: Final = 5
"""Letters that a sentence has outside its holes to be looked for in a text longer than LONG."""

MOST_FITTING: Final = 12
"""Sentences with holes that are tried on one text."""

MOST_TOGETHER: Final = 150
"""Parts between marks that are looked up together as one text."""

_ID: Final = re.compile(r"[A-Za-z0-9]+(?:[-_][A-Za-z0-9]+)+")
"""An id, or a unit: the same in every language."""

_ENDS: Final = ".,;:!?"
_WORDS_OF_A_COMMAND: Final = 3

Way = tuple[int, int, str]
"""(letters left in English, parts it was taken in, the text)."""


@frozen
class _Pair:
    """A sentence with holes in English and in the other language."""

    english: Sentence
    told: Sentence
    letters: int

    @classmethod
    def of(cls, entry: Entry) -> _Pair:
        english = Sentence.of(entry.english)
        told = Sentence.of(entry.told)
        return cls(english, told, english.letters)

    @property
    def says_little(self) -> bool:
        """Whether it fits into any prose: it serves only where its holes are told as well.

        A sentence that is not in the catalogue stays whole; half of it in each language helps
        nobody.
        """
        return not self.english.pieces[0] and self.letters < LITTLE

    def may_be(self, text: str, least: int) -> bool:
        """Whether a text may be this sentence; one that begins with a hole has to say a little."""
        first, *_, last = pieces = self.english.pieces
        if not (text.startswith(first) and text.endswith(last)):
            return False
        return (first or self.letters >= least) and all(piece in text for piece in pieces)


class Catalogue:
    """What a catalogue file says. Entries whose holes do not fit are left out, as if not there."""

    def __init__(self, entries: Iterable[Entry]) -> None:
        self._whole: dict[str, str] = {}
        self._pairs: list[_Pair] = []
        self._joints: dict[str, str] = {}
        typed: dict[str, set[str]] = {}
        self._commands: set[str] = set()
        for entry in entries:
            if not entry.told or entry.doubtful or not fits(entry):
                continue
            if Sentence.of(entry.english).holes:
                self._take_sentence(_Pair.of(entry))
                continue
            english, told = _plain(entry.english), _plain(entry.told)
            self._whole[english] = told
            if not {TYPED, COMMAND, HEARD}.isdisjoint(entry.notes):
                typed.setdefault(plain_words(told), set()).add(english)
            if COMMAND in entry.notes:
                self._commands.add(english)
        self._pairs.sort(key=lambda pair: -pair.letters)
        self._typed = {told: found.pop() for told, found in typed.items() if len(found) == 1}
        self._kept: dict[str, Way] = {}
        joints = [re.escape(joint) for joint in self._joints]
        begun = [f"(?<=[.;:,!?)\\]\"'] ){re.escape(joint.lstrip())}" for joint in self._joints]
        self._marks = re.compile("|".join([MARKS, *joints, *begun]))
        self._joints |= {each.lstrip(): told.lstrip() for each, told in self._joints.items()}

    def _take_sentence(self, pair: _Pair) -> None:
        """A sentence with holes; what joins two texts is a mark between them."""
        english, told = pair.english.pieces, pair.told.pieces
        if pair.english.holes == pair.told.holes == JOINED:
            self._joints[english[1]] = told[1]
        else:
            self._pairs.append(pair)

    def told(self, text: str) -> str:
        """The text in the other language, line by line; blanks round a line stay."""
        return "\n".join(map(self._line, text.split("\n")))

    def heard(self, typed: str) -> str:
        """What was typed, in the English word that the program knows; else as it was typed.

        Only a whole line, whole words between commas, or a command before its words are taken
        for a word of the catalogue: within a note or a name nothing is changed.
        """
        whole = self._english(typed)
        if whole is not None:
            return whole
        words = typed.split(" ")
        for length in range(min(_WORDS_OF_A_COMMAND, len(words) - 1), 0, -1):
            head = self._english(" ".join(words[:length]))
            if head in self._commands:
                return f"{head} {self.heard(' '.join(words[length:]))}"
        parts = typed.split(",")
        known = [self._typed.get(plain_words(part)) for part in parts]
        if len(parts) > 1 and any(known):
            return ", ".join(new or old.strip() for new, old in zip(known, parts, strict=True))
        return typed

    def _english(self, typed: str) -> str | None:
        """The English of words that are typed; a mark behind them counts for nothing."""
        return self._typed.get(plain_words(typed.rstrip("!.,:; ")))

    def _line(self, line: str) -> str:
        core = line.strip()
        if not core:
            return line
        start = line[: len(line) - len(line.lstrip())]
        return f"{start}{self._way(core)[2]}{line[len(start) + len(core) :]}"

    def _way(self, text: str) -> Way:
        """The best way to say a text."""
        if text not in self._kept:
            if len(self._kept) >= MOST_KEPT:
                self._kept.clear()
            self._kept[text] = self._found(text)
        return self._kept[text]

    def _found(self, text: str) -> Way:
        """A text whole; else its parts whole; else a sentence with holes; else parts of any kind.

        The first that leaves nothing in English serves.
        """
        if not letters(text):
            return 0, 1, text
        whole = self._whole_text(text)
        if whole is not None:
            return 0, 1, whole
        if _ID.fullmatch(text):
            return 0, 1, text
        parts = Parts.of(text, self._marks)
        found = [self._in_parts(parts, ())]
        if found[0][0]:
            found += self._with_holes(text, self._fitting(text, self._pairs))
        if all(way[0] for way in found):
            within = [p for p in self._pairs if all(piece in text for piece in p.english.pieces)]
            found.append(self._in_parts(parts, within))
        return min(found, key=lambda way: way[:2])

    def _whole_text(self, text: str) -> str | None:
        """What is said for a whole text, with or without the mark at its end."""
        told = self._whole.get(text)
        if told is None and text[-1:] in _ENDS and (told := self._whole.get(text[:-1])):
            told += text[-1]
        return told

    def _fitting(self, text: str, pairs: Iterable[_Pair]) -> list[_Pair]:
        """The sentences with holes that a text may be, those that say most first.

        In a long text one that says next to nothing ("... and ...") fits everywhere, and tells
        nothing.
        """
        least = LEAST_OF_LONG if len(text) > LONG else 0
        fitting = (pair for pair in pairs if pair.may_be(text, least))
        return list(islice(fitting, MOST_FITTING))

    def _with_holes(self, text: str, fitting: Iterable[_Pair]) -> list[Way]:
        """The text as each sentence with holes that it can be; one that says all ends the search.

        The holes take as little as they can, or as much.
        """
        found = []
        for pair in fitting:
            for sparing in (True, False):
                values = pair.english.taken_apart(text, sparing)
                if values is None:
                    break
                way = self._filled(pair, values)
                if way[0] and pair.says_little:
                    continue
                found.append(way)
                if found[-1][0] == 0:
                    return found[-1:]
        return found

    def _filled(self, pair: _Pair, values: tuple[str, ...]) -> Way:
        left, parts, told = 0, 1, {}
        for hole, value in zip(pair.english.holes, values, strict=True):
            if hole in AS_IT_IS:
                told[hole], left = value, left + letters(value)
                continue
            own_left, own_parts, _ = self._way(value.strip()) if value.strip() else (0, 0, "")
            left, parts = left + own_left, parts + own_parts
            told[hole] = self._line(value)
        return left, parts, pair.told.filled(told)

    def _in_parts(self, parts: Parts, fitting: Iterable[_Pair]) -> Way:
        """A text as parts between marks, several of which may belong together.

        Of what begins at a part the longest whole text counts; sentences with holes are looked
        for only where there is none.
        """
        best: list[Way] = [(0, 0, "")] * (parts.many + 1)
        for first in range(parts.many - 1, -1, -1):
            ways = [self._joined(parts, first, first, best)]
            for last in range(min(parts.many, first + MOST_TOGETHER) - 1, first - 1, -1):
                told = self._whole_text(parts.text_of(first, last))
                if told is not None:
                    ways.append(self._joined(parts, first, last, best, (0, 1, told)))
                    break
            else:
                ways += self._sentences(parts, first, fitting, best)
            best[first] = min(ways, key=lambda way: way[:2])
        return best[0]

    def _sentences(
        self, parts: Parts, first: int, fitting: Iterable[_Pair], best: list[Way]
    ) -> Iterator[Way]:
        """The ways that begin at a part with a sentence with holes, the longest first."""
        for last in range(min(parts.many, first + MOST_PARTS) - 1, first - 1, -1):
            text = parts.text_of(first, last)
            end = text[-1:] if text[-1:] in _ENDS else ""
            for own, mark in {text: "", text.removesuffix(end): end}.items():
                for left, number, told in self._with_holes(own, self._fitting(own, fitting)):
                    way = left, number, told + mark
                    yield self._joined(parts, first, last, best, way)

    def _joined(
        self, parts: Parts, first: int, last: int, best: list[Way], way: Way | None = None
    ) -> Way:
        """Some parts said in a way, or left in English, and the best way for the rest."""
        text, between = parts.text_of(first, last), parts.between(last)
        left, number, told = way or (letters(text), 1, text)
        joint = between if left and way is None else self._joints.get(between, between)
        rest = best[last + 1]
        return left + rest[0], number + rest[1], told + joint + rest[2]


def fits(entry: Entry) -> bool:
    """Whether a translation has the holes of its English text, each once, and no other."""
    try:
        english, told = Sentence.of(entry.english), Sentence.of(entry.told)
    except ValueError:
        return False
    return sorted(english.holes) == sorted(told.holes)


def _plain(text: str) -> str:
    """A text without holes as it is shown."""
    return Sentence.of(text).pieces[0]
