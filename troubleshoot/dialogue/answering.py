"""From what was typed at a question to an answer: a number, a word, a prefix, or a reading."""

from __future__ import annotations

import math
from collections.abc import Collection
from datetime import datetime
from string import digits
from typing import Final

from troubleshoot.dialogue.number_and_rest import apart, rest_wanted
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS
from troubleshoot.safety.steps import (
    BEFORE_BLEEDING,
    BLEED_CAPACITOR,
    EDGE_PROTECTION,
    LOCKOUT,
    ROOF,
    Step,
)
from troubleshoot.visit.absence import minutes_since
from troubleshoot.visit.events import Answered, StepDone
from troubleshoot.visit.hearing.metered import metered
from troubleshoot.visit.state import VisitState

ENTER: Final = ("", "ok", "y", "yes", "done")
LEAST_LETTERS: Final = 4
"""A word that confirms a protecting step may be shortened to so many letters, and no further."""


class NotAnAnswer(ValueError):
    """What was typed is no answer here; the message says what would do."""


def answers(test: Test, outcomes: Collection[str]) -> tuple[str, ...]:
    """What may be typed for these outcomes: their names, and what people say for them."""
    return tuple(
        word
        for o in test.outcomes
        if o.id in outcomes
        for word in (o.id.replace("-", " "), *o.words)
    )


def answer_event_from(
    knowledge: Knowledge, test: Test, at: Place | None, typed: str, outcomes: tuple[str, ...]
) -> Answered:
    """The event of an answer to a test; raises NotAnAnswer."""
    if not typed:
        raise NotAnAnswer("Type an answer, s to skip it, or help.")
    where = None if at is None else (str(at),)
    if test.reads:
        chosen = _by_word(test, typed, outcomes, several=False)
        if chosen:
            return Answered(test.id, where, chosen)
        _read(knowledge, test, typed)
        return Answered(test.id, where, text=typed)
    return Answered(test.id, where, _choice(test, typed, outcomes))


def step_event_from(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str, now: datetime
) -> StepDone:
    """The event of a safety step; raises NotAnAnswer.

    Enter confirms only what protects nobody's life. All else wants the word of the outcome, or the
    number on the meter where the step reads one.
    """
    confirmed = CONFIRMED[step.id]
    if typed.lower() in ENTER:
        if step.id in ENTER_CONFIRMS:
            return StepDone.of(step, (confirmed,))
        raise NotAnAnswer(f"Enter confirms nothing here. Type {_wanted(test, confirmed)}.")
    outcomes = tuple(o.id for o in test.outcomes)
    several = test.choose == "several"
    if not _by_word(test, typed, outcomes, several):
        read = _metered(knowledge, state, test, step, typed)
        if read is not None:
            return read
    chosen = _chosen_words(test, typed, outcomes)
    _names_its_protection(state, test, step, typed, chosen)
    _in_letters_enough(test, confirmed, typed, chosen)
    if confirmed in chosen and STEPS[step.id].waited_for:
        _has_waited(state, test, now)
    return StepDone.of(step, chosen)


def _in_letters_enough(test: Test, confirmed: str, typed: str, chosen: tuple[str, ...]) -> None:
    """Raise NotAnAnswer where a word that confirms is shortened too far."""
    if confirmed in chosen and len(_letters(typed)) < min(LEAST_LETTERS, len(_letters(confirmed))):
        raise NotAnAnswer(f"Type {_wanted(test, confirmed)}; fewer letters confirm nothing here.")


def _names_its_protection(
    state: VisitState, test: Test, step: Step, typed: str, chosen: tuple[str, ...]
) -> None:
    """Raise NotAnAnswer where work near an edge would go on and nobody has said what protects.

    Under 6 ft a line or a watcher is no protection (29 CFR 1910.28(b)(13)).
    """
    if step.id != EDGE_PROTECTION or CONFIRMED[step.id] not in chosen:
        return
    if _one_word(typed) == CONFIRMED[step.id]:
        raise NotAnAnswer(f"Say what protects you: {_protections(test)}.")
    looked = next((a for a in reversed(state.asked) if a.test == ROOF), None)
    under_6 = looked is None or "edge-under-6-ft" in (looked.outcome or "")
    if under_6 and not any(word in _one_word(typed) for word in ("rail", "tie", "harness")):
        raise NotAnAnswer("Under 6 ft from the edge only a guard rail or being tied off will do.")


def _protections(test: Test) -> str:
    own = next(o for o in test.outcomes if o.id == CONFIRMED[test.id])
    return own.means


def _wanted(test: Test, confirmed: str) -> str:
    alone = test.reads and not STEPS[test.id].number_says_part
    number = ", or the number on the meter," if alone else ""
    return f'"{confirmed.replace("-", " ")}"{number} when it is so'


def _metered(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str
) -> StepDone | None:
    """A step confirmed, or not, by what the meter shows; None where no number was typed."""
    if not test.reads or set(typed).isdisjoint(digits):
        return None
    if STEPS[step.id].number_says_part:
        return _with_the_rest(knowledge, state, test, step, typed)
    _read(knowledge, test, typed)
    outcomes = metered(knowledge, state, step, typed)
    if not outcomes:
        raise NotAnAnswer("That number says nothing here; type what came of it in words.")
    if _read_before_bleeding(state, step, outcomes):
        outcomes = (BEFORE_BLEEDING,)
    return StepDone.of(step, outcomes, typed)


def _with_the_rest(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str
) -> StepDone:
    """A step of which a number says only part: the worse of it and of the words beside it."""
    number, rest = apart(knowledge, test, typed)
    if not number:
        _read(knowledge, test, typed)
    confirmed, outcomes = CONFIRMED[step.id], tuple(o.id for o in test.outcomes)
    read = metered(knowledge, state, step, number)
    if not rest:
        raise NotAnAnswer(rest_wanted(number, read, confirmed))
    said = _chosen_words(test, rest, outcomes)
    _in_letters_enough(test, confirmed, rest, said)
    worse = {*read, *said} - {confirmed}
    found = tuple(o for o in outcomes if o in worse) or (confirmed,)
    return StepDone.of(step, found, number)


def _read(knowledge: Knowledge, test: Test, typed: str) -> None:
    """Raise NotAnAnswer where a test does not read this number."""
    try:
        read_text(test, typed, knowledge)
    except NotUnderstood as error:
        raise NotAnAnswer(f"{error.why}; {error.instead}.") from None


def _read_before_bleeding(state: VisitState, step: Step, outcomes: tuple[str, ...]) -> bool:
    """Whether this is the first charge read on a capacitor since the lock went on.

    A run capacitor holds line volts and more until it is bled; only what remains then is a fault.
    """
    if step.id != BLEED_CAPACITOR or CONFIRMED[step.id] in outcomes:
        return False
    for asked in reversed(state.asked):
        if asked.test == LOCKOUT:
            return True
        if (asked.test, asked.place) == (step.id, step.place):
            return False
    return True


def _has_waited(state: VisitState, test: Test, now: datetime) -> None:
    """Raise NotAnAnswer while the wait that protects the hands is not over."""
    since = minutes_since(state.power_off_time, now)
    left = test.wait_minutes - (since or 0.0)
    if since is None or left > 0:
        raise NotAnAnswer(
            f"{max(1, math.ceil(left))} min of the wait are still to come since the lock went on. "
            "Wait, or meter it and type the volts."
        )


def _chosen_words(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    chosen = _by_word(test, typed, outcomes, test.choose == "several")
    if not chosen:
        words = ", ".join(o.replace("-", " ") for o in outcomes)
        raise NotAnAnswer(f"Say in words what came of it: {words}.")
    return _healthy_alone(test, chosen)


def _letters(text: str) -> str:
    return "".join(c for c in text if c.isalpha())


def _choice(test: Test, typed: str, outcomes: tuple[str, ...]) -> tuple[str, ...]:
    several = test.choose == "several"
    parts = typed.replace(",", " ").split()
    numbers = [n for part in parts if (n := choice(part, len(outcomes))) is not None]
    if numbers and len(numbers) == len(parts) and (several or len(numbers) == 1):
        return _healthy_alone(test, tuple(outcomes[n - 1] for n in numbers))
    chosen = _by_word(test, typed, outcomes, several)
    if chosen:
        return _healthy_alone(test, chosen)
    raise NotAnAnswer(
        "Give a number, or one of: " + ", ".join(o.replace("-", " ") for o in outcomes)
    )


def _by_word(test: Test, typed: str, outcomes: tuple[str, ...], several: bool) -> tuple[str, ...]:
    """The outcomes that the words name: its own, what people say for it, or an own beginning."""
    said = {_one_word(w): o.id for o in test.outcomes if o.id in outcomes for w in o.words}
    if (meant := said.get(_one_word(typed))) is not None:
        return (meant,)
    parts = typed.split(",") if several else [typed]
    found = []
    for part in parts:
        word = _one_word(part)
        exact = [o for o in outcomes if o in (word, said.get(word))]
        begun = [o for o in outcomes if word and o.startswith(word)]
        if not exact and len(begun) != 1:
            return ()
        found.append((exact or begun)[0])
    return tuple(dict.fromkeys(found))


def _one_word(text: str) -> str:
    """Words as an outcome's id is written."""
    return "-".join(text.lower().replace(",", " ").replace("-", " ").split())


def _healthy_alone(test: Test, chosen: tuple[str, ...]) -> tuple[str, ...]:
    if len(chosen) > 1 and set(chosen) & set(test.healthy):
        raise NotAnAnswer("The sound outcome cannot be true together with another; give one kind.")
    return chosen
