"""Which of several hazards is read first: the graver signal word, then the STOP that stops more.

Of those that are as grave, whichever comes first in the rules: they stand there by kind
(`Knowledge.hazards`), so that the order of hazards taken from there is total.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.knowledge.vocabulary import SIGNALS, STOP_SCOPES

_SCOPES: Final = (*STOP_SCOPES, None)


def gravest_first(hazards: Iterable[Hazard]) -> tuple[Hazard, ...]:
    """By signal word, then by how much the STOP stops; else in the order given."""
    return tuple(sorted(hazards, key=_gravity))


def _gravity(hazard: Hazard) -> tuple[int, int]:
    scope = None if hazard.stop is None else hazard.stop.scope
    return SIGNALS.index(hazard.signal), _SCOPES.index(scope)
