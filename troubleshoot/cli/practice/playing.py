"""Playing one scenario to its end, whatever the end: the debrief, and the line for the record."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.attentive import AttentiveTerminal
from troubleshoot.cli.failures import INTERRUPTED
from troubleshoot.cli.practice.afterwards import ask_afterwards, show_alike
from troubleshoot.cli.practice.asking import Left
from troubleshoot.cli.practice.play import GivenUp, Play
from troubleshoot.cli.practice.results import path_of, plays_of, plays_with_whose
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.debrief import debrief
from troubleshoot.practice.expert import expert_path
from troubleshoot.practice.record import (
    close_open,
    keep_open,
    keep_play,
    open_path,
    shown_to_others,
)
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import Play as Line
from troubleshoot.practice.scores import first_of, play_of
from troubleshoot.practice.scoring import Call, Score, Verdict, once_shown, score_of, without_call
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.hazard_words import said_standing
from troubleshoot.safety.hearing.dangers import ANY_DANGER, named, spoken_of

NO_PRACTICE = (
    "This is practice only, and it stops here: a real danger comes first. Get clear of it and "
    "call for help; to work on after it, type troubleshoot, and danger with what is wrong."
)


def play_kept(scenario: Scenario, folder: Path, apprentice: str) -> int:
    """Play one scenario; returns the exit code. A real danger that is called ends it."""
    terminal = AttentiveTerminal()
    try:
        return _played(terminal, scenario, folder, apprentice)
    except DangerCalled as called:
        _say_danger(terminal, str(called))
        return 0


def _say_danger(terminal: Terminal, words: str) -> None:
    """What to do about a danger, as a visit says it, the gravest first; then that this is none."""
    knowledge = rules_in_force()
    meant = named(knowledge, words) or spoken_of(knowledge, words)
    for hazard in meant or (knowledge.hazards[ANY_DANGER],):
        head, *more = said_standing(hazard, stops=True)
        terminal.say(head, strong=True)
        for line in more:
            terminal.say(line, 2)
    terminal.say(NO_PRACTICE, strong=True)


def _played(terminal: Terminal, scenario: Scenario, folder: Path, apprentice: str) -> int:
    path = path_of(folder, apprentice)
    earlier = first_of(plays_with_whose(terminal, folder, apprentice)).get(scenario.id)
    known = earlier is None and shown_to_others(folder, path, scenario.id)
    if known:
        terminal.say("It was shown in this data folder under another name: half the points.")
    if earlier is not None:
        terminal.say(f"Played first on {earlier.date}, and that play counts. This is practice.")
    with suppress(OSError, NotUsable):
        close_open(path)
    play = Play(
        terminal,
        Session(Reasoner(rules_in_force()), scenario),
        lambda play: _keep_as_left(path, play, apprentice),
    )
    session, code, call = play.session, 0, Call()
    verdict: Verdict | None = None
    try:
        call = play.run()
    except GivenUp:
        verdict = "shown"
    except (Left, EndOfInput):
        verdict = "left"
    except KeyboardInterrupt:
        terminal.say()
        code, verdict = INTERRUPTED, "left"
    if verdict == "left" and not session.begun:
        terminal.say("You left before anything was done; nothing is kept of this play.")
        return code
    reasoner = session.decider.reasoner
    expert = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
    if verdict is None:
        score = score_of(session, call, expert)
    else:
        score = without_call(session, expert, verdict)
    if known:
        score = once_shown(score)
    if verdict == "left":
        terminal.say("You left; the play is kept as left, without points.")
    else:
        terminal.say()
        terminal.say("DEBRIEF", strong=True)
        terminal.say_all(debrief(session, call, score, expert, play.choosing.expected))
    _keep(terminal, path, play, score, apprentice)
    if verdict != "left":
        ask_afterwards(terminal, session, call.causes)
        show_alike(terminal, scenario, {each.scenario for each in plays_of(folder, apprentice)})
    return code


def _keep_as_left(path: Path, play: Play, apprentice: str) -> None:
    """Keep a play that goes on, so that neither a closed window nor a danger leaves it out.

    Where it cannot be kept, that is told at the end.
    """
    if play.session.begun:
        score = without_call(play.session, None, "left")
        with suppress(OSError, NotUsable):
            keep_open(path, _line(play, score, apprentice))


def _keep(terminal: Terminal, path: Path, play: Play, score: Score, apprentice: str) -> None:
    """Add the play to its record; where that cannot be, it is said."""
    try:
        keep_play(path, _line(play, score, apprentice))
        open_path(path).unlink(missing_ok=True)
    except (OSError, NotUsable) as error:
        reason = error.what if isinstance(error, NotUsable) else error.strerror
        terminal.say(f"The result could not be kept ({reason}); see --data.")


def _line(play: Play, score: Score, apprentice: str) -> Line:
    """A play as it stands in the record."""
    guesses = [
        each.nearness == "close" for each in play.choosing.expected if each.nearness != "not-said"
    ]
    today = f"{clock.now():%Y-%m-%d}"
    return play_of(play.session.scenario, score, apprentice, today, guesses)
