"""A bare number that stops the whole job is said back first; only a plain no takes it back."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import AskTest, AtStop, Choose
from troubleshoot.dialogue.said import Sentence
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.facts_first import outcomes_that_stop
from troubleshoot.visit.events import Answered, DangerReported

TEST, SWEEP = "walk-round", "combustible-gas-sweep"
NOT_PRESSED = "Not taken. Its number, or its word."
STANDS = "A STOP stands: keep clear of it, you and everybody else."


def pressed(knowledge: Knowledge, *, stops: bool) -> tuple[AtWork, str, str]:
    """A visit at the walk round, the number of an outcome there, and its words."""
    visit = AtWork(knowledge, "in")
    visit.types(f"do {TEST}")
    visit.goes_on_to(TEST)
    assert isinstance(visit.prompt, AskTest)
    test, offered = knowledge.tests[TEST], visit.prompt.outcomes
    whole = outcomes_that_stop(knowledge, test, whole_job=True)
    at = next(n for n, o in enumerate(offered, 1) if (o in whole) is stops)
    return visit, str(at), test.spoken(offered[at - 1])


def told(visit: AtWork) -> list[tuple[str, ...]]:
    return [e.outcomes for e in visit.events if isinstance(e, Answered) and e.test == TEST]


def test_it_is_said_back_before_it_stops(shipped: Knowledge) -> None:
    """Regression: a stray 2 was a STOP of half an hour that nothing took back."""
    visit, number, word = pressed(shipped, stops=True)
    visit.types(number)
    assert isinstance(visit.prompt, Choose)
    assert visit.prompt.question == f"{number} means: {word}. Is that so? (y/n)"
    assert not told(visit)


@pytest.mark.parametrize("said", ["y", "", "hm", "maybe", "1", "not sure", "the roof is soft"])
def test_a_yes_and_whatever_is_doubtful_stops(said: str, shipped: Knowledge) -> None:
    visit, number, _ = pressed(shipped, stops=True)
    visit.types(number)
    visit.types(said)
    assert told(visit) and isinstance(visit.prompt, AtStop)


@pytest.mark.parametrize("said", ["n", "no, wrong key", "u"])
def test_a_plain_no_takes_it_back(said: str, shipped: Knowledge) -> None:
    visit, number, _ = pressed(shipped, stops=True)
    visit.types(number)
    assert NOT_PRESSED in visit.types(said)
    assert visit.at == TEST and not told(visit)


def test_whoever_leaves_unanswered_has_said_it(shipped: Knowledge) -> None:
    visit, number, _ = pressed(shipped, stops=True)
    visit.types(number)
    said = visit.dialogue.leave()
    assert told(visit)
    assert any(each.strong and STANDS in each.text for each in said if isinstance(each, Sentence))


def test_a_danger_told_instead_of_an_answer_is_heard_and_both_stand(shipped: Knowledge) -> None:
    visit, number, _ = pressed(shipped, stops=True)
    visit.types(number)
    assert any(STANDS in each for each in visit.types("somebody fell off the roof"))
    assert told(visit) and isinstance(visit.prompt, AtStop)
    assert any(isinstance(event, DangerReported) for event in visit.events)


def test_its_word_stops_at_once(shipped: Knowledge) -> None:
    visit, _, word = pressed(shipped, stops=True)
    visit.types(word)
    assert told(visit) and isinstance(visit.prompt, AtStop)


def test_what_stops_nothing_is_taken_at_once(shipped: Knowledge) -> None:
    visit, number, _ = pressed(shipped, stops=False)
    visit.types(number)
    assert told(visit)


def test_several_numbers_are_said_back_together(shipped: Knowledge) -> None:
    visit, number, word = pressed(shipped, stops=True)
    visit.types(f"2, {number}")
    assert isinstance(visit.prompt, Choose)
    assert visit.prompt.question == f"2, {number} means: oil stain, {word}. Is that so? (y/n)"


def test_what_stops_less_than_the_whole_job_is_taken_at_once(shipped: Knowledge) -> None:
    visit, _, _ = pressed(shipped, stops=False)
    assert isinstance(visit.prompt, AskTest)
    stops = {"nest"} & outcomes_that_stop(shipped, shipped.tests[TEST])
    assert not stops & outcomes_that_stop(shipped, shipped.tests[TEST], whole_job=True)
    visit.types(str(visit.prompt.outcomes.index(*stops) + 1))
    assert told(visit) == [("nest",)]


def test_a_reading_of_a_step_is_no_number_of_a_list(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(at_work.PLACES, SWEEP, ("no-heat", "do burner-orifices", SWEEP))
    visit = AtWork(shipped, SWEEP)
    visit.types("40")
    assert isinstance(visit.prompt, AtStop)


def test_who_was_away_at_the_question_is_not_shown_the_test_as_before(shipped: Knowledge) -> None:
    """Regression: after a night at it a plain no showed the test on the roof of the day before."""
    visit, number, _ = pressed(shipped, stops=True)
    visit.types(number)
    visit.moment += timedelta(hours=14)
    said = visit.types("n")
    assert NOT_PRESSED in said
    assert any(line.startswith("A long silence.") for line in said)
    assert visit.at == "roof-conditions"
