"""`unit`: what has been told of the unit, and how it is put right; readings are judged anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from string import digits

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_back import A_STOP_RESTS_ON_IT, lifts_a_stop
from troubleshoot.dialogue.unit_facts import keep_facts, tell_left
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.beyond_said import beyond_named, beyond_said
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.reasoning.unit.facts_listed import STAMPED, facts_listed, rated_cooling
from troubleshoot.reasoning.unit.facts_said import as_typed, facts_said, in_words
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.reasoning.unit.places_said import spoken_place
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.events import Aimed, FactTold
from troubleshoot.visit.events.replaying import after
from troubleshoot.visit.telling.contradicting import judged_anew
from troubleshoot.visit.telling.why_next import NARROWS

HOW = "unit NAME VALUE puts one right, or unit NAME VALUE at PLACE."
NOTHING_TOLD = "Nothing has been told of the unit yet."
LEAST = 2
"""How many facts make a list of what the nameplate says, though not all of it is understood."""
COUNTS = "How many there are cannot be changed once something was read: note it, and begin anew."


@frozen
class _Told:
    """What is to be put right: a name, what it is now, and what else the same words say."""

    name: str
    value: object
    also: Mapping[str, str]


def list_told(book: VisitBook, voice: Voice) -> None:
    """Say what has been told of the unit."""
    voice.say_all(_lines(book), 1)
    voice.say(HOW if any(_lines(book)) else NOTHING_TOLD, 1)


def takes_plate_line(book: VisitBook, voice: Voice, reasoner: Reasoner, typed: str) -> bool:
    """Take what a nameplate says, where a whole line is a list of it; False where it is none.

    And what words say of a unit that the rules know nothing of, unless they speak of a danger.
    """
    return _takes_list(book, voice, reasoner, typed) or _takes_beyond(book, voice, typed)


def _takes_beyond(book: VisitBook, voice: Voice, typed: str) -> bool:
    """Take it; and say how to tell what is only named. What is known is denied outright alone."""
    if spoken_of(book.knowledge, typed):
        return False
    known = book.state.unit.facts
    for fact in beyond_named(book.knowledge, typed):
        if fact.id not in known:
            value = book.knowledge.spoken(next(iter(fact.beyond)))
            voice.say(f"{fact.asks} unit {book.knowledge.spoken(fact.id)} {value} says so.")
    told = beyond_said(book.knowledge, typed)
    new = {
        name: value
        for name, value in told.items()
        if name not in known or value in book.knowledge.facts[name].beyond
    }
    return not new.items() <= known.items() and keep_facts(book, voice, new) is None


def _takes_list(book: VisitBook, voice: Voice, reasoner: Reasoner, typed: str) -> bool:
    said, left = facts_listed(book.knowledge, "", typed)
    least = LEAST if "," in typed else STAMPED
    if len(said) < least and (left or "," not in typed):
        return False
    fixed = [name for name in said if _is_read(book) and _counts(book.knowledge, name)]
    told = {name: value for name, value in said.items() if name not in fixed}
    if said:
        tell_left(book, voice, typed, left, LEAST)
    if any(book.state.unit.facts.get(name) != said[name] for name in fixed):
        voice.say(COUNTS)
    if told and not book.state.answers and told.keys().isdisjoint(book.state.unit.facts):
        return keep_facts(book, voice, told) is None
    if told:
        _put(book, voice, reasoner, _told_of(told))
    return bool(said)


def put_right(book: VisitBook, voice: Voice, reasoner: Reasoner, said: str) -> bool:
    """Take another value for a fact or plate value, and tell what is judged anew by it.

    False where the words name none: they may be an answer.
    """
    told = _told(book.knowledge, said)
    if told is None:
        return False
    _put(book, voice, reasoner, told)
    return True


def _is_read(book: VisitBook) -> bool:
    """Whether anything was read, or done at a place, so that places have to stay as they are."""
    tests = book.knowledge.tests
    return any(
        tests[answer.test].kind != "step" or any(answer.places) for answer in book.state.answers
    )


def _put(book: VisitBook, voice: Voice, reasoner: Reasoner, told: _Told) -> None:
    """Take what was told in the place of what was known, or say why it is not."""
    names = (told.name, *told.also)
    if _is_read(book) and any(_counts(book.knowledge, name) for name in names):
        voice.say(COUNTS)
        return
    if _lifts_a_stop(book, reasoner, told):
        voice.say(A_STOP_RESTS_ON_IT)
        return
    before, was = conclude_visit(reasoner, book.state), book.state.unit_data
    problem = book.try_fact(told.name, told.value, told.also)
    if problem is not None:
        voice.say(f"{book.knowledge.spoken(told.name)}: {problem}")
        return
    for name in names:
        said, now = book.knowledge.spoken(name), _spoken(book.knowledge, book.state.unit_data[name])
        old = _spoken(book.knowledge, was[name]) if name in was else ""
        if old == now:
            voice.say(f"{said} is {now}, as told before.")
        else:
            voice.say(f"{said}{f' was {old}, and' if old else ''} is now {now}.")
    then = conclude_visit(reasoner, book.state)
    voice.say_all(judged_anew(before, then))
    _aim_anew(book, before, then)


def _aim_anew(book: VisitBook, before: Conclusions, then: Conclusions) -> None:
    """Give no cause that the unit cannot have as the reason for the test in hand."""
    state = book.state
    gone = {c.fault.name for c in before.causes} - {c.fault.name for c in then.causes}
    if state.aim is not None and any(name in state.aim_reason for name in gone):
        test, at = state.aim
        book.add(Aimed(test, spoken(at), NARROWS, state.aim_chosen))


def _spoken(knowledge: Knowledge, value: object) -> str:
    return knowledge.spoken(as_typed(value))


def _lifts_a_stop(book: VisitBook, reasoner: Reasoner, told: _Told) -> bool:
    """Whether a STOP would be judged away; data that is refused changes nothing."""
    event = FactTold(told.name, told.value, told.also)
    try:
        then = after(book.knowledge, book.state, event)
    except InputRefused:
        return False
    return lifts_a_stop(reasoner, book.state, then)


def _told(knowledge: Knowledge, said: str) -> _Told | None:
    """What a line names: a fact or plate value by its name, or facts by their words."""
    text, _, place = said.partition(" at ")
    place = spoken_place(knowledge, place)
    parts = plain_words(text).replace("=", " ").replace(":", " ").split()
    for size in range(len(parts) - 1, 0, -1):
        name = _name_of(knowledge, "-".join(parts[:size]), parts[size])
        if name is not None:
            rest = text.replace("=", " ").replace(":", " ")
            value = rest.split(maxsplit=_blanks(rest, size))[-1]
            return _Told(name, {place: value} if place else value, {})
    facts = facts_said(knowledge, "", said) or rated_cooling(knowledge, said)
    return _told_of(facts) if facts else None


def _name_of(knowledge: Knowledge, named: str, value: str) -> str | None:
    """The fact or plate value of a name; before a number the end of only one will do: tons 4."""
    if named in knowledge.facts or named in knowledge.plate_values:
        return named
    ends = [name for name in knowledge.plate_values if name.endswith(f"-{named}")]
    return ends[0] if len(ends) == 1 and value[:1] in digits else None


def _told_of(facts: Mapping[str, str]) -> _Told:
    first, *others = facts.items()
    return _Told(*first, dict(others))


def _blanks(text: str, size: int) -> int:
    """How many blanks come before the value, where a name may be written with hyphens."""
    words = 0
    for number, part in enumerate(text.split(), start=1):
        words += len(plain_words(part).split())
        if words >= size:
            return number
    return size


def _counts(knowledge: Knowledge, name: str) -> bool:
    fact = knowledge.facts.get(name)
    return fact is not None and fact.counts is not None


def _lines(book: VisitBook) -> Iterator[str]:
    for name, value in book.state.unit_data.items():
        yield in_words(book.knowledge, name, as_typed(value))
    for name, value in book.state.on_record.trusted.items():
        if name not in book.state.unit_data:
            yield f"{in_words(book.knowledge, name, as_typed(value))} (on record)"
