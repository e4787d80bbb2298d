"""A caution is told whole where its danger is new, and by its name where it is the same one.

Power behind an open panel is new once for each opening; what stands on the roof is no newer for it.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from tests.dialogue.at_work import UNIT, _at, _held, _wait, _word
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.prompts import AskTest, Choose, DoStep, Ended, Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.cautions import behind_panels
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.visit.events import Started

ON_NO_PANEL = ("ladder-and-hatch", "solar-array", "ventilation-critical-space", "delayed-light-off")
MOST = 45

Told = list[tuple[str, bool, dict[str, bool]]]


def told(shipped: Knowledge, call: str) -> Told:
    """Prompt for prompt of a sound unit: what is asked, whether open, each caution told before."""
    moment = datetime(2026, 11, 26, 9, tzinfo=UTC)
    book = VisitBook(shipped, "v", Forgotten(), lambda: moment)
    book.add(Started(complaint=call, name="RTU-7", unit=UNIT, profiles=tuple(PROFILES)))
    dialogue, met = _held(book), []
    for _ in range(MOST):
        prompt, at = dialogue.prompt, _at(dialogue.prompt)
        if isinstance(prompt, Ended | Settled):
            break
        if isinstance(prompt, DoStep | AskTest):
            cautions = {each.hazard.id: each.told for each in prompt.cautions}
            met.append((at, book.state.work.panels != "on", cautions))
        moment += timedelta(minutes=_wait(shipped, at) + 1 if at else 1)
        kept = len(book.events)
        dialogue.answer("n" if isinstance(prompt, Choose) else _word(at) if at in STEPS else "s")
        if len(book.events) == kept:
            dialogue.answer("s")
    return met


@pytest.mark.parametrize("call", ["no-heat", "cooling-will-not-stop"])
def test_power_behind_the_same_open_panel_is_told_whole_once(call: str, shipped: Knowledge) -> None:
    """Regression: three times in a quarter of an hour, with what hung on no panel besides."""
    met = told(shipped, call)
    starts = [c["live-work"] for at, is_open, c in met if at == "restart-and-watch" and is_open]
    assert len(starts) > 1
    assert starts == [False, *(True for _ in starts[1:])]


def test_what_hangs_on_no_panel_is_not_told_whole_again_for_one(shipped: Knowledge) -> None:
    met = told(shipped, "no-heat")
    for hazard in ON_NO_PANEL:
        assert hazard not in behind_panels(shipped)
        assert [c[hazard] for _, _, c in met if hazard in c].count(False) <= 1, hazard
    assert {"live-work", "arc-flash-480-volt", "stored-charge"} <= behind_panels(shipped)
