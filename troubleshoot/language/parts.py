"""A line cut at its marks: stops, brackets, quotes, numbers, and what joins the texts of a list."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen

MARKS: Final = (
    r"^(?:\d+[.:]?|[-+*.#]+)\s+"  # the number or the sign before a choice
    r"|(?<=\d)\s+(?=\w)|\s+(?=\d)|\s+(?=>$)|(?<=[.;:,!?])\s+|\s+(?:-|--|/)\s+|\s{2,}"
    r"|[()\[\]\"]|(?<!\w)'|'(?!\w)|(?<=[)\]\"'])\s+|\s+(?=[(\[\"'])"
)


@frozen
class Parts:
    """A text cut at its marks: where each part begins and ends."""

    text: str
    starts: tuple[int, ...]
    ends: tuple[int, ...]

    @classmethod
    def of(cls, text: str, between: re.Pattern[str]) -> Parts:
        marks = [match.span() for match in between.finditer(text)]
        starts, ends = (0, *(end for _, end in marks)), (*(start for start, _ in marks), len(text))
        return cls(text, starts, ends)

    @property
    def many(self) -> int:
        return len(self.starts)

    def text_of(self, first: int, last: int) -> str:
        return self.text[self.starts[first] : self.ends[last]]

    def between(self, part: int) -> str:
        """The mark behind a part."""
        return self.text[self.ends[part] : self.starts[part + 1]] if part + 1 < self.many else ""
