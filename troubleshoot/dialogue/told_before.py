"""States told as gone before the turns of a visit: as it is chosen or named, or gone on with.

What is told there is kept in the visit on whose unit it stood, and the question stands again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager, closing, nullcontext
from copy import copy
from functools import partial
from typing import TYPE_CHECKING, TypeVar

from troubleshoot.dialogue.asides import noted
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.said import Refused, Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Reply, Talk, ToldGone
from troubleshoot.frozen import frozen
from troubleshoot.outside.text import plain_words
from troubleshoot.visit.events import Noted

if TYPE_CHECKING:  # the first prompts come before all that reasons is imported
    from troubleshoot.dialogue.book import VisitBook
    from troubleshoot.dialogue.shelf import Shelf
    from troubleshoot.knowledge.model import Knowledge
    from troubleshoot.visit.state import VisitState

LEAST_TOLD = 2
"""Words that may tell of a state: a number, y and n tell of none."""

T = TypeVar("T")


@frozen
class _Kept:
    """A visit that listens: as it stands, and how its book is held while something is kept."""

    state: VisitState
    opens: Callable[[], AbstractContextManager[VisitBook]]


def heard_in_open(shelf: Shelf, voice: Voice, waiting: Sequence[str], talk: Talk[T]) -> Talk[T]:
    """The talk in which a visit is chosen or its unit named, while those that wait listen.

    What fits several is told of the latest of them. Raises what the talk raises.
    """

    def kept() -> Iterator[_Kept]:
        for visit in waiting:
            state = shelf.state_of(visit)
            if visit not in shelf.elsewhere(state.name):
                yield _Kept(state, partial(_held, shelf, visit))

    return (yield from _Before(shelf.knowledge, voice, kept).heard_in(talk))


def heard_in_book(book: VisitBook, voice: Voice, talk: Talk[T]) -> Talk[T]:
    """The talk in which a visit is gone on with. Raises what the talk raises."""

    def kept() -> Iterator[_Kept]:
        yield _Kept(book.state, lambda: nullcontext(book))

    return (yield from _Before(book.knowledge, voice, kept, is_open=True).heard_in(talk))


def _held(shelf: Shelf, visit: str) -> AbstractContextManager[VisitBook]:
    return closing(shelf.go_on(visit))


class _Before:
    """Listens for what has gone, at every prompt of a talk.

    `kept`: the visits, the latest first. `is_open`: it is one that is gone on with already.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        voice: Voice,
        kept: Callable[[], Iterator[_Kept]],
        *,
        is_open: bool = False,
    ) -> None:
        self.knowledge = knowledge
        self.voice = voice
        self.kept = kept
        self.is_open = is_open
        self.asked: set[str] = set()

    def heard_in(self, talk: Talk[T]) -> Talk[T]:
        self.voice.gone, self.voice.doubt = self._told, self._doubt
        going_on: Callable[[], Prompt] = lambda: next(talk)  # noqa: E731 - the first of its steps
        try:
            while True:
                try:
                    prompt = going_on()
                except StopIteration as end:
                    result: T = end.value
                    return result
                going_on = yield from self._reply_to(talk, prompt)
        finally:
            self.voice.gone = self.voice.doubt = None

    def _reply_to(self, talk: Talk[T], prompt: Prompt) -> Talk[Callable[[], Prompt]]:
        """How the talk goes on after this prompt; it stands again behind what has gone."""
        try:
            reply = yield prompt
            if (yield from self._asks_of_gone(reply)):
                return lambda: copy(prompt)
            return lambda: talk.send(reply)
        except ToldGone as told:
            try:
                self._void(told)
            except DangerCalled as called:
                danger = called
                return lambda: talk.throw(danger)
            return lambda: copy(prompt)
        except (DangerCalled, Leave) as raised:
            broken_off = raised
            return lambda: talk.throw(broken_off)

    def _told(self, prompt: Prompt, typed: str) -> ToldGone | None:
        from troubleshoot.dialogue.state_gone import told_in

        said = noted(typed) or typed
        found = (told_in(self.knowledge, each.state, said) for each in self._kept(typed))
        steps = next(filter(None, found), ())
        return ToldGone(typed, steps) if steps else None

    def _asks_of_gone(self, reply: Reply) -> Talk[bool]:
        """Ask where words may say that something has gone. Raises ToldGone, DangerCalled, Leave."""
        from troubleshoot.dialogue.state_gone import hinted_in, whether_it_stands

        if not isinstance(reply, str) or plain_words(reply) in self.asked:
            return False
        found = (hinted_in(self.knowledge, each.state, reply) for each in self._kept(reply))
        steps = next(filter(None, found), ())
        if not steps:
            return False
        self.asked.add(plain_words(reply))
        yield from whether_it_stands(Listener(self.knowledge, self.voice), reply, steps)
        return True

    def _doubt(self, refused: Refused) -> Talk[None] | None:
        """Of what is refused here: asked of the latest visit in which something stands."""
        from troubleshoot.dialogue.beside_work import doubt_in

        def keep(note: Noted, each: _Kept) -> None:
            with each.opens() as book:
                book.add(note)

        if plain_words(refused.said) in self.asked:
            return None
        asked = (
            doubt_in(self.knowledge, self.voice, each.state, refused, partial(keep, each=each))
            for each in self._kept(refused.said)
        )
        return next(filter(None, asked), None)

    def _void(self, told: ToldGone) -> None:
        """Keep what has gone in the visit that it is told of. Raises DangerCalled."""
        from troubleshoot.dialogue.state_gone import keep_told, stood_on

        typed = str(told)
        of = max(self._kept(typed), key=lambda each: len(stood_on(each.state, told.steps)))
        with of.opens() as book:
            keep_told(book, self.voice, stood_on(of.state, told.steps), typed)
            if not self.is_open:
                name = f" to {book.state.name}" if book.state.name else ""
                self.voice.say(f"Kept in visit {book.visit_id}{name}.")

    def _kept(self, typed: str) -> Iterator[_Kept]:
        return self.kept() if len(typed.split()) >= LEAST_TOLD else iter(())
