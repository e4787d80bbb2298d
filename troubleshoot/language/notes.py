"""What a translator is told beside a text."""

from __future__ import annotations

from typing import Final

TYPED: Final = "typed: people type this word as it is shown; choose one that no other text has"
COMMAND: Final = "typed: a command, alone or before other words"
JOINED: Final = ("first", "more")
"""The holes on both sides of what joins the texts of a list: `{first} and {more}`."""
AS_IT_IS: Final = frozenset({"id", "ids", "key", "keys", "file", "folder", "path"})
"""Holes in which nothing is looked up: what stands there is typed into a shell or a file."""
HEARD: Final = "heard: never shown; what people say or type for it"
