"""What several kinds of entries share: signatures, and what equipment has to be."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated

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
