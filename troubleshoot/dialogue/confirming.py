"""Whether a word that confirms a protecting step says enough, and what is wanted where not."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.by_word import AnOrder, NotAnAnswer, letters, one_word
from troubleshoot.dialogue.orders import is_reported
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.declared import CONFIRMED, STEPS

LEAST_LETTERS: Final = 4
"""A word that confirms a protecting step may be shortened to so many letters, and no further.

A report in -ed may not be: without its ending it is the order to do it.
"""


def says_enough(test: Test, typed: str, chosen: tuple[str, ...]) -> None:
    """Raise NotAnAnswer where a word that confirms is shortened too far, or to an order."""
    confirmed = CONFIRMED.get(test.id, next(iter(test.healthy), "") if test.kind == "step" else "")
    if confirmed not in chosen:
        return
    outcome = next(o for o in test.outcomes if o.id == confirmed)
    own = {one_word(word) for word in (confirmed, outcome.spoken, *outcome.words)}
    if one_word(typed) in own:
        return
    for part in typed.split(",") if test.choose == "several" else (typed,):
        said = one_word(part)
        if said in own or not confirmed.startswith(said):
            continue
        if len(letters(said)) < min(LEAST_LETTERS, len(letters(confirmed))):
            raise NotAnAnswer(
                f"Type {wanted(test, confirmed)}; fewer letters confirm nothing here."
            )
        if is_reported(confirmed):
            raise AnOrder(whether_meant(test.spoken(confirmed)))


def whether_meant(answer: str) -> str:
    """What is said where something like an answer was typed that does not count as one."""
    return f'Is "{answer}" meant? Then type it so.'


def wanted(test: Test, confirmed: str) -> str:
    """What has to be typed to confirm a step."""
    step = STEPS.get(test.id)
    alone = test.reads and step is not None and not step.number_says_part
    number = ", or the number on the meter," if alone else ""
    return f'"{test.spoken(confirmed)}"{number} when it is so'
