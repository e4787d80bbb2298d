"""Readings told in words that lie within what a danger's own all-clear wants: 0 ppm CO in the room.

A number says what its words alone do not. Only a plain reading is let go, of which every word is
known: what was read, by what, where and when. Where anything beside it is no rest, nothing is.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.text import as_said, without_apostrophes
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.safety.hearing.other_numbers import without_other_numbers
from troubleshoot.safety.hearing.told_numbers import (
    in_unit_of,
    outcomes_shown,
    quantities_of,
    shows,
)
from troubleshoot.safety.hearing.words import raw_words

_READ: Final = frozenset(
    """co carbon monoxide gas natural propane lp lpg combustible refrigerant freon voltage volts
    explosive limit lel lfl flue stack

    monitor monitors meter meters multimeter detector sensor sniffer analyzer badge clip clipped
    pocket personal display screen level levels reading readings read reads shows show showing says
    gives measured measure got get have

    room rooms space spaces building store hall kitchen office shop house inside indoors outside
    supply return duct register registers grille vent diffuser air burner burners compartment
    wall ceiling corridor hallway lobby classroom basement attic near around next joint joints
    cabinet frame casing housing curb ground

    now right here there today still only just steady max peak everywhere all every each after
    before minute minutes running run runs off on lit firing heat fan blower unit with

    a an and at by for from i im in is it its me my of our that the their there this to up we
    """.split()  # noqa: SIM905
)
"""Words of a plain reading: none takes anything away from its number, and none adds to it."""
_SHOWS: Final = frozenset({"read", "reading", "reads", "says", "show", "showing", "shows"})
_WARNS: Final = frozenset({"alarm", "alarms"})
"""Also what reads a number, where it is told to do so; else it is what sounds."""
_UNREST: Final = re.compile(
    r"\b(?:alarming|beep\w*|chirp\w*|climb\w*|creep\w*|flash\w*|go(?:es|ing)? (?:off|up)|grow\w*|"
    r"higher|jump\w*|keeps?|max\w* out|pegged|ris(?:e|es|ing)|rose|sounds?|sounding|spik\w*|"
    r"swing\w*|then|until|was|went|were)\b"
)
"""Words for a number that does not stay, or is of another time."""
_DETECTOR: Final = re.compile(r"\bleak detector\b")
_PARTED: Final = re.compile(r"[,.;:!?()]+(?=\s|$)|\s[-/]+\s|\b(?:but|so|and)\b")
_LASTING: Final = re.compile(r"\b\d+ ?(?:min|mins|minutes?|h|hrs?|hours?|sec|seconds?)\b")
_NUMBER: Final = re.compile(
    r"(?<![\w.,<>~+-])(?P<number>\d+(?:\.\d+)?) ?(?P<unit>% ?(?:lel|lfl)?|[a-z]+)?(?![\w.,]*\d)"
)
_FIGURE: Final = re.compile(r"\d")
_TO_BE_ASSUMED: Final = re.compile(
    r"\b(?:reads|reading|shows|showing|says|is|at|of|co|monoxide)(?: only)?[ :]*$"
)
"""In front of a number without a unit they say what it is of: the CO monitor reads 2."""
_OF_VOLTS: Final = frozenset({"v", "vac", "volt", "volts"})
_UNITS: Final = _OF_VOLTS | {"ppm", "%", "% lel", "%lel", "% lfl", "%lfl", "lel", "percent"}


@frozen
class _Reading:
    """What was told as a plain reading: its numbers with their units, and what is told beside."""

    numbers: tuple[str, ...]
    rest: str


def beyond_limits(
    knowledge: Knowledge,
    hazards: tuple[Hazard, ...],
    said: str,
    heard: Callable[[str], Iterable[Hazard]],
) -> tuple[Hazard, ...]:
    """Those of the hazards heard in what was said which no plain reading shows to be none.

    `heard`: the hazards of any words, as these were heard.
    """
    if not hazards or _FIGURE.search(in_figures(as_said(said))) is None:
        return hazards
    told = _plain_reading(said)
    if told is None or any(heard(told.rest)):
        return hazards
    return tuple(
        hazard
        for hazard in hazards
        if not all(_is_sound(knowledge, hazard.id, number) for number in told.numbers)
    )


def _plain_reading(said: str) -> _Reading | None:
    """The plain reading in what was said, all its plain parts taken as one; None for none."""
    line = in_figures(without_other_numbers(without_apostrophes(as_said(said))))
    line = _DETECTOR.sub("detector", line)
    if _UNREST.search(line):
        return None
    parts = [part for part in _PARTED.split(line) if part.strip()]
    plain = [part for part in parts if _is_plain(part, line)]
    numbers = tuple(number for part in plain for number in _numbers(part))
    rest = ", ".join(part for part in parts if part not in plain)
    return _Reading(numbers, rest) if numbers and not _FIGURE.search(rest) else None


def _is_plain(part: str, line: str) -> bool:
    """Whether a part of a line tells a reading, or where and by what, and nothing else."""
    bare = _LASTING.sub(" ", part)
    words = {*raw_words(_NUMBER.sub(" ", bare))}
    known = _READ | (_WARNS if not _SHOWS.isdisjoint(raw_words(line)) else frozenset())
    figures = len(re.findall(r"\d+(?:\.\d+)?", bare))
    return words <= known and figures == len(tuple(_numbers(part)))


def _numbers(part: str) -> Iterator[str]:
    """Every number of a part with its unit; without one where it is said to be read."""
    line = _LASTING.sub(" ", part)
    for found in _NUMBER.finditer(line):
        unit = (found["unit"] or "").strip()
        if unit in _UNITS:
            yield f"{found['number']} {unit}"
        elif _TO_BE_ASSUMED.search(line[: found.start()]) and (not unit or unit in _READ):
            yield found["number"]


@lru_cache(maxsize=2_000)
def _is_sound(knowledge: Knowledge, name: str, number: str) -> bool:
    """Whether a number clears a hazard: its all-clear reads it sound, and nothing calls it up."""
    # here, since the first prompts come before all that reasons is imported
    from troubleshoot.quantities.typed import NotUnderstood
    from troubleshoot.reasoning.readings.measuring import read_text

    hazard = knowledge.hazards[name]
    clears = knowledge.tests.get(hazard.all_clear or "")
    if clears is None or not clears.reads:
        return False
    try:
        read_text(clears, in_unit_of(knowledge, clears, number), knowledge)
    except NotUnderstood:
        return False
    shown = {*outcomes_shown(knowledge, clears, number)}
    return shown <= {*clears.healthy} and not any(
        shows(knowledge, hazard, quantity, number) for quantity in quantities_of(knowledge, hazard)
    )
