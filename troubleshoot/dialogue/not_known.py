"""The words by which people say that they do not know."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.text import plain_words

DO_NOT_KNOW: Final = frozenset(
    {"dont know", "do not know", "dunno", "dont no", "idk", "not sure", "no idea", "no clue"}
    | {"cant tell", "cannot tell", "cant say", "cannot say", "unknown", "not known", "who knows"}
)
"""Where a fact is asked for they leave it open, as Enter does."""

_BEFORE: Final = re.compile(r"^(?:(?:i|we|nobody|sorry|just|really|honestly) )+")


def is_not_known(typed: str) -> bool:
    """Whether somebody says that it is not known: dunno, I don't know, no idea."""
    said = plain_words(re.sub(r"[^\w ]", "", typed.replace("-", " ")))
    return said in DO_NOT_KNOW or _BEFORE.sub("", said) in DO_NOT_KNOW
