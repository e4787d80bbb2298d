"""What the plate says beside a reading: cap reads 38 rated 45, 4.1 on a 5, blower 6.1 fla 7.2."""

from __future__ import annotations

import re
from string import digits
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Knowledge, PlateValue, Test
from troubleshoot.quantities.units import same_kind
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.events import Noted
from troubleshoot.visit.hearing.short_words import NUMBER

_VALUE: Final = re.compile(rf"{NUMBER}(?: ?(?!to\b)[a-z#%]+)?")


def take_plate(book: VisitBook, voice: Voice, test: Test, at: Place | None, said: str) -> None:
    """Keep what the plate says of a test, where nobody has told it yet; else as a note.

    What was told before stays: the plate is put right by name.
    """
    told = _VALUE.findall(said)
    plates = _plates(book.knowledge, test)
    if not told or len(told) != len(plates):
        book.add(Noted(f"of the data plate, beside {test.name}: {said}"))
        voice.say(f'Kept as a note, of the data plate: "{said}".')
        return
    for plate, value in zip(plates, told, strict=True):
        _keep(book, voice, plate, at, value)


def _keep(book: VisitBook, voice: Voice, plate: PlateValue, at: Place | None, value: str) -> None:
    name = book.knowledge.spoken(plate.id)
    known = book.state.unit.plate_value(plate.id, at)
    if known is not None:
        voice.say(
            f"The data plate is told already, {name}: {known:g} {unit_of(plate.unit).spoken}."
        )
        return
    own = {str(at): value} if plate.per is not None and at is not None else value
    problem = book.try_fact(plate.id, own)
    said = f"{value} {unit_of(plate.unit).spoken}" if value[-1:] in digits else value
    voice.say(problem or f"Taken from the data plate: {name} {said}.")


def _plates(knowledge: Knowledge, test: Test) -> list[PlateValue]:
    """The values of the plate that a test's number is judged by, in the order of its limits."""
    unit = knowledge.quantities[test.reads[0].quantity].unit
    bounds = [b for o in test.outcomes for line in o.limits for b in line.bounds]
    found = dict.fromkeys(bound.relative_to for bound in bounds if bound.relative_to)
    plates = (knowledge.plate_values.get(name) for name in found)
    return [
        plate
        for plate in plates
        if plate is not None and plate.origin == "nameplate" and same_kind(plate.unit, unit)
    ]
