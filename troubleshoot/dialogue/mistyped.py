"""An answer with one typing error in a long word: what is meant, where it can mean nothing else.

A letter is missing, one too many, or two are swapped. A letter changed for another makes other
words of it (locked, lacked) and is asked about. So is whatever could be the opposite of a word that
protects a life: one error from it ("ulocked"), with another answer at its end ("ischarged"), or a
word as it stands ("blocked"). An order is no report with an error in it (prove, proved).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from troubleshoot.dialogue.orders import orders
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.mending import ordinary_words
from troubleshoot.safety.hearing.typing_errors import one_error

LEAST_LETTERS: Final = 6
"""Of a word in which one typing error is seen through."""
DENYING: Final = ("ab", "de", "dis", "im", "in", "mis", "no", "non", "not", "re", "un")
"""Before a word they may make its opposite of it."""


def meant_by(knowledge: Knowledge, test: Test, typed: str, outcomes: Iterable[str]) -> str | None:
    """The answer that was meant; None where that cannot be told, or nothing is mistyped."""
    said = plain_words(typed).split()
    offered = {*outcomes}
    near = {
        outcome.id: answer
        for outcome in test.outcomes
        if outcome.id in offered
        for answer in (*outcome.words, outcome.spoken)
        if _wrong_word(said, answer)
    }
    if len(near) != 1:
        return None
    ((meant, answer),) = near.items()
    others = [w for o in test.outcomes if o.id != meant for w in _words(o.spoken, *o.words)]
    wrong = _wrong_word(said, answer)
    return None if _may_be_otherwise(knowledge, wrong, answer, others) else answer


def _words(*answers: str) -> list[str]:
    return [word for answer in answers for word in plain_words(answer).split()]


def _wrong_word(said: list[str], answer: str) -> str:
    """The one word that is mistyped in what is this answer but for it; empty where it is not."""
    meant = _words(answer)
    if len(said) != len(meant):
        return ""
    wrong = [(typed, word) for typed, word in zip(said, meant, strict=True) if typed != word]
    return wrong[0][0] if len(wrong) == 1 and _slipped(*wrong[0]) else ""


def _slipped(typed: str, word: str) -> bool:
    if len(word) < LEAST_LETTERS or typed[0] != word[0] or typed not in one_error(word):
        return False
    if typed in orders(word):
        return False
    return len(typed) != len(word) or sorted(typed) == sorted(word)


def _may_be_otherwise(knowledge: Knowledge, wrong: str, answer: str, others: list[str]) -> bool:
    """Whether a mistyped word may be a word of its own, an opposite, or another answer."""
    opposites = (before + word for before in DENYING for word in _words(answer))
    return (
        wrong in ordinary_words(knowledge)
        or any(wrong in one_error(opposite) for opposite in opposites)
        or any(wrong.endswith(word) for word in others)
    )
