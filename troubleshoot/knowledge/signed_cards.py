"""Fault cards that say something else than what was signed.

The hash is of what a card says, not of its layout, and of nothing that says how far it is trusted.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Final

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.packs_in_use import LETTERS

OF_TRUST: Final = ("status", "because", "signed")
"""Keys of a card that say how far it is trusted."""


def digest_of_card(card: Mapping[str, Any]) -> str:
    """The hash of what a card says, from its plain data."""
    told = {key: value for key, value in card.items() if key not in OF_TRUST}
    return hashlib.sha256(json.dumps(told, sort_keys=True).encode()).hexdigest()[:LETTERS]


def changed_since_signed(files: Iterable[RuleFile]) -> Iterator[str]:
    """The ids of signed cards that are not as they were signed."""
    for file in files:
        signed = file.data.get("signed") if file.kind == "fault" else None
        if signed is not None and signed["card"] != digest_of_card(file.data):
            yield file.data["fault"]
