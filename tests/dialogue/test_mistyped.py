"""One typing error in a long word is seen through; what could be the opposite never is."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cli.player import Player, play
from troubleshoot.dialogue.confirming import by_its_word
from troubleshoot.dialogue.mistyped import DENYING, LEAST_LETTERS, meant_by
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS
from troubleshoot.safety.hearing.typing_errors import one_error


def taken(shipped: Knowledge, step: str, typed: str) -> str | None:
    test = shipped.tests[step]
    return meant_by(shipped, test, typed, [outcome.id for outcome in test.outcomes])


@pytest.mark.parametrize(
    ("step", "typed", "meant"),
    [
        ("stop-by-controls", "stoped", "stopped"), ("stop-by-controls", "Stopepd", "stopped"),
        ("stop-by-controls", "all stoped", "all stopped"), ("lockout", "lockd", "locked"),
        ("lockout", "lokced out", "locked out"), ("capacitor-discharge", "dischargd", "discharged"),
        ("capacitor-discharge", "holds chrage", "holds charge"),
        ("tester-proof", "provved", "proved"), ("manometer-off", "pluged", "plugged"),
    ],
)  # fmt: skip
def test_a_letter_missing_too_many_or_swapped_is_seen_through(
    step: str, typed: str, meant: str, shipped: Knowledge
) -> None:
    """Regression: "stoped" was asked about."""
    assert taken(shipped, step, typed) == meant


@pytest.mark.parametrize(
    ("step", "typed"),
    [
        ("lockout", "unlocked"), ("lockout", "ulocked"), ("lockout", "nlocked"),
        ("lockout", "blocked"), ("lockout", "looked"), ("lockout", "lacked"), ("lockout", "licked"),
        ("lockout", "not locked"), ("lockout", "lockd?"), ("lockout", "lockd not"),
        ("capacitor-discharge", "charged"), ("capacitor-discharge", "ischarged"),
        ("capacitor-discharge", "undischarged"), ("charge-put-back", "changed"),
        ("stop-by-controls", "stepped"), ("stop-by-controls", "stopped"),
        ("verified-dead", "daed"), ("gas-cock-shut", "shutt"), ("roof-conditions", "saffe"),
    ],
)  # fmt: skip
def test_what_may_mean_otherwise_or_is_short_is_not(
    step: str, typed: str, shipped: Knowledge
) -> None:
    assert taken(shipped, step, typed) is None


SHIPPED = load_shipped()
WORDS = [
    (step, word)
    for step, confirmed in CONFIRMED.items()
    for outcome in SHIPPED.tests[step].outcomes
    if outcome.id == confirmed
    for word in (outcome.spoken, *outcome.words)
]
BEFORE = (*DENYING, "not ", "no ", "never ", "isn't ", "is not ", "cannot be ", "half ")


@given(at=st.sampled_from(WORDS), before=st.sampled_from(BEFORE), data=st.data())
def test_no_opposite_however_mistyped_is_taken_for_the_word_that_confirms(
    at: tuple[str, str], before: str, data: st.DataObject
) -> None:
    step, word = at
    opposite = f"{before}{word}"
    typed = data.draw(st.sampled_from([opposite, *sorted(one_error(opposite))]))
    meant = taken(SHIPPED, step, typed)
    own = next(o for o in SHIPPED.tests[step].outcomes if o.id == CONFIRMED[step])
    assert meant not in (own.spoken, *own.words)


@given(at=st.sampled_from(WORDS), data=st.data())
def test_what_names_another_answer_of_the_step_never_confirms(
    at: tuple[str, str], data: st.DataObject
) -> None:
    step, _ = at
    test = SHIPPED.tests[step]
    own = next(o for o in test.outcomes if o.id == CONFIRMED[step])
    others = [w for o in test.outcomes if o is not own for w in (o.spoken, *o.words)]
    other = data.draw(st.sampled_from(others or ["wrong"]))
    typed = data.draw(st.sampled_from([other, *sorted(one_error(other))]))
    assert taken(SHIPPED, step, typed) not in (own.spoken, *own.words)


@given(at=st.sampled_from(WORDS), data=st.data())
def test_only_a_long_word_is_mistyped_and_by_one_error(
    at: tuple[str, str], data: st.DataObject
) -> None:
    step, word = at
    typed = data.draw(st.sampled_from(sorted(one_error(word))))
    meant = taken(SHIPPED, step, typed)
    if meant is not None:
        wrong = [b for a, b in zip(typed.split(), meant.split(), strict=True) if a != b]
        assert len(wrong) == 1 and len(wrong[0]) >= LEAST_LETTERS
        assert typed in one_error(meant)


def test_what_protects_is_asked_about_and_the_rest_said_and_kept(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: "lockd" was taken as "locked", which protects a life and wants its word."""
    unit = {"heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt"}
    shows: dict[str, str | list[str]] = {
        "stop-by-controls": ["stoped", "stopped"],
        "lockout": ["unlocked", "lockd", "secnd source"],
    }
    player = Player(shipped, shows, ["do contactor-contacts"])
    _, book = play(shipped, tmp_path, player, {"complaint": "no-cooling", "unit": unit})
    assert 'Is "stopped" meant? Then type it so.' in player.text
    assert "Say in words what came of it: locked, cannot lock" in player.text
    assert 'Is "locked" meant? Then type it so.' in player.text
    assert 'Taken as "locked".' not in player.text
    assert 'Taken as "second source".' in player.text
    done = [(asked.test, asked.outcome) for asked in book.state.asked]
    assert ("stop-by-controls", "stopped") in done and ("lockout", "second-source") in done
    assert ("lockout", "locked") not in done


def test_no_word_that_protects_is_confirmed_with_an_error_in_it(shipped: Knowledge) -> None:
    for step, word in WORDS:
        assert by_its_word(shipped.tests[step], word) is (step not in ENTER_CONFIRMS)
