"""A number that says only part of a safety step, and the words beside it that say the rest."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text

_BESIDE: Final = frozenset({"all", "and", "but", "else", "is", "otherwise", "rest", "the"})
"""Words that only join the two: 8 ft, safe otherwise."""


def apart(knowledge: Knowledge, test: Test, typed: str) -> tuple[str, str]:
    """The number with its unit, and the words: "15 ft, safe" -> "15 ft" and "safe".

    The number may come last. Without one that the test reads it is all words.
    """
    parts = typed.replace(",", " ").split()
    for end in range(len(parts), 0, -1):
        for number, rest in ((parts[:end], parts[end:]), (parts[-end:], parts[:-end])):
            if _reads(knowledge, test, " ".join(number)):
                said = (word for word in rest if word.lower() not in _BESIDE)
                return " ".join(number), " ".join(said)
    return "", typed


def rest_wanted(test: Test, number: str, read: tuple[str, ...], confirmed: str) -> str:
    """What is still to be said beside the number."""
    words = " or ".join(test.spoken(outcome) for outcome in read if outcome != confirmed)
    told = f"{number}: {words}" if words else f"{number} is far enough"
    return (
        f"{told}. Of all else the number says nothing: type "
        f'"{number} {confirmed}" when the rest is well, or the number and what is not.'
    )


def _reads(knowledge: Knowledge, test: Test, text: str) -> bool:
    try:
        read_text(test, text, knowledge)
    except NotUnderstood:
        return False
    return True
