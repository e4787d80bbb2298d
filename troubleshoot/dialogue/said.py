"""What a visit tells on the way from one prompt to the next, as data."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from troubleshoot.frozen import frozen
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.dangers import named
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.netted import read_in_doubt
from troubleshoot.safety.hearing.not_here_and_now import here_and_now

if TYPE_CHECKING:  # the first prompts come before all that reasons is imported
    from troubleshoot.dialogue.prompts import Prompt
    from troubleshoot.dialogue.talk import Talk, ToldGone
    from troubleshoot.knowledge.model import Complaint, Hazard, Knowledge, Test
    from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
    from troubleshoot.reasoning.readings.expected_now import Expected
    from troubleshoot.reasoning.readings.readings import Reading
    from troubleshoot.safety.stops.standing import Standing
    from troubleshoot.visit.kept.stopped import Stopped


@frozen
class Sentence:
    """A plain sentence; `level` sets what explains another apart, `strong` is not to be missed."""

    text: str
    level: int = 0
    strong: bool = False


@frozen
class Verdict:
    """What a reading was taken for. `name`: of what was computed, beside what was asked for.

    `expected`: what a sound unit would show in its place, where that is known. `lacks`: of one that
    cannot be judged, what it is judged by and how that is told. `read_with`: by which listed
    instrument it is judged.
    """

    reading: Reading
    name: str = ""
    expected: Expected | None = None
    lacks: str = ""
    read_with: str = ""


@frozen
class Agreement:
    """Whether a reading agrees with the one before it, in a sentence."""

    text: str


@frozen
class Causes:
    """The causes as they stand."""

    conclusions: Conclusions


@frozen
class Danger:
    """A hazard that has been called up, and stands."""

    standing: Standing


@frozen
class CallCautions:
    """The hazards of such a call, before anything is asked or done."""

    call: Complaint


@frozen
class FirstLooks:
    """Looks on such a call that cost almost nothing."""

    looks: str


@frozen
class StopNow:
    """A STOP that stands in this visit, where no prompt tells it. `others` stand beside it."""

    fired: FiredHazard
    tag: tuple[str, ...]
    others: tuple[Hazard, ...] = ()


@frozen
class StopElsewhere:
    """A STOP that stands over the unit from another visit."""

    stopped: Stopped


@frozen
class HowTo:
    """How a test is done, and in full what cautions come before it."""

    test: Test
    cautions: tuple[Hazard, ...] = ()


@frozen
class WhatToType:
    """What may be typed at any prompt besides an answer."""


@frozen
class OtherTest:
    """A test to choose from, by its number. `minutes`: with the way there, where it is worth it."""

    number: int
    test: Test
    where: str | None
    minutes: float | None = None


Said = (
    Sentence
    | Verdict
    | Agreement
    | Causes
    | Danger
    | CallCautions
    | FirstLooks
    | StopNow
    | StopElsewhere
    | HowTo
    | WhatToType
    | OtherTest
)


@frozen
class Hinted:
    """Words that hint at a danger, and the rule base in which none was heard."""

    knowledge: Knowledge
    said: str


@frozen
class Refused:
    """Words that were no answer at a prompt, and what its question and answers say."""

    said: str
    at: Prompt
    own: tuple[str, ...] = ()


class Voice:
    """Gathers what is said until somebody listens. `keeper`: of notes; none where nothing is kept.
    `weigher`: of refrigerant that was weighed.

    `commands`: serves a command where it is no test or ending that is asked about.

    `readings`: takes what is told by name where a proof is asked for.

    `gone`: hears that a state has gone on which the work stands; none where no work is done.

    `typed`: the reply in hand, and its prompt; `refused`: what was no answer; `doubt`: asks of that
    in between whether all still stands.

    `hinted`: what was said and taken that hints at a danger; asked about before the next prompt.

    `gone_with_it`: what the words of a danger took away besides; told behind its STOP.

    `told_whole`: the cautions and steps that were told in full, until they are new again.
    """

    def __init__(self) -> None:
        self._said: list[Said] = []
        self._safe: set[str] = set()
        self.keeper: Callable[[str], None] | None = None
        self.weigher: Callable[[str], None] | None = None
        self.commands: Callable[[str], Talk[bool]] | None = None
        self.readings: Callable[[str, Test | None], Talk[str | None]] | None = None
        self.gone: Callable[[Prompt, str], ToldGone | None] | None = None
        self.typed: tuple[str, Prompt] | None = None
        self.refused: Refused | None = None
        self.doubt: Callable[[Refused], Talk[None] | None] | None = None
        self.hinted: Hinted | None = None
        self.gone_with_it: tuple[str, ...] = ()
        self.told_whole: set[str] = set()

    def say(self, text: str, level: int = 0, strong: bool = False) -> None:
        self._said.append(Sentence(text, level, strong))

    def say_all(self, texts: Iterable[str], level: int = 0) -> None:
        for text in texts:
            self.say(text, level)

    def tell(self, said: Said) -> None:
        self._said.append(said)
        if isinstance(said, CallCautions):
            self.told_whole.update(said.call.hazards_first)
        elif isinstance(said, Danger):
            self.told_whole.add(said.standing.hazard.id)

    def tell_gone_with_it(self) -> None:
        """Tell what a danger took away that was taken back, so that no STOP tells it."""
        self.say_all(self.gone_with_it)
        self.gone_with_it = ()

    def note(self, text: str) -> None:
        """Keep a note that was given. Raises what its keeper raises."""
        if self.keeper is not None:
            self.keeper(text)

    def weigh(self, words: str) -> bool:
        """Keep what was weighed; False where there is no visit that could. Raises as `note`."""
        if self.weigher is not None:
            self.weigher(words)
        return self.weigher is not None

    def serves(self, typed: str) -> Talk[bool]:
        """Serve a command; False where there is nobody who could. Raises what it raises."""
        return self.commands is not None and (yield from self.commands(typed))

    def reads(self, typed: str, own: Test | None) -> Talk[str | None]:
        """Take readings that are told by name; what is left for the test in question.

        None where they are none, or nobody is there who could.
        """
        return None if self.readings is None else (yield from self.readings(typed, own))

    def told_gone(self, prompt: Prompt, typed: str) -> ToldGone | None:
        """What breaks in where somebody says that a state has gone; None where none has."""
        return None if self.gone is None else self.gone(prompt, typed)

    def refuse(self, said: str, own: Iterable[str] = ()) -> None:
        """The reply in hand is no answer; what was typed at an earlier prompt is let be."""
        if self.typed is not None and plain_words(said) in plain_words(self.typed[0]):
            self.refused = Refused(said, self.typed[1], tuple(own))

    def doubts(self) -> Talk[None] | None:
        """The question that what was refused last is cause for, if any; it is asked once."""
        refused, self.refused = self.refused, None
        if refused is None or self.doubt is None or self.is_safe(refused.said):
            return None
        return self.doubt(refused)

    def hints(self, said: str, own: Iterable[str] = ()) -> bool:
        """Whether words hint at a danger, and nobody has said that they are none."""
        return not self.is_safe(said) and hints(said, own)

    def is_safe(self, said: str) -> bool:
        """Whether somebody has said that these words tell of nothing that endangers."""
        return plain_words(said) in self._safe

    def ask_about(
        self, knowledge: Knowledge, said: str, own: Iterable[str] = (), *, is_told: bool = False
    ) -> bool:
        """Have it asked before the next prompt whether there is a danger; False where none is.

        `is_told`: one is told in these words, and may be one that does not stop the whole job.
        So it is where one is told that is not of here and now.
        """
        is_elsewhere = here_and_now(said) != said and bool(named(knowledge, said))
        is_told = is_told or is_elsewhere or bool(read_in_doubt(knowledge, said))
        if self.hints(said, own) or (is_told and not self.is_safe(said)):
            self.hinted = Hinted(knowledge, said)
        return self.hinted is not None

    def take_as_safe(self, said: str) -> None:
        """Ask no more about words that were said to be no danger."""
        self._safe.add(plain_words(said))

    def heard(self) -> tuple[Said, ...]:
        """Everything since this was last asked."""
        said, self._said = tuple(self._said), []
        return said
