"""Safety steps in a practice: named by number or word, done one after the other."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from troubleshoot.cli.practice.asking import show_places
from troubleshoot.cli.practice.finding import idle_step, or_nearest, steps_called
from troubleshoot.cli.practice.screens import show_stopped
from troubleshoot.cli.screens.cautions import show_cautions
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.prompts import cautions_of
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.played import Stopped, places_of_step
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.declared import ENTER_CONFIRMS, STEPS
from troubleshoot.safety.needs import HOOK_UPS, TAPS, hook_ups_on

Ask = Callable[[str, Test], str]
"""Asks something on the way to a step, of which it is a part."""


def do_steps(
    terminal: Terminal, session: Session, words: str, shown_cautions: set[str], ask: Ask
) -> None:
    """Do the steps that the words name, with commas between.

    One that could have hurt someone, or that is not understood, ends the row; one that this unit
    does not need, or whose turn has not come, is passed over: every step has its own guards. What
    protects somebody is a line of its own, as it is on the roof: nobody locks out in passing.
    """
    parts = [part.strip() for part in words.split(",")]
    for number, part in enumerate(parts, start=1):
        alone = len(parts) > 1 and _protects(session, part)
        if alone:
            terminal.say("A step that protects somebody is done by itself: one step a line.")
        if alone or not _do_everywhere(terminal, session, part, shown_cautions, ask):
            left = parts[number - 1 :] if alone else parts[number:]
            if left:
                terminal.say(f"Not done: {', '.join(left)}.")
            return


def _protects(session: Session, words: str) -> bool:
    """Whether the words name a step that Enter would not confirm in a visit."""
    name, _ = _name_and_place(words)
    return any(step.id not in ENTER_CONFIRMS for step in steps_called(session, name))


def _do_everywhere(
    terminal: Terminal, session: Session, words: str, shown_cautions: set[str], ask: Ask
) -> bool:
    """Do one step at every place where it has to be done; whether the row goes on after it.

    A tap of the gas train, or where to hook up, is named or asked for: one for one reading.
    """
    name, at = _name_and_place(words)
    idle = idle_step(session, name)
    if idle is not None:
        terminal.say(f"{idle.name}: this unit does not need it.")
        return True
    test = step_named(terminal, session, name)
    if test is None:
        return False
    places = places_of_step(test.id, session.state.work, session.state.at_work)
    if STEPS[test.id].at == "hook-up":
        tests = session.conclusions.hypotheses.tests.values()
        places = tuple(sorted(hook_ups_on(tests, session.state.unit.layout.places))) or (None,)
    if STEPS[test.id].at in ("tap", "hook-up"):
        places = _which_tap(terminal, test, places, at, ask)
    return bool(places) and all(
        _do(terminal, session, test, place, shown_cautions) for place in places
    )


def _name_and_place(words: str) -> tuple[str, str]:
    """A step and the tap or lead that it is to be done at: manometer on at inlet tap."""
    name, _, at = words.partition(" at ")
    said = at.strip().lower()
    points = (*TAPS.values(), *HOOK_UPS.values())
    names_one = any(said and (said in point or said.startswith(point)) for point in points)
    return (name.strip(), said) if names_one else (words, "")


def _which_tap(
    terminal: Terminal, test: Test, taps: Sequence[str | None], at: str, ask: Ask
) -> tuple[str | None, ...]:
    """The one tap that is meant; empty where none is."""
    if len(taps) == 1 and not at:
        return (taps[0],)
    while True:
        number = choice(at, len(taps))
        meant = [tap for n, tap in enumerate(taps, 1) if number == n or (at and at in str(tap))]
        if len(meant) == 1:
            return (meant[0],)
        show_places(terminal, taps)
        at = ask("place, or Enter for none >", test).lower()
        if not at:
            return ()


def _do(
    terminal: Terminal, session: Session, test: Test, place: str | None, shown_cautions: set[str]
) -> bool:
    """Do one step; whether the row may go on: it was done, or was not grave."""
    hazards = cautions_before(session.knowledge, session.state, test)
    show_cautions(terminal, cautions_of(hazards, shown_cautions))
    result = session.step(test, place)
    if isinstance(result, Stopped):
        show_stopped(terminal, session, result)
        return not (result.slip.grave or result.slip.past_stop)
    outcome = test.spoken_all(session.state.asked[-1].outcome)
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
