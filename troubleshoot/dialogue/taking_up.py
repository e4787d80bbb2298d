"""From a reply at a test or a step to the event that it is."""

from __future__ import annotations

from string import digits

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.at_the_restart import came_of_it
from troubleshoot.dialogue.board_code import code_meant
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import (
    MayBeMeant,
    NearlyAnAnswer,
    NotAnAnswer,
    as_it_should_be,
    by_beginning,
    by_own_text,
    by_word,
    is_one_word,
)
from troubleshoot.dialogue.confirming import by_its_word, confirms_a_step, whether_meant
from troubleshoot.dialogue.confirming_words import among_confirming, tells_how_long
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.hedged import without_hedges
from troubleshoot.dialogue.in_clauses import by_clauses
from troubleshoot.dialogue.mistyped import meant_by
from troubleshoot.dialogue.plain_talk import by_plain_talk
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.talk import DangerCalled, Reply
from troubleshoot.dialogue.to_ground import ohms_and_ground
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.measuring import expected_for, read_text
from troubleshoot.safety.declared import CONFIRMED, STEPS, sound_outcomes
from troubleshoot.safety.facts_first import outcomes_that_stop
from troubleshoot.safety.hearing.dangers import spoken_of, told_at
from troubleshoot.safety.steps import RESTART, Step
from troubleshoot.safety.stops.parts import by_number_alone
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Answered, Event, FactTold, Noted, StepDone
from troubleshoot.visit.hearing.static_read import across_the_unit
from troubleshoot.visit.state import VisitState


def taken_up(book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: Reply) -> Event:
    """The event that a reply is, one typing error seen through and said. Raises NotAnAnswer."""
    if not isinstance(reply, str):
        return reply
    try:
        event = _event(book, prompt, reply)
    except NearlyAnAnswer:
        raise
    except NotAnAnswer:
        meant = meant_answer(book, listener, prompt, reply)
        if meant is None:
            raise
    else:
        _say_what_was_begun(book, listener, prompt, reply)
        return event
    event = _event(book, prompt, meant)
    listener.voice.say(f'Taken as "{meant}".')
    _note_the_ground(book, listener, prompt, reply)
    return event


def _say_what_was_begun(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: str
) -> None:
    """Say for which outcome its mere beginning was taken, or words that confirm a step.

    A number or a time among these is kept as a note: 9 lb 4 oz weighed in, for an hour.
    """
    test = prompt.decision.test
    assert test is not None
    if prompt.decision.step is not None:
        word = among_confirming(test, CONFIRMED[test.id], reply)
        if plain_words(word) != plain_words(reply):
            listener.voice.say(f'Taken as "{word}".')
            if not set(reply).isdisjoint(digits) or tells_how_long(reply):
                book.add(Noted(f"told at {test.name}: {reply}"))
        return
    if (meant := by_beginning(test, reply, prompt.outcomes)) is not None:
        listener.voice.say(f'Taken as "{meant}".')


def _note_the_ground(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: str
) -> None:
    """Keep as a note what was said of the ground beside the ohms that were taken."""
    test = prompt.decision.test
    assert test is not None
    if (told := ohms_and_ground(book.knowledge, test, reply)) is not None:
        book.add(Noted(f"said beside {test.name}: {told[1]}"))
        listener.voice.say(f'Kept as a note: "{told[1]}". Insulation is read for itself.')


def is_answer(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> bool:
    """Whether it names an outcome of what is asked as it stands, with nothing seen through."""
    return bool(_chosen(book, prompt, typed))


def is_taken_as_typed(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> bool:
    """Whether it is an answer to what is asked, by its word or as a number."""
    return _chosen(book, prompt, typed) is not None


def not_taken(book: VisitBook, listener: Listener, test: Test, typed: str, why: str) -> None:
    """Say why it is no answer; a number with words or a unit is kept as a note.

    So it is where a danger is told in it; a number tells one by what the test is of. Raises
    DangerCalled.
    """
    is_reading = not set(typed).isdisjoint(digits) and any(map(str.isalpha, typed))
    try:
        if not spoken_of(book.knowledge, typed) and told_at(book.knowledge, test, typed):
            raise DangerCalled(f"{test.name}: {typed}")
        listener.not_understood(typed, why)
    finally:
        if is_reading:
            book.add(Noted(f"typed for {test.name}, and not taken: {typed}"))


def meant_answer(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: str
) -> str | None:
    """The answer behind a typing error, words of doubt, or a word of an outcome's own text.

    What shows that a danger is not there is not taken from words of doubt, nor with an error in
    it, and no single word of a text calls up a STOP, or says what came of a safety step:
    NearlyAnAnswer is raised, or MayBeMeant where yes will do. Nor is the word of a step, typed a
    prompt too early: locked, runs.
    """
    test = prompt.decision.test
    assert test is not None
    bare = without_hedges(reply)
    if bare and (plain := _chosen(book, prompt, bare)) is not None:
        if plain and {*plain} <= {*test.healthy} and protects(book.knowledge, test):
            raise NearlyAnAnswer(whether_meant(test.spoken(plain[0])))
        return bare
    if (code := code_meant(test, reply, prompt.outcomes)) is not None:
        return test.spoken(code)
    if listener.speaks_of_danger(reply):
        return None
    if (figures := _in_figures(book, prompt, reply)) is not None:
        return figures
    if (static := across_the_unit(test, reply)) is not None:
        return static
    if (ohms := ohms_and_ground(book.knowledge, test, reply)) is not None:
        return None if _chosen(book, prompt, ohms[0]) is None else ohms[0]
    if (meant := meant_by(book.knowledge, test, reply, prompt.outcomes)) is not None:
        if by_its_word(test, meant):
            raise NearlyAnAnswer(whether_meant(meant))
        return meant
    found = as_it_should_be(book.knowledge, test, reply)
    talked = "" if found else by_plain_talk(book.knowledge, test, reply, prompt.outcomes)
    found = found or next(iter(by_word(test, talked, prompt.outcomes, several=False)), None)
    found = found or by_own_text(test, bare or reply, prompt.outcomes)
    if test.id == RESTART and (came := came_of_it(reply)):
        raise MayBeMeant(test.spoken(came))
    asked = () if found or test.id in STEPS else prompt.outcomes
    told = by_clauses(book.knowledge, test, reply, asked)
    several = (found,) if found else told
    if not several or ({*several} & {*test.healthy} and protects(book.knowledge, test)):
        return None
    spoken = ", ".join(map(test.spoken, several))
    stopping = outcomes_that_stop(book.knowledge, test)
    stops = test.id in STEPS or not stopping.isdisjoint(several)
    one = is_one_word(bare or reply)
    if ((talked or one) and stops) or (one and confirms_a_step(book.knowledge, bare or reply)):
        raise MayBeMeant(spoken)
    return spoken


def _in_figures(book: VisitBook, prompt: AskTest | DoStep, reply: str) -> str | None:
    """A number that was said in words, in figures; None where it is none that is asked for.

    What protects somebody is read off a meter, and typed as it is read.
    """
    test = prompt.decision.test
    figures = in_figures(reply)
    if test is None or not test.reads or figures == reply or protects(book.knowledge, test):
        return None
    return None if _chosen(book, prompt, figures) is None else figures


def _chosen(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> tuple[str, ...] | None:
    """The outcomes of what is an answer; None where it is none."""
    try:
        event = _event(book, prompt, typed)
    except NotAnAnswer:
        return None
    return event.outcomes if isinstance(event, StepDone | Answered) else ()


def protects(knowledge: Knowledge, test: Test) -> bool:
    """Whether a sound outcome protects somebody: a safety step, or what shows a danger gone."""
    return test.id in CONFIRMED or any(h.all_clear == test.id for h in knowledge.hazards.values())


def _event(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> Event:
    decision, state = prompt.decision, book.state
    test = decision.test
    assert test is not None
    if decision.step is None:
        answer = answer_event_from(book.knowledge, test, decision.at, typed, prompt.outcomes)
        _is_metered(book.knowledge, decision, test, answer)
        return answer
    event = step_event_from(book.knowledge, state, test, decision.step, typed, book.now())
    _is_metered(book.knowledge, decision, test, event)
    return _fact_of(state, event, decision.step) or event


def _is_metered(
    knowledge: Knowledge, decision: Decision, test: Test, event: Answered | StepDone
) -> None:
    """Raise NearlyAnAnswer for a sound word where only the instrument's number lifts the STOP.

    A number without its unit, or in another, may be of anything.
    """
    if decision.stop is None or decision.aim is None or decision.aim[0] != test.id:
        return
    if not by_number_alone(decision.stop.hazard, test):
        return
    if event.text and not _has_its_unit(knowledge, test, event.text):
        spoken = unit(expected_for(test, knowledge)[0].unit).spoken
        raise NearlyAnAnswer(f"{event.text} may be of anything: type it with its unit, {spoken}.")
    if not event.text and sound_outcomes(test) >= {*event.outcomes}:
        raise NearlyAnAnswer(
            "No word lifts this STOP: type the number on the instrument, with its unit."
        )


def _has_its_unit(knowledge: Knowledge, test: Test, text: str) -> bool:
    """Whether every number that was typed has its unit behind it."""
    return all(leg.typed_unit is not None for leg in read_text(test, text, knowledge).values)


def _fact_of(state: VisitState, event: StepDone, step: Step) -> FactTold | None:
    """The fact that a step has settled, where what came of it is that the unit needs none."""
    fact = STEPS[step.id].settles.get(",".join(event.outcomes))
    if fact is None or state.unit.facts.get(fact[0]) == fact[1]:
        return None
    return FactTold(*fact)
