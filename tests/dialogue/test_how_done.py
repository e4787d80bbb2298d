"""What only says how a step was done may stand beside its word; what takes it back may not."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.how_done import without_how
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
SAID = [
    ("roof-conditions", "ladder tied", "safe"),
    ("lockout", "my own lock and tag", "locked"),
    ("lockout", "own lock on and tried it", "locked"),
    ("combustible-gas-sweep", "bumped this morning", "none"),
    ("combustible-gas-sweep", "detector bump-tested today", "none"),
    ("room-carbon-monoxide", "zeroed outdoors", "normal"),
    ("gas-cock-look", "no joints touched", "open"),
    ("gas-cock-open", "no joints touched", "open"),
]
TAKE_BACK = ("not", "no", "never", "cannot", "without", "maybe", "should be", "somebody else's")


def taken(shipped: Knowledge, name: str, typed: str) -> tuple[list[str], str | None]:
    test = shipped.tests[name]
    if test.kind == "step":
        done = step_event_from(shipped, VisitState(), test, Step(name), typed, NOW)
        return list(done.outcomes), done.text
    found = answer_event_from(shipped, test, None, typed, tuple(o.id for o in test.outcomes))
    return list(found.outcomes), found.text


@pytest.mark.parametrize(("name", "how", "word"), SAID)
def test_what_only_says_how_changes_no_answer(
    name: str, how: str, word: str, shipped: Knowledge
) -> None:
    """Regression: "locked, my own lock and tag, tried" was refused."""
    for typed in (f"{word}, {how}", f"{how}, {word}", f"{how.upper()} ; and {how}; {word}"):
        assert taken(shipped, name, typed) == ([word], None)
    with pytest.raises(NotAnAnswer):
        taken(shipped, name, how)


@pytest.mark.parametrize(
    ("name", "typed", "answer"),
    [
        ("roof-conditions", "20 ft, ladder tied, safe", (["safe"], "20 ft")),
        ("roof-conditions", "4 ft, ladder tied, safe", (["edge-under-6-ft"], "4 ft")),
        ("lockout", "locked, my own lock and tag, tried", (["locked"], None)),
        ("lockout", "tried, second source", (["second-source"], None)),
        ("gas-cock-open", "no joints touched, leaks", (["leaks"], None)),
        ("combustible-gas-sweep", "bumped today, 4 % LEL", ([], "4 % LEL")),
    ],
)
def test_the_word_or_the_number_beside_it_decides(
    name: str, typed: str, answer: tuple[list[str], str | None], shipped: Knowledge
) -> None:
    assert taken(shipped, name, typed) == answer


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("lockout", "locked, tried, it started"), ("lockout", "locked, somebody else's lock"),
        ("lockout", "locked, my own lock, no tag"), ("lockout", "locked, tried nothing"),
        ("roof-conditions", "ladder not tied, safe"), ("roof-conditions", "safe, ladder"),
        ("roof-conditions", "20 ft, ladder tied"), ("roof-conditions", "ladder tied"),
        ("combustible-gas-sweep", "bumped yesterday, none"),
        ("combustible-gas-sweep", "none, not bumped"), ("combustible-gas-sweep", "0 ppm CO"),
        ("gas-cock-open", "joints touched, open"), ("verified-dead", "dead, tried"),
        ("lockout", "lock, tried"), ("lockout", "tried, ok"),
    ],
)  # fmt: skip
def test_what_denies_or_leaves_open_is_no_answer(name: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        taken(shipped, name, typed)


@given(st.sampled_from(SAID), st.sampled_from(TAKE_BACK), st.integers(0, 4))
def test_a_clause_that_takes_anything_back_stays(
    said: tuple[str, str, str], back: str, at: int
) -> None:
    name, how, word = said
    words = how.split()
    clause = " ".join([*words[:at], back, *words[at:]])
    assert without_how(name, f"{word}, {clause}") == f"{word}, {clause}"


@given(st.sampled_from(sorted(CONFIRMED)), st.text(max_size=40))
def test_something_is_always_left_of_what_was_typed(name: str, typed: str) -> None:
    left = without_how(name, typed)
    assert left == typed or (left and len(left) < len(typed))


@pytest.mark.parametrize("typed", ["0 %", "0 ppm", "0.0 %", "0 percent", "0 PPM", "0 % LEL", "0"])
def test_no_gas_is_none_in_any_unit_of_the_detector(typed: str, shipped: Knowledge) -> None:
    """Regression: 0 % and 0 ppm were refused at the gas sweep."""
    assert taken(shipped, "combustible-gas-sweep", typed) == ([], typed)


@pytest.mark.parametrize("typed", ["1 %", "12 ppm", "0.1 %", "0 % vol", "about 0 %", "-0 %", "0 V"])
def test_any_gas_wants_the_unit_that_it_is_judged_in(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        taken(shipped, "combustible-gas-sweep", typed)
