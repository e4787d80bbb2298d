"""What the register knows of a unit: told to whoever names it, and held against what they see."""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.facts_said import as_typed, in_words
from troubleshoot.visit.events import FromRegister, InstrumentsListed


def tell_on_record(shelf: Shelf, voice: Voice, book: VisitBook, unit: str) -> None:
    """Tell what is on record of the unit, and take of it what a record is trusted with."""
    found = shelf.on_record(unit)
    voice.say_all(found.says)
    if found.instruments != book.state.meters.listed:
        book.add(InstrumentsListed(found.instruments))
    record = found.record
    if record == book.state.on_record:
        return
    book.add(FromRegister(record.trusted, record.afresh))
    if record.trusted:
        voice.say(f"On record, and not asked: {_names(book.knowledge, record.trusted)}.")
    if record.afresh:
        names = _names(book.knowledge, record.afresh)
        voice.say(f"Looked at afresh, since safety hangs on it: {names}.")


def tell_if_other(book: VisitBook, voice: Voice, name: str) -> None:
    """Say so where a fact or plate value that was looked at afresh is another than on record."""
    value = book.state.on_record.afresh.get(name)
    if value is None or name not in book.state.unit_data:
        return
    before = read_unit(book.knowledge, book.state.on_record.afresh)
    now = read_unit(book.knowledge, book.state.unit_data)
    fact, counts = book.knowledge.facts.get(name), dict(now.layout.counts)
    if fact is None:
        is_other = any(before.plate.get(key, of) != of for key, of in now.plate.items())
    elif fact.counts:
        is_other = dict(before.layout.counts)[fact.counts] != counts[fact.counts]
    else:
        is_other = before.facts[name] != now.facts[name]
    if is_other:
        said = in_words(book.knowledge, name, as_typed(value))
        voice.say(f"On record it is another ({said}): see which is right, and put that right.")


def _names(knowledge: Knowledge, names: Iterable[str]) -> str:
    return ", ".join(map(knowledge.spoken, names))
