"""What is taken without asking, what is asked about, and how words are compared."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.matching.lexicon import Lexicon, lexicon_of
from troubleshoot.reasoning.matching.matcher import UNHEARD, Heard, Matcher
from troubleshoot.reasoning.matching.spelling import mended
from troubleshoot.reasoning.matching.stems import stem

PLAIN = Lexicon({("cap",): ("capacitor",)}, frozenset({"the", "a"}), frozenset({"out"}),
                frozenset({"cap", "capacitor"}), 1)  # fmt: skip
THINGS = Matcher(
    PLAIN,
    {
        "no-heat": ("no heat", "heat is out", "no flame"),
        "no-heat-cold": ("no heat on cold mornings",),
        "noise": ("hum", "it hums loudly"),
        "weak": ("capacitor weak",),
        "swollen": ("capacitor swollen",),
    },
)


@pytest.mark.parametrize(
    ("said", "taken"),
    [
        ("no heat", "no-heat"),
        ("No HEAT at the", "no-heat"),
        ("there is no heat on cold mornings", "no-heat-cold"),
        ("cap weak", "weak"),
        ("weak cap", "weak"),
        ("swolen capacitor", "swollen"),
        ("cap", None),
        ("no heat, it hums", None),
        ("no heat and the carpet is green", None),
        ("heat", None),
        ("mornings", "no-heat-cold"),
        ("out", None),
        ("carpet", None),
        ("", None),
    ],
)
def test_one_is_taken_only_where_nothing_else_is_said(said: str, taken: str | None) -> None:
    heard = THINGS.heard(said)
    assert heard.taken == taken
    assert taken is None or heard.which[0] == taken


def test_what_may_be_meant_is_asked_the_likeliest_first() -> None:
    assert {*THINGS.heard("the cap").which} == {"weak", "swollen"}
    assert THINGS.heard("no heat, it hums").which[0] == "no-heat"
    assert THINGS.heard("carpet") == UNHEARD == Heard(None, (), frozenset())


def test_a_denied_word_is_another_word() -> None:
    assert PLAIN.words("no heat") == ("no", "heat")
    denying = Lexicon({("no",): ("not",)}, frozenset({"the"}), frozenset(), frozenset(), 1)
    assert denying.words("no heat, the fan no") == ("not-heat", "fan", "not")
    assert denying.all_words("no the heat") == ("the", "not-heat")


@pytest.mark.parametrize(
    ("words", "short"),
    [
        ("trips tripped tripping trip", "trip"), ("fuse fuses", "fus"), ("hiss hissing", "hiss"),
        ("battery batteries", "battery"), ("pull pulled pulls", "pull"), ("gas", "gas"),
    ],
)  # fmt: skip
def test_endings_change_nothing(words: str, short: str) -> None:
    assert {stem(word) for word in words.split()} == {short}


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("coling", "cooling"), ("econimizer", "economizer"), ("ignitor", "igniter"),
        ("cotnactor", "contactor"), ("contactorr", "contactor"),
        ("store", "store"), ("lock", "lock"), ("xontactor", "xontactor"), ("fan", "fan"),
    ],
)  # fmt: skip
def test_one_error_in_a_long_word_is_seen_through(typed: str, meant: str) -> None:
    known = {"cooling", "coming", "economizer", "igniter", "contactor", "storm", "rock", "pan"}
    assert mended(typed, known) == meant


@given(st.text(alphabet="abcdeglmn", min_size=1, max_size=12))
def test_a_word_is_mended_to_itself_or_to_a_known_one(word: str) -> None:
    known = {"cabled", "gable", "manage", "mangled", "blame"}
    assert mended(word, known) in {word, *known}
    assert all(mended(each, known) == each for each in known)


def test_what_the_rules_say_alike_counts_alike(shipped: Knowledge) -> None:
    lexicon = lexicon_of(shipped)
    for name, others in shipped.alike.items():
        for said in others:
            assert lexicon.all_words(said) == lexicon.all_words(name), (name, said)
