"""How an entry of the rules is met by what people say, to the word: its gaps, its order, its parts.

The entries are made up here, of words that mean nothing else; what is common speech in the others
is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.gone import (
    hinted_gone,
    may_name_a_state,
    quotes_the_past,
    something_happened,
    told_gone,
    told_in_passing,
)
from troubleshoot.safety.steps import BLEED_CAPACITOR, DEAD_TEST, LOCKOUT

OURS = "RTU-7"


def with_entries(shipped: Knowledge, *entries: str) -> Knowledge:
    """Rules of one step, a lock, and these words for one that has gone."""
    return replace(shipped, tests={LOCKOUT: replace(shipped.tests[LOCKOUT], gone=entries)})


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("hasp cat dog pig cow hen bolted", True), ("hasp bolted", True),
        ("hasp cat dog pig cow hen duck bolted", False),
        ("hasp", False), ("bolted hasp", False), ("cat bolted hasp", False),
    ],
)  # fmt: skip
def test_five_words_of_any_kind_fit_into_a_gap_and_what_comes_before_does_not(
    said: str, told: bool, shipped: Knowledge
) -> None:
    assert told_gone(with_entries(shipped, "hasp ... bolted"), said) == (LOCKOUT,) * told


def test_a_word_is_not_said_twice_by_being_said_once(shipped: Knowledge) -> None:
    for entry in ("hasp ... hasp", "hasp hasp"):
        known = with_entries(shipped, entry)
        assert not told_gone(known, "hasp") and not told_gone(known, "hasp bolted")
        assert told_gone(known, "hasp on hasp") == (LOCKOUT,)


def test_nothing_is_hinted_at_another_unit_nor_asked_of_what_would_be_told(
    shipped: Knowledge,
) -> None:
    """A question after what people would tell tells nothing; only hints are heard in it."""
    known = with_entries(shipped, "? hasp", "staple bolted")
    assert hinted_gone(known, "the hasp on unit 6", "RTU-6") == (LOCKOUT,)
    assert hinted_gone(known, "the hasp on unit 6", OURS) == ()
    assert hinted_gone(known, "is it the hasp?") == (LOCKOUT,)
    assert hinted_gone(known, "is the staple bolted?") == ()


def test_one_happening_is_enough(shipped: Knowledge) -> None:
    assert something_happened("the bracket is blue, something fell on it")
    assert not something_happened("the bracket is blue, it is steel")


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("my hasp is on unit 6", True), ("my hasp cat dog pig cow hen duck is on unit 6", True),
        ("my spare hasp is on unit 6", False), ("my hasp is not on unit 6", False),
        ("my hasp is on unit 7", False), ("my cat is on unit 6", False),
    ],
)  # fmt: skip
def test_of_another_unit_only_the_words_of_its_entries_count(
    said: str, told: bool, shipped: Knowledge
) -> None:
    known = with_entries(shipped, "hasp ... another-unit - spare", "duck hen cow pig dog cat")
    assert told_gone(known, said, OURS) == (LOCKOUT,) * told


@pytest.mark.parametrize(
    "said",
    [
        "hasp bolted?", "is the hasp bolted", "yesterday the hasp bolted", "i'll see hasp bolted",
        "if the hasp bolted", "the hasp isn't bolted", "the hasp bolted on unit 6", "hasp, bolted",
    ],
)  # fmt: skip
def test_what_is_asked_past_planned_denied_parted_or_elsewhere_is_not_told(
    said: str, shipped: Knowledge
) -> None:
    known = with_entries(shipped, "hasp bolted")
    assert told_gone(known, "hasp bolted") == (LOCKOUT,)
    assert told_gone(known, said, OURS) == ()


@pytest.mark.parametrize(
    "said", ["hasp bolted before lunch", "the hasp bolted no more", "hasp bolte"]
)
def test_what_is_told_before_a_plan_denied_twice_or_mistyped_is_told(
    said: str, shipped: Knowledge
) -> None:
    assert told_gone(with_entries(shipped, "hasp bolted", "hasp anymore"), said) == (LOCKOUT,)


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("hasp 12 volts", True), ("hasp 13 v", True), ("hasp 012 volts", True),
        ("hasp 12.5 vac", True), ("hasp cat volts", True), ("hasp 11 volts", False),
        ("hasp 9 volts", False), ("hasp dog volts", False),
    ],
)  # fmt: skip
def test_a_number_is_met_by_one_as_high(said: str, told: bool, shipped: Knowledge) -> None:
    assert told_gone(with_entries(shipped, "hasp 12/cat volts"), said) == (LOCKOUT,) * told


def test_under_ten_volts_nothing_is_live(shipped: Knowledge) -> None:
    known = with_entries(shipped, "hasp 5 volts")
    assert told_gone(known, "hasp 10 v") == (LOCKOUT,)
    assert told_gone(known, "hasp 9 v") == told_gone(known, "hasp 9.5 v") == ()


@pytest.mark.parametrize(
    ("said", "step"),
    [
        ("118.5 V L2 to ground", DEAD_TEST),
        ("1,000 V L2 to ground", DEAD_TEST),
        ("90.5 V on the cap", BLEED_CAPACITOR),
        ("1,200 volts on the cap", BLEED_CAPACITOR),
    ],
)
def test_the_tenths_of_a_voltage_are_not_taken_for_few_volts(
    said: str, step: str, shipped: Knowledge
) -> None:
    """Regression: of 118.5 V only 5 V were heard, so that nothing counted as live."""
    assert told_gone(shipped, said) == told_gone(shipped, said.replace(".5", "")) == (step,)


def test_what_only_hints_is_asked_about_and_some_of_it_whatever_stands(shipped: Knowledge) -> None:
    for entry, always in (("? hasp", False), ("?? hasp", True), ("hasp", False)):
        known = with_entries(shipped, entry)
        assert told_gone(known, "the hasp") == (LOCKOUT,) * (entry == "hasp")
        assert hinted_gone(known, "the hasp") == (LOCKOUT,) * (entry != "hasp")
        assert told_in_passing(known, "the hasp") is always


@pytest.mark.parametrize("word", ["actually", "couldnt"])
def test_a_little_word_and_one_that_denies_are_never_taken_for_another(
    word: str, shipped: Knowledge
) -> None:
    known = with_entries(shipped, f"hasp {word}z")
    assert told_gone(known, f"hasp {word}z") == (LOCKOUT,)
    assert told_gone(known, f"hasp {word}") == ()


def test_a_slip_in_a_little_word_of_an_entry_is_seen_through(shipped: Knowledge) -> None:
    """Regression: "power agian" told nothing, with "padlok" for padlock heard all along."""
    assert told_gone(shipped, "power agian") == told_gone(shipped, "power again") == (LOCKOUT,)
    assert told_gone(with_entries(shipped, "hasp again"), "hasp agian") == (LOCKOUT,)


def test_a_word_that_denies_does_not_deny_an_entry_that_has_it(shipped: Knowledge) -> None:
    known = with_entries(shipped, "nobody", "no hasp")
    for said in ("nobody", "no hasp", "there ain't no hasp"):
        assert told_gone(known, said) == (LOCKOUT,)
    for said in ("nobody never", "there isn't a no hasp"):
        assert told_gone(known, said) == ()


def test_the_past_is_told_by_its_words() -> None:
    assert quotes_the_past("last week the lock was off") and not quotes_the_past("the lock is off")


@pytest.mark.parametrize(
    ("said", "step"),
    [
        ("powers back on", LOCKOUT), ("the powers on", LOCKOUT), ("powers restored", LOCKOUT),
        ("power's up again", LOCKOUT), ("gass back on", "gas-cock-shut"),
    ],
)  # fmt: skip
def test_an_is_that_is_run_together_tells_as_one_that_is_not(
    said: str, step: str, shipped: Knowledge
) -> None:
    assert tuple(told_gone(shipped, said, OURS)) == (step,)


@pytest.mark.parametrize(
    ("said", "step"),
    [
        ("padlock is over on the salon rtu", LOCKOUT),
        ("208 V L1 to L2 before i shut it off", DEAD_TEST),
        ("it is fine over on the salon rtu", None),
    ],
)
def test_a_lock_elsewhere_and_volts_of_before_are_asked_about(
    said: str, step: str | None, shipped: Knowledge
) -> None:
    assert hinted_gone(shipped, said, OURS) == (() if step is None else (step,))


def test_a_word_of_an_entry_may_name_a_state_and_a_little_one_does_not(
    shipped: Knowledge,
) -> None:
    assert may_name_a_state(shipped, ["rust", "lock"])
    assert not may_name_a_state(shipped, ["rust", "back", "again", "the"])


@pytest.mark.parametrize(
    ("said", "gone"),
    [
        ("pulled my lock to check somethin", (LOCKOUT,)), ("pulled my lock", (LOCKOUT,)),
        ("somebody flipped it back on", (LOCKOUT,)), ("they flicked it on", (LOCKOUT,)),
        ("pulled my lock out of the bag", ()), ("flipped it on its side", ()),
        ("is somebody going to flip it back on", ()),
    ],
)  # fmt: skip
def test_a_lock_that_was_pulled_and_a_switch_that_was_flipped_are_gone(
    said: str, gone: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: whether everything still stands was asked of both, and they are plain."""
    assert told_gone(shipped, said) == gone
