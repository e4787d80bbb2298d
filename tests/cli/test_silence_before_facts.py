"""A fact or a repair reported after a silence ends it: what it voided is kept first."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from tests.cli.lines import book_of
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.events import Event, FactTold, Noted, Repaired, Started, StepDone

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")


@pytest.mark.parametrize(
    ("event", "told_first"),
    [
        (FactTold("supply-phase", "single"), True),
        (Repaired("fuse-blown"), True),
        (Noted("x"), False),
    ],
)
def test_what_a_silence_voided_is_kept_before_the_report_that_ends_it(
    event: Event,
    told_first: bool,
    shipped: Knowledge,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    roof = StepDone("roof-conditions", ("safe",))
    start = Started(complaint="no-heat")
    book = book_of(shipped, [replace(each, time=stamp(NOW)) for each in (start, roof)])
    monkeypatch.setattr(clock, "now", lambda: NOW + timedelta(minutes=45))
    book.add(event)
    kinds = [each.kind for each in book.events[2:]]
    assert kinds == (["resumed", event.kind] if told_first else [event.kind])
    assert (book.state.work.roof == "not-checked") is told_first
