"""A list of what the nameplate says, in which one word may be a danger elsewhere: gas, two fans."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.hedged import is_in_doubt, without_doubt
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.safety.hearing.call_words import besides_the_call
from troubleshoot.safety.hearing.dangers import used
from troubleshoot.safety.hearing.hinting_words import HINTING
from troubleshoot.safety.hearing.mending import mender_of
from troubleshoot.safety.hearing.vocabulary import LOOSE, NEUTRAL, stem
from troubleshoot.safety.hearing.words import clauses, raw_words

_LEAVING: Final = frozenset(map(stem, ("evacuate", "leave", "leaving", "run", "running")))
"""What people do for a danger."""
_RUNS: Final = "runs"
"""A unit does; people who are told of run."""


def without_facts(knowledge: Knowledge, typed: str, heard: tuple[Hazard, ...], least: int) -> str:
    """A list without its pieces that are facts of a unit; whole where what is left goes with them.

    `heard`: what is heard in the list. `least`: how many pieces make a list of facts of it.
    """
    pieces = [piece for piece in typed.split(",") if piece.strip()]
    left = [piece for piece in pieces if not _is_a_fact(knowledge, piece)]
    if len(pieces) - len(left) < least:
        return typed
    alarming = frozenset().union(*map(used, heard)) | HINTING | NEUTRAL | _LEAVING
    return (
        typed if any(_goes_with(knowledge, piece, alarming) for piece in left) else ",".join(left)
    )


def _is_a_fact(knowledge: Knowledge, piece: str) -> bool:
    """Whether a piece names a fact; in doubt in more than a word: gas, outside i think."""
    if facts_said(knowledge, "", piece):
        return True
    said = without_doubt(piece)
    return is_in_doubt(piece) and len(said.split()) > 1 and bool(facts_said(knowledge, "", said))


def _goes_with(knowledge: Knowledge, piece: str, alarming: frozenset[str]) -> bool:
    """Whether a piece may tell of a danger that was named beside it: gas, everywhere."""
    said = clauses(piece, mender_of(knowledge))
    beside = [besides_the_call(knowledge, clause) for clause in said]
    words = {word for clause in beside for word in clause}
    if beside == [*said] and words <= LOOSE:
        return True
    of_people = words - _LEAVING if _RUNS in raw_words(piece) else words
    return not of_people.isdisjoint(alarming)
