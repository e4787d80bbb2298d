"""What is told at a safety step to have been left in a unit comes out before gas or power comes on.

Its words are kept as a note whatever is answered, so that leaving and going on forget nothing.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.yes_no import YesNo, answered_first
from troubleshoot.safety.hearing.left_in import tells_of_left_in
from troubleshoot.safety.steps import GAS_OPEN, LOCK_OFF, RESTART
from troubleshoot.visit.events import Noted
from troubleshoot.visit.state import VisitState

BRINGS_ON: Final = frozenset({GAS_OPEN, LOCK_OFF, RESTART})
"""The steps at which gas or power comes on: nothing may be left in before them."""
OUT_FIRST: Final = (
    "It comes out behind your own lock, proved dead: no gas is opened and no power put on before."
)
_LEFT, _OUT = "told to be left in the unit: ", "told to be out of the unit: "


def ask_if_left_in(book: VisitBook, listener: Listener, typed: str) -> Talk[bool]:
    """Ask where words tell that something was left in; False if they do not.

    Raises Leave, DangerCalled.
    """
    if not tells_of_left_in(typed):
        return False
    listener.hear(typed)
    book.add(Noted(f"{_LEFT}{typed}"))
    yield from _ask(book, listener, typed)
    return True


def out_first(book: VisitBook, listener: Listener) -> Talk[None]:
    """Ask until all that was told to be left in is out. Raises Leave, DangerCalled."""
    while words := left_in(book.state):
        yield from _ask(book, listener, words[-1])


def left_in(state: VisitState) -> tuple[str, ...]:
    """The words in which something was told to be left in, and not to be out since."""
    told = (note.removeprefix(_LEFT) for note in state.notes if note.startswith(_LEFT))
    out = {note.removeprefix(_OUT) for note in state.notes if note.startswith(_OUT)}
    return tuple(words for words in told if words not in out)


def _ask(book: VisitBook, listener: Listener, words: str) -> Talk[None]:
    question = YesNo(f'You typed "{words}". What was left in: is it out, and nothing else in?')
    if (yield from answered_first(listener, question)):
        book.add(Noted(f"{_OUT}{words}"))
    else:
        listener.voice.say(OUT_FIRST, strong=True)
