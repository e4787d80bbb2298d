"""A list of what the nameplate says, in which one word may be a danger elsewhere: gas, two fans."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.safety.hearing.dangers import used
from troubleshoot.safety.hearing.hinting_words import HINTING
from troubleshoot.safety.hearing.mending import mender_of
from troubleshoot.safety.hearing.vocabulary import LOOSE, NEUTRAL, stem
from troubleshoot.safety.hearing.words import clauses

_LEAVING: Final = frozenset(map(stem, ("evacuate", "leave", "leaving", "run", "running")))
"""What people do for a danger."""


def without_facts(knowledge: Knowledge, typed: str, heard: tuple[Hazard, ...], least: int) -> str:
    """A list without its pieces that are facts of a unit; whole where what is left goes with them.

    `heard`: what is heard in the list. `least`: how many pieces make a list of facts of it.
    """
    pieces = [piece for piece in typed.split(",") if piece.strip()]
    left = [piece for piece in pieces if not facts_said(knowledge, "", piece)]
    if len(pieces) - len(left) < least:
        return typed
    alarming = frozenset().union(*map(used, heard)) | HINTING | NEUTRAL | _LEAVING
    return (
        typed if any(_goes_with(knowledge, piece, alarming) for piece in left) else ",".join(left)
    )


def _goes_with(knowledge: Knowledge, piece: str, alarming: frozenset[str]) -> bool:
    """Whether a piece may tell of a danger that was named beside it: gas, everywhere."""
    words = {word for said in clauses(piece, mender_of(knowledge)) for word in said}
    return words <= LOOSE or not words.isdisjoint(alarming)
