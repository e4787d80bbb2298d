"""A routine round on the screen: how far it has come, and what it has found at its end."""

from __future__ import annotations

from typing import Final

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import Progress, Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.telling.round_told import finding_line, not_taken_lines

BACK_TO_THE_ROUND: Final = "round goes on with the round; the cause stays on record."
AT_ITS_END: Final = (
    "done puts the unit back and closes. tests lists what else could be done; q keeps the visit."
)


def show_progress(terminal: Terminal, progress: Progress) -> None:
    """Which point of the round a test is for, and its limit."""
    where = f"Point {progress.number} of {progress.of} ({progress.done} done)"
    terminal.say(f"{where}: {progress.point}" if progress.point else where)
    if progress.limit:
        terminal.say(f"Limit: {progress.limit}", 2)
    if progress.before:
        terminal.say(f"Before: {progress.before}", 2)


def show_round(terminal: Terminal, knowledge: Knowledge, prompt: Settled) -> None:
    """What the round has found, and the findings whose cause may be looked for from here."""
    points, layout = prompt.points, prompt.conclusions.case.unit.layout
    sound = sum(point.result == "sound" for point in points)
    terminal.say()
    terminal.say(f"The round is walked: {sound} of {len(points)} points sound.", strong=True)
    for point in points:
        for found in point.spots:
            if found.result in ("abnormal", "not-judged"):
                terminal.say(finding_line(knowledge, layout, point, found), 2)
    for line in not_taken_lines(knowledge, layout, points):
        terminal.say(line, 2)
    if prompt.kept:
        terminal.say("Kept for the end. Its number finds the cause of:")
        for number, spot in enumerate(prompt.kept, start=1):
            test = knowledge.tests[spot[0]]
            where = layout.shown(test.per, spot[1])
            terminal.say(f"{number} {test.name}{f', {where}' if where else ''}", 2)
    terminal.say(AT_ITS_END)
