"""Outcomes by their words: their own, what people say for them, an own beginning, or a number."""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping
from typing import Final

from troubleshoot.dialogue.idle_words import names_nothing
from troubleshoot.dialogue.orders import is_reported
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import plain_words, without_apostrophes
from troubleshoot.reasoning.matching.stems import stem
from troubleshoot.safety.hearing.words import raw_words

ASSENT: Final = frozenset({"it", "yes", "done"})
"""Beside a report they change nothing; alone they are none."""
_DENYING: Final = frozenset(
    {"cannot", "never", "no", "nobody", "none", "not", "nothing", "without"}
)
"""Beside these they would say that nothing was done: none done."""
_FILLING: Final = frozenset(
    {"a", "an", "and", "are", "at", "in", "is", "it", "of", "on", "or", "the"}
)
"""Words that name no outcome."""
_AS_FAR_AS_SEEN: Final = re.compile(r",? (?:that |as far as )?i can see[ .!]*$", re.IGNORECASE)
_CLAUSE: Final = re.compile(r"[,;:.]")
_YES_OR_NO: Final = {"y": "yes", "n": "no"}
"""A letter that was meant for the question before is no answer to this one."""
WRITTEN_OUT: Final = {
    **dict.fromkeys(("dont", "doesnt", "wont", "didnt"), "does not"),
    **dict.fromkeys(("cant", "couldnt"), "cannot"),
    **dict.fromkeys(("isnt", "aint"), "is not"),
}
"""What people type for two words in a hurry, with or without its apostrophe."""
_JOINED: Final = re.compile(r"\s*(?:,|&|/|\b(?:and|n)\b)\s*", re.IGNORECASE)
"""What stands between two things that are both so: rough and loose."""
_TO_WHOM: Final = re.compile(
    r"(?P<said>.+?),?\s+(?:(?:w|with|by|from|per|via)\s+(?P<whom>[a-z][a-z .]*?),?\s+)?"
    r"(?:at|since|from)\s+[0-9]{1,2}[:.]?[0-9]{2}(?:\s?[ap]m)?",
    re.IGNORECASE,
)


class NotAnAnswer(ValueError):
    """What was typed is no answer here; the message says what would do."""


class NearlyAnAnswer(NotAnAnswer):
    """Something like an answer was typed: it is asked about, and is no cry (an order: stop)."""


class MayBeMeant(NearlyAnAnswer):
    """What was typed may be this answer, which protects nobody: it is asked, yes or no."""

    def __init__(self, answer: str) -> None:
        super().__init__(f'Is "{answer}" meant?')
        self.answer = answer


def by_number_or_word(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    """The outcomes that are typed, by their numbers or in words. Raises NotAnAnswer."""
    several = test.choose == "several"
    parts = typed.replace(",", " ").split()
    numbers = [n for part in parts if (n := choice(part, len(outcomes))) is not None]
    if numbers and len(numbers) == len(parts) and (several or len(numbers) == 1):
        return _healthy_alone(test, tuple(outcomes[n - 1] for n in numbers))
    if found := by_words(test, typed, outcomes):
        return found
    raise NotAnAnswer(f"Give a number, or one of: {', '.join(map(test.spoken, outcomes))}.")


def chosen_words(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    """The outcomes that the words name. Raises NotAnAnswer."""
    if found := by_words(test, typed, outcomes):
        return found
    words = ", ".join(map(test.spoken, outcomes))
    raise NotAnAnswer(f"Say in words what came of it: {words}.")


def by_words(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    """The outcomes that the words name, several where the test allows it. Raises NotAnAnswer."""
    return _healthy_alone(test, by_word(test, typed, outcomes, test.choose == "several"))


def by_word(test: Test, typed: str, outcomes: tuple[str, ...], several: bool) -> tuple[str, ...]:
    """The outcomes that the words name: its own, what people say for it, or an own beginning."""
    found = _by_word(test, typed, outcomes, several)
    plain = _written_out(typed)
    return found if found or plain == typed else _by_word(test, plain, outcomes, several)


def _by_word(test: Test, typed: str, outcomes: tuple[str, ...], several: bool) -> tuple[str, ...]:
    offered = [o for o in test.outcomes if o.id in outcomes]
    shown = {word: o.id for o in offered if (word := one_word(test.spoken(o.id))) != o.id}
    said = shown | {one_word(w): o.id for o in offered for w in o.words}
    if (meant := said.get(one_word(typed))) is not None:
        return (meant,)
    for parts in (typed.split(","), _JOINED.split(typed)) if several else ([typed],):
        if found := _each_by_word(parts, said, outcomes):
            return found
    return ()


def _each_by_word(
    parts: list[str], said: Mapping[str, str], outcomes: tuple[str, ...]
) -> tuple[str, ...]:
    """The outcome that each part names; nothing where one of them names none, or several."""
    found = []
    for part in parts:
        word = one_word(part)
        exact = [o for o in outcomes if o in (word, said.get(word))]
        begun = _begun_by(word, outcomes)
        if not exact and len(begun) != 1:
            return ()
        found.append((exact or begun)[0])
    return tuple(dict.fromkeys(found))


def _begun_by(word: str, outcomes: tuple[str, ...]) -> list[str]:
    """The outcomes that begin so. One letter that answers yes or no begins nothing but that."""
    if word in _YES_OR_NO:
        return [o for o in outcomes if o == _YES_OR_NO[word]]
    return [o for o in outcomes if word and o.startswith(word)]


def by_beginning(test: Test, typed: str, outcomes: tuple[str, ...]) -> str | None:
    """The outcome, as it is said, of which only the beginning was typed; None where it was not."""
    found = by_word(test, typed, outcomes, several=False)
    begun = [o for o in found if o != one_word(typed) and o in _begun_by(one_word(typed), outcomes)]
    spoken = [test.spoken(o) for o in begun]
    return next((each for each in spoken if each != plain_words(typed)), None)


def by_own_text(test: Test, typed: str, outcomes: tuple[str, ...]) -> str | None:
    """The one outcome whose own text holds all these words: blown, of "Blown or tripped".

    A word that the text denies is none of its words, nor does a denial name any.
    """
    said = {*raw_words(typed)} - _FILLING
    names_more = bool(said - {*raw_words(test.name)}) and all(map(str.isalpha, said))
    if not names_more or names_nothing(said) or not said.isdisjoint(_DENYING):
        return None
    stems = {*map(stem, said)}
    found = [
        o.id
        for o in test.outcomes
        if o.id in outcomes and stems <= {*map(stem, _affirmed(f"{o.spoken}. {o.means}"))}
    ]
    return found[0] if len(found) == 1 else None


def as_it_should_be(knowledge: Knowledge, test: Test, typed: str) -> str | None:
    """The one sound outcome of a look of which people say that nothing is wrong: looks fine."""
    nothing_wrong = {plain_words(said) for said in knowledge.as_it_should_be}
    typed = _AS_FAR_AS_SEEN.sub("", typed)
    if test.kind != "look" or len(test.healthy) != 1:
        return None
    return test.healthy[0] if plain_words(typed.rstrip(" .!")) in nothing_wrong else None


def is_one_word(typed: str) -> bool:
    """Whether no more than one word of what was typed can name anything."""
    return len({*raw_words(typed)} - _FILLING) == 1


def _affirmed(text: str) -> set[str]:
    """The words of a text up to what it denies in each clause."""
    clauses = (raw_words(clause) for clause in _CLAUSE.split(text))
    return {
        word
        for words in clauses
        for word in itertools.takewhile(lambda w: w not in _DENYING, words)
    }


def without_assent(typed: str) -> str:
    """What is said beside a word that only points or affirms: locked it, yes locked."""
    words = plain_words(typed.replace(",", " ")).split()
    if len(words) < 2 or not _DENYING.isdisjoint(words):
        return typed
    if words[-1] in ASSENT and (words[-1] != "it" or is_reported(words[0])):
        return " ".join(words[:-1])
    return " ".join(words[1:]) if words[0] in ASSENT else typed


def without_name_and_time(typed: str) -> str:
    """What is said before whom it was told, and when: on test w security at 1410.

    For a step that is done by telling somebody, and asks to have both written down.
    """
    found = _TO_WHOM.fullmatch(typed.strip())
    if found is None or not _DENYING.isdisjoint(plain_words(typed).split()):
        return typed
    return found["said"]


def _written_out(typed: str) -> str:
    """The words with each that people run together written out: dont pull in, won't start."""
    words = without_apostrophes(typed).split()
    written = " ".join(WRITTEN_OUT.get(word.lower(), word) for word in words)
    return written if any(word.lower() in WRITTEN_OUT for word in words) else typed


def letters(text: str) -> str:
    """The letters of what was typed."""
    return "".join(c for c in text if c.isalpha())


def one_word(text: str) -> str:
    """Words as an outcome's id is written."""
    return "-".join(plain_words(text.replace(",", " ")).split())


def _healthy_alone(test: Test, chosen: tuple[str, ...]) -> tuple[str, ...]:
    if len(chosen) > 1 and set(chosen) & set(test.healthy):
        raise NotAnAnswer("The sound outcome cannot be true together with another; give one kind.")
    return chosen
