"""Choosing a test in a practice, and taking it: by area, words or number, at its place."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli.practice.asking import ask_guess, ask_place
from troubleshoot.cli.practice.finding import or_nearest, tests_called, tests_found, tests_in
from troubleshoot.cli.practice.screens import show_areas, show_done, show_stopped, show_tests
from troubleshoot.cli.screens.cautions import show_cautions
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.prompts import cautions_of
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import choice, whole_number
from troubleshoot.practice.expecting import Expected
from troubleshoot.practice.played import Done, Partly, Result, Stopped, Unavailable
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.needs import OPEN_LIVE


class Choosing:
    """The tests last listed, by number, the last one taken, and what was expected of each.

    `ask` asks something on the way to a test; a command that is typed there is served instead.
    """

    def __init__(
        self,
        terminal: Terminal,
        session: Session,
        shown_cautions: set[str],
        ask: Callable[[str, Test], str],
    ) -> None:
        self.terminal = terminal
        self.session = session
        self.knowledge = session.knowledge
        self.shown_cautions = shown_cautions
        self.listed: tuple[Test, ...] = ()
        self.expected: list[Expected] = []
        self.last: tuple[Test, Place | None] | None = None
        self._ask = ask

    def listed_as(self, words: str) -> Test | None:
        """The test of a number in the last list; None for any other words."""
        number = choice(words, len(self.listed))
        return None if number is None else self.listed[number - 1]

    def list_area(self, rest: str) -> None:
        """List the tests of an area, or the areas where none is named."""
        if not rest:
            show_areas(self.terminal, self.session)
            return
        names = (f"{test.area} {test.subsystem}" for test in self.session.tests())
        instead = or_nearest("tests alone lists the areas.", rest, names)
        self._list(tests_in(self.session, rest), f"No area begins with {rest}; {instead}")

    def search(self, words: str) -> None:
        """List the tests that words find, or say what to type instead."""
        names = (f"{test.name} {test.area}" for test in self.session.tests())
        instead = or_nearest("try find with one word of it, or help.", words, names)
        found = tests_found(self.session, words)
        if not found:
            hear(self.knowledge, words)
        self._list(found, f'No test here is called "{words}"; {instead}')

    def _list(self, tests: list[Test], otherwise: str) -> None:
        if not tests:
            self.terminal.say(otherwise)
            return
        self.listed = tuple(tests)
        show_tests(self.terminal, self.session, tests)
        self.terminal.say("Type a number to do it; how 1 says what number 1 needs first.")

    def numbered(self, number: int, rest: str) -> None:
        """Take a test by its number in the last list; `rest` may name its place."""
        if not 1 <= number <= len(self.listed):
            self.terminal.say("No such number in the last list. tests, or find WORD.")
            return
        test = self.listed[number - 1]
        if test.work_state not in OPEN_LIVE or self._is_meant(test, number):
            self._at(test, rest.removeprefix("at "))

    def _is_meant(self, test: Test, number: int) -> bool:
        """Whether a number meant what it stands for: hands go near live parts for it."""
        self.terminal.say(f"{number} is {test.name}, live.")
        if self._ask("y does it, Enter leaves it >", test).lower() in ("y", "yes"):
            return True
        self.terminal.say("Not done.")
        return False

    def _at(self, test: Test, words: str) -> None:
        """Take a test at the place that the words name, or that is asked for."""
        places = ask_place(
            self.terminal, self.session, test, words, lambda prompt: self._ask(prompt, test)
        )
        for at in places:
            self._take(test, at)

    def do(self, rest: str) -> None:
        """Take a test by its number in the last list, or by name, with or without a place."""
        first, _, after = rest.partition(" ")
        if (number := whole_number(first)) is not None:
            self.numbered(number, after.strip())
            return
        name, place = rest, ""
        if len(tests_called(self.session, name)) != 1:  # look at the flame has an at of its own
            name, _, place = rest.partition(" at ")
        found = tests_called(self.session, name)
        if len(found) == 1:
            self._at(found[0], place.strip())
        elif rest:
            self.search(name)
        else:
            self.terminal.say("do with a number of the last list, or with a test's name.")

    def _take(self, test: Test, at: Place | None) -> None:
        """Ask what a sound unit reads, show the cautions, and do the test."""
        if self.session.may(test, at):
            guess = ask_guess(
                self.terminal, self.session, test, at, lambda prompt: self._ask(prompt, test)
            )
            if guess is not None:
                self.expected.append(guess)
            hazards = cautions_before(self.session.knowledge, self.session.state, test)
            show_cautions(self.terminal, cautions_of(hazards, self.shown_cautions))
        self._result(self.session.choose(test, at))
        self.last = (test, at)

    def _result(self, result: Result) -> None:
        if isinstance(result, Done):
            show_done(self.terminal, self.session, result)
        elif isinstance(result, Partly):
            show_done(self.terminal, self.session, result.done)
            missing = "; ".join(result.missing)
            self.terminal.say(f"{result.lacking.name} is still lacking. It needs: {missing}.")
        elif isinstance(result, Stopped):
            show_stopped(self.terminal, self.session, result)
        elif isinstance(result, Unavailable):
            self.terminal.say(f"{result.test.name}: {result.why}. A minute lost.")

    def again(self) -> None:
        """Take the last test once more."""
        if self.last is None:
            self.terminal.say("There is nothing to read again.")
        else:
            self._take(*self.last)
