"""A STOP: what to do, who takes over, what the tag says, and what alone lifts it."""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import AtStop
from troubleshoot.reasoning.conclusions import FiredHazard


def show_stop(
    terminal: Terminal,
    fired: FiredHazard,
    tag: Iterable[str] = (),
    others: Iterable[str] = (),
) -> None:
    """A STOP: what to do, who takes over, what the tag says; never a way round.

    `others`: those that stand beside it, a line each.
    """
    hazard = fired.hazard
    terminal.say()
    terminal.say(f"{hazard.signal} - STOP", strong=True)
    terminal.say(hazard.what_to_do, strong=True)
    terminal.say(f"Hand over to: {hazard.defer_to}", 2)
    for other in others:
        terminal.say(other, strong=True)
    lines = tuple(tag)
    if lines:
        terminal.say("Write on the tag:", 2)
    for line in lines:
        terminal.say(line, 4)


def show_what_lifts(terminal: Terminal, prompt: AtStop) -> None:
    if prompt.lifted_by is None:
        terminal.say("No further test is offered. Type over to hand the job over.")
    elif prompt.beyond is not None:
        terminal.say(
            f"Only {prompt.lifted_by}, taken afresh, lifts this, and that is beyond you: "
            f"{prompt.beyond}."
        )
        terminal.say("Type over to hand the job over.")
    else:
        terminal.say(
            f"Only a fresh finding lifts this: type again to do {prompt.lifted_by} once more, or "
            "over to hand the job over."
        )
