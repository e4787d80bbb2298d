"""What is wrong with a rule file: one sentence with a place, and the errors that carry them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Level = Literal["error", "notice"]


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault in a rule file. `line` and `column` count from 1; `check` is the check's id.

    An error must be mended; a notice says what the program will make of the text.
    """

    path: str
    line: int
    column: int
    what: str
    instead: str
    check: str
    level: Level = "error"

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}: {self.what}; {self.instead}"


class RuleFileError(ValueError):
    """Rule files cannot be used. `problems` holds every reason, in file order."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(sorted(problems))
        super().__init__("\n".join(str(problem) for problem in self.problems))


class RulesInvalid(RuleFileError):
    """The rule base as a whole does not hold together."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return 'did you mean X' where a known word is near, else a list of what would do.

    Small and capital letters count as the same. Deterministic: known words are compared in
    alphabetical order, whatever order they come in.
    """
    from difflib import get_close_matches

    words = {each.casefold(): each for each in sorted(set(known))}
    near = get_close_matches(word.casefold(), words, n=1, cutoff=0.6)
    if near:
        return f"did you mean {words[near[0]]}"
    if not words:
        return "none is defined yet"
    shown = ", ".join(list(words.values())[:12])
    return f"write one of: {shown}" + (", ..." if len(words) > 12 else "")
