"""A unit put into the register from its data plate: one question after the other, each kept.

Enter leaves a question open, and whoever adds the same unit again is asked what is open still.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.dialogue.asides import SKIPS
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.prompts import AskFact, AskPlate, AskWords, Choose, Ended, Prompt
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Leave, Talk, unless_back, words_or_back
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded, Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import begun
from troubleshoot.reasoning.unit.equipment import InputRefused, Unit, read_unit
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.reasoning.unit.facts_said import in_words
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.records.register.columns import AT, MATTERS, NOTES, OWN
from troubleshoot.records.register.entry import Entry, cells_of, told
from troubleshoot.visit.kept.unit_names import same_unit

DONE: Final = "done"
WHICH: Final = AskWords(
    "Which unit? Its name, as visits will have it.",
    why="Visits, STOPs and history find the unit by its name.",
)
PLATE_LINE: Final = AskWords(
    "What does the data plate say? Several at once, with commas: R-410A, 208/3/60, gas, 10 tons.",
    why="What is told here is not asked one by one.",
)
HOW: Final = "Enter leaves a question open, u takes the last answer back, done ends it."
NO_NAME: Final = "A unit of the register has a name."
NOTHING_BEFORE: Final = "Nothing has been answered yet that could be taken back."
COLUMNS: Final = "All that can be kept of a unit: troubleshoot units columns"

_FIRST: Final = ("site", "roof", "serves", "matters", "model", "serial")
_FACTS: Final = (
    "refrigerant", "metering", "circuits", "condenser-fans", "condenser-coil", "line-volts-class",
    "supply-phase", "compressor-phase", "heat", "fuel", "ignition", "draft", "blower-drive",
    "blower-motor", "economizer", "duct-smoke-detector", "crankcase-heater", "building-control",
)  # fmt: skip
_PLATES: Final = (
    "nameplate-volts", "maximum-fuse", "cooling-tons", "charge", "stated-subcooling",
    "compressor-rla", "compressor-lra", "condenser-fan-fla", "blower-fla",
    "maximum-external-static", "gas-input-rating", "heat-rise-low", "heat-rise-high",
    "manifold-rating", "gas-inlet-minimum", "gas-inlet-maximum", "capacitor-rated",
)  # fmt: skip
_LAST: Final = (
    "capacitor-cans", "capacitor-tolerance", "capacitor-volts", "filters", "belts", "fuse-class",
)  # fmt: skip
_GAS: Final[FactsNeeded] = MappingProxyType({"heat": ("gas",)})
_WARM: Final[FactsNeeded] = MappingProxyType({"heat": ("gas", "electric")})
ONLY_WITH: Final[Mapping[str, FactsNeeded]] = MappingProxyType(
    {
        **dict.fromkeys(("fuel", "ignition", "draft", "gas-input-rating", "manifold-rating"), _GAS),
        **dict.fromkeys(("gas-inlet-minimum", "gas-inlet-maximum"), _GAS),
        **dict.fromkeys(("heat-rise-low", "heat-rise-high"), _WARM),
        "belts": {"blower-drive": ("belt",)},
    }
)
"""What only some units have, by the facts of these."""


@frozen
class _Wanted:
    """One question: the column that its answer goes into, and its place where there are several."""

    column: str
    prompt: Prompt

    @property
    def key(self) -> str:
        return self.column.partition(AT)[0]


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
        self._before: list[tuple[Entry, str]] = []
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
        before = self.entry.own.get(NOTES)
        self._tell({NOTES: f"{before}; {text}" if before else text}, "")
        self.voice.say("Noted.")

    def _next(self) -> Talk[bool]:
        """Ask the first question that is open; False where none is, or it is done."""
        wanted = next((each for each in self._wanted() if each.column not in self._passed), None)
        if wanted is None:
            return False
        try:
            typed = yield from words_or_back(wanted.prompt)
        except Back:
            self._take_back()
            return True
        word = typed.lower()
        if word == DONE:
            return False
        if word in ("", *SKIPS):
            self._before.append((self.entry, wanted.column))
            self._passed.add(wanted.column)
            return True
        self._take(wanted, typed)
        return True

    def _wanted(self) -> Iterator[_Wanted]:
        """What may be asked of this unit and is not on record, in the order of a data plate."""
        unit, cells = read_unit(self.knowledge, self.entry.unit), cells_of(self.entry)
        for each in self._questions(unit):
            is_had = unit.allows(ONLY_WITH.get(each.key, {}))
            is_told = each.column in cells or each.key in cells or each.key in unit.facts
            if is_had and not is_told:
                yield each

    def _questions(self, unit: Unit) -> Iterator[_Wanted]:
        yield from (self._of_own(key) for key in _FIRST)
        yield _Wanted("", PLATE_LINE)
        for name in _FACTS:
            if name in self.knowledge.facts:
                yield _Wanted(name, AskFact(self.knowledge.facts[name]))
        for name in _PLATES:
            plate = self.knowledge.plate_values.get(name)
            for place in unit.layout.places(plate.per) if plate else ():
                shown = unit.layout.shown(plate.per, place) if plate else None
                if plate:
                    yield _Wanted(f"{name}{AT}{shown}" if shown else name, AskPlate(plate, shown))
        yield from (self._of_own(key) for key in _LAST)

    def _spoken(self, column: str) -> str:
        key, _, place = column.partition(AT)
        name = OWN[key].spoken if key in OWN else self.knowledge.spoken(key)
        return with_place(name, place)

    def _of_own(self, key: str) -> _Wanted:
        column = OWN[key]
        said = f"{begun(column.spoken)}: {column.meaning}"
        if key == "matters":
            return _Wanted(key, Choose(f"{said}. Which?", MATTERS))
        return _Wanted(key, AskWords(f"{said} ({column.takes})?"))

    def _take(self, wanted: _Wanted, typed: str) -> None:
        """Keep what was typed, or say what is wrong with it. Raises DangerCalled."""
        listener = Listener(self.knowledge, self.voice, own=(_about(wanted.prompt),))
        if not wanted.column:
            self._take_line(listener, typed)
            return
        if wanted.key in OWN:
            listener.hear(typed)
        said = self._chosen(wanted, typed)
        if said and self._tell(said, wanted.column) is None:
            return
        problem = self._tell({wanted.column: typed}, wanted.column)
        if problem is not None:
            listener.not_understood(typed, problem)

    def _chosen(self, wanted: _Wanted, typed: str) -> Mapping[str, str]:
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
        taken = "; ".join(in_words(self.knowledge, key, value) for key, value in said.items())
        self.voice.say(f"Taken: {taken}.")
        if left:
            listener.hear(", ".join(left))
            pieces = ", ".join(f'"{piece}"' for piece in left)
            self.voice.say(f"Not understood, and not kept: {pieces}.")

    def _tell(self, cells: Mapping[str, str], column: str) -> str | None:
        """Keep what is told, on disk before anything else is asked; what is wrong, or nothing."""
        try:
            entry = told(self.knowledge, self.entry, cells)
        except InputRefused as error:
            return "; ".join(f"{r.problem}; {r.instead}" for r in error.refusals) + "."
        self._keep(entry)
        self._before.append((self.entry, column))
        self._passed.add(column)
        self.entry = entry
        return None

    def _take_back(self) -> None:
        if not self._before:
            self.voice.say(NOTHING_BEFORE)
            return
        before, column = self._before.pop()
        self._passed.discard(column)
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
