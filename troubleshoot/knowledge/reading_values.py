"""Single values against their shapes: texts, ids, numbers, words of a closed list.

Each method returns the plain value, or None after it has told a problem.
"""

from __future__ import annotations

import re
from typing import Any, Final

from troubleshoot.knowledge.nodes import Located, LocatedList, LocatedValue, plain
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Exactly,
    Name,
    NewId,
    Number,
    Percent,
    Text,
    Truth,
    Word,
)
from troubleshoot.outside.numbers import whole_number

ID: Final = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
WORD: Final = re.compile(r"[A-Za-z0-9.]+(?:-[A-Za-z0-9.]+)*")
LONGEST_ID: Final = 80
_LONGEST_NAME: Final = 200


class ValueReader:
    """Reads single values of one file; `called` is how a message speaks of the place."""

    def __init__(self, path: str) -> None:
        self.problems: list[Problem] = []
        self._path = path

    def refuse(self, node: Located, what: str, instead: str) -> None:
        place = (self._path, node.line, node.column)
        self.problems.append(Problem(*place, what, instead, "form"))

    def _words(self, node: Located, called: str, wanted: str) -> str | None:
        """The text of a value with its white space evened out, or None after a problem."""
        if isinstance(node, LocatedValue):
            if isinstance(node.value, str):
                text = " ".join(node.value.split())
                if text:
                    return text
                self.refuse(node, f"{called} is empty", f"write {wanted}")
                return None
            if isinstance(node.value, bool | int | float):
                shown = str(node.value).lower()
                self.refuse(node, f"{called} must be {wanted}, not {shown}", "put it in quotes")
                return None
            self.refuse(node, f"{called} has no value", f"write {wanted}, or delete the key")
            return None
        kind = "a list" if isinstance(node, LocatedList) else "a mapping"
        self.refuse(node, f"{called} must be {wanted}, not {kind}", f"write {wanted}")
        return None

    def text(self, shape: Text, node: Located, called: str) -> str | None:
        text = self._words(node, called, "a text")
        if text is not None and len(text) > shape.longest:
            what = f"{called} has {len(text)} characters"
            self.refuse(node, what, f"keep it under {shape.longest}")
        return text

    def new_id(self, shape: NewId, node: Located, called: str) -> str | None:
        text = self._words(node, called, "an id")
        if text is not None and (not ID.fullmatch(text) or len(text) > LONGEST_ID):
            instead = "write small letters and digits, words joined by hyphens"
            self.refuse(node, f"{called} {text!r} is not well formed", instead)
        return text

    def name(self, shape: Name, node: Located, called: str) -> str | None:
        article = "an" if shape.of.startswith(("a", "e", "i", "o")) else "a"
        text = self._words(node, called, f"the name of {article} {shape.of}")
        if text is not None and len(text) > _LONGEST_NAME:
            self.refuse(node, f"{called} has {len(text)} characters", "write an id")
        return text

    def word(self, shape: Word, node: Located, called: str) -> str | None:
        text = self._words(node, called, "a word")
        if text is not None and (not WORD.fullmatch(text) or len(text) > LONGEST_ID):
            self.refuse(node, f"{called} {text!r} is not one word", "join words by hyphens")
        return text

    def choice(self, shape: Choice, node: Located, called: str) -> str | None:
        text = self._words(node, called, "one of " + ", ".join(shape.options))
        if text is not None and text not in (*shape.options, *shape.before):
            self.refuse(node, f"{called} cannot be {text}", did_you_mean(text, shape.options))
        return text

    def number(self, shape: Number, node: Located, called: str) -> float | int | None:
        value = node.value if isinstance(node, LocatedValue) else None
        if isinstance(value, bool) or not isinstance(value, int | float):
            self.refuse(node, f"{called} must be a number", f"write {_range(shape)}")
            return None
        below = shape.least is not None and value < shape.least
        above = shape.most is not None and value > shape.most
        if below or above or (shape.whole and not isinstance(value, int)):
            self.refuse(node, f"{called} cannot be {value}", f"write {_range(shape)}")
        return value

    def exactly(self, shape: Exactly, node: Located, called: str) -> int:
        value = node.value if isinstance(node, LocatedValue) else None
        if isinstance(value, bool) or value != shape.number:
            instead = f"this program reads {called}: {shape.number}"
            self.refuse(node, f"another {called} than this program knows", instead)
        return shape.number

    def percent(self, shape: Percent, node: Located, called: str) -> str | None:
        """The share as it is written everywhere, with a blank before the sign."""
        text = str(node.value) if isinstance(node, LocatedValue) else ""
        number = whole_number(text.removesuffix("%").rstrip()) if text.endswith("%") else None
        if number is None or not shape.least <= number <= shape.most:
            instead = f"write a share from {shape.least} % to {shape.most} %"
            self.refuse(node, f"{called} cannot be {text or 'that'}", instead)
            return None
        return f"{number} %"

    def truth(self, shape: Truth, node: Located, called: str) -> bool | None:
        if isinstance(node, LocatedValue) and isinstance(node.value, bool):
            return node.value
        self.refuse(node, f"{called} must be true or false", "write true or false")
        return None

    def anything(self, shape: Anything, node: Located, called: str) -> Any:
        if isinstance(node, LocatedValue) and node.value is None:
            self.refuse(node, f"{called} has no value", "write it, or delete the key")
        return _evened(plain(node))


def _evened(value: Any) -> Any:
    """Plain data with runs of white space in its texts as one space."""
    if isinstance(value, str):
        return " ".join(value.split())
    if isinstance(value, list):
        return [_evened(item) for item in value]
    if isinstance(value, dict):
        return {_evened(key): _evened(item) for key, item in value.items()}
    return value


def _range(shape: Number) -> str:
    kind = "a whole number" if shape.whole else "a number"
    if shape.least is None and shape.most is None:
        return kind
    return f"{kind} from {shape.least:g} to {shape.most:g}"
