"""Safety steps in a practice: named by number or word, done one after the other."""

from __future__ import annotations

from troubleshoot.cli.practice.finding import or_nearest, steps_called
from troubleshoot.cli.practice.screens import show_stopped
from troubleshoot.cli.screens.work import show_cautions
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.prompts import cautions_of
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.played import Stopped, places_of_step
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.declared import ENTER_CONFIRMS


def do_steps(terminal: Terminal, session: Session, words: str, shown_cautions: set[str]) -> None:
    """Do the steps that the words name, with commas between; a refused one ends the row.

    What protects somebody is a line of its own, as it is on the roof: nobody locks out in passing.
    """
    parts = [part.strip() for part in words.split(",")]
    for number, part in enumerate(parts, start=1):
        alone = len(parts) > 1 and _protects(session, part)
        if alone:
            terminal.say("A step that protects somebody is done by itself: one step a line.")
        if alone or not _do_everywhere(terminal, session, part, shown_cautions):
            left = parts[number - 1 :] if alone else parts[number:]
            if left:
                terminal.say(f"Not done: {', '.join(left)}.")
            return


def _protects(session: Session, words: str) -> bool:
    """Whether the words name a step that Enter would not confirm in a visit."""
    return any(step.id not in ENTER_CONFIRMS for step in steps_called(session, words))


def _do_everywhere(
    terminal: Terminal, session: Session, words: str, shown_cautions: set[str]
) -> bool:
    """Do one step at every place where it has to be done; whether it was."""
    test = step_named(terminal, session, words)
    return test is not None and all(
        _do(terminal, session, test, place, shown_cautions)
        for place in places_of_step(test.id, session.state.work, session.state.at_work)
    )


def _do(
    terminal: Terminal, session: Session, test: Test, place: str | None, shown_cautions: set[str]
) -> bool:
    """Do one step; whether it was done."""
    hazards = cautions_before(session.knowledge, session.state, test)
    show_cautions(terminal, cautions_of(hazards, shown_cautions))
    result = session.step(test, place)
    if isinstance(result, Stopped):
        show_stopped(terminal, session, result)
        return False
    outcome = (session.state.asked[-1].outcome or "").replace("-", " ")
    name = with_place(test.name, place)
    terminal.say(f"{name}: {outcome}. {result.shown[0].says}".rstrip(), 1)
    terminal.say(f"+{result.minutes:.0f} min, {session.minutes:.0f} in all", 1)
    return True


def step_named(terminal: Terminal, session: Session, words: str) -> Test | None:
    """The step that a number or words name; says so where none or several are meant."""
    found = steps_called(session, words)
    if len(found) == 1:
        return found[0]
    if found:
        names = " or ".join(f'"{test.name}"' for test in found)
        terminal.say(f'"{words}" could be {names}.')
    else:
        hear(session.knowledge, words)
        instead = or_nearest("steps lists them.", words, (step.name for step in session.steps()))
        terminal.say(f'No safety step is called "{words}"; {instead}')
    return None
