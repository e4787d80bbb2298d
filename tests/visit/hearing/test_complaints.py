"""The caller's own words lead to the complaint a mechanic would choose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.hearing.complaints import heard_complaint, match_complaints


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        ("nothing runs at all", "dead-unit"),
        ("it is not cooling", "no-cooling"),
        ("smells like gas", "gas-smell"),
        ("gas smell near the unit", "gas-smell"),
        ("odour at the vents", "gas-smell"),
        ("odor at the vents", "gas-smell"),
        ("smells of skunk in here", "gas-smell"),
        ("a strange smell in the store", "gas-smell"),
        ("an odd noise from the roof", "noise"),
        ("the thermostat is acting weird", "blank-thermostat"),
        ("sewer smell from the vents", "musty-or-sewer-smell"),
        ("burning smell from the vents", "burning-smell"),
        ("there is ice on the pipes", "ice-on-pipes-or-coil"),
        ("air barely coming out", "weak-airflow"),
        ("compressor does not start", "no-cooling"),
        ("the compressor won't start", "no-cooling"),
        ("it trips the breaker", "trips-breaker-or-fuse"),
        ("c2 runs c1 dont", "only-half-runs"),
        ("circuit 1 runs, circuit 2 is dead", "only-half-runs"),
        ("comp hums wont start", "no-cooling"),
        ("fine in the morning, dies every afternoon", "fails-hot-afternoons"),
    ],
)
def test_the_nearest_complaint_comes_first(words: str, complaint: str, shipped: Knowledge) -> None:
    assert match_complaints(shipped, words)[0].id == complaint


@given(st.text(max_size=60))
def test_any_words_give_at_most_four_and_never_fail(words: str) -> None:
    heard = heard_complaint(load_shipped(), words)
    assert len(heard.which) <= 4 and len({*heard.which}) == len(heard.which)


@pytest.mark.parametrize(
    ("words", "taken"),
    [
        ("no heat", "no-heat"),
        ("no heat on the coldest mornings", "no-heat-coldest-mornings"),
        ("contactor is chattering", "noise"),
        ("not cooling and the thermostat is blank", None),
        ("heat", None),
        ("it works", None),
    ],
)
def test_only_what_is_a_phrase_of_one_is_taken(
    words: str, taken: str | None, shipped: Knowledge
) -> None:
    assert heard_complaint(shipped, words).taken == taken


@pytest.mark.parametrize("words", ["shut", "told", "switched on", "lightning", "dirty"])
def test_a_word_that_strayed_from_another_prompt_is_asked_about(
    words: str, shipped: Knowledge
) -> None:
    """Regression: "shut" was taken for a fire panel that had shut the unit down."""
    heard = heard_complaint(shipped, words)
    assert heard.taken is None and heard.which


@pytest.mark.parametrize(("words", "taken"), [("dead", "dead-unit"), ("gas smelled", "gas-smell")])
def test_a_phrase_of_one_is_taken_though_a_step_has_it_too(
    words: str, taken: str, shipped: Knowledge
) -> None:
    assert heard_complaint(shipped, words).taken == taken
