"""What several kinds of entries share: signatures, what equipment has to be, how an id is said."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated, Protocol

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written

if TYPE_CHECKING:
    from troubleshoot.knowledge.shapes import OneOrMore, Text, Word


@written("signature")
@frozen_open
class Signature:
    """Somebody answers for what a person no longer sees. `drops`: hazards, needs or keys."""

    drops: Annotated[tuple[str, ...], OneOrMore(Word(), alone=True), "what a person no longer sees"]
    by: Annotated[str, Text(longest=60), "who answers for it: a role, or initials"]
    on: Annotated[str, Text(longest=10), "the day, as 2026-11-29"]
    why: Annotated[str, "the reason, in several words"]


FactsNeeded = Mapping[str, tuple[str, ...]]
"""Equipment facts that must hold: fact -> the words any one of which will do."""


class Said(Protocol):
    """An entry that people are shown: `spoken` is what `words.yaml` says for its id."""

    @property
    def id(self) -> str: ...

    @property
    def spoken(self) -> str: ...


def said_by_its_id(entry: Said) -> None:
    """Let an entry of which nobody has said how it is said stand as it is written."""
    if not entry.spoken:
        object.__setattr__(entry, "spoken", entry.id)
