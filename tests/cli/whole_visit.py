"""One whole visit as a technician types it, from the call to its report, for the README."""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from pathlib import Path

from tests.cli.player import Player
from troubleshoot.cli import clock
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.knowledge.model import Knowledge

MORNING = datetime.fromisoformat("2026-11-26T10:15:00+00:00")
OPENING = (
    "Quarry Street clinic, unit 2",
    "runs a while, then quits",
    "3 4 5 6 7 8",
    "208/1/60, gas, R-410A, TXV, one circuit, one fan",
)
SHOWS: dict[str, str | list[str]] = {
    "walk-round": "clean",
    "condenser-fan-turning": ["stopped", "normal"],
    "condenser-fan-hand-spin": "free",
    "capacitor-appearance at capacitor condenser fan 1": "normal",
    "capacitance-out-of-circuit at capacitor condenser fan 1": ["2.1 uF", "7.6 uF"],
    "condenser-fan-windings": "normal",
    "condenser-fan-amps": "1.6 A",
}
PLATE = {"rated microfarads": "7.5 uF", "full-load": "1.8 A", "amps": "1.8 A"}
FACTS = {"blower motor": "1", "smoke detector": "2", "on the blower": "2", "every leg": "1"}
PROOFS = {"starts": "3 starts, full speed", "amps": "1.6 A"}
_FACT = re.compile(r"\(1 [^)]*\)$")


class Technician(Player):
    """Answers what the unit shows, leaves what it does not say open, and proves the repair."""

    def _answer(self) -> str:
        if self.says:
            return self.says.pop(0)
        last = " ".join(" ".join(self.lines[-3:]).split())
        if "Proof" in last and "What did you read?" in last:
            return next((read for words, read in PROOFS.items() if words in last), "")
        if "From the nameplate" in last:
            return next((value for words, value in PLATE.items() if words in last), "")
        if _FACT.search(last):
            return next((value for words, value in FACTS.items() if words in last), "")
        return super()._answer()

    def ask(self, prompt: str, most: int = 0) -> str:
        if "Is the complaint still there?" in prompt:
            self.says.append("n, it runs")
        return super().ask(prompt, most)


def whole_visit(knowledge: Knowledge, folder: Path, width: int = 80) -> str:
    """All that stands on the screen of the visit; `folder`: where it is kept."""
    player = Technician(knowledge, dict(SHOWS), OPENING, ["repaired"], width=width)
    clock.now = lambda: MORNING + player.waited + timedelta(seconds=len(player.lines))
    with JournalShelf(knowledge, folder / "visits") as shelf:
        hold(knowledge, player, lambda voice: visit(shelf, voice, Visitor()))
    return player.text
