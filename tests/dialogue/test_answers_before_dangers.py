"""A word that answers the question in hand is that answer before it is a danger."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.answering import said_by
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import DANGER_OR_ANSWER, Listener
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.reporting_danger import STAYS_CALLED, report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Talk
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.visit.events import Started

START = Started(complaint="no-heat", profiles=("technician",))


def told(shipped: Knowledge, fact: str, *typed: str) -> tuple[VisitBook, str]:
    book, terminal = book_of(shipped, [START]), Lines(*typed)

    def part(voice: Voice) -> Talk[None]:
        return (yield from ask_fact(book, voice, shipped.facts[fact]))

    held(shipped, terminal, part)
    return book, terminal.text


@pytest.mark.parametrize(
    "typed",
    ["spark i think", "i meant spark ignition", "i think it is spark", "maybe spark", "spark"],
)
def test_an_answer_in_words_of_doubt_is_that_answer(typed: str, shipped: Knowledge) -> None:
    """Regression: spark i think was a STOP for arcing."""
    in_doubt = "think" in typed or "maybe" in typed
    book, _ = told(shipped, "ignition", typed, *(["y"] if in_doubt else []))
    assert book.state.unit.facts["ignition"] == "spark"
    assert book.state.unit_data["ignition"] == "spark"
    assert book.state.stops == ()


@pytest.mark.parametrize("typed", ["sparks in the box", "box is on fire", "i smell gas"])
def test_a_danger_at_that_question_is_one(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        told(shipped, "ignition", typed)


def test_words_of_the_question_that_may_be_either_are_asked_about(shipped: Knowledge) -> None:
    book, said = told(shipped, "ignition", "sparks ignition or spark surface", "spark")
    assert book.state.unit.facts["ignition"] == "spark"
    assert DANGER_OR_ANSWER in said or "no answer here" in said


def test_what_is_no_answer_the_second_time_is_the_danger(shipped: Knowledge) -> None:
    listener = Listener(shipped, Voice(), offered=("spark", "hot surface"), about="Ignition?")
    listener.not_understood("spark spark", "no.")
    with pytest.raises(DangerCalled, match="spark spark"):
        listener.not_understood("what", "no.")


@pytest.mark.parametrize(
    ("typed", "profiles"),
    [
        ("gas", ("gas",)), ("technician gas", ("technician", "gas")),
        ("gas, combustion", ("gas", "combustion")), ("2 gas", ("supervised", "gas")),
        ("Gas 8", ("gas", "fire-alarm")), ("fire alarm", ("fire-alarm",)),
    ],
)  # fmt: skip
def test_the_profiles_own_words_say_who_is_asking(
    typed: str, profiles: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: "gas" there was a STOP for fuel gas."""
    assert held(shipped, Lines(typed), lambda voice: ask_profiles(shipped, voice)) == profiles


@pytest.mark.parametrize("typed", ["I smell gas", "gas!", "fire", "gas leak", "technician on fire"])
def test_a_danger_told_to_who_is_asking_is_one(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        held(shipped, Lines(typed), lambda voice: ask_profiles(shipped, voice))


@pytest.mark.parametrize("typed", ["stopd", "stoped", "stopde"])
def test_an_answer_with_a_letter_or_two_wrong_is_asked_about(
    typed: str, shipped: Knowledge
) -> None:
    voice = Voice()
    Listener(shipped, voice, offered=("stopped", "runs on")).not_understood(typed, "no.")
    assert 'Is "stopped" meant?' in str(voice.heard())


def test_an_answer_of_the_open_step_takes_no_call_back(shipped: Knowledge) -> None:
    """Regression: stopped at "What is wrong?" wiped the call."""
    book, terminal = book_of(shipped, [START]), Lines("stopped", "q")
    held(shipped, terminal, lambda voice: report_danger(book, voice, "", "stop"))
    assert book.state.stops and STAYS_CALLED not in terminal.text


@pytest.mark.parametrize("typed", ["dunno", "i dunno", "Don't know", "no clue", "not sure", "idk"])
def test_who_does_not_know_leaves_a_fact_open(typed: str, shipped: Knowledge) -> None:
    book, _ = told(shipped, "ignition", typed)
    assert "ignition" not in book.state.unit.facts


@pytest.mark.parametrize(("typed", "value"), [("3", "three"), ("three phase", "three")])
def test_a_fact_is_kept_as_the_value_that_it_means(
    typed: str, value: str, shipped: Knowledge
) -> None:
    """Regression: the record said compressor phase: 3."""
    book, _ = told(shipped, "compressor-phase", typed)
    assert book.state.unit_data["compressor-phase"] == value


def test_nobody_who_answers_in_a_questions_own_words_is_asked_whether_there_is_a_danger(
    shipped: Knowledge,
) -> None:
    """Asked so at every turn, people learn to say no without reading."""
    alarming: set[str] = set()
    for test in shipped.tests.values():
        said = [("name", test.name), *(("how", line) for line in test.how)]
        for outcome in test.outcomes:
            words = (outcome.spoken, *outcome.words, outcome.means)
            said += [("answer", text) for text in words]
        alarms = [(part, text) for part, text in said if hints(text)]
        alarming |= {part for part, _ in alarms}
        own = said_by(test, [outcome.id for outcome in test.outcomes])
        assert not [text for _, text in alarms if hints(text, own)], test.id
    assert alarming == {"name", "how", "answer"}, "some of these words are asked about elsewhere"


def test_what_an_answer_says_that_is_not_offered_is_asked_about(shipped: Knowledge) -> None:
    curb = shipped.tests["curb-and-panels"]
    (wet,) = (outcome for outcome in curb.outcomes if hints(outcome.spoken))
    others = [outcome.id for outcome in curb.outcomes if outcome != wet]
    assert not hints(wet.spoken, said_by(curb, [wet.id]))
    assert hints(wet.spoken, said_by(curb, others))
