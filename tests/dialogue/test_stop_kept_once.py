"""A STOP is on record once: reopened and broken off it is no new one, and none is lost."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, held
from tests.dialogue.test_stopped import CRACK, DONE, STUCK, TOLD, answer, kinds, visit
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.stopped import keep_stop, stopped
from troubleshoot.dialogue.talk import Leave, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Event, Halted, Reopened, VisitEnded

LIMIT, OTHER = "safety-does-not-open", "lightning"
RESULT = HandOverResult("gas-fitter", DONE, "opened at 180 F", "2026-11-26 11:00")
SINCE = answer("weather-pattern", "always")


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def stop_of(hazard: str, *, reopened: bool) -> tuple[Event, ...]:
    met = Halted(hazard, "main-limit")
    over = VisitEnded("stopped", TOLD, "2026-11-26 10:00")
    return (met, over, Reopened(hazard, RESULT, "main-limit", None)) if reopened else (met,)


@pytest.mark.parametrize(
    ("events", "kept"),
    [
        ((STUCK, *stop_of(LIMIT, reopened=True), SINCE), 1),
        ((STUCK, *stop_of(LIMIT, reopened=False), SINCE), 2),
        ((STUCK, *stop_of(OTHER, reopened=True), SINCE), 2),
    ],
)
def test_only_one_that_was_reopened_for_the_same_danger_is_no_new_one(
    events: tuple[Event, ...], kept: int, decider: Decider
) -> None:
    book = visit(decider.knowledge, *events)
    conclusions = conclude_visit(decider.reasoner, book.state)
    fired = next(f for f in conclusions.hazards if f.hazard.id == LIMIT)
    keep_stop(book, conclusions, fired)
    assert kinds(book).count("stop") == kept


@pytest.mark.parametrize("finding", [CRACK, STUCK])
def test_what_the_words_of_a_danger_took_away_besides_is_told_behind_its_stop(
    finding: Event, decider: Decider
) -> None:
    """Else whoever stands at a STOP does not know that the lock counts no more."""
    book: VisitBook = visit(decider.knowledge, finding)
    conclusions = conclude_visit(decider.reasoner, book.state)
    decision, terminal = decider.decide(book.state, conclusions), Lines("q")

    def here(voice: Voice) -> Talk[object]:
        voice.gone_with_it = ("The lock counts no more.",)
        return stopped(book, voice, decision, conclusions)

    with pytest.raises(Leave):
        held(decider.knowledge, terminal, here)
    assert terminal.text.index("DANGER - STOP") < terminal.text.index("The lock counts no more.")
