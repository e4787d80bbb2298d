"""What is wrong with a rule file: one sentence with a place, and the errors that carry them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from troubleshoot.outside.refusal import in_a_line

Level = Literal["error", "notice"]


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault in a rule file. `line` and `column` count from 1; `check` is the check's id.

    An error must be mended; a notice says what the program will make of the text. `about`: the name
    that nothing defines, by which problems of one cause know each other.
    """

    path: str
    line: int
    column: int
    what: str
    instead: str
    check: str
    level: Level = "error"
    about: str = ""

    def __str__(self) -> str:
        return f"{self.place}: {self.what}; {self.instead}"

    @property
    def place(self) -> str:
        """Path, line and column, in a line whatever the file is called."""
        return f"{in_a_line(self.path)}:{self.line}:{self.column}"


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
    near = near or _of_its_words(word.casefold(), words)
    if near:
        return f"did you mean {words[near[0]]}"
    if not words:
        return "none is defined yet"
    shown = ", ".join(list(words.values())[:12])
    return f"write one of: {shown}" + (", ..." if len(words) > 12 else "")


def _of_its_words(word: str, known: Iterable[str]) -> list[str]:
    """The known word that has all the words of this one, in another order or with others between.

    None where it is a single word, or where several have them.
    """
    parts = {part.rstrip("s") for part in word.split("-")}
    having = [each for each in known if parts <= {part.rstrip("s") for part in each.split("-")}]
    return having if len(parts) > 1 and len(having) == 1 else []
