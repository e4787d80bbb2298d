"""The beginning of a visit: who is asking, the caller's words, the facts that matter."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.complaint import ask_complaint, stops_by_itself
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.round_season import ask_season
from troubleshoot.dialogue.said import CallCautions, FirstLooks, Voice
from troubleshoot.dialogue.talk import Back, Talk, unless_back, words_or_back
from troubleshoot.dialogue.unit_facts import ask_fact, facts_told
from troubleshoot.knowledge.model import EquipmentFact, Knowledge
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.reasoning.unit.equipment import beyond
from troubleshoot.safety.profiles import PROFILES, TECHNICIAN, are_profiles, profiles_named
from troubleshoot.visit.cases.file import ROUTINE
from troubleshoot.visit.deciding.nameplate import facts_to_ask, still_matters
from troubleshoot.visit.events import DangerReported, Halted, RoundBegun, Started, after
from troubleshoot.visit.events.undoing import WALLS, taken_back
from troubleshoot.visit.round.facts import facts_of
from troubleshoot.visit.round.season import season_said
from troubleshoot.visit.state import VisitState

WHO_IS_ASKING = Choose(
    "Who is asking? Give the numbers of all that hold. Enter is a technician, no license.",
    tuple(map(spoken, PROFILES)),
    several=True,
    why="What is beyond a license is handed over, and not asked of you.",
)
NOTHING_SINCE = "Nothing else is left to take back, so the call is asked anew."
WHO_AGAIN = "Nothing else is left to take back, so it is asked again who is asking; u: the call."
NOW_THE_CALL = "That danger is gone. Now the call, which it broke in on."
THE_CALL_IS_FIRST = "The call is the first that can be taken back here. Say what it is."
IT_STAYS_STOPPED = (
    "Such a call is a STOP, and is not taken back: only who clears the place lifts it."
)


def begin(
    book: VisitBook,
    voice: Voice,
    name: str,
    profiles: tuple[str, ...],
    routine: bool,
    before: str = "",
) -> Talk[None]:
    """Ask what every visit to a unit of this name starts from, and put it into the book.

    `before`: the caller's words, where it broke off after them. Raises Back where the name itself
    is taken back, Leave, DangerCalled.
    """
    said, complaint = "", ROUTINE
    while True:
        if not routine:
            said, complaint = yield from ask_complaint(book, voice, before)
            before = ""
        start = Started(name, complaint, said, routine=complaint == ROUTINE, profiles=(TECHNICIAN,))
        try:
            yield from _ask_the_rest(book, voice, start, profiles)
        except Back:
            if routine:
                raise
        else:
            return


def begin_anew(book: VisitBook, voice: Voice) -> Talk[None]:
    """Ask again who is asking, once all that was answered since is taken back; before it, the call.

    Raises Leave, DangerCalled.
    """
    voice.say(WHO_AGAIN)
    begun = next(event for event in reversed(book.events) if isinstance(event, Started))
    try:
        held = yield from ask_profiles(book.knowledge, voice)
    except Back:
        voice.say(NOTHING_SINCE)
        yield from _ask_call_first(book, voice, ())
    else:
        book.add(replace(begun, profiles=tuple(sorted(held))))


def wants_the_call(state: VisitState) -> bool:
    """Whether a danger came before the call could be told, so that it was never asked."""
    untold = state.complaint is None and not state.routine and state.round is None
    return untold and bool(state.stops) and not (state.closing or state.mended_here)


def ask_the_call(book: VisitBook, voice: Voice) -> Talk[None]:
    """Ask for the call that a danger broke in on. Raises Leave, DangerCalled."""
    voice.say(NOW_THE_CALL)
    yield from _ask_call_first(book, voice, tuple(book.state.profiles))


def _ask_call_first(book: VisitBook, voice: Voice, profiles: tuple[str, ...]) -> Talk[None]:
    """Ask for the call of a unit that is named already, before which nothing is taken back.

    `profiles`: of whoever is asking, who are asked for where there are none.
    """
    ask = partial(begin, book, voice, book.state.name, profiles, routine=False)
    yield from unless_back(voice, THE_CALL_IS_FIRST, ask)


def may_begin_anew(book: VisitBook) -> bool:
    """Whether nothing is left that undo takes back, so that it reaches the call itself.

    Not where the call is a STOP, or a STOP stands between.
    """
    stops = stops_by_itself(book.knowledge, book.state.complaint or "")
    walls = any(isinstance(event, WALLS) for event in book.events)
    return book.begun and not stops and not walls and taken_back(book.events) is None


def _ask_the_rest(
    book: VisitBook, voice: Voice, start: Started, profiles: tuple[str, ...]
) -> Talk[None]:
    """Who is asking, and the facts that matter. Raises Back where the call is taken back."""
    stops = stops_by_itself(book.knowledge, start.complaint or "")
    if stops:  # on record before it is told: whoever names the unit next has to meet it
        book.add(start, *_stop_of(book, start))
    _tell_of_the_call(book.knowledge, voice, start.complaint or "")
    if not stops:
        yield from ask_repairs_told(book, voice, start.words)
    ask = _ask_at_a_stop if stops else ask_profiles
    while True:
        held = tuple(sorted(profiles or (yield from ask(book.knowledge, voice))))
        if stops:
            book.resume(held)
        else:
            book.add(replace(start, profiles=held))
        try:
            if start.routine:
                yield from ask_of_the_round(book, voice)
            elif not beyond(book.knowledge, book.state.unit):
                wanted = facts_to_ask(book.knowledge, book.state.unit, start.complaint)
                yield from _ask_facts(book, voice, wanted)
            return
        except Back:
            if profiles and not stops:
                raise
            if profiles:
                voice.say(IT_STAYS_STOPPED)


def _tell_of_the_call(knowledge: Knowledge, voice: Voice, complaint: str) -> None:
    """The cautions of a call and what is looked at first on it."""
    call = knowledge.complaints.get(complaint)
    if call is not None:
        voice.tell(CallCautions(call))
        if complaint != ROUTINE and call.looks:
            voice.tell(FirstLooks(call.looks))


def _ask_at_a_stop(knowledge: Knowledge, voice: Voice) -> Talk[tuple[str, ...]]:
    """Who is asking, where the call is a STOP that nobody takes back."""
    return (yield from unless_back(voice, IT_STAYS_STOPPED, lambda: ask_profiles(knowledge, voice)))


def _stop_of(book: VisitBook, start: Started) -> tuple[Halted | DangerReported, ...]:
    """The STOP that the call calls up; kept with it, so that nothing falls between the two."""
    # Reasoning is imported only for such calls: most beginnings need none of it.
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.safety.stops.lifting import conclude_visit, finding_of, standing_stop

    knowledge, state = book.knowledge, after(book.knowledge, book.state, start)
    conclusions = conclude_visit(Reasoner(knowledge), state)
    fired = standing_stop(knowledge, state, conclusions)
    if fired is None:  # cleared before this call came: it is a danger told anew
        call = knowledge.complaints[start.complaint or ""]
        return tuple(
            DangerReported(hazard.id, start.words, call.all_clear or hazard.all_clear)
            for hazard in knowledge.hazards.values()
            if hazard.stop and any(each.complaint == start.complaint for each in hazard.triggers)
        )
    return (Halted.over(fired.hazard.id, finding_of(knowledge, state, conclusions, fired)),)


def ask_profiles(knowledge: Knowledge, voice: Voice) -> Talk[tuple[str, ...]]:
    """Who is asking: every profile that holds. Enter is a technician without any licence.

    Raises Back, Leave, DangerCalled.
    """
    listener = Listener(knowledge, voice, own=WHO_IS_ASKING.options)
    while True:
        typed = yield from words_or_back(WHO_IS_ASKING)
        if not typed.replace(",", " ").split():
            return (TECHNICIAN,)
        if not are_profiles(typed):
            listener.hear(typed)
        named = profiles_named(typed)
        if named:
            return named
        reply = f"Numbers from 1 to {len(PROFILES)}, with spaces between them, or their words."
        listener.not_understood(typed, reply)


def ask_of_the_round(book: VisitBook, voice: Voice) -> Talk[None]:
    """The season of a routine round, then the facts on which its points depend.

    Where it broke off here, only what is still open. Raises Back where the season is taken back,
    Leave, DangerCalled.
    """
    on = book.state.round
    while True:
        season = (yield from ask_season(book, voice)) if on is None else on.season
        if on is None:
            book.add(RoundBegun(season))
        on = None
        facts = facts_of(book.knowledge, book.state.unit, season)
        open_ones = tuple(fact for fact in facts if fact.id not in book.state.not_known)
        try:
            yield from _ask_facts(book, voice, open_ones)
            return
        except Back:
            if season_said(book.state.words):
                raise


def _ask_facts(book: VisitBook, voice: Voice, facts: tuple[EquipmentFact, ...]) -> Talk[None]:
    """These facts of the equipment; Enter for not known.

    Raises Back where nothing of them is left to be taken back, Leave, DangerCalled.
    """
    if facts:
        voice.say("A few facts from the nameplate. Enter where it is not known.")
    answered: list[int] = []
    at = 0
    while at < len(facts):
        unit = book.state.unit
        if facts[at].id not in unit.facts and still_matters(book.knowledge, unit, facts[at]):
            before = facts_told(book)
            try:
                if not (yield from ask_fact(book, voice, facts[at])):
                    if book.state.closing:
                        return
                    continue
            except Back:
                said_along = facts_told(book) > before
                if not said_along and not answered:
                    raise
                voice.say(book.undo())
                at = at if said_along else answered.pop()
                continue
            answered.append(at)
        at += 1
