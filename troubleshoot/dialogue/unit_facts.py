"""Asking what the unit itself says: an equipment fact, a value from its nameplate."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from string import digits
from typing import Final

from troubleshoot.dialogue.asides import SKIPS
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.command_words import is_command
from troubleshoot.dialogue.hearing import Listener, hear
from troubleshoot.dialogue.hedged import is_in_doubt, without_doubt, without_hedges
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.dialogue.on_record import tell_if_other
from troubleshoot.dialogue.prompts import AskFact, AskPlate
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.dialogue.yes_no import NO, YES, YesNo, yes_or_no
from troubleshoot.knowledge.model import EquipmentFact, PlateValue
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.unit.beyond_said import beyond_named
from troubleshoot.reasoning.unit.equipment import ENDS
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.reasoning.unit.facts_said import in_words
from troubleshoot.visit.deciding.nameplate import still_matters
from troubleshoot.visit.events import FactTold, Noted, RepairedBefore
from troubleshoot.visit.events.undoing import standing
from troubleshoot.visit.state import VisitState

NO_PLATE: Final = "no data plate name nameplate label sticker cant cannot read unreadable"
"""Words that say of a plate that it tells nothing, and so nothing of the work."""
ASK_AGAIN = ""
"""In place of what is wrong: nothing is, but the question is still open."""


def ask_fact(book: VisitBook, voice: Voice, fact: EquipmentFact, why: str = "") -> Talk[bool]:
    """One equipment fact, by number or word, asked until it is understood; Enter for not known.

    What else of the unit the same answer says is taken with it. False where a command has changed
    what comes next, and it is not answered. Raises Back, Leave, DangerCalled.
    """

    def take(typed: str) -> str | None:
        number = None if fact.counts else choice(typed, len(fact.values))
        if number is not None:
            return book.try_fact(fact.id, fact.values[number - 1])
        said, left = facts_listed(book.knowledge, fact.id, typed)
        if said and (left or _says_more(said, fact)):
            tell_left(book, voice, typed, left)
            problem = _take_all(book, voice, fact, said)
            return problem if still_matters(book.knowledge, book.state.unit, fact) else None
        problem = book.try_fact(fact.id, typed)
        in_fewer_words = said.get(fact.id)
        if problem is None or in_fewer_words is None:
            return problem
        return book.try_fact(fact.id, in_fewer_words)

    return (yield from _ask(book, voice, AskFact(fact, why), fact.id, take))


def _says_more(said: Mapping[str, str], fact: EquipmentFact) -> bool:
    """Whether an answer names other facts than the one that was asked for."""
    return bool(said.keys() - {fact.id})


def _take_all(
    book: VisitBook, voice: Voice, fact: EquipmentFact, said: Mapping[str, str]
) -> str | None:
    """Keep every fact of one answer, and say which; what is wrong with them, or nothing."""
    problem = keep_facts(book, voice, said, fact.id if fact.id in said else "")
    if problem is not None or fact.id in said:
        return problem
    if still_matters(book.knowledge, book.state.unit, fact):
        voice.say(f"Still asked: {fact.asks}")
    return ASK_AGAIN


def tell_left(
    book: VisitBook, voice: Voice, typed: str, left: tuple[str, ...], least_facts: int = 1
) -> None:
    """Name what of a list is no fact that is known, and keep it as a note.

    `least_facts`: how many facts make a list of them, in which gas is one. Raises DangerCalled
    where the line, or what is left of it, tells a danger: gas, everywhere.
    """
    if left:
        hear(book.knowledge, typed, least_facts=least_facts)
        hear(book.knowledge, ", ".join(left))
        voice.ask_about(book.knowledge, ", ".join(left))
        words = ", ".join(f'"{piece}"' for piece in left)
        book.add(Noted(f"typed of the unit, and not understood: {', '.join(left)}"))
        voice.say(f"Not understood, and kept as a note: {words}.")


def ask_what_is_named(book: VisitBook, voice: Voice, words: str) -> Talk[bool]:
    """Ask once for each fact that the words name and do not tell; False where they are taken back.

    Somebody always says the reversing valve leaks, on units that have none. Raises Leave,
    DangerCalled.
    """
    try:
        for fact in beyond_named(book.knowledge, words):
            if fact.id not in book.state.unit.facts:
                yield from ask_fact(book, voice, fact)
    except Back:
        return False
    return True


def keep_facts(
    book: VisitBook, voice: Voice, said: Mapping[str, str], asked: str = ""
) -> str | None:
    """Keep the facts of one answer, and say which; what is wrong with them, or nothing.

    `asked`: that of them which was asked for.
    """
    before = book.state.unit.facts
    first = asked or next(iter(said))
    problem = book.try_fact(first, said[first], {k: v for k, v in said.items() if k != first})
    if problem is not None:
        return problem
    taken = (
        in_words(book.knowledge, name, value)
        + (f" (was {before[name]})" if before.get(name, value) != value else "")
        for name, value in said.items()
    )
    voice.say(f"Taken: {'; '.join(taken)}.")
    return None


def ask_plate(book: VisitBook, voice: Voice, plate: PlateValue, at: str | None) -> Talk[bool]:
    """One nameplate value, for one place where there are several; Enter for not known.

    False where a command has changed what comes next. Raises Back, Leave, DangerCalled.
    """

    def take(typed: str) -> str | None:
        problem = book.try_fact(plate.id, {at: typed} if at else typed)
        unit = book.state.unit
        low, high = (unit.plate_value(plate.id, None, near) for near in ENDS)
        if problem is None and low != high:
            voice.say(f"Taken as the range {low:g} to {high:g} {plate.unit}.")
        return problem

    return (yield from _ask(book, voice, AskPlate(plate, at), plate.id, take))


def _ask(
    book: VisitBook,
    voice: Voice,
    prompt: AskFact | AskPlate,
    name: str,
    take: Callable[[str], str | None],
) -> Talk[bool]:
    """Ask until it is understood; `take` keeps it, or says what is wrong.

    False where a command has changed what comes next.
    """
    offered = prompt.fact.values if isinstance(prompt, AskFact) else ()
    about = prompt.fact.asks if isinstance(prompt, AskFact) else ""
    own = (f"{NO_PLATE} {prompt.plate.meaning}",) if isinstance(prompt, AskPlate) else ()
    listener = Listener(book.knowledge, voice, offered=offered, about=about, own=own)
    while True:
        typed = yield from words_or_back(prompt)
        if is_command(typed):
            before = _what_comes(book.state)
            if (yield from voice.serves(typed)):
                if name in book.state.unit_data or _what_comes(book.state) != before:
                    return name in book.state.unit_data
                continue
        word = typed.lower()
        left_open = word in ("", *SKIPS) or (is_not_known(word) and word not in offered)
        if not left_open and _may_be_answer(book, prompt, typed):
            if not (yield from _is_so(listener, typed)):
                continue
            typed = without_doubt(typed)
        problem = book.try_fact(name, None) if left_open else take(typed)
        for said in (without_hedges(typed), _yes_or_no(word)):
            if problem and said:
                problem = problem if take(said) else None
        if problem is None:
            tell_if_other(book, voice, name)
            return True
        if problem == ASK_AGAIN or (yield from ask_repairs_told(book, voice, typed)):
            continue
        listener.not_understood(typed, problem)


def _may_be_answer(book: VisitBook, prompt: AskFact | AskPlate, typed: str) -> bool:
    """Whether it is an answer that is told in doubt."""
    if not is_in_doubt(typed):
        return False
    said = without_doubt(typed)
    if isinstance(prompt, AskPlate) or prompt.fact.counts:
        return not set(said).isdisjoint(digits)
    return bool(facts_listed(book.knowledge, prompt.fact.id, said)[0])


def _is_so(listener: Listener, typed: str) -> Talk[bool]:
    """Whether what was told in doubt is taken; undo says that it is not."""
    try:
        return (yield from yes_or_no(listener, YesNo(f'You typed "{typed}". Is it taken so?')))
    except Back:
        return False


def _yes_or_no(word: str) -> str:
    """The yes or no that facts are answered by, for another: nope; empty for neither."""
    return "yes" if word in YES else "no" if word in NO else ""


def _what_comes(state: VisitState) -> tuple[object, ...]:
    """What a command may change of what comes next."""
    return state.aim, state.closing, state.repairs


def facts_told(book: VisitBook) -> int:
    """How many answers have told of the unit or of its repairs, and were not taken back."""
    return sum(isinstance(event, FactTold | RepairedBefore) for event in standing(book.events))
