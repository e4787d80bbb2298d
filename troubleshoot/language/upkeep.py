"""Bringing a catalogue file up to the program and rules of today, and what is still to do in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from troubleshoot.language.catalogue import fits
from troubleshoot.language.catalogue_file import Entry
from troubleshoot.language.holes import Sentence
from troubleshoot.language.notes import COMMAND, HEARD, TYPED
from troubleshoot.language.program_texts import Found, program_texts
from troubleshoot.language.rule_texts import form_texts, rule_texts, scenario_texts
from troubleshoot.outside.text import plain_words


def texts_of_today(folders: Sequence[Path]) -> tuple[Entry, ...]:
    """Every text that can leave the program with these folders of rules, each once."""
    merged: dict[str, list[Found]] = {}
    for found in (*program_texts(), *rule_texts(folders), *scenario_texts(), *form_texts()):
        merged.setdefault(found.english, []).append(found)
    return tuple(_merged(english, found) for english, found in merged.items())


def brought_up(entries: Iterable[Entry], today: Iterable[Entry]) -> tuple[Entry, ...]:
    """The texts of today with what was told of them; then what was told of texts that are gone."""
    before = {entry.english: entry for entry in entries}
    kept = []
    for entry in today:
        old = before.pop(entry.english, None)
        if old is not None:
            entry = replace(entry, told=old.told, remarks=old.remarks, doubtful=old.doubtful)
        kept.append(entry)
    gone = (replace(old, places=(), notes=()) for old in before.values() if old.told)
    return (*kept, *gone)


def still_to_do(entries: Sequence[Entry], today: Iterable[Entry]) -> Iterator[str]:
    """One line for each text that is missing, doubtful, gone, has other holes or misleads."""
    told = {entry.english: entry for entry in entries}
    known = set()
    for now in today:
        known.add(now.english)
        entry = told.get(now.english)
        where = now.places[0]
        if entry is None or not entry.told:
            yield f"{where}: nothing is said for: {now.english}"
        elif entry.doubtful:
            yield f"{where}: said by somebody who was not sure: {now.english}"
        elif not fits(entry):
            holes = ", ".join(f"{{{hole}}}" for hole in Sentence.of(now.english).holes) or "none"
            yield f"{where}: other holes than {holes}: {entry.told}"
    yield from (f"gone from the program: {english}" for english in told if english not in known)
    yield from _misleading(told)


def _misleading(told: Mapping[str, Entry]) -> Iterator[str]:
    """Words that are typed and told alike, so that nobody could say which is meant."""
    alike: dict[str, list[str]] = {}
    for entry in told.values():
        if entry.told and not {TYPED, COMMAND}.isdisjoint(entry.notes):
            alike.setdefault(plain_words(entry.told), []).append(entry.english)
    for word, meant in alike.items():
        if len(meant) > 1:
            yield f'"{word}", typed, could be any of: {", ".join(meant)}'


def _merged(english: str, found: Iterable[Found]) -> Entry:
    found = tuple(found)
    notes = {each.note for each in found}
    only_heard = notes == {HEARD}
    shown = [note for note in (COMMAND, TYPED) if note in notes]
    return Entry(
        english,
        places=tuple(dict.fromkeys(each.place for each in found)),
        notes=(HEARD,) if only_heard else tuple(shown),
    )
