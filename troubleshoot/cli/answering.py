"""From what was typed at a question to an answer: a number, a word, a prefix, or a reading."""

from __future__ import annotations

from typing import Any

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.measuring import read_text
from troubleshoot.reasoning.places import Place
from troubleshoot.visit.steps import CONFIRMED, Step


class NotAnAnswer(ValueError):
    """What was typed is no answer here; the message says what would do."""


def answer_event_from(
    knowledge: Knowledge, test: Test, at: Place | None, typed: str, outcomes: tuple[str, ...]
) -> dict[str, Any]:
    """The event of an answer to a test; raises NotAnAnswer."""
    if not typed:
        raise NotAnAnswer("Type an answer, s to skip it, or help.")
    event: dict[str, Any] = {"event": "answer", "test": test.id}
    if at is not None:
        event["at"] = [str(at)]
    if test.reads:
        chosen = _by_word(typed, outcomes, several=False)
        if chosen:
            return {**event, "outcomes": list(chosen)}
        try:
            read_text(test, typed, knowledge)
        except NotUnderstood as error:
            raise NotAnAnswer(f"{error.why}; {error.instead}.") from None
        return {**event, "text": typed}
    chosen = _choice(test, typed, outcomes)
    return {**event, "outcomes": list(chosen)}


def step_outcomes(test: Test, step: Step, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    """What came of a step: Enter (or done) confirms it."""
    confirmed = CONFIRMED[step.id]
    if typed.lower() in ("", "done", "ok", "y", "yes"):
        return (confirmed,)
    return _choice(test, typed, outcomes)


def _choice(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    several = test.choose == "several"
    parts = typed.replace(",", " ").split()
    numbers = [n for part in parts if (n := choice(part, len(outcomes))) is not None]
    if numbers and len(numbers) == len(parts) and (several or len(numbers) == 1):
        return _healthy_alone(test, tuple(outcomes[n - 1] for n in numbers))
    chosen = _by_word(typed, outcomes, several)
    if chosen:
        return _healthy_alone(test, chosen)
    raise NotAnAnswer(
        "Give a number, or one of: " + ", ".join(o.replace("-", " ") for o in outcomes)
    )


def _by_word(typed: str, outcomes: tuple[str, ...], several: bool) -> tuple[str, ...]:
    """The outcomes that the words name, by the whole word or an unambiguous beginning."""
    parts = typed.split(",") if several else [typed]
    found = []
    for part in parts:
        word = "-".join(part.lower().split())
        exact = [o for o in outcomes if o == word]
        begun = [o for o in outcomes if word and o.startswith(word)]
        if not exact and len(begun) != 1:
            return ()
        found.append((exact or begun)[0])
    return tuple(dict.fromkeys(found))


def _healthy_alone(test: Test, chosen: tuple[str, ...]) -> tuple[str, ...]:
    if len(chosen) > 1 and set(chosen) & set(test.healthy):
        raise NotAnAnswer("The sound outcome cannot be true together with another; give one kind.")
    return chosen
