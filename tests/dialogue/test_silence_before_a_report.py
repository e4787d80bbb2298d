"""A long silence voids what others could have changed, whatever is typed at its end.

At a step or test that is told by its own prompt. A fact, a nameplate value or a repair is typed at
other prompts, and must not make yesterday's lock and proof of today.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from tests.cli.player import Player
from troubleshoot.cli import clock
from troubleshoot.cli.terminal import EndOfInput
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.opening import turns
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Aimed, Event, FactTold, Repaired, Started, StepDone
from troubleshoot.visit.kept.journal import Journal

MORNING = datetime.fromisoformat("2026-11-26T09:00:00+00:00")
SAFE_ROOF = StepDone("roof-conditions", ("safe",))


class Wall:
    """The clock on the wall."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.moment = MORNING
        monkeypatch.setattr(clock, "now", lambda: self.moment)

    def pass_minutes(self, minutes: float) -> None:
        self.moment += timedelta(minutes=minutes)


@pytest.fixture
def wall(monkeypatch: pytest.MonkeyPatch) -> Wall:
    return Wall(monkeypatch)


def on_a_safe_roof(shipped: Knowledge, folder: Path) -> VisitBook:
    book = VisitBook(
        shipped, "visit", Journal.create(folder, "visit", {"program": "test"}), lambda: clock.now()
    )
    book.add(Started(complaint="no-cooling"))
    book.add(SAFE_ROOF)
    assert book.state.work.roof == "go"
    return book


@pytest.mark.parametrize("minutes", [31.0, 14 * 60.0, -5.0])
@pytest.mark.parametrize(
    "report",
    [
        FactTold("duct-smoke-detector", None),
        FactTold("maximum-external-static", "0.8"),
        Repaired("filters-loaded"),
    ],
)
def test_a_report_does_not_renew_what_a_silence_before_it_has_voided(
    report: Event, minutes: float, shipped: Knowledge, tmp_path: Path, wall: Wall
) -> None:
    book = on_a_safe_roof(shipped, tmp_path)
    wall.pass_minutes(minutes)
    book.add(report)
    assert book.state.work.roof != "go"
    assert [e.kind for e in book.events[-2:]] == ["resumed", report.kind]


def test_a_report_within_half_an_hour_voids_nothing(
    shipped: Knowledge, tmp_path: Path, wall: Wall
) -> None:
    book = on_a_safe_roof(shipped, tmp_path)
    wall.pass_minutes(29.0)
    book.add(FactTold("duct-smoke-detector", None))
    assert book.state.work.roof == "go"


class Sleeper(Player):
    """Leaves the first question about the nameplate open overnight."""

    def __init__(self, knowledge: Knowledge, wall: Wall) -> None:
        super().__init__(knowledge, {})
        self.wall = wall
        self.after: list[str] = []

    def ask(self, prompt: str, most: int = 0) -> str:
        if self.after:
            raise EndOfInput
        if any(line.startswith("From the nameplate") for line in self.lines[-2:]):
            self.wall.pass_minutes(14 * 60)
            self.after = self.lines[-1:]
            return ""
        return super().ask(prompt)


def test_after_a_night_at_the_nameplate_the_test_is_not_shown(
    shipped: Knowledge, tmp_path: Path, wall: Wall
) -> None:
    book = on_a_safe_roof(shipped, tmp_path)
    book.add(Aimed("external-static", chosen=True))
    sleeper = Sleeper(shipped, wall)
    hold(shipped, sleeper, lambda voice: turns(book, voice))
    assert sleeper.after
    shown = sleeper.text.partition(sleeper.after[0])[2]
    assert "Step: Roof, go or no go" in shown and "External static" not in shown
