"""From what was typed at a question to an answer: a number, a word, a prefix, or a reading."""

from __future__ import annotations

import re
from collections.abc import Collection
from datetime import datetime
from string import digits
from typing import Final

from troubleshoot.dialogue.all_legs import number_of_all_legs
from troubleshoot.dialogue.by_word import (
    NearlyAnAnswer,
    NotAnAnswer,
    by_number_or_word,
    by_word,
    by_words,
    chosen_words,
    letters,
    one_word,
    without_assent,
    without_name_and_time,
)
from troubleshoot.dialogue.confirming import not_of_the_list, says_enough, wanted, whether_meant
from troubleshoot.dialogue.confirming_words import among_confirming
from troubleshoot.dialogue.how_done import without_how
from troubleshoot.dialogue.metered_in_words import told
from troubleshoot.dialogue.orders import is_order
from troubleshoot.dialogue.pointing import without_pointing
from troubleshoot.dialogue.step_weighed import weight_beside
from troubleshoot.dialogue.two_valves import not_either_valve
from troubleshoot.dialogue.verdict_beside import number_beside_verdict
from troubleshoot.dialogue.waiting import has_waited
from troubleshoot.dialogue.which_lock import cannot_be_locked, locked_at, not_another_lock
from troubleshoot.dialogue.word_and_number import number_beside_word
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS
from troubleshoot.safety.estimates import without_estimate
from troubleshoot.safety.steps import (
    BEFORE_BLEEDING,
    BLEED_CAPACITOR,
    CANNOT_LOCK,
    EDGE_PROTECTION,
    FIRE_PANEL_BACK,
    LOCKOUT,
    ROOF,
    TELL_FIRE_PANEL,
    TELL_OCCUPANTS,
    Step,
)
from troubleshoot.visit.events import Answered, StepDone
from troubleshoot.visit.events.places import step_place
from troubleshoot.visit.hearing.metered import metered, no_proof
from troubleshoot.visit.hearing.number_and_rest import apart, rest_wanted
from troubleshoot.visit.state import VisitState

TELLING: Final = frozenset({TELL_OCCUPANTS, TELL_FIRE_PANEL, FIRE_PANEL_BACK})
"""Steps that are done by telling somebody: to whom and when may be said with it."""
ENTER: Final = ("", "ok", "y", "yes", "done")
_AS_BEFORE: Final = re.compile(
    r"(?:(?:all |it is |its )?(?:did it|done|same|same way|the same way) )?(?:as|like) before",
    re.IGNORECASE,
)
"""What is said of a step that was told before: it is no more than done."""


def answers(test: Test, outcomes: Collection[str]) -> tuple[str, ...]:
    """What may be typed for these outcomes: their names, and what people say for them."""
    return tuple(word for o in test.outcomes if o.id in outcomes for word in (o.spoken, *o.words))


def said_by(test: Test, outcomes: Collection[str]) -> tuple[str, ...]:
    """All that a question and each of its answers say, for people who answer in its own words."""
    asked = " ".join((test.name, *test.how))
    told = (f"{o.spoken} {' '.join(o.words)} {o.means}" for o in test.outcomes if o.id in outcomes)
    return (asked, *told)


def answer_event_from(
    knowledge: Knowledge, test: Test, at: Place | None, typed: str, outcomes: tuple[str, ...]
) -> Answered:
    """The event of an answer to a test; raises NotAnAnswer."""
    if not typed:
        raise NotAnAnswer("Type an answer, s to skip it, or help.")
    typed = without_how(test.id, typed)
    where = None if at is None else (str(at),)
    if test.reads:
        if chosen := by_words(test, typed, outcomes):
            says_enough(test, typed, chosen)
            return Answered(test.id, where, chosen)
        if test.id in CONFIRMED:
            number, named = _told(knowledge, VisitState(), test, Step(test.id), typed)
            if number or named:
                return Answered(test.id, where, named, text=None if named else number)
        elif number := (
            number_beside_word(knowledge, test, typed, outcomes)
            or number_beside_verdict(knowledge, test, typed)
            or number_of_all_legs(knowledge, test, typed)
        ):
            return Answered(test.id, where, text=number)
        _read(knowledge, test, typed)
        return Answered(test.id, where, text=typed)
    chosen = by_number_or_word(test, typed, outcomes)
    if letters(typed):
        says_enough(test, typed, chosen)
    elif test.kind == "step" and {*chosen} & {*test.healthy}:
        raise NearlyAnAnswer(whether_meant(test.spoken(chosen[0])))
    return Answered(test.id, where, chosen)


def step_event_from(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str, now: datetime
) -> StepDone:
    """The event of a safety step; raises NotAnAnswer.

    Enter confirms only what protects nobody's life. All else wants the word of the outcome, or the
    number on the meter where the step reads one.
    """
    confirmed, typed = CONFIRMED[step.id], without_how(step.id, typed)
    typed, weight = weight_beside(knowledge, state, step, typed)
    as_before = _AS_BEFORE.fullmatch(typed.strip(" .!"))
    if typed.lower() in ENTER or as_before:
        if step.id in ENTER_CONFIRMS:
            return StepDone.of(step, (confirmed,))
        said = f'"{typed}"' if typed else "Enter"
        why = f"{said} confirms nothing here. Type {wanted(test, confirmed)}."
        raise NearlyAnAnswer(why) if as_before else NotAnAnswer(why)
    outcomes = tuple(o.id for o in test.outcomes)
    several = test.choose == "several"
    said = without_name_and_time(typed) if step.id in TELLING else typed
    said = among_confirming(test, confirmed, said)
    said = without_assent(without_pointing(test, confirmed, said))
    if by_word(test, said, outcomes, several):
        typed = said
    else:
        read = _metered(knowledge, state, test, step, typed)
        if read is not None:
            return read
        if is_order(typed, confirmed):
            raise NearlyAnAnswer(whether_meant(test.spoken(confirmed)))
    not_either_valve(test, typed)
    in_its_words = by_word(test, typed, outcomes, several)
    if step.id == LOCKOUT and not in_its_words:
        otherwise = _lock_in_other_words(step, typed)
        if otherwise is not None:
            return otherwise
    chosen = chosen_words(test, typed, outcomes)
    _names_its_protection(state, test, step, typed, chosen)
    says_enough(test, typed, chosen)
    if confirmed in chosen:
        has_waited(state, test, now)
    return StepDone.of(step, chosen, weight)


def _lock_in_other_words(step: Step, typed: str) -> StepDone | None:
    """The lock-out that is told by what the switch does, or by where else the lock hangs.

    None where it is told in neither way; raises NearlyAnAnswer where the second has to be typed.
    """
    if cannot_be_locked(typed):
        return StepDone.of(step, (CANNOT_LOCK,), typed)
    if (where := locked_at(typed)) is not None:
        return StepDone.of(step, (CONFIRMED[LOCKOUT],), where)
    not_another_lock(typed)
    return None


def _names_its_protection(
    state: VisitState, test: Test, step: Step, typed: str, chosen: tuple[str, ...]
) -> None:
    """Raise NotAnAnswer where work near an edge would go on and nobody has said what protects.

    Under 6 ft a line or a watcher is no protection (29 CFR 1910.28(b)(13)).
    """
    if step.id != EDGE_PROTECTION or CONFIRMED[step.id] not in chosen:
        return
    if one_word(typed) == CONFIRMED[step.id]:
        raise NotAnAnswer(f"Say what protects you: {_protections(test)}.")
    looked = next((a for a in reversed(state.asked) if a.test == ROOF), None)
    under_6 = looked is None or "edge-under-6-ft" in (looked.outcome or "")
    if under_6 and not any(word in one_word(typed) for word in ("rail", "tie", "harness")):
        raise NotAnAnswer("Under 6 ft from the edge only a guard rail or being tied off will do.")


def _protections(test: Test) -> str:
    own = next(o for o in test.outcomes if o.id == CONFIRMED[test.id])
    return own.means


def _metered(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str
) -> StepDone | None:
    """A step confirmed, or not, by what the meter shows; None where nothing of it was typed."""
    has_number = not set(typed).isdisjoint(digits)
    if not test.reads or (STEPS[step.id].number_says_part and not has_number):
        return None
    if STEPS[step.id].number_says_part:
        return _with_the_rest(knowledge, state, test, step, typed)
    number, named = _told(knowledge, state, test, step, typed)
    outcomes = shown_at(knowledge, state, step, number) if number else ()
    if number and not outcomes:
        raise NotAnAnswer("That number says nothing here; type what came of it in words.")
    if number and _read_before_bleeding(state, step, outcomes):
        outcomes = (BEFORE_BLEEDING,)
    if not number and not named:
        return None
    found = {*outcomes, *named} - ({CONFIRMED[step.id]} if named else set())
    return StepDone.of(step, tuple(o.id for o in test.outcomes if o.id in found), number or None)


def shown_at(knowledge: Knowledge, state: VisitState, step: Step, text: str) -> tuple[str, ...]:
    """What a number makes of a step, at the place where the step is done."""
    at = step_place(step, state.unit)
    return metered(knowledge, state.case, step.id, at, text)


def _told(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str
) -> tuple[str, tuple[str, ...]]:
    """The number on the meter, and what is named as wrong; both empty where neither is told.

    Raises NotAnAnswer where a sound number stands among words that may take it back.
    """
    if _is_read(knowledge, test, (bare := without_estimate(typed))):
        not_of_the_list(knowledge, test, typed)
        _is_a_proof(knowledge, state, step, bare, typed)
        return typed if _is_read(knowledge, test, typed) else bare, ()
    said = told(knowledge, test, typed)
    if said.named or not (said.number or not set(typed).isdisjoint(digits)):
        return said.number, said.named
    if not said.number:
        _read(knowledge, test, typed)
    if not said.plain and shown_at(knowledge, state, step, said.number) == (CONFIRMED[step.id],):
        raise NotAnAnswer(
            f"{said.number} is sound, and I cannot tell what the other words say of it. "
            "Type the highest number on the meter alone, or in words what came of it."
        )
    _is_a_proof(knowledge, state, step, said.number, typed)
    return said.number, ()


def _is_a_proof(
    knowledge: Knowledge, state: VisitState, step: Step, number: str, typed: str
) -> None:
    """Raise NearlyAnAnswer where a sound number proves nothing, as it was read or told."""
    sound = shown_at(knowledge, state, step, number) == (CONFIRMED[step.id],)
    if sound and (why := no_proof(knowledge, step.id, number, typed)):
        raise NearlyAnAnswer(f"{typed} proves nothing: {why}.")


def _is_read(knowledge: Knowledge, test: Test, typed: str) -> bool:
    try:
        _read(knowledge, test, typed)
    except NotAnAnswer:
        return False
    return True


def _with_the_rest(
    knowledge: Knowledge, state: VisitState, test: Test, step: Step, typed: str
) -> StepDone:
    """A step of which a number says only part: the worse of it and of the words beside it."""
    number, rest = apart(knowledge, test, typed)
    if not number:
        _read(knowledge, test, typed)
    confirmed, outcomes = CONFIRMED[step.id], tuple(o.id for o in test.outcomes)
    _is_a_proof(knowledge, state, step, number, typed)
    read = shown_at(knowledge, state, step, number)
    if not rest and {*read} == {*outcomes} - {confirmed}:
        return StepDone.of(step, read, number)
    if not rest:
        raise NotAnAnswer(rest_wanted(test, number, read, confirmed))
    rest = without_pointing(test, confirmed, rest)
    said = chosen_words(test, rest, outcomes)
    says_enough(test, rest, said)
    worse = {*read, *said} - {confirmed}
    found = tuple(o for o in outcomes if o in worse) or (confirmed,)
    return StepDone.of(step, found, number)


def _read(knowledge: Knowledge, test: Test, typed: str) -> None:
    """Raise NotAnAnswer where a test does not read this number."""
    try:
        read_text(test, typed, knowledge)
    except NotUnderstood as error:
        raise NotAnAnswer(f'"{typed}" {error.why}; {error.instead}.') from None


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
