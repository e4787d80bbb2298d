"""Looking texts up: whole, with holes, in parts; and what is typed, back to English."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.language.upper import in_capitals
from troubleshoot.language.catalogue import Catalogue
from troubleshoot.language.catalogue_file import Entry
from troubleshoot.language.notes import COMMAND, HEARD, TYPED

ENTRIES = (
    Entry("There is no place called {name}.", "Einen Ort {name} gibt es nicht."),
    Entry("{name}, at {place}", "{place}: {name}"),
    Entry("{before} at {where}", "{before} bei {where}"),
    Entry("{first} and {more}", "{first} und {more}"),
    Entry("condenser fan", "Luefter"),
    Entry("heat or cool", "heizen oder kuehlen"),
    Entry("Capacitance, leads lifted", "Kapazitaet, abgeklemmt"),
    Entry("It hums.", "Es brummt."),
    Entry("Set {{x}} by hand", "Stelle {{x}} von Hand ein"),
    Entry("about {minutes} min", "etwa {minutes} min"),
    Entry("doubtful word", "fraglich", doubtful=True),
    Entry("lost {hole}", "ohne Loch"),
    Entry("not told yet"),
    Entry("very low", "sehr niedrig", notes=(TYPED,)),
    Entry("open", "offen", notes=(TYPED,)),
    Entry("closed", "zu", notes=(TYPED,)),
    Entry("shut", "zu", notes=(TYPED,)),
    Entry("do", "mache", notes=(COMMAND,)),
    Entry("why not", "warum nicht", notes=(COMMAND,)),
    Entry("gas smell", "es riecht nach gas", notes=(HEARD,)),
)
GERMAN = Catalogue(ENTRIES)


@pytest.mark.parametrize(
    ("english", "told"),
    [
        ("condenser fan", "Luefter"),
        ("There is no place called condenser fan.", "Einen Ort Luefter gibt es nicht."),
        ("There is no place called Bob.", "Einen Ort Bob gibt es nicht."),
        ("condenser fan, at 3", "3: Luefter"),
        ("Capacitance, leads lifted", "Kapazitaet, abgeklemmt"),
        ("Capacitance, leads lifted (about 4 min)", "Kapazitaet, abgeklemmt (etwa 4 min)"),
        ("1 condenser fan", "1 Luefter"),
        ('"condenser fan" and heat or cool', '"Luefter" und heizen oder kuehlen'),
        ("condenser fan and open", "Luefter und offen"),
        ("It hums. It hums.", "Es brummt. Es brummt."),
        ("  condenser fan:  ", "  Luefter:  "),
        ("condenser fan\n\n  It hums.", "Luefter\n\n  Es brummt."),
        ("Set {x} by hand", "Stelle {x} von Hand ein"),
        ("doubtful word", "doubtful word"),
        ("lost thing", "lost thing"),
        ("not told yet", "not told yet"),
        ("Nobody knows this.", "Nobody knows this."),
        ("Keep off and stay at home, at once", "Keep off and stay at home, at once"),
        ("", ""),
        ("12.5 psig", "12.5 psig"),
    ],
)
def test_a_text_is_told(english: str, told: str) -> None:
    assert GERMAN.told(english) == told


@pytest.mark.parametrize(
    ("typed", "heard"),
    [
        ("sehr niedrig", "very low"),
        ("Sehr Niedrig", "very low"),
        ("sehr-niedrig", "very low"),
        ("offen, sehr niedrig", "open, very low"),
        ("mache 3", "do 3"),
        ("warum nicht condenser fan", "why not condenser fan"),
        ("mache offen", "do open"),
        ("es riecht nach gas", "gas smell"),
        ("zu", "zu"),
        ("2.1 uF", "2.1 uF"),
        ("very low", "very low"),
        ("die Tuer ist offen", "die Tuer ist offen"),
        ("", ""),
    ],
)
def test_what_is_typed_is_heard(typed: str, heard: str) -> None:
    assert GERMAN.heard(typed) == heard


@given(st.text(max_size=200))
def test_an_empty_catalogue_changes_nothing(text: str) -> None:
    assert Catalogue(()).told(text) == text
    assert Catalogue(()).heard(text) == text


WORDS = st.sampled_from([entry.english for entry in ENTRIES if "{" not in entry.english])
MARKS = st.sampled_from([" ", ", ", ": ", "; ", ". ", " (", ") ", ' "', '" ', " and ", "\n", " - "])


@given(st.lists(st.tuples(WORDS, MARKS), max_size=12), st.text(max_size=12))
def test_nothing_is_lost_and_nothing_is_added(parts: list[tuple[str, str]], odd: str) -> None:
    """A language that only changes the size of letters leaves every letter in its place."""
    text = "".join(f"{word}{mark}" for word, mark in parts) + odd
    capitals = Catalogue(in_capitals(ENTRIES))
    assert capitals.told(text).casefold() == text.casefold()


@given(st.lists(st.tuples(WORDS, MARKS), max_size=12))
def test_the_order_in_which_texts_come_changes_nothing(parts: list[tuple[str, str]]) -> None:
    texts = [f"{word}{mark}{more}" for word, mark in parts for more, _ in parts[:2]]
    there, back = Catalogue(ENTRIES), Catalogue(ENTRIES)
    assert [*map(there.told, texts)] == [*reversed([*map(back.told, reversed(texts))])]
