"""Cautions before something is done: whole the first time, by their names after that."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from troubleshoot.cli.parts import Paragraph
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import Caution
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.hazard_words import said_hazard


def show_cautions(terminal: Terminal, cautions: Iterable[Caution]) -> None:
    """Those told before in a line for each signal word, the others whole."""
    cautions = tuple(cautions)
    before = (caution.hazard for caution in cautions if caution.told)
    for signal, hazards in groupby(before, lambda hazard: hazard.signal):
        names = ", ".join(hazard.spoken for hazard in hazards)
        terminal.say(f"{signal} as before: {names}.", strong=True)
    for caution in cautions:
        if not caution.told:
            terminal.say_together(whole_caution(caution.hazard))


def whole_caution(hazard: Hazard) -> list[Paragraph]:
    """A caution in full, and when the step stops."""
    said = [Paragraph(said_hazard(hazard), strong=True)]
    if hazard.stop is not None:
        said.append(Paragraph(f"Stop if: {hazard.stop.covers}", 2))
    return said
