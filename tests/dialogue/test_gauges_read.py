"""Pressures read out before the word of the step have it asked whether the gauges are on.

Who reads a gauge has it on: common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Answered, StepDone

LINE = "suction 94 liquid 290 sl 67 ll 86"


def at(shipped: Knowledge, wanted: str, ports: str, monkeypatch: pytest.MonkeyPatch) -> AtWork:
    """A visit that stands at this test or step, with its ports there."""
    aim = "suction-pressure at circuit 1" if wanted == "gauges-on" else wanted
    monkeypatch.setitem(at_work.UNIT, "service-ports", ports)
    place = ("no-cooling", f"do {aim}", wanted)
    monkeypatch.setitem(at_work.PLACES, f"{wanted} {ports}", place)
    return AtWork(shipped, f"{wanted} {ports}")


def read(visit: AtWork) -> list[str]:
    return [event.text or "" for event in visit.events if isinstance(event, Answered)]


@pytest.mark.parametrize(
    ("said", "kept"),
    [("94 / 290", ["94", "290"]), (LINE, ["94", "290", "67", "86"]), ("suction 94", ["94"])],
)
def test_at_its_step_the_numbers_are_kept_and_the_step_is_asked_about(
    said: str, kept: list[str], shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: it was refused twice, first gauges on at circuit 1."""
    visit = at(shipped, "gauges-on", "outside", monkeypatch)
    visit.types(said)
    assert isinstance(visit.prompt, Choose) and "gauges on, at circuit 1?" in visit.prompt.question
    visit.types("y")
    assert read(visit) == kept
    assert [e.outcomes for e in visit.events if isinstance(e, StepDone)] == [("on",)]


def test_so_it_is_at_a_look_with_the_ports_outside(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    visit = at(shipped, "condenser-fan-turning", "outside", monkeypatch)
    visit.types("suction 94 liquid 290")
    visit.types("y")
    assert read(visit) == ["94", "290"] and visit.at == "condenser-fan-turning"


def test_a_no_takes_nothing(shipped: Knowledge, monkeypatch: pytest.MonkeyPatch) -> None:
    visit = at(shipped, "gauges-on", "outside", monkeypatch)
    visit.types("94 / 290")
    visit.types("n")
    assert not read(visit) and not [e for e in visit.events if isinstance(e, StepDone)]


def test_where_more_is_lacking_it_is_not_asked(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    visit = at(shipped, "condenser-fan-turning", "inside", monkeypatch)
    visit.types("suction 94 liquid 290")
    assert not read(visit) and visit.at == "condenser-fan-turning"
