"""Safety steps in a practice: named by number or word, done one after the other."""

from __future__ import annotations

from troubleshoot.cli.practice_finding import steps_called
from troubleshoot.cli.practice_screens import show_stopped
from troubleshoot.cli.screens import show_cautions
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.played import Stopped, places_of_step
from troubleshoot.practice.session import Session
from troubleshoot.visit.cautions import cautions_before


def do_steps(terminal: Terminal, session: Session, words: str, shown_cautions: set[str]) -> None:
    """Do the steps that the words name, with commas between; a refused one ends the row."""
    for part in words.split(","):
        test = step_named(terminal, session, part.strip())
        if test is None:
            return
        for place in places_of_step(test.id, session.state.work, session.state.at_work):
            if not _do(terminal, session, test, place, shown_cautions):
                return


def _do(
    terminal: Terminal, session: Session, test: Test, place: str | None, shown_cautions: set[str]
) -> bool:
    """Do one step; whether it was done."""
    hazards = cautions_before(session.knowledge, session.state, test)
    show_cautions(terminal, hazards, shown_cautions)
    result = session.step(test, place)
    if isinstance(result, Stopped):
        show_stopped(terminal, session, result)
        return False
    where = f", {place}" if place else ""
    outcome = (session.state.asked[-1].outcome or "").replace("-", " ")
    terminal.say(f"{test.name}{where}: {outcome}. {result.shown[0].says}".rstrip(), 1)
    terminal.say(f"+{result.minutes:.0f} min, {session.minutes:.0f} in all", 1)
    return True


def step_named(terminal: Terminal, session: Session, words: str) -> Test | None:
    """The step that a number or words name; says so where none or several are meant."""
    found = steps_called(session, words)
    if len(found) == 1:
        return found[0]
    if found:
        terminal.say("Which? " + ", ".join(test.name for test in found))
    else:
        terminal.say(f'No safety step is called "{words}". Type steps for all of them.')
    return None
