"""Numbers told in words that show a danger: judged by the findings that call their hazard up.

A net names the quantity that people speak of (`read:gas-inlet-pressure + inlet + gas`); how much
of it is a danger stands with the test that reads it, and nowhere else.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.outside.text import as_said
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.safety.hearing.other_numbers import without_other_numbers

_NUMBER: Final = re.compile(
    r"(?<![\w.,])(?<!\w-)-?(?:[0-9]+(?:,[0-9]+)*(?:\.[0-9]+)?|\.[0-9]+)(?![\w]*\d)"
)
_MINUS: Final = re.compile(r"\b(?:minus|negative) (?=[0-9.])")
_NO_READING: Final = re.compile(
    r"\b(?:should|shouldn'?t|supposed|ought|limit|maximum|max|rated|rating|name ?plate|data plate|"
    r"was|were|had been|yesterday|last|before|until|under|below|less than|if|not|never|opens at|"
    r"trips at|set (?:to|at)|up to)\b"
)
"""Beside a number they say that it may be none that is read now."""
_WORDS_OF_A_UNIT: Final = 3
"""Inches of vacuum."""
_IN_A_PLACE: Final = re.compile(r" ?in (?:a|here|his|my|our|that|the|there|this)\b")
"""Behind a number it says where that was read, and not that it is inches."""
_SHARE: Final = "share of explosive limit"
_A_SHARE: Final = re.compile(r" ?(?:%|percent|pct)$")
"""Of the explosive limit, where that was said in front of the number: lel 25 %."""
_AFTER_A_NUMBER: Final = frozenset({
    "air", "all", "and", "at", "but", "by", "firing", "here", "high", "idle", "idling", "is",
    "low", "now", "of", "off", "on", "or", "out", "right", "running", "so", "steady", "that", "the",
    "to", "when", "whenever", "while", "with",
})  # fmt: skip
"""What may stand behind a number without a unit that counts no other thing."""


def shows(knowledge: Knowledge, hazard: Hazard, quantity: str, said: str) -> bool:
    """Whether any number in what was said is so much of a quantity that it calls a hazard up."""
    return any(_calls_up(knowledge, hazard.id, quantity, number) for number in _numbers(said))


def is_doubtful(said: str) -> bool:
    """Whether a number may be none that is read now: it was, it should be, a limit."""
    return _NO_READING.search(as_said(said)) is not None


def _numbers(said: str) -> Iterator[str]:
    """Every number, with its unit where one stands behind it; none that counts another thing."""
    told = without_other_numbers(as_said(said))
    line = _MINUS.sub("-", in_figures(told))
    for found in _NUMBER.finditer(line):
        if _IN_A_PLACE.match(line, found.end()):
            yield found[0]
            continue
        behind = [word.rstrip(".,;:!?") for word in line[found.end() :].split()]
        for size in range(_WORDS_OF_A_UNIT, 0, -1):
            if is_unit(" ".join(behind[:size])):
                yield f"{found[0]} {' '.join(behind[:size])}"
                break
        else:
            if not behind or line[found.end()] in ",.;:!?" or behind[0] in _AFTER_A_NUMBER:
                yield found[0]


@lru_cache(maxsize=2_000)
def _calls_up(knowledge: Knowledge, hazard: str, quantity: str, number: str) -> bool:
    return any(
        not outcomes.isdisjoint(outcomes_shown(knowledge, test, number))
        for test, outcomes in _findings(knowledge, knowledge.hazards[hazard])
        if test.reads[0].quantity == quantity
    )


def outcomes_shown(knowledge: Knowledge, test: Test, number: str) -> tuple[str, ...]:
    """The outcomes of a test that reads a number first; none where it cannot read this one."""
    # here, since the first prompts come before all that reasons is imported
    from troubleshoot.reasoning.readings.answers import Answer
    from troubleshoot.reasoning.readings.readings import outcomes_of
    from troubleshoot.reasoning.readings.values import Values
    from troubleshoot.reasoning.unit.equipment import Unit

    answer = Answer(test.id, text=in_unit_of(knowledge, test, number))
    return outcomes_of(knowledge, answer, None, Values(knowledge, Unit(), {}))


def in_unit_of(knowledge: Knowledge, test: Test, number: str) -> str:
    """A number as a test reads it: of the explosive limit a percentage is told without it."""
    kind = unit_of(knowledge.quantities[test.reads[0].quantity].unit).kind
    return _A_SHARE.sub("", number) if kind == _SHARE else number


def quantities_of(knowledge: Knowledge, hazard: Hazard) -> frozenset[str]:
    """The quantities of which a number calls a hazard up by itself."""
    return frozenset(test.reads[0].quantity for test, _ in _findings(knowledge, hazard))


def _findings(knowledge: Knowledge, hazard: Hazard) -> Iterator[tuple[Test, frozenset[str]]]:
    """What calls a hazard up by itself, of the tests that read a number."""
    for trigger in hazard.triggers:
        if len(trigger.findings) != 1:
            continue
        test = knowledge.tests[trigger.findings[0].test]
        if test.reads:
            yield test, frozenset(trigger.findings[0].outcomes)
