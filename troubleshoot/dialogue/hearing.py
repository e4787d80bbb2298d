"""Hearing a danger in what is typed at a prompt, whatever the prompt asks for.

Words that would do as an answer are an answer. Where any words would do, each part of them is
heard for itself, and what was put right is no danger; where nothing typed can be right, whatever
speaks of one.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from string import digits
from typing import Final

from troubleshoot.dialogue.confirming import whether_meant
from troubleshoot.dialogue.facts_beside import without_facts
from troubleshoot.dialogue.hedged import HEDGES
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.dialogue.told_sound import is_told_sound
from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.at_the_flue import as_asked
from troubleshoot.safety.hearing.dangers import (
    ANY_DANGER,
    is_mistyped,
    may_be_danger,
    spoken_of,
)
from troubleshoot.safety.hearing.looks import tells_of_looks
from troubleshoot.safety.hearing.not_here_and_now import here_and_now
from troubleshoot.safety.hearing.roles import without_help
from troubleshoot.safety.hearing.small_talk import is_small_talk
from troubleshoot.safety.hearing.typing_errors import one_error, two_errors
from troubleshoot.safety.hearing.vocabulary import LOOSE, WHO, stem
from troubleshoot.safety.hearing.words import raw_words

HOW_TO_CALL = "If somebody is in danger: danger and what is wrong."

CALL_WORD: Final = "danger"
_CALL = re.compile(rf"\W*{CALL_WORD}(?:ous)?\b[\s,.:;!?\u2013\u2014-]*(?P<words>.*)", re.IGNORECASE)
"""A danger, however it is called: danger fire, danger: fire, DANGER!, dangerous."""

LEAST_NEAR = 4
"""Letters of a word that is taken for an answer with one typing error."""
LEAST_LONG = 7
"""Letters of an answer that is asked about with two."""
_ASKING: Final = frozenset({"how", "what", "where", "which", "why"})
LEAST_TOLD = 3
"""Words that tell something: hose popped off. Fewer are an answer that was missed."""
DANGER_OR_ANSWER = (
    "Is that a danger, or the answer? If it is a danger get clear, and type danger. If it is the "
    "answer, type that alone."
)


def called_danger(typed: str) -> str | None:
    """What is wrong, in the person's own words; None where no danger is called."""
    called = _CALL.fullmatch(typed)
    return None if called is None else called["words"].strip(" .!?")


def hear(
    knowledge: Knowledge, typed: str, standing: Collection[str] = (), least_facts: int = 2
) -> None:
    """Raise DangerCalled where what was typed speaks of a danger here and now.

    `standing`: hazards that have been told of, and are not told again. `least_facts`: how many
    facts of a unit make a list of them of it, in which "gas" is one.
    """
    heard = _heard(knowledge, typed)
    if heard and "," in typed:
        heard = _heard(knowledge, without_facts(knowledge, typed, heard, least_facts))
    if not {hazard.id for hazard in heard} <= {*standing}:
        raise DangerCalled(typed)


def _heard(knowledge: Knowledge, typed: str) -> tuple[Hazard, ...]:
    typed = here_and_now(typed)
    return (*spoken_of(knowledge, typed), *told_among(knowledge, typed))


def hear_among(knowledge: Knowledge, typed: str, standing: Collection[str] = ()) -> None:
    """Raise DangerCalled where words of any kind were wanted, and any part of them tells one."""
    if not {hazard.id for hazard in told_among(knowledge, here_and_now(typed))} <= {*standing}:
        raise DangerCalled(typed)


class Listener:
    """Listens at one prompt.

    `standing`: hazards that have been told of, and are not told again. `offered`: the answers that
    the prompt names. `about`: the words of the question, where they and its answers are no
    danger in themselves. `own`: all that the question and its answers say; words of one of these
    alone are never asked about. `asked`: the test, which says what a number is of. `asks_of_all`:
    whatever is told, in however plain words, is asked about where it is no answer: at a step.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        voice: Voice,
        standing: Collection[str] = (),
        offered: Iterable[str] = (),
        about: str = "",
        own: Iterable[str] = (),
        asked: Test | None = None,
    ) -> None:
        self.knowledge = knowledge
        self.voice = voice
        self.standing = standing
        self.offered = tuple(plain_words(answer) for answer in offered)
        self.about = about
        self.own = tuple(own)
        self.asked = asked
        self.doubted = ""
        self.has_told_how = False
        self.asks_of_all = False

    def hear(self, typed: str) -> None:
        """Raise DangerCalled where what was typed speaks of a danger."""
        said = as_asked(self.asked, typed)
        hear(self.knowledge, said, self.standing, least_facts=1 if self.about else 2)

    def hear_among(self, typed: str) -> None:
        """Raise DangerCalled where words of any kind were wanted, and any part tells one."""
        hear_among(self.knowledge, as_asked(self.asked, typed), self.standing)

    def hear_beside_help(self, typed: str) -> None:
        """The same, where it is asked who was told: "called 911" is the answer there."""
        self.hear_among(without_help(typed))

    def ask_about(self, typed: str, own: Iterable[str] = (), *, is_told: bool = False) -> bool:
        """Whether it is asked next if there is a danger: words hint at one, and no STOP stands.

        `own`: what else is an answer here. `is_told`: asked whatever the words are.
        """
        own, said = (*self.own, *own), as_asked(self.asked, typed)
        return not self.standing and self.voice.ask_about(
            self.knowledge, said, own, is_told=is_told
        )

    def tells(self, typed: str, least: int = LEAST_TOLD) -> bool:
        """Whether it tells something that is no question, nothing sound and not the step's words.

        With an answer in whole, of two words or more, who brought it about tells no more. `least`:
        words that tell something; fewer have to be of anything but the question.
        """
        words = raw_words(typed)
        if len(words) < least or typed.endswith("?") or words[0] in _ASKING:
            return False
        if is_told_sound(self.knowledge, typed) or is_small_talk(typed) or tells_of_looks(typed):
            return False
        own = {stem(word) for text in self.own for word in raw_words(text)}
        line = f" {' '.join(words)} "
        whole = (raw_words(answer) for answer in self.offered)
        if any(len(said) > 1 and f" {' '.join(said)} " in line for said in whole):
            own |= WHO
        said = {stem(word) for word in words}
        if len(words) < LEAST_TOLD and said & own:
            return False
        return not said <= own | LOOSE

    def not_understood(self, typed: str, reply: str) -> None:
        """Say why that is no answer, and how a danger is called: once, then where it may be one.

        What is an offered answer but for one letter is asked about. Raises DangerCalled.
        """
        if self.doubted:
            raise DangerCalled(self.doubted)
        if self._may_be_the_answer(typed):
            self.doubted = typed
            self.voice.say(DANGER_OR_ANSWER, strong=True)
            return
        meant = self._nearly(typed)
        if meant is not None:
            self.voice.say(whether_meant(meant))
            return
        self.hear(typed)
        self.voice.refuse(typed, (*self.own, self.about, *self.offered))
        asks = self.ask_about(typed, is_told=self.asks_of_all and self.tells(typed))
        hint = HOW_TO_CALL if not asks and self._needs_telling(typed) else ""
        self.has_told_how = self.has_told_how or bool(hint)
        self.voice.say(f"{reply} {hint}".strip())

    def _may_be_the_answer(self, typed: str) -> bool:
        """Whether a danger is seen in words all of which the question or its answers hold."""
        own = {word for text in (self.about, *self.offered) for word in raw_words(text)}
        said = {word for word in raw_words(typed) if stem(word) not in LOOSE}
        is_own = bool(self.about and said & own) and said <= own | HEDGES
        return is_own and bool(spoken_of(self.knowledge, typed))

    def _nearly(self, typed: str) -> str | None:
        """The offered answer that lacks one letter, unless a danger was spelt as it is spelt."""
        said = plain_words(typed)
        if len(said) < LEAST_NEAR or said in self.offered:
            return None
        meant = next((each for each in self.offered if _is_near(said, each)), None)
        return None if self.speaks_of_danger(typed) else meant

    def speaks_of_danger(self, typed: str, *, read: bool = True) -> bool:
        """Whether a danger is named, and spelt as it is spelt. `read`: or shown by a reading."""
        heard = spoken_of(self.knowledge, as_asked(self.asked, typed), read=read)
        named = {hazard.id for hazard in heard} - {ANY_DANGER}
        return bool(named) and not is_mistyped(self.knowledge, typed)

    def _needs_telling(self, typed: str) -> bool:
        """Whether how a danger is called is to be said: what is said always is not read."""
        if self._tries_to_answer(typed):
            return False
        return not self.has_told_how or may_be_danger(self.knowledge, typed)

    def _tries_to_answer(self, typed: str) -> bool:
        """Whether it looks like a number, or has a word of an offered answer in it."""
        words_offered = {word for answer in self.offered for word in answer.split()}
        said = plain_words(typed).split()
        return not said or not set(typed).isdisjoint(digits) or not words_offered.isdisjoint(said)


def _is_near(said: str, answer: str) -> bool:
    """Whether it is an answer with one letter wrong, or a long one with two left out: stopd."""
    if answer in one_error(said):
        return True
    return len(answer) >= LEAST_LONG and said[0] == answer[0] and two_errors(said, answer)
