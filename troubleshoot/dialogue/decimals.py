"""The digit that decides: asked for once, where only the rounding of what was typed is in doubt."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import Talk, words_or_back
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.visit.events import Answered
from troubleshoot.visit.hearing.with_reading import limit_typed_over

KEPT: tuple[str, ...] = ("", "n", "no", "none", "keep", "ok")


def with_its_decimals(listener: Listener, book: VisitBook, event: Answered) -> Talk[Answered]:
    """The answer with the digit that was asked for, or as it was.

    A number that lies elsewhere is another reading: u, and it is asked for again. Raises Back,
    Leave, DangerCalled.
    """
    found = limit_typed_over(book.knowledge, book.state, event)
    if found is None:
        return event
    test = book.knowledge.tests[event.test]
    low, high, limit = found
    unit = unit_of(book.knowledge.quantities[test.reads[0].quantity].unit).spoken
    asked = AskWords(
        f"{event.text} may be {low:g} to {high:g} {unit}, and the limit is {limit:.4g}: one more "
        "digit? Enter keeps it",
        repeated=True,
    )
    while True:
        typed = in_figures((yield from words_or_back(asked)))
        if typed.lower() in KEPT:
            return event
        try:
            more = read_text(test, typed, book.knowledge).values[0].value
        except NotUnderstood as error:
            listener.not_understood(typed, f'"{typed}" {error.why}; {error.instead}.')
            continue
        if low <= more <= high:
            return replace(event, text=typed)
        listener.not_understood(typed, f"{low:g} to {high:g} {unit}, Enter, or u to type it anew.")
