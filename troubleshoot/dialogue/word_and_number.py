"""A reading with the word for it: hot, 170. The number is taken where the word says the same."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.by_word import NearlyAnAnswer, by_word
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit

_WORD: Final = r"(?P<word>[a-z][a-z -]*?)"
_NUMBER: Final = r"(?P<number>-?\.?\d[^,;]*)"
_FORMS: Final = (
    re.compile(rf"{_WORD}[\s,;:]+{_NUMBER}", re.IGNORECASE),
    re.compile(rf"{_NUMBER}[,;:]\s*{_WORD}", re.IGNORECASE),
)


def number_beside_word(
    knowledge: Knowledge, test: Test, typed: str, outcomes: tuple[str, ...]
) -> str:
    """The number of such a reading; empty where it is none.

    Raises NearlyAnAnswer where the word and the number say different things.
    """
    for form in _FORMS:
        found = form.fullmatch(typed.strip().rstrip(" .!"))
        named = by_word(test, found["word"], outcomes, several=False) if found else ()
        if found is None or not named:
            continue
        number = found["number"]
        try:
            read_text(test, number, knowledge)
            answer, values = Answer(test.id, text=number), Values(knowledge, Unit(), {})
            seen = outcomes_of(knowledge, answer, None, values)
        except NotUnderstood:
            continue
        if seen and not {*named} <= {*seen}:
            said = f'"{test.spoken(named[0])}" and {number} do not say the same'
            raise NearlyAnAnswer(f"{said}. Type the number alone, or the word alone.")
        return number
    return ""
