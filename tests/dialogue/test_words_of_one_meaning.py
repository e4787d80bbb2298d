"""Words that have one meaning are taken; where a qualification hangs on it, none by a guess."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started


def who(shipped: Knowledge, *typed: str) -> tuple[str, ...]:
    return held(shipped, Lines(*typed), lambda voice: ask_profiles(shipped, voice))


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("tech electrical refrig", ("technician", "electrical", "refrigerant")),
        ("3 gas", ("technician", "gas")), ("Apprentice, supervised", ("apprentice", "supervised")),
        ("fire alarm", ("fire-alarm",)), ("", ("technician",)), ("3 3", ("technician",)),
    ],
)  # fmt: skip
def test_who_is_asking_may_be_said_in_words(
    typed: str, named: tuple[str, ...], shipped: Knowledge
) -> None:
    assert who(shipped, typed) == named


@pytest.mark.parametrize("typed", ["electrician", "not electrical", "tec", "tech boss", "9"])
def test_nobody_is_qualified_by_a_guess(typed: str, shipped: Knowledge) -> None:
    assert who(shipped, typed, "1") == ("apprentice",)


def test_fire_is_a_danger_and_no_beginning_of_a_word(shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        who(shipped, "fire")


@pytest.mark.parametrize("fact", ["condenser-fans", "circuits", "cooling-stages"])
@pytest.mark.parametrize("typed", ["just one", "only one", "one"])
def test_just_one_is_one(fact: str, typed: str, shipped: Knowledge) -> None:
    told = []
    for words in (typed, "one"):
        book = book_of(shipped, [Started(complaint="no-cooling")])
        terminal = Lines(words)
        held(shipped, terminal, lambda voice, b=book: ask_fact(b, voice, shipped.facts[fact]))
        told.append(book.state.unit.facts)
    assert told[0] == told[1] and told[0]


@pytest.mark.parametrize("typed", ["dont know", "I don't know", "idk", "no idea", ""])
def test_who_does_not_know_leaves_a_fact_open(typed: str, shipped: Knowledge) -> None:
    book = book_of(shipped, [Started(complaint="no-cooling")])
    held(shipped, Lines(typed), lambda voice: ask_fact(book, voice, shipped.facts["circuits"]))
    assert "circuits" in book.state.not_known and not book.state.unit.facts
