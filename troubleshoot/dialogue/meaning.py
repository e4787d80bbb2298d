"""Which cause or test a person means by words: taken and echoed where that is plain, else asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Fault, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood, with_place
from troubleshoot.reasoning.unit.places_said import places_said
from troubleshoot.visit.hearing.causes_by_words import best_fitting, heard_fault, leading_fault
from troubleshoot.visit.hearing.opposites import is_opposite, likeliest
from troubleshoot.visit.hearing.tests_by_words import MOST, heard_test, places_meant

WHICH: Final = "Which of these?"
WHERE: Final = "Where?"
NO_SUCH_CAUSE: Final = "No cause is known by these words. Its number in the list, or other words."
NO_SUCH_TEST: Final = (
    "No test here is known by these words. Type tests for a list, or other words, and at PLACE."
)

Spot = tuple[Test, Place | None]


def fault_meant(
    book: VisitBook, voice: Voice, conclusions: Conclusions, said: str
) -> Talk[Fault | None]:
    """The cause of this number in the list, or that the words mean; None where it is none.

    Raises Leave, DangerCalled.
    """
    number = choice(said.strip(), len(conclusions.causes))
    if number is not None:
        return conclusions.causes[number - 1].fault
    heard, faults = heard_fault(book.knowledge, said), book.knowledge.faults
    if heard.taken is not None:
        return faults[heard.taken]
    if not heard.which:
        hear(book.knowledge, said)
        voice.say(NO_SUCH_CAUSE)
        return None
    chances = [(cause.fault.id, cause.probability) for cause in conclusions.causes]
    fitting = best_fitting(book.knowledge, chances, said)
    which = sorted(fitting, key=lambda name: is_opposite(faults[name], said))
    index = yield from pick(book, voice, WHICH, [faults[name].name for name in which])
    return None if index is None else faults[which[index]]


def fault_repaired(
    book: VisitBook, voice: Voice, conclusions: Conclusions, said: str
) -> Talk[Fault | None]:
    """The cause that words say was repaired: the leading one where they fit it, else as asked.

    One that stood the other way round than told is never taken, nor asked about alone.

    Raises Leave, DangerCalled.
    """
    leading = leading_of(book, conclusions, said)
    if leading is not None and not is_opposite(leading, said):
        return leading
    heard, faults = heard_fault(book.knowledge, said), book.knowledge.faults
    if heard.taken is None or not is_opposite(faults[heard.taken], said):
        return (yield from fault_meant(book, voice, conclusions, said))
    named = [cause.fault.id for cause in conclusions.causes]
    others = (faults[name] for name in heard.which)
    which = likeliest(others, said, named=named, heard=heard.said - {heard.taken})
    index = None
    if which:
        index = yield from pick(book, voice, WHICH, [fault.name for fault in which])
    else:
        voice.say(NO_SUCH_CAUSE)
    return None if index is None else which[index]


def leading_of(book: VisitBook, conclusions: Conclusions, said: str) -> Fault | None:
    """The cause that leads, where the words fit it and mean no other without doubt."""
    chances = [(cause.fault.id, cause.probability) for cause in conclusions.causes]
    leading = leading_fault(book.knowledge, chances, said)
    taken = heard_fault(book.knowledge, said).taken
    if leading is None or taken not in (None, leading):
        return None
    return book.knowledge.faults[leading]


def spot_meant(book: VisitBook, voice: Voice, said: str) -> Talk[Spot | None]:
    """The test that the words mean, and where; None where it is none.

    What is no test without doubt may speak of a danger: do you smell gas. Raises Leave,
    DangerCalled.
    """
    heard, tests = heard_test(book.knowledge, book.state.unit, said), book.knowledge.tests
    if heard.taken is None:
        hear(book.knowledge, said)
    if not heard.which:
        voice.say(NO_SUCH_TEST)
        return None
    meant = heard.which if heard.taken is None else (heard.taken,)
    try:
        spots = [spot for name in meant for spot in _spots(book, tests[name], said)]
    except PlaceNotUnderstood as error:
        voice.say(f"{error.problem}; {error.instead}.")
        return None
    if len(spots) == 1 and heard.taken is not None:
        voice.say(f"Taken as: {_name(book, spots[0])}.")
        return spots[0]
    return (yield from _one_of(book, voice, spots[:MOST], WHERE if heard.taken else WHICH))


def _spots(book: VisitBook, test: Test, said: str) -> Iterator[Spot]:
    for place in places_meant(book.knowledge, book.state.unit, test, said):
        yield test, place


def _one_of(
    book: VisitBook, voice: Voice, spots: Sequence[Spot], question: str
) -> Talk[Spot | None]:
    """The spot that is chosen by its number, its name, or where it is: comp b."""

    def by_place(typed: str) -> int | None:
        here = [at for at, spot in enumerate(spots) if spot[1] in _places(book, spot[0], typed)]
        return here[0] if len(here) == 1 else None

    names = [_name(book, spot) for spot in spots]
    index = yield from pick(book, voice, question, names, by_place)
    return None if index is None else spots[index]


def _places(book: VisitBook, test: Test, typed: str) -> tuple[Place, ...]:
    """The places of a test that words name; none where they name none, or one that is not here."""
    try:
        return places_said(book.knowledge, typed, test.per, book.state.unit.layout)
    except PlaceNotUnderstood:
        return ()


def _name(book: VisitBook, spot: Spot) -> str:
    test, at = spot
    return with_place(test.name, book.state.unit.layout.shown(test.per, at))
