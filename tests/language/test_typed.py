"""What is shown in another language may be typed in it: words turned round serve as a language."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.language.screens import held
from troubleshoot.cli.door import CATALOGUE_VARIABLE
from troubleshoot.dialogue.answering import answers
from troubleshoot.dialogue.hearing import called_danger
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.language.catalogue import Catalogue
from troubleshoot.language.catalogue_file import Entry, catalogue_text
from troubleshoot.language.notes import COMMAND, TYPED


def turned(word: str) -> str:
    return word[::-1]


def typed_words(texts: tuple[Entry, ...]) -> list[Entry]:
    """The words that are typed, turned round; all else stays English."""
    return [
        replace(entry, told=turned(entry.english))
        for entry in texts
        if not {TYPED, COMMAND}.isdisjoint(entry.notes)
    ]


@pytest.fixture
def turned_round(
    texts: tuple[Entry, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Callable[[str], str]:
    path = tmp_path / "turned.po"
    path.write_text(catalogue_text(typed_words(texts)), "utf-8")
    monkeypatch.setenv(CATALOGUE_VARIABLE, str(path))
    return turned


def test_every_outcome_may_be_typed_as_it_is_shown(
    shipped: Knowledge, texts: tuple[Entry, ...]
) -> None:
    language = Catalogue(typed_words(texts))
    for test in shipped.tests.values():
        for outcome in test.outcomes:
            shown = language.told(answers(test, (outcome.id,))[0])
            assert shown == turned(outcome.spoken)
            assert language.heard(shown) == outcome.spoken


def test_a_visit_is_held_in_words_that_are_not_english(
    shipped: Knowledge, tmp_path: Path, turned_round: Callable[[str], str]
) -> None:
    there = held(shipped, tmp_path / "a", "does not cool", "first", turned_round, ())
    assert any(turned("locked") in line for line in there)
    assert not any("Say in words" in line or "Give a number" in line for line in there)


@pytest.mark.parametrize("called", ["regnad", "REGNAD!", "regnad gas", "Regnad: gas"])
def test_danger_is_called_in_the_language(texts: tuple[Entry, ...], called: str) -> None:
    heard = Catalogue(typed_words(texts)).heard(called)
    assert called_danger(heard) == called.partition(" ")[2]


def test_danger_called_in_the_language_stops_a_visit(
    shipped: Knowledge, tmp_path: Path, turned_round: Callable[[str], str]
) -> None:
    said = held(shipped, tmp_path, "does not cool", "sound", turned_round, ("regnad gas",))
    assert any("DANGER - STOP" in line for line in said)


def test_the_word_that_proves_a_lock_is_taken_in_the_language_alone_or_in_english(
    shipped: Knowledge, texts: tuple[Entry, ...]
) -> None:
    language = Catalogue(typed_words(texts))
    assert language.heard("dekcol") == "locked" == language.heard("locked")
    assert language.heard("dekco") == "dekco"
