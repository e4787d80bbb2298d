"""An outcome's beginning is taken for it, and said; a y or n is meant for a y/n prompt."""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.by_word import by_beginning, by_word
from troubleshoot.dialogue.taking_up import is_answer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS


@pytest.mark.parametrize("letter", ["y", "n", "Y", "N", " n ", "n."])
def test_a_letter_of_yes_or_no_names_no_outcome_but_that(letter: str, shipped: Knowledge) -> None:
    """Regression: an n typed a prompt late was a nest at the walk round, and no call arrives."""
    for test in shipped.tests.values():
        outcomes = tuple(outcome.id for outcome in test.outcomes)
        found = by_word(test, letter, outcomes, test.choose == "several")
        assert {*found} <= {"yes", "no"}, test.id


def test_it_is_asked_again(shipped: Knowledge) -> None:
    for place in ("in", "cock", "manometer", "live"):
        visit = AtWork(shipped, place)
        for letter in ("n", "y"):
            at = visit.at
            assert not is_answer(visit.book, visit.prompt, letter)  # type: ignore[arg-type]
            visit.types(letter)
            assert visit.at == at and not visit.events


def test_what_was_begun_is_said(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "cock")
    assert 'Taken as "blocked".' in visit.types("bl")
    assert 'Taken as "blocked".' not in AtWork(shipped, "cock").types("blocked")


def test_a_whole_word_is_no_beginning(shipped: Knowledge) -> None:
    for test in shipped.tests.values():
        if test.id in STEPS:
            continue
        outcomes = tuple(outcome.id for outcome in test.outcomes)
        for outcome in outcomes:
            assert by_beginning(test, test.spoken(outcome), outcomes) is None
            assert by_beginning(test, outcome, outcomes) is None
