"""What a thing is called in the rules leads to it, in any case, with one typing error in it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Heard
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.hearing.causes_by_words import heard_fault
from troubleshoot.visit.hearing.complaints import heard_complaint
from troubleshoot.visit.hearing.tests_by_words import heard_test

LONG = 7


def names(knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """(kind, id) of all that is found by words; a safety step is none."""
    yield from (("complaint", name) for name in knowledge.complaints)
    yield from (("test", t.id) for t in knowledge.tests.values() if t.kind != "step")
    yield from (("cause", name) for name in knowledge.faults)


def called(knowledge: Knowledge, kind: str, name: str) -> tuple[str, Sequence[str]]:
    """What a thing is called, and what people say for it."""
    if kind == "complaint":
        return knowledge.complaints[name].says, knowledge.complaints[name].words
    thing = knowledge.tests[name] if kind == "test" else knowledge.faults[name]
    return thing.name, thing.words


HEARD: Mapping[str, Callable[[Knowledge, str], Heard]] = {
    "complaint": heard_complaint,
    "test": lambda knowledge, words: heard_test(knowledge, Unit(), words),
    "cause": heard_fault,
}


@pytest.mark.parametrize("kind", HEARD)
def test_its_own_name_is_taken_for_it(kind: str, shipped: Knowledge) -> None:
    missed = [
        (name, heard)
        for each, name in names(shipped)
        if each == kind
        for said in (called(shipped, kind, name)[0],)
        for heard in (HEARD[kind](shipped, said.upper()),)
        if heard.taken != name
    ]
    assert missed == []


@pytest.mark.parametrize("kind", HEARD)
def test_what_people_say_for_it_finds_it_first(kind: str, shipped: Knowledge) -> None:
    """Where several things are called so it is one of those that are asked about."""
    lexicon = lexicon_of(shipped)
    things = [name for each, name in names(shipped) if each == kind]
    said_of: Counter[tuple[str, ...]] = Counter()
    for name in things:
        own, words = called(shipped, kind, name)
        said_of.update({lexicon.all_words(each) for each in (own, *words)})
    missed = []
    for name in things:
        for said in called(shipped, kind, name)[1]:
            heard = HEARD[kind](shipped, said)
            if said_of[lexicon.all_words(said)] > 1:
                found = name in heard.which and heard.taken is None
            else:
                found = heard.which[:1] == (name,)
            if not found:
                missed.append((name, said, heard))
    assert missed == []


@given(st.data())
def test_one_typing_error_in_a_long_word_is_seen_through(data: st.DataObject) -> None:
    knowledge = load_shipped()
    kind, name = data.draw(st.sampled_from([*names(knowledge)]))
    words = called(knowledge, kind, name)[0].lower().split()
    long = [at for at, word in enumerate(words) if word.isalpha() and len(word) >= LONG]
    if not long:
        return
    at = data.draw(st.sampled_from(long))
    letter = data.draw(st.integers(1, len(words[at]) - 2))
    words[at] = words[at][:letter] + words[at][letter + 1 :]
    heard = HEARD[kind](knowledge, " ".join(words))
    assert heard.taken in (name, None) and name in heard.which


@given(st.text(max_size=80))
def test_any_words_are_answered_the_same_again(words: str) -> None:
    for heard in HEARD.values():
        first = heard(load_shipped(), words)
        assert first == heard(load_shipped(), words)
        assert first.taken is None or first.taken in first.which
