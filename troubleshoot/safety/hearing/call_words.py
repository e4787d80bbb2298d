"""What callers say of a unit that runs badly, and that tells of no danger: not cooling enough."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.safety.hearing.mending import RULE_BASES
from troubleshoot.safety.hearing.vocabulary import stems
from troubleshoot.safety.hearing.words import Words, phrase_words, span

_IN_THE_AIR: Final = stems("smell odor stinks alarm")
"""A complaint one phrase of which has one of these is of the air, in all its phrases."""

_TELLING_MORE: Final = stems(
    "all bad burner carbon co2 everybody everywhere fire flame gas help hiss hissing i ignite "
    "ignition light lights me people pilot refrigerant sick smoke spark strong us we"
)
"""A phrase with one of these may tell of fuel or of people as well: will not light, gas."""

_LEAKING: Final = stems("leak")
_NO_FUEL: Final = stems("water rain warm cold weak")
"""What leaks or is blown beside these is water, or the air of the unit."""

_TO_BREATHE: Final = stems("air any fresh hardly much no not outdoor")
"""Of nothing but these: no air is what whoever chokes says, too."""

_IT_IS: Final = stems("it is its")
"""Before a complaint: the unit."""

_LEAST: Final = 2
"""Words of a phrase: one by itself (hum, bang, sticky) says too little."""


def besides_the_call(knowledge: Knowledge, clause: Words) -> Words:
    """What a clause says beside a harmless complaint in the rules' own words; all, where none."""
    found = [at for phrase in _phrases(knowledge) if (at := span(clause, phrase)) is not None]
    if not found:
        return clause
    start, end = max(found, key=lambda at: at[1] - at[0])
    before = clause[:start]
    return (*(() if _IT_IS.issuperset(before) else before), *clause[end:])


@lru_cache(maxsize=RULE_BASES)
def _phrases(knowledge: Knowledge) -> tuple[Words, ...]:
    """Every phrase, and the name, of a complaint that speaks of no danger."""
    stopping = {t.complaint for h in knowledge.hazards.values() for t in h.triggers if h.stop}
    said = (
        phrase
        for complaint in knowledge.complaints.values()
        if complaint.id not in stopping
        for phrase in _of_a_unit(complaint)
    )
    return tuple(dict.fromkeys(said))


def _of_a_unit(complaint: Complaint) -> tuple[Words, ...]:
    said = [phrase_words(words) for words in (complaint.id, *complaint.words)]
    if any(not _IN_THE_AIR.isdisjoint(phrase) for phrase in said):
        return ()
    return tuple(filter(_is_harmless, said))


def _is_harmless(phrase: Words) -> bool:
    """Whether a phrase tells how a unit runs, and can be said of nothing in the air."""
    if (
        len(phrase) < _LEAST
        or not _TELLING_MORE.isdisjoint(phrase)
        or _TO_BREATHE.issuperset(phrase)
    ):
        return False
    return _LEAKING.isdisjoint(phrase) or not _NO_FUEL.isdisjoint(phrase)
