"""The words of the rules themselves are no danger, but where the rules mean one.

Facts, tests, calls and outcomes: alone, and in lists of facts. What is heard beside that stands in
`vocabulary_heard.txt` with the reason.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import is_mistyped, spoken_of

KNOWLEDGE = load_shipped()
FACTS = sorted(
    {
        words
        for fact in KNOWLEDGE.facts.values()
        for value in fact.values
        for words in (KNOWLEDGE.spoken(value), *fact.words.get(value, ()))
        if facts_said(KNOWLEDGE, "", words)
    }
)
STOPPING_CALLS = {t.complaint for h in KNOWLEDGE.hazards.values() for t in h.triggers}
STOPPING_OUTCOMES = {
    (finding.test, outcome)
    for hazard in KNOWLEDGE.hazards.values()
    for trigger in hazard.triggers
    for finding in trigger.findings
    for outcome in finding.outcomes
}


def not_meant() -> Iterator[str]:
    """Words of calls, tests and outcomes that call no hazard up."""
    for complaint in KNOWLEDGE.complaints.values():
        if complaint.id not in STOPPING_CALLS:
            yield from (complaint.says, *complaint.words)
    for test in KNOWLEDGE.tests.values():
        yield from (test.name, *test.words)
        for outcome in test.outcomes:
            if (test.id, outcome.id) not in STOPPING_OUTCOMES:
                yield from (outcome.spoken, *outcome.words, outcome.means)


def heard(typed: str) -> bool:
    return bool(spoken_of(KNOWLEDGE, typed) or told_among(KNOWLEDGE, typed))


def test_what_is_heard_in_words_of_the_rules_is_known() -> None:
    assert sorted({text for text in not_meant() if heard(text)}) == sorted(
        lines("vocabulary_heard.txt")
    )


def test_no_word_of_the_rules_is_taken_for_a_mistyped_danger() -> None:
    said = [*FACTS, *not_meant(), *(f.name for f in KNOWLEDGE.faults.values())]
    assert [text for text in said if is_mistyped(KNOWLEDGE, text)] == []


def stops(typed: str) -> bool:
    try:
        hear(KNOWLEDGE, typed)
    except DangerCalled:
        return True
    return False


@settings(max_examples=30)
@given(st.lists(st.sampled_from(FACTS), min_size=2, max_size=3))
def test_a_list_of_facts_is_no_danger(facts: list[str]) -> None:
    assert not stops(", ".join(facts))


@pytest.mark.parametrize("beside", ["dirty", "hums", "two stages", "no cooling", "whatever"])
def test_what_is_said_beside_facts_changes_nothing(beside: str) -> None:
    assert not stops(f"gas, two fans, {beside}")


@pytest.mark.parametrize("word", ["compresser", "belt", "scroll", "smelt"])
def test_how_a_word_is_misspelt_is_no_word_of_the_rules(word: str) -> None:
    assert is_mistyped(KNOWLEDGE, word) is (word == "compresser")
