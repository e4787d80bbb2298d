"""A unit put into the register from its data plate: one question after the other, each kept.

Enter leaves a question open, and whoever adds the same unit again is asked what is open still.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Final

from troubleshoot.dialogue.asides import SKIPS
from troubleshoot.dialogue.hearing import Listener, hear
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.prompts import AskFact, AskPlate, AskWords, Choose, Ended, Prompt
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Leave, Talk, unless_back, words_or_back
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.unit.equipment import InputRefused, read_unit
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.reasoning.unit.facts_said import in_words
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.records.register.columns import AT, NOTES, OWN
from troubleshoot.records.register.entry import Entry, cells_of, told
from troubleshoot.records.register.questions import Wanted, questions
from troubleshoot.visit.kept.unit_names import same_unit

DONE: Final = "done"
WHICH: Final = AskWords(
    "Which unit? Its name, as visits will have it.",
    why="Visits, STOPs and history find the unit by its name.",
)
NEXT: Final = "next"
HOW: Final = (
    "Enter leaves a question open, next all of its kind; u takes the last answer back, and done "
    "ends it."
)
NO_NAME: Final = "A unit of the register has a name."
NOTHING_BEFORE: Final = "Nothing has been answered yet that could be taken back."
COLUMNS: Final = "All that can be kept of a unit: troubleshoot units columns"


class Adding:
    """Asks what is open of one unit. `keep` keeps it, and raises where it cannot."""

    def __init__(
        self,
        knowledge: Knowledge,
        voice: Voice,
        known: Callable[[str], Entry | None],
        keep: Callable[[Entry], None],
    ) -> None:
        self.knowledge = knowledge
        self.voice = voice
        self.entry = Entry("")
        self._known = known
        self._keep = keep
        self._before: list[tuple[Entry, tuple[str, ...]]] = []
        self._passed: set[str] = set()

    def run(self, name: str) -> Talk[Ended]:
        """From the name to the last question, or until somebody ends it. Raises DangerCalled."""
        try:
            yield from self._name(name)
            self.voice.say(HOW)
            while (yield from self._next()):
                pass
        except Leave:
            pass
        if self.entry in (Entry(""), Entry(self.entry.name)):
            self.voice.say("Nothing was told, and nothing is kept.")
        else:
            self.voice.say(
                f'Kept: {self.entry.name}. See: troubleshoot units show "{self.entry.name}"'
            )
            self.voice.say(COLUMNS)
        return Ended("closed")

    def _name(self, name: str) -> Talk[None]:
        listener = Listener(self.knowledge, self.voice)
        while not same_unit(name, name):
            name = yield from unless_back(
                self.voice, NOTHING_BEFORE, lambda: ask_name(listener, WHICH)
            )
            if not same_unit(name, name):
                self.voice.say(NO_NAME)
        self.entry = self._known(name) or Entry(name)
        self.voice.keeper = self._note
        if self._known(name):
            self.voice.say(f"{self.entry.name} is in the register: what is open is asked.")

    def _note(self, text: str) -> None:
        """Keep a note. Raises DangerCalled where it tells of a danger."""
        before = self.entry.own.get(NOTES)
        problem = self._tell({NOTES: f"{before}; {text}" if before else text})
        hear(self.knowledge, text)
        self.voice.say(problem or "Noted.")

    def _next(self) -> Talk[bool]:
        """Ask the first question that is open; False where none is, or it is done."""
        open_ones = [each for each in self._wanted() if each.column not in self._passed]
        if not open_ones:
            return False
        wanted = open_ones[0]
        try:
            typed = yield from words_or_back(wanted.prompt)
        except Back:
            self._take_back()
            return True
        word = typed.lower()
        if word == DONE:
            return False
        if word == NEXT:
            self._leave_open(*(each.column for each in open_ones if each.about == wanted.about))
            return True
        if word in ("", *SKIPS):
            self._leave_open(wanted.column)
            return True
        self._take(wanted, typed)
        return True

    def _leave_open(self, *columns: str) -> None:
        """Ask these no more, until it is taken back."""
        self._before.append((self.entry, columns))
        self._passed.update(columns)

    def _wanted(self) -> Iterator[Wanted]:
        """What may be asked of this unit and is not on record, in the order of a data plate."""
        unit, cells = read_unit(self.knowledge, self.entry.unit), cells_of(self.entry)
        for each in questions(self.knowledge, unit):
            is_told = each.column in cells or each.key in cells or each.key in unit.facts
            if not is_told:
                yield each

    def _spoken(self, column: str) -> str:
        key, _, place = column.partition(AT)
        name = OWN[key].spoken if key in OWN else self.knowledge.spoken(key)
        return with_place(name, place)

    def _take(self, wanted: Wanted, typed: str) -> None:
        """Keep what was typed, or say what is wrong with it. Raises DangerCalled."""
        listener = Listener(self.knowledge, self.voice, own=(_about(wanted.prompt),))
        if not wanted.column:
            self._take_line(listener, typed)
            return
        if wanted.key in OWN:
            listener.hear(typed)
        said = self._chosen(wanted, typed)
        if said and self._tell(said, *(wanted.column,) * (wanted.key in said)) is None:
            if said.keys() - {wanted.key}:
                self._say_taken(said)
            return
        problem = self._tell({wanted.column: typed}, wanted.column)
        if problem is not None:
            listener.not_understood(typed, problem)

    def _chosen(self, wanted: Wanted, typed: str) -> Mapping[str, str]:
        """What an answer chooses by its number, or the facts that its words name."""
        prompt = wanted.prompt
        if isinstance(prompt, Choose) and (number := choice(typed, len(prompt.options))):
            return {wanted.column: prompt.options[number - 1]}
        if not isinstance(prompt, AskFact):
            return {}
        fact = prompt.fact
        number = None if fact.counts else choice(typed, len(fact.values))
        if number is not None:
            return {fact.id: fact.values[number - 1]}
        said, left = facts_listed(self.knowledge, fact.id, typed)
        return {} if left else said

    def _take_line(self, listener: Listener, typed: str) -> None:
        """What a data plate says, read out in one line; what is not understood is named."""
        said, left = facts_listed(self.knowledge, "", typed)
        problem = self._tell(said, "") if said else "None of that is understood."
        if problem is not None:
            listener.not_understood(typed, problem)
            return
        self._say_taken(said)
        if left:
            listener.hear(", ".join(left))
            pieces = ", ".join(f'"{piece}"' for piece in left)
            self.voice.say(f"Not understood, and not kept: {pieces}.")

    def _say_taken(self, said: Mapping[str, str]) -> None:
        taken = "; ".join(in_words(self.knowledge, key, value) for key, value in said.items())
        self.voice.say(f"Taken: {taken}.")

    def _tell(self, cells: Mapping[str, str], *answered: str) -> str | None:
        """Keep what is told, on disk before anything else is asked; what is wrong, or nothing.

        `answered`: the questions that it answers, which are not asked again.
        """
        try:
            entry = told(self.knowledge, self.entry, cells)
        except InputRefused as error:
            return "; ".join(f"{r.problem}; {r.instead}" for r in error.refusals) + "."
        self._keep(entry)
        self._leave_open(*answered)
        self.entry = entry
        return None

    def _take_back(self) -> None:
        if not self._before:
            self.voice.say(NOTHING_BEFORE)
            return
        before, columns = self._before.pop()
        self._passed.difference_update(columns)
        if before != self.entry:
            gone = cells_of(self.entry).items() - cells_of(before).items()
            said = "; ".join(f"{self._spoken(key)}: {value}" for key, value in sorted(gone))
            self._keep(before)
            self.voice.say(f"Taken back: {said}.")
        self.entry = before


def _about(prompt: Prompt) -> str:
    """What a question says, whose words are no danger in themselves."""
    if isinstance(prompt, AskFact):
        return prompt.fact.asks
    if isinstance(prompt, AskPlate):
        return prompt.plate.meaning
    return prompt.question if isinstance(prompt, AskWords | Choose) else ""
