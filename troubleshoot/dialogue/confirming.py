"""Whether a word that confirms a protecting step says enough, and what is wanted where not."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer, letters, one_word
from troubleshoot.dialogue.orders import is_reported
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.measuring import expected_for
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS

LEAST_LETTERS: Final = 4
"""A word that confirms what Enter confirms too may be shortened to so many letters, and no further.

A report in -ed may not be: without its ending it is the order to do it. Nor may a word that
protects a life: ther, clea and prov are half typed.
"""


def says_enough(test: Test, typed: str, chosen: tuple[str, ...]) -> None:
    """Raise NotAnAnswer where a word that confirms is shortened: too far, or where it protects."""
    for confirmed in _wanting_their_word(test):
        if confirmed in chosen:
            _is_whole(test, typed, confirmed)


def _is_whole(test: Test, typed: str, confirmed: str) -> None:
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
        if is_reported(confirmed) or test.id not in ENTER_CONFIRMS:
            raise NearlyAnAnswer(whether_meant(test.spoken(confirmed)))


def by_its_word(test: Test, answer: str) -> bool:
    """Whether an answer confirms what protects somebody, and so is typed without an error."""
    if test.id in ENTER_CONFIRMS:
        return False
    wanting = [o for o in test.outcomes if o.id in _wanting_their_word(test)]
    return any(answer in (outcome.spoken, *outcome.words) for outcome in wanting)


def confirms_a_step(knowledge: Knowledge, typed: str) -> bool:
    """Whether it is a word by which some safety step is confirmed."""
    said, steps = one_word(typed), (knowledge.tests[step] for step in CONFIRMED)
    return any(
        said in map(one_word, (outcome.spoken, *outcome.words))
        for test in steps
        for outcome in test.outcomes
        if outcome.id == CONFIRMED[test.id]
    )


def _confirmed(test: Test) -> str:
    """The outcome that confirms a step or an all-clear; empty of any other test."""
    return CONFIRMED.get(test.id, next(iter(test.healthy), "") if test.kind == "step" else "")


def _wanting_their_word(test: Test) -> tuple[str, ...]:
    """The outcomes that take a danger away, and so want their word whole."""
    step = STEPS.get(test.id)
    confirmed = _confirmed(test)
    return (*((confirmed,) if confirmed else ()), *(step.also_by_word if step else ()))


_OF_A_LIST: Final = " +.,:;#()"
"""What people set about the number of a line: 1. or 1) or #1."""


def not_of_the_list(knowledge: Knowledge, test: Test, typed: str) -> None:
    """Raise NearlyAnAnswer for a bare number that may be the reading, or one of the list."""
    number = choice(typed.strip(_OF_A_LIST), len(test.outcomes))
    if number is not None:
        read = f"{number} {unit(expected_for(test, knowledge)[0].unit).spoken}"
        word = test.outcomes[number - 1].spoken
        raise NearlyAnAnswer(
            f'Is "{read}" on the meter meant, or "{word}" in the list? Then type it so.'
        )


def whether_meant(answer: str) -> str:
    """What is said where something like an answer was typed that does not count as one."""
    return f'Is "{answer}" meant? Then type it so.'


def wanted(test: Test, confirmed: str) -> str:
    """What has to be typed to confirm a step."""
    step = STEPS.get(test.id)
    alone = test.reads and step is not None and not step.number_says_part
    number = ", or the number on the meter," if alone else ""
    return f'"{test.spoken(confirmed)}"{number} when it is so'
