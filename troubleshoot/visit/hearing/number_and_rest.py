"""A number that says only part of a safety step, and the words beside it that say the rest."""

from __future__ import annotations

import re
from string import digits
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.reasoning.readings.measuring import reads
from troubleshoot.safety.declared import STEPS

_BESIDE: Final = frozenset({"all", "and", "at", "but", "else", "is", "otherwise", "rest", "the"})
"""Words that only join the two: 8 ft, safe otherwise."""
_OF_WHAT: Final = re.compile(
    r"\b(?:away )?(?:from|to) (?:the )?(?:nearest |roof )?edge\b"
    r"|\b(?:(?:pulled|drawn|drew|got)(?: it)? )?down to\b|\b(?:rose|climbed|came up) to\b",
    re.IGNORECASE,
)
"""What only says of what the number is: 15 ft from the edge, down to 350 microns."""


def apart(knowledge: Knowledge, test: Test, typed: str) -> tuple[str, str]:
    """The number with its unit, and the words: "15 ft, safe" -> "15 ft" and "safe".

    The number may come last. Without one that the test reads it is all words.
    """
    parts = _OF_WHAT.sub(" ", " ".join(typed.replace(",", " ").split())).split()
    for end in range(len(parts), 0, -1):
        for number, rest in ((parts[:end], parts[end:]), (parts[-end:], parts[:-end])):
            if reads(test, " ".join(number), knowledge) and not _has_another_unit(number, rest):
                return " ".join(number), _said(rest)
    return "", typed


def _said(rest: list[str]) -> str:
    """What is said beside the number; all as it stands where the words that join turn it round."""
    if "all but" in plain_words(" ".join(rest)):
        return " ".join(rest)
    return " ".join(word for word in rest if word.lower() not in _BESIDE)


def _has_another_unit(number: list[str], rest: list[str]) -> bool:
    """Whether a bare number is followed by a unit that the test does not read: 15 A."""
    return number[-1][-1] in digits and rest != [] and is_unit(rest[0])


def number_and_word(knowledge: Knowledge, test: Test, typed: str) -> tuple[str, str] | None:
    """The number, and the outcome named beside it, of a step of which a number says only part.

    None where it is no such step, or the words beside the number are no outcome.
    """
    step = STEPS.get(test.id)
    if step is None or not step.number_says_part:
        return None
    number, rest = apart(knowledge, test, typed)
    said = plain_words(rest)
    named = [o.id for o in test.outcomes if said in map(plain_words, (o.id, o.spoken, *o.words))]
    return (number, named[0]) if number and len(named) == 1 else None


def rest_wanted(test: Test, number: str, read: tuple[str, ...], confirmed: str) -> str:
    """What is still to be said beside the number."""
    words = " or ".join(test.spoken(outcome) for outcome in read if outcome != confirmed)
    enough = "far enough" if STEPS[test.id].less_is_worse else "low enough"
    told = f"{number}: {words}" if words else f"{number} is {enough}"
    return (
        f"{told}. Of all else the number says nothing: type "
        f'"{number} {confirmed}" when the rest is well, or the number and what is not.'
    )
