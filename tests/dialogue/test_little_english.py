"""What somebody with little English types is no danger by a slip, and is asked again."""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import AtStop
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.visit.events import StateGone


@pytest.mark.parametrize("said", ["no locked", "no esta locked", "fait", "c est fait"])
@pytest.mark.parametrize("place", ["in", "verified-dead", "lock-off"])
def test_it_does_not_stop_the_job(place: str, said: str, shipped: Knowledge) -> None:
    """Regression: no locked was heard as no lock, fait as faint."""
    visit = AtWork(shipped, place)
    visit.types(said)
    assert not isinstance(visit.prompt, AtStop)


def test_what_is_not_locked_is_not_taken_as_locked(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("no esta locked")
    assert any(isinstance(e, StateGone) and e.steps == ("lockout",) for e in visit.events)


@pytest.mark.parametrize("said", ["no lock", "he fainted", "no rated gloves"])
def test_a_danger_is_still_heard(said: str, shipped: Knowledge) -> None:
    assert spoken_of(shipped, said)
