"""A practice at the terminal: read the call, choose tests and safety steps, commit."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from troubleshoot.cli.practice.acts import do_act
from troubleshoot.cli.practice.asking import LEAVES, Left, ask
from troubleshoot.cli.practice.call import ask_call, ask_found
from troubleshoot.cli.practice.choosing import Choosing
from troubleshoot.cli.practice.finding import (
    hinted,
)
from troubleshoot.cli.practice.screens import (
    HELP,
    show_call,
    show_needs,
    show_readings,
    show_state,
    show_steps,
)
from troubleshoot.cli.practice.steps import do_steps, step_named
from troubleshoot.cli.screens.findings import show_how
from troubleshoot.cli.screens.prompts import first_of_call, show_call_cautions
from troubleshoot.cli.screens.stops import show_stop
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear_among
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import whole_number
from troubleshoot.practice.scoring import Call
from troubleshoot.practice.session import HINT_MINUTES, Session

AT_THE_START = "You choose what to do. help lists the words; tests is a good start."
AT_A_STOP = "A STOP stands: stop hands it over. help lists the words."
NOT_OVER = "Nobody reaches in before it is proved dead. It costs nothing; go on."
ENDING = LEAVES | {"call", "stop", "show"}


class GivenUp(Exception):
    """The apprentice asks to be shown the answer."""


class _Instead(Exception):
    """A command was typed where a place or a guess was asked for; it is served instead."""


class Play:
    """One play at a terminal; `words` are the commands that are served.

    `keep` is called after each line, so that no way to end a play leaves it out of the record.
    """

    def __init__(self, terminal: Terminal, session: Session, keep: Callable[[Play], None]) -> None:
        self.terminal = terminal
        self._keep = keep
        self.session = session
        self.knowledge = session.knowledge
        self.shown_cautions: set[str] = set()
        self.choosing = Choosing(terminal, session, self.shown_cautions, self._ask)
        self.words: Mapping[str, Callable[[str], None]] = {
            "h": self._help,
            "help": self._help,
            "?": self._how,
            "how": self._how,
            "tests": self.choosing.list_area,
            "find": self.choosing.search,
            "steps": lambda rest: show_steps(self.terminal, self.session.steps()),
            "step": self._step,
            "do": self.choosing.do,
            "unit": lambda rest: show_call(
                self.terminal, self.session.knowledge, self.session.scenario
            ),
            "state": lambda rest: show_state(self.terminal, self.session),
            "readings": lambda rest: show_readings(self.terminal, self.session),
            "again": lambda rest: self.choosing.again(),
            "act": self._act,
            "doubt": self._doubt,
            "hint": self._hint,
        }

    def run(self) -> Call:
        """Play until the apprentice commits. Raises GivenUp, Left, EndOfInput or DangerCalled."""
        show_call(self.terminal, self.session.knowledge, self.session.scenario)
        complaint = self.session.scenario.case.complaint or ""
        heard = self.session.knowledge.complaints.get(complaint)
        if heard is not None:
            show_call_cautions(self.terminal, self.session.knowledge, heard)
        self.terminal.say()
        stands = heard is not None and first_of_call(self.knowledge, heard)
        self.terminal.say(AT_A_STOP if stands else AT_THE_START)
        while True:
            typed = self.terminal.ask(">")
            if not typed:
                continue
            call = self._understood(typed)
            if call is not None:
                return call

    def _understood(self, typed: str) -> Call | None:
        while True:
            try:
                return self._serve(typed)
            except _Instead as instead:
                typed = str(instead)
            finally:
                self._keep(self)

    def _ask(self, prompt: str, test: Test) -> str:
        """An answer to a question on the way to a test; a command is served instead of it.

        How the test is done is told, and the question asked again.
        """
        while True:
            typed = self.terminal.ask(prompt)
            word = typed.lower().partition(" ")[0]
            if typed.lower() in ("?", "how"):
                show_how(self.terminal, self.knowledge, test)
            elif word in ENDING or word in self.words:
                raise _Instead(typed)
            else:
                hear_among(self.knowledge, typed)
                return typed

    def _serve(self, typed: str) -> Call | None:
        """Serve one line; the call, once it is made."""
        word, _, rest = typed.partition(" ")
        word, rest = word.lower(), rest.strip()
        if word in LEAVES:
            raise Left
        if word == "call":
            return ask_call(self.terminal, self.session)
        if word == "stop":
            return self._stop()
        if word == "show":
            self._show()
            return None
        if (number := whole_number(word)) is not None:
            self.choosing.numbered(number, rest)
        elif word in self.words:
            self.words[word](rest)
        else:
            self.choosing.search(typed)
        return None

    def _help(self, rest: str) -> None:
        self.terminal.say_all(HELP)

    def _step(self, rest: str) -> None:
        do_steps(self.terminal, self.session, rest, self.shown_cautions, self._ask)

    def _act(self, rest: str) -> None:
        do_act(self.terminal, self.session, rest, self.shown_cautions)

    def _how(self, rest: str) -> None:
        if (listed := self.choosing.listed_as(rest)) is not None:
            show_how(self.terminal, self.knowledge, listed)
            show_needs(self.terminal, self.session, listed)
        elif rest.startswith("step "):
            step = step_named(self.terminal, self.session, rest.removeprefix("step ").strip())
            if step is not None:
                show_how(self.terminal, self.knowledge, step)
        elif self.choosing.last is not None:
            show_how(self.terminal, self.knowledge, self.choosing.last[0])
        else:
            self.terminal.say("how with the number of a listed test, or how step lockout.")

    def _doubt(self, rest: str) -> None:
        if not rest:
            self.terminal.say("Say why: doubt REASON.")
        elif self.session.doubt(rest):
            self.terminal.say("Kept, but it counts for nothing. again reads it once more.")
        else:
            self.terminal.say("The last thing done was no reading: nothing to doubt.")

    def _hint(self, rest: str) -> None:
        before = self.session.hints
        decision = self.session.hint()
        paid = f"+{HINT_MINUTES:.0f} min" if self.session.hints > before else "paid for already"
        self.terminal.say(f"{hinted(self.session, decision)} ({paid})", 1)

    def _show(self) -> None:
        """Give up, once it is said twice."""
        self.terminal.say("This gives up: no points, and the whole debrief.")
        if ask(self.terminal, "show, or Enter to go on >", "show gives up.").lower() == "show":
            raise GivenUp

    def _stop(self) -> Call | None:
        """Hand the job over; what was found is called after it, as far as it is known."""
        fired = self.session.declare_stop()
        if fired is None and self.session.called_back:
            who = self.session.scenario.reaching_in
            self.terminal.say(f"Right: you stopped {who}, hands out. {NOT_OVER}", strong=True)
            return None
        if fired is None:
            self.terminal.say("Nothing found so far stops the job. A minute lost; go on.")
            return None
        show_stop(self.terminal, fired)
        self.terminal.say("Handed over: right.")
        return ask_found(self.terminal, self.session)
