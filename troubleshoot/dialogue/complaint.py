"""What the caller says, and the complaint that it is."""

from __future__ import annotations

import re
from collections.abc import Mapping

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import HOW_TO_CALL, Listener, hear
from troubleshoot.dialogue.picking import NONE
from troubleshoot.dialogue.prompts import AskWords, Choose
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, DangerCalled, Talk, words_or_back
from troubleshoot.dialogue.unit_facts import ask_what_is_named, facts_told, keep_facts
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.matching.matcher import Heard
from troubleshoot.reasoning.unit.beyond_said import beyond_said
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.reasoning.unit.facts_untold import is_doubted
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.not_here_and_now import here_and_now
from troubleshoot.visit.cases.file import ROUTINE
from troubleshoot.visit.events import Called
from troubleshoot.visit.hearing.complaints import heard_complaint, match_complaints
from troubleshoot.visit.hearing.repairs_told import besides, repairs_told

_CLAUSE = re.compile(r"[,;]|\.(?:\s|$)")
_FIRED = " fired"
"""Behind a fuel: gas fired. No word of the rules, whose stem is that of fire."""
WHY_THE_WORDS = "Which causes are likely, and what is looked at first, hangs on the call."
WHAT_THEY_SAY = AskWords(
    "What does the caller say? Their own words, or Enter for a PM.", why=WHY_THE_WORDS
)
AS_SAID_BEFORE = AskWords(
    "What does the caller say? Enter for the words of before, or their own words.",
    why=WHY_THE_WORDS,
)
IT_IS_A_STOP = YesNo("Such a call stops the whole job. Is that what they say?")
STILL_ASKED = "What the caller says is still asked."
THAT_IS_THE_UNIT = f"That is of the unit, and kept. {STILL_ASKED}"
SAY_IT_AGAIN = AskWords("What does the caller say?", why=WHY_THE_WORDS)


def ask_complaint(book: VisitBook, voice: Voice, before: str = "") -> Talk[tuple[str, str]]:
    """The caller's words, kept as they are typed, and the complaint that they are.

    `before`: words that were typed before the visit broke off; Enter takes them. Words that led to
    nothing are kept with a routine round. Raises Back, Leave, DangerCalled.
    """
    knowledge, prompt = book.knowledge, AS_SAID_BEFORE if before else WHAT_THEY_SAY
    listener = Listener(knowledge, voice)
    said: list[str] = []
    typed = (yield from _said_by_caller(book, voice, prompt)) or before
    while typed:
        said.append(typed)
        everything = "; ".join(said)
        book.add(Called(everything))
        if typed in knowledge.complaints:
            return everything, typed
        if (call := _dangerous_call(knowledge, typed)) is not None:
            return everything, call.id
        heard = heard_complaint(knowledge, typed)
        if not heard.which:
            listener.not_understood(
                typed, "Nothing known sounds like that. Say it in other words, or Enter."
            )
            typed = yield from _said_by_caller(book, voice, prompt)
            continue
        listener.ask_about(typed, map(_all_said, knowledge.complaints.values()))
        may_stop = any(stops_by_itself(knowledge, name) for name in heard.which)
        if heard.taken is not None and not may_stop:
            voice.say(f"Taken as: {knowledge.complaints[heard.taken].says}. u takes it back.")
            return everything, heard.taken
        try:
            picked, typed = yield from _which_of(listener, heard)
        except Back:
            said.pop()
            typed = yield from _said_by_caller(book, voice, prompt)
            continue
        if picked is not None:
            return everything, picked
        if not typed:
            prompt = SAY_IT_AGAIN
            typed = yield from _said_by_caller(book, voice, prompt)
    return "; ".join(said), ROUTINE


def _said_by_caller(book: VisitBook, voice: Voice, prompt: AskWords) -> Talk[str]:
    """The caller's words; facts of the unit that are typed beside them, or alone, are kept.

    Raises Back where no fact is left to be taken back, Leave, DangerCalled.
    """
    while True:
        try:
            typed = yield from words_or_back(prompt)
        except Back:
            if not facts_told(book):
                raise
            voice.say(book.undo())
            continue
        if facts := _only_facts(book.knowledge, typed):
            voice.say(keep_facts(book, voice, facts) or THAT_IS_THE_UNIT)
        elif _only_repairs(book.knowledge, typed):
            yield from ask_repairs_told(book, voice, typed)
            voice.say(STILL_ASKED)
        else:
            facts, words = _facts_beside(book.knowledge, typed)
            if "heat" in facts:  # no list of facts: gas, everywhere
                hear(book.knowledge, typed, least_facts=1)
            facts = {**facts, **beyond_said(book.knowledge, words)}
            if facts and (problem := keep_facts(book, voice, facts)):
                voice.say(problem)
            if (yield from ask_what_is_named(book, voice, words)):
                return words


def _facts_beside(knowledge: Knowledge, typed: str) -> tuple[Mapping[str, str], str]:
    """The facts of the unit among a caller's words, each in a clause of its own; and the words."""
    clauses = [clause.strip() for clause in _CLAUSE.split(typed) if clause.strip()]
    of_unit = {
        clause: {} if is_doubted(clauses, n) else _only_facts(knowledge, clause)
        for n, clause in enumerate(clauses)
    }
    is_list = any(of_unit.values())
    of_unit |= {
        clause: _heat_named(knowledge, clause, is_list=is_list)
        for clause, said in of_unit.items()
        if not said
    }
    if any(said.keys() & {"heat", "fuel"} for said in of_unit.values()):
        of_unit |= {
            clause: _ignition_named(knowledge, clause) for clause in clauses if not of_unit[clause]
        }
    facts = {name: value for said in of_unit.values() for name, value in said.items()}
    calls = [clause for clause in clauses if not of_unit[clause]]
    return (facts, ", ".join(calls)) if facts and calls else ({}, typed)


def _only_repairs(knowledge: Knowledge, typed: str) -> bool:
    """Whether nothing was typed but what was put right before; no danger either."""
    told = repairs_told(typed)
    return bool(told) and not besides(typed, told) and not spoken_of(knowledge, typed)


def _only_facts(knowledge: Knowledge, typed: str) -> Mapping[str, str]:
    """The facts of the unit that are all that was typed; none where it may be a complaint: gas."""
    facts = facts_said(knowledge, "", typed)
    if "none" in facts.values() or spoken_of(knowledge, typed):  # "no heat" is what callers say
        return {}
    says_one_thing = len(facts.keys() - {"fuel"}) < 2
    return {} if says_one_thing and _may_be_a_call(knowledge, typed) else facts


def _heat_named(knowledge: Knowledge, clause: str, *, is_list: bool) -> Mapping[str, str]:
    """The heat that a clause names beside the call: natural gas, electric heat.

    `is_list`: facts stand beside it. Gas by itself is the heat only there.
    """
    facts = facts_said(knowledge, "", clause.removesuffix(_FIRED))
    is_one_word = len(clause.split()) == 1 and not is_list
    if is_one_word or "none" in facts.values() or not facts.keys() <= {"heat", "fuel"}:
        return {}
    return facts


def _ignition_named(knowledge: Knowledge, clause: str) -> Mapping[str, str]:
    """The ignition that a clause names beside the heat: gas heat, spark. Alone it is a danger."""
    facts = facts_said(knowledge, "", clause)
    return facts if facts.keys() == {"ignition"} and "sparks" not in clause.lower() else {}


def _may_be_a_call(knowledge: Knowledge, typed: str) -> bool:
    """Whether a phrase of a complaint was said, or a word of one that stops the job."""
    heard = heard_complaint(knowledge, typed)
    return bool(heard.said) or any(stops_by_itself(knowledge, name) for name in heard.which)


def _which_of(listener: Listener, heard: Heard) -> Talk[tuple[str | None, str]]:
    """The complaint that is nearest, or else what was said in its stead; empty for nothing.

    Those of which a phrase was said stand first, then those that stop the job; how a danger is
    called stands above them.
    """
    knowledge = listener.knowledge
    found = sorted(
        (knowledge.complaints[name] for name in heard.which),
        key=lambda c: (c.id not in heard.said, not stops_by_itself(knowledge, c.id)),
    )
    prompt = Choose("Which is nearest?", (*(c.says for c in found), "none of these: say it again"))
    listener.voice.say(HOW_TO_CALL)
    while True:
        typed = yield from words_or_back(prompt)
        chosen = choice(typed, len(found))
        if chosen is not None:
            break
        if choice(typed, len(found) + 1) is not None or typed in ("", *NONE):
            return None, ""
        if _says_something(knowledge, typed):
            return None, typed
        listener.not_understood(typed, "Its number, or what they say in other words.")
    picked = found[chosen - 1].id
    stops = stops_by_itself(knowledge, picked)
    meant = not stops or (yield from yes_or_no(listener, IT_IS_A_STOP))
    return picked if meant else None, ""


def _all_said(complaint: Complaint) -> str:
    """All words in which callers tell a complaint."""
    return " ".join((complaint.says, *complaint.words))


def _says_something(knowledge: Knowledge, typed: str) -> bool:
    """Whether it is a complaint told anew, or a danger; if not, the list stays."""
    return bool(
        typed in knowledge.complaints
        or match_complaints(knowledge, typed)
        or spoken_of(knowledge, typed)
    )


def _dangerous_call(knowledge: Knowledge, said: str) -> Complaint | None:
    """The complaint of a caller who speaks of a danger for which such a call is stopped.

    None where they speak of none. Raises DangerCalled where no one complaint says it all.
    """
    dangers = {hazard.id for hazard in spoken_of(knowledge, here_and_now(said))}
    if not dangers:
        return None
    for complaint in match_complaints(knowledge, said):
        stopping = {
            hazard.id
            for hazard in knowledge.hazards.values()
            if any(trigger.complaint == complaint.id for trigger in hazard.triggers)
        }
        if dangers <= stopping:
            return complaint
    raise DangerCalled(said)


def stops_by_itself(knowledge: Knowledge, complaint: str) -> bool:
    """Whether such a call is itself a STOP."""
    return any(
        trigger.complaint == complaint
        for hazard in knowledge.hazards.values()
        if hazard.stop is not None
        for trigger in hazard.triggers
    )
