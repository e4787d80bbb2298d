"""A number that cannot be judged says what it is judged by, and how that is told."""

from __future__ import annotations

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.said import Verdict
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.telling.judged_by import judged_by

RATED = "unit capacitor rated 35 at capacitor condenser fan 1"


def test_a_bare_capacitance_asks_for_the_rating_on_the_label(shipped: Knowledge) -> None:
    """Regression: it said that it cannot be judged until more is known, and not what."""
    visit = AtWork(shipped, "in")
    said = visit.dialogue.answer("32.5")
    (lacks,) = [each.lacks for each in said if isinstance(each, Verdict)]
    assert "from the capacitor's label" in lacks
    assert RATED.replace("35", "VALUE") in lacks


def test_what_it_says_to_type_judges_it(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("32.5")
    assert any("is now low (32.5)" in line for line in visit.types(RATED))


def test_what_is_known_is_not_asked_for(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types(RATED)
    said = visit.dialogue.answer("32.5")
    assert [each.lacks for each in said if isinstance(each, Verdict)] == [""]
    test = shipped.tests["air-filters"]
    assert judged_by(shipped, visit.book.state.unit, test, None) == ""
