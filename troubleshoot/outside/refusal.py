"""The one way in which what comes from outside is turned away: a sentence."""

from __future__ import annotations

import re


def in_a_line(name: str) -> str:
    """A name within a sentence: it breaks no line of it, as the name of a file may."""
    return re.sub(r"[^\S ]", lambda match: f"<U+{ord(match[0]):04X}>", name)


class NotUsable(ValueError):
    """What came from outside cannot be used. Says where it came from, what is wrong, what would do.

    `where` is a path, or the name of what was typed; it may itself hold anything.
    """

    def __init__(self, where: str, what: str, instead: str) -> None:
        super().__init__(f"{in_a_line(where)}: {what}; {instead}")
        self.where = where
        self.what = what
        self.instead = instead
