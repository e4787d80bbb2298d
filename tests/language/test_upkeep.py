"""A translator gets one file with every text, what is still to do in it, and keeps their work."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.knowledge.small_rules import write_rules
from tests.language.gathered import gathered
from troubleshoot.cli import texts as command_of_texts
from troubleshoot.language.catalogue_file import Entry, catalogue_text, read_catalogue
from troubleshoot.language.holes import Sentence
from troubleshoot.language.notes import COMMAND, HEARD, TYPED
from troubleshoot.language.rule_texts import rule_texts
from troubleshoot.language.upkeep import brought_up, still_to_do

Command = Callable[..., tuple[int, str, str]]


@pytest.fixture
def command(command: Command, monkeypatch: pytest.MonkeyPatch) -> Command:
    """The command line, for which the texts of a folder are gathered once."""
    monkeypatch.setattr(command_of_texts, "texts_of_today", gathered)
    return command


def test_every_text_can_be_written_with_holes_and_has_a_place(texts: tuple[Entry, ...]) -> None:
    assert len({entry.english for entry in texts}) == len(texts) > 9_000
    assert all(entry.places for entry in texts)
    for entry in texts:
        holes = Sentence.of(entry.english).holes
        assert len(set(holes)) == len(holes), entry


def test_a_file_of_all_texts_reads_back(texts: tuple[Entry, ...]) -> None:
    assert read_catalogue(catalogue_text(texts), "a file") == texts


def test_the_texts_of_rules_have_their_lines_and_say_what_is_typed(tmp_path: Path) -> None:
    notes = {each.english: each.note for each in rule_texts([write_rules(tmp_path)])}
    assert notes["Find the leak, mend it, weigh the charge in."] == ""
    assert (notes["normal TXV"], notes["swollen"], notes["capacitors"]) == (TYPED, TYPED, TYPED)
    assert notes["gas smell"] == ""
    assert not any("-" in english and " " not in english for english in notes)


def test_words_that_are_only_heard_say_so(texts: tuple[Entry, ...]) -> None:
    notes = {entry.english: entry.notes for entry in texts}
    assert notes["fire brigade"] == (HEARD,) and notes["all legs"] == (HEARD,)
    assert TYPED in notes["very low"]
    commands = "s skip done over q quit undo u again y yes n no because why danger note help do"
    assert {word for word in commands.split() if COMMAND not in notes[word]} == set()


NOW = (
    Entry("Red", places=("a:1",)),
    Entry("Blue {name}", places=("a:2",)),
    Entry("on", places=("a:3",), notes=(TYPED,)),
    Entry("shut", places=("a:4",), notes=(TYPED,)),
)


def test_what_was_told_stays_and_what_is_gone_is_kept_at_the_end() -> None:
    before = (Entry("Red", "Rot", ("old:9",), remarks=("mine",)), Entry("Green", "Gruen", ("b:1",)))
    brought = brought_up(before, NOW)
    assert brought[0] == Entry("Red", "Rot", ("a:1",), remarks=("mine",))
    assert brought[1:4] == NOW[1:]
    assert brought[4:] == (Entry("Green", "Gruen"),)
    assert brought_up(brought, NOW) == brought


@pytest.mark.parametrize(
    ("entries", "said"),
    [
        ((), "a:1: nothing is said for: Red"),
        ((Entry("Red", "Rot", doubtful=True),), "a:1: said by somebody who was not sure: Red"),
        ((Entry("Blue {name}", "Blau"),), "a:2: other holes than {name}: Blau"),
        ((Entry("Blue {name}", "Blau {n}"),), "a:2: other holes than {name}: Blau {n}"),
        ((Entry("Blue {name}", "{name} {name}"),), "a:2: other holes than {name}: {name} {name}"),
        ((Entry("Green", "Gruen"),), "gone from the program: Green"),
        (
            (replace(NOW[2], told="zu"), replace(NOW[3], told="zu")),
            '"zu", typed, could be any of: on, shut',
        ),
    ],
)
def test_what_is_still_to_do(entries: tuple[Entry, ...], said: str) -> None:
    assert said in list(still_to_do(entries, NOW))


def test_nothing_is_to_do_where_all_is_told() -> None:
    told = tuple(replace(entry, told=entry.english) for entry in NOW)
    assert list(still_to_do(told, NOW)) == []


def test_the_command_writes_checks_and_brings_up(command: Command, tmp_path: Path) -> None:
    path = tmp_path / "other.po"
    code, said, _ = command("rules", "texts", str(path))
    written = read_catalogue(path.read_text("utf-8"), "a file")
    assert (code, said) == (
        0, f"{path}: {len(written)} texts, {len(written)} without a translation\n",
    )  # fmt: skip
    plain = next(entry for entry in written if "{" not in entry.english)
    told = replace(plain, told="Etwas")
    entries = tuple(told if entry is plain else entry for entry in written)
    path.write_text(catalogue_text(entries), "utf-8")
    assert command("rules", "texts", str(path))[0] == 0
    assert told in read_catalogue(path.read_text("utf-8"), "a file")
    code, said, _ = command("rules", "texts", str(path), "--check")
    assert code == 1 and said.splitlines()[-1] == f"{len(written) - 1} to do"


def test_a_whole_catalogue_has_nothing_to_do(command: Command, capitals_file: Path) -> None:
    assert command("rules", "texts", str(capitals_file), "--check")[:2] == (0, "0 to do\n")
