"""Playing one scenario to its end, whatever the end: the debrief, and the line for the record."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.attentive import AttentiveTerminal
from troubleshoot.cli.failures import INTERRUPTED
from troubleshoot.cli.practice.afterwards import ask_afterwards, show_alike
from troubleshoot.cli.practice.asking import Left
from troubleshoot.cli.practice.play import GivenUp, Play
from troubleshoot.cli.practice.results import path_of, plays_of
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.debrief import debrief
from troubleshoot.practice.expert import expert_path
from troubleshoot.practice.record import keep_play
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import first_of, play_of
from troubleshoot.practice.scoring import Call, Score, Verdict, score_of, without_call
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclude import Reasoner

NO_PRACTICE = (
    "Practice is only practice, and it stops here: a real danger comes first. Get clear of it and "
    "call for help; for what to do then, type troubleshoot, and danger with what is wrong."
)


def play_kept(scenario: Scenario, folder: Path, apprentice: str) -> int:
    """Play one scenario; returns the exit code. A real danger that is called ends it."""
    terminal = AttentiveTerminal()
    try:
        return _played(terminal, scenario, folder, apprentice)
    except DangerCalled:
        terminal.say(NO_PRACTICE, strong=True)
        return 0


def _played(terminal: Terminal, scenario: Scenario, folder: Path, apprentice: str) -> int:
    path = path_of(folder, apprentice)
    earlier = first_of(plays_of(folder, apprentice)).get(scenario.id)
    if earlier is not None:
        terminal.say(f"Played first on {earlier.date}, and that play counts. This is practice.")
    play = Play(terminal, Session(Reasoner(rules_in_force()), scenario))
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
    if verdict == "left" and not session.done and not session.hints:
        terminal.say("You left before anything was done; nothing is kept of this play.")
        return code
    reasoner = session.decider.reasoner
    expert = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
    if verdict is None:
        score = score_of(session, call, expert)
    else:
        score = without_call(session, expert, verdict)
    if verdict == "left":
        terminal.say("You left; the play is kept as left, without points.")
    else:
        terminal.say()
        terminal.say("DEBRIEF", strong=True)
        terminal.say_all(debrief(session, call, score, expert, play.expected))
    _keep(terminal, path, play, score, apprentice)
    if verdict != "left":
        ask_afterwards(terminal, session, call.causes)
        show_alike(terminal, scenario, {each.scenario for each in plays_of(folder, apprentice)})
    return code


def _keep(terminal: Terminal, path: Path, play: Play, score: Score, apprentice: str) -> None:
    """Add the play to its record; where that cannot be, it is said."""
    guesses = [each.nearness == "close" for each in play.expected if each.nearness != "not-said"]
    today = f"{clock.now():%Y-%m-%d}"
    try:
        keep_play(path, play_of(play.session.scenario, score, apprentice, today, guesses))
    except (OSError, NotUsable) as error:
        reason = error.what if isinstance(error, NotUsable) else error.strerror
        terminal.say(f"The result could not be kept ({reason}); see --data.")
