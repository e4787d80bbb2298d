"""What a practice asks on the way to a test: at which place, and what a sound unit would read.

`ask` is given by the play: it serves a command that is typed instead of an answer.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.expecting import Expected, judge, sound_band
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood
from troubleshoot.reasoning.unit.places_said import places_said

LEAVES = frozenset({"q", "quit"})
SHOWS = frozenset({"?", "help", "h"})


class Left(Exception):
    """The apprentice leaves."""


def ask(terminal: Terminal, prompt: str, wanted: str) -> str:
    """An answer to a question of a list; `?` says what is wanted. Raises Left where they leave."""
    while True:
        typed = terminal.ask(prompt)
        if typed.lower() in LEAVES:
            raise Left
        if typed.lower() not in SHOWS:
            return typed
        terminal.say(f"{wanted} q leaves.")


def ask_place(
    terminal: Terminal, session: Session, test: Test, words: str, ask: Callable[[str], str]
) -> tuple[Place | None, ...]:
    """Where to do a test, asked where the unit has several; empty where none is chosen."""
    places, layout = session.places(test), session.scenario.unit.layout
    if len(places) == 1 and not words:
        return places
    while True:
        if (number := choice(words, len(places))) is not None:
            return (places[number - 1],)
        if words:
            try:
                found = places_said(session.knowledge, words, test.per, layout)
            except PlaceNotUnderstood as error:
                terminal.say(f"{error.problem}; {error.instead}.")
            else:
                if len(found) == 1:
                    return found
                terminal.say(f'"{words}" could be {" or ".join(map(str, found))}.')
        if len(places) == 1:
            return ()
        show_places(terminal, places)
        words = ask("place, or Enter for none >")
        if not words:
            return ()


def show_places(terminal: Terminal, places: Sequence[Place | str | None]) -> None:
    """Places to choose from, by number."""
    terminal.say("Where?")
    for number, place in enumerate(places, start=1):
        terminal.say(f"{number} {place}", 2)


def ask_guess(
    terminal: Terminal, session: Session, test: Test, at: Place | None, ask: Callable[[str], str]
) -> Expected | None:
    """What the apprentice expects of a sound unit; None where no one band of numbers is sound."""
    band = sound_band(session, test, at)
    if band is None:
        return None
    of = f"{band.of}, " if band.of else ""
    terminal.say(f"{test.name}: what would a sound unit read ({of}{band.unit})?")
    while True:
        guess = judge(test, ask("guess >"), band)
        if (
            guess.nearness != "not-said"
            or guess.said.lower() in ("", "no")
            or is_not_known(guess.said)
        ):
            return guess
        terminal.say("A number, or a range such as 8 to 12; Enter if you do not know.")
