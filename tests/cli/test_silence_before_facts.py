"""A fact or a repair reported after a silence ends it: what it voided is kept first."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest

from tests.cli.lines import book_of
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.absence import stamp

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")


@pytest.mark.parametrize(
    ("event", "told_first"),
    [
        ({"event": "fact", "name": "supply-phase", "value": "single"}, True),
        ({"event": "repaired", "fault": "fuse-blown"}, True),
        ({"event": "note", "text": "x"}, False),
    ],
)
def test_what_a_silence_voided_is_kept_before_the_report_that_ends_it(
    event: dict[str, Any],
    told_first: bool,
    shipped: Knowledge,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    roof = {"event": "step", "step": "roof-conditions", "outcomes": ["safe"]}
    start = {"event": "start", "complaint": "no-heat"}
    book = book_of(shipped, [{**each, "time": stamp(NOW)} for each in (start, roof)])
    monkeypatch.setattr(clock, "now", lambda: NOW + timedelta(minutes=45))
    book.add(event)
    kinds = [each["event"] for each in book.events[2:]]
    assert kinds == (["resumed", event["event"]] if told_first else [event["event"]])
    assert (book.state.work.roof == "not-checked") is told_first
