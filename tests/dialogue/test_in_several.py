"""A line that tells several things is taken for each, and one number told of every leg for all.

How people read out is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from tests.dialogue.test_other_words import at
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Answered, StateGone

VOLTS = "transformer-secondary-volts"


def taken(visit: AtWork) -> dict[str, tuple[tuple[str, ...], str | None]]:
    return {e.test: (e.outcomes, e.text) for e in visit.events if isinstance(e, Answered)}


def test_the_number_asked_for_is_taken_from_among_others(shipped: Knowledge) -> None:
    """Regression: the 25.8 V that was asked for was the one not understood."""
    visit = at(shipped, VOLTS)
    said = visit.types("25.8 v, rise 82, esp 1.15, filters clean")
    assert taken(visit) == {VOLTS: ((), "25.8 v")}
    assert any("External static pressure: 1.15" in each for each in said)
    assert any("Filters: clean" in each for each in said)


def test_what_is_seen_is_taken_beside_a_number(shipped: Knowledge) -> None:
    """Regression: the rod was not understood."""
    visit = at(shipped, "flame-rod")
    visit.types("sensor rod has white crud all over it, uA was 0.4")
    assert taken(visit) == {"flame-rod": (("coated",), None)}
    assert "uA 0.4" in " | ".join(visit.book.state.notes)


@pytest.mark.parametrize(
    "said",
    ["25.8 v, my lock is gone", "25.8 v, rise 82, and a guy is in the blower section"],
)
def test_a_clause_of_a_state_leaves_the_line_whole(said: str, shipped: Knowledge) -> None:
    visit = at(shipped, VOLTS)
    visit.types(said)
    gone = any(isinstance(event, StateGone) for event in visit.events)
    assert not taken(visit)
    assert gone or visit.dialogue.asks_aside or isinstance(visit.prompt, AtStop | Choose)


@pytest.mark.parametrize(
    ("name", "said", "text"),
    [
        ("compressor-windings", ".9 all three", ".9 .9 .9"),
        ("compressor-windings", "0.9 ohm each", "0.9 ohm"),
        ("line-volts-running", "480 479 481 all good", "480 479 481"),
        ("capacitance-out-of-circuit", ".45, weak", ".45"),
        ("capacitance-out-of-circuit", "45 good", "45"),
    ],
)
def test_a_number_of_every_leg_is_read_as_it_stands(
    name: str, said: str, text: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: the first was asked about as a state; of the fourth its point was lost."""
    place = ("no-cooling", f"do {name} at compressor 1", name)
    if name == "compressor-windings":
        monkeypatch.setitem(at_work.PLACES, name, place)
    visit = at(shipped, name)
    visit.types(said)
    assert taken(visit)[name][1] == text


def test_what_shows_a_danger_gone_is_typed_as_it_is_read(shipped: Knowledge) -> None:
    visit = at(shipped, "line-volts-idle")
    visit.types("0 on all three")
    assert not taken(visit)


@pytest.mark.parametrize("said", ["l3 open, OL", "fuse on l3 is open"])
def test_a_leg_is_no_number_that_was_read(said: str, shipped: Knowledge) -> None:
    """Regression: is nobody in danger, and does it all still stand?"""
    visit = at(shipped, "fuse-continuity")
    visit.types(said)
    assert isinstance(visit.prompt, Choose) and "open" in visit.prompt.options
