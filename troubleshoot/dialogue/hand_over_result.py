"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import partial
from typing import Final

from troubleshoot.dialogue.asked_outright import is_said_yes_to
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.in_danger import ask_if_hinted
from troubleshoot.dialogue.prompts import AskWords, Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Leave, Talk, words_or_back
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.moments import moment_within, with_day
from troubleshoot.safety.hearing.roles import (
    ROLES,
    without_gas_people,
)
from troubleshoot.safety.stops.outright import (
    Outright,
    asked_of_a_reading,
    asked_of_what_was_done,
)
from troubleshoot.safety.stops.record import TOLD, HandOverResult, StopMet
from troubleshoot.safety.stops.remedies import NOTHING_DONE, remedies_of, remedy
from troubleshoot.safety.stops.reopening import (
    fitting_roles,
    handed_over_at,
    is_not_told,
    read_after,
    role,
    stopped_at,
    when_called,
    when_read,
)
from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.safety.stops.shown import as_read, as_seen, read_in, seen_as, spoken_units
from troubleshoot.visit.events import PartGiven

MISSING: Final = "That is still missing: give it, or q to leave the STOP as it stands."
WHAT_THEY_DID: Final = "What did they do?"
WHEN_CALLED: Final = AskWords("When were they told, or when did they come?", repeated=True)
WHEN: Final = AskWords("When was that?", repeated=True)
NOTHING_TOLD: Final = "Nothing of the result has been told yet. q leaves the visit closed."


@frozen
class Result:
    """The result of a hand-over. `called`: when they were told, who by the record were not.

    `said_yes_to`: the questions asked outright.
    """

    told: HandOverResult
    called: str
    said_yes_to: tuple[str, ...]


def ask_result(book: VisitBook, voice: Voice, met: StopMet) -> Talk[Result]:
    """The result of a STOP's hand-over; `u` goes back to the part before.

    A no to what is asked outright is no result. Raises Leave, DangerCalled.
    """
    knowledge = book.knowledge
    listener = Listener(knowledge, voice, (met.hazard,))
    hazard = knowledge.hazards[met.hazard]
    names = fitting_roles(hazard)
    who = Choose("Who made it safe?", tuple(ROLES[name] for name in names), repeated=True)
    since, handed = read_after(knowledge, met), handed_over_at(met)
    given = {each.part: each.words for each in book.state.given if each.part != TOLD}
    if given.get("done") not in remedies_of(hazard):
        given.pop("done", None)  # told in words, to rules of before
    if given:
        voice.say(f"Given before it broke off: {'; '.join(given.values())}. u takes the last back.")

    def parts() -> Mapping[str, Callable[[], Talk[str]]]:
        by, after = given.get("by", "").partition(" ")[0], max(since, given.get("called", since))
        called = {"called": lambda: _ask_called(book, listener, met, by)}
        return {
            "by": lambda: ask_part(listener, who, lambda typed: _named(typed, names)),
            **(called if is_not_told(met, by) else {}),
            "done": lambda: _ask_done(listener, hazard),
            **_outright(listener, "of what was done", asked_of_what_was_done(hazard)),
            "reading": lambda: _ask_shown(book, listener, met),
            **_outright(listener, "of the reading", asked_of_a_reading(knowledge, hazard)),
            "when": lambda: ask_part(
                listener, WHEN, lambda typed: when_read(typed, after, book.now(), handed)
            ),
        }

    while missing := [part for part in parts() if part not in given]:
        try:
            given[missing[0]] = yield from parts()[missing[0]]()
        except Back:
            voice.say_all(() if given else (NOTHING_TOLD,))
            for part in [*given][-1:]:
                book.add(PartGiven(part, ""))
                del given[part]
        else:
            book.add(PartGiven(missing[0], given[missing[0]]))
    echo_time(book, voice, given["when"])
    by, _, words = given["by"].partition(" ")
    told = HandOverResult(by, given["done"], given["reading"], given["when"], words)
    asked = (given[part] for part in ("of what was done", "of the reading") if part in given)
    return Result(told, given.get("called", ""), tuple(asked))


def _named(typed: str, names: tuple[str, ...]) -> str:
    """The role of who made it safe, and behind it the words, where they say more than that."""
    by = role(typed, names)
    words = plain_words(typed.replace("-", " "))
    is_role = not re.search(r"[^\W\d_]", typed) or by.replace("-", " ").startswith(words)
    return by if is_role else f"{by} {typed}"


def _outright(
    listener: Listener, part: str, asked: Outright | None
) -> Mapping[str, Callable[[], Talk[str]]]:
    """The part that asks a question outright, if there is one to ask: it comes to the question."""

    def ask(asked: Outright) -> Talk[str]:
        if not (yield from is_said_yes_to(listener, asked)):
            raise Leave
        return asked.question

    return {} if asked is None else {part: lambda: ask(asked)}


def _ask_done(listener: Listener, hazard: Hazard) -> Talk[str]:
    """What was done by those it was handed to. Raises Leave where it was nothing that helps."""
    if not (done := (yield from ask_remedy(listener, WHAT_THEY_DID, hazard))):
        raise Leave
    return done


def _ask_called(book: VisitBook, listener: Listener, met: StopMet, by: str) -> Talk[str]:
    """When somebody was told, or came, who by the record did not know of the STOP."""
    listener.voice.say(f"On record {ROLES[by]} was not told yet.")
    since = stopped_at(met)
    called = yield from ask_part(
        listener, WHEN_CALLED, lambda typed: when_called(typed, since, book.now())
    )
    echo_time(book, listener.voice, called)
    return called


def _ask_shown(book: VisitBook, listener: Listener, met: StopMet) -> Talk[str]:
    """What shows that it is safe: the number of its instrument, or the outcome of a look."""
    knowledge, on = listener.knowledge, book.state.unit
    hazard = knowledge.hazards[met.hazard]
    test = knowledge.tests[hazard.all_clear or (met.spot or ("",))[0]]
    if units := read_in(knowledge, hazard, test):
        prompt = AskWords(f"What did they read, in {spoken_units(units)}?", repeated=True)
        return (
            yield from ask_part(listener, prompt, partial(as_read, knowledge, hazard, test, on))
        )
    listed = Choose(f"{test.name}: how was it?", seen_as(test), repeated=True)
    return (yield from ask_part(listener, listed, partial(as_seen, test)))


def ask_remedy(listener: Listener, question: str, hazard: Hazard) -> Talk[str]:
    """What was done to make it safe: one remedy of its hazard; empty where it was none of them.

    Raises Back, Leave, DangerCalled.
    """
    prompt = Choose(question, remedies_of(hazard), repeated=True)
    done = yield from ask_part(listener, prompt, lambda typed: remedy(typed, hazard))
    if not done:
        listener.voice.say(NOTHING_DONE, strong=True)
    return done


def echo_time(book: VisitBook, voice: Voice, typed: str) -> None:
    """Say which time of which day was understood; an hour alone may be of either half of a day."""
    at = moment_within(typed, book.now())
    if at is not None:
        voice.say(f"Taken as: {with_day(at, book.now())}.")


def ask_part(
    listener: Listener,
    prompt: AskWords | Choose,
    understood: Callable[[str], str],
) -> Talk[str]:
    """One part of the result, asked until it is understood. Raises Back, Leave, DangerCalled.

    Nothing typed throws nothing away: what is missing is asked for again.
    """
    while True:
        typed = yield from words_or_back(prompt)
        if not typed:
            listener.voice.say(MISSING)
            continue
        listener.hear_among(without_gas_people(typed))
        yield from ask_if_hinted(listener.knowledge, listener.voice, typed)
        try:
            return understood(typed)
        except NotAResult as error:
            listener.not_understood(typed, str(error))
