"""The beginning of a visit: who is asking, the caller's words, the facts that matter."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.cli.call import first_of_call, show_call_cautions, show_looks
from troubleshoot.cli.known_values import ask_fact
from troubleshoot.cli.listening import Listener
from troubleshoot.cli.terminal import DangerCalled, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.visit.case_file import ROUTINE
from troubleshoot.visit.complaints import match_complaints
from troubleshoot.visit.dangers import spoken_of
from troubleshoot.visit.nameplate import facts_to_ask
from troubleshoot.visit.profiles import PROFILES, TECHNICIAN

WELCOME = (
    "A visit to a rooftop unit. At any question: ? for how, w for why, help for the rest.",
    "Local codes, the unit's own instructions and licensed practice come first.",
)


def begin(
    knowledge: Knowledge,
    terminal: Terminal,
    book: VisitBook,
    name: str,
    profiles: tuple[str, ...],
    routine: bool,
) -> None:
    """Ask what every visit to a unit of this name starts from, and put it into the book."""
    words, complaint = "", ROUTINE
    if not routine:
        words, complaint = _ask_complaint(knowledge, terminal)
    terminal.hold(first_of_call(knowledge, complaint))
    show_call_cautions(terminal, knowledge, complaint)
    if complaint != ROUTINE:
        show_looks(terminal, knowledge, complaint)
    held = profiles or ask_profiles(knowledge, terminal)
    book.add(
        {
            "event": "start",
            "name": name,
            "complaint": complaint,
            "words": words,
            "routine": complaint == ROUTINE,
            "profiles": sorted(held),
        }
    )
    _ask_facts(knowledge, terminal, book)


def ask_unit(knowledge: Knowledge, terminal: Terminal) -> str:
    """The name of the unit; empty where none is given."""
    terminal.say("Which unit? A name for the record, or Enter for none.")
    name = terminal.ask(">", MOST_NAME)
    Listener(knowledge, terminal).hear(name)
    return name


def ask_profiles(knowledge: Knowledge, terminal: Terminal) -> tuple[str, ...]:
    """Who is asking: every profile that holds. Enter is a technician without any licence."""
    terminal.say(
        "Who is asking? Give the numbers of all that hold. Enter is a technician, no licence."
    )
    for number, profile in enumerate(PROFILES, start=1):
        terminal.say(f"{number} {profile.replace('-', ' ')}", 2)
    listener = Listener(knowledge, terminal)
    while True:
        typed = terminal.ask(">")
        parts = typed.replace(",", " ").split()
        if not parts:
            return (TECHNICIAN,)
        if all(choice(part, len(PROFILES)) for part in parts):
            return tuple(dict.fromkeys(PROFILES[int(part) - 1] for part in parts))
        reply = f"Numbers from 1 to {len(PROFILES)}, with spaces between them."
        listener.not_understood(typed, reply)


def _ask_complaint(knowledge: Knowledge, terminal: Terminal) -> tuple[str, str]:
    """The caller's words and the complaint they are. Raises DangerCalled.

    Words that led to nothing are kept with a routine round.
    """
    terminal.say("What does the caller say? Their own words, or Enter for a routine round.")
    listener = Listener(knowledge, terminal)
    said: list[str] = []
    typed = terminal.ask(">")
    while typed:
        said.append(typed)
        words = "; ".join(said)
        if typed in knowledge.complaints:
            return words, typed
        if (call := _dangerous_call(knowledge, typed)) is not None:
            return words, call.id
        found = match_complaints(knowledge, typed)
        if not found:
            reply = "Nothing known sounds like that. Say it in other words, or Enter."
            listener.not_understood(typed, reply)
            typed = terminal.ask(">")
            continue
        typed = _choose(terminal, found)
        if (chosen := choice(typed, len(found))) is not None:
            return words, found[chosen - 1].id
        if not typed or choice(typed, len(found) + 1) is not None:
            terminal.say("What does the caller say?")
            typed = terminal.ask(">")
    return "; ".join(said), ROUTINE


def _choose(terminal: Terminal, found: Sequence[Complaint]) -> str:
    """What is typed where complaints are to choose from: a number, or other words."""
    terminal.say("Which is nearest?")
    for number, complaint in enumerate(found, start=1):
        terminal.say(f"{number} {complaint.says}", 2)
    terminal.say(f"{len(found) + 1} none of these: say it again", 2)
    return terminal.ask(">")


def _dangerous_call(knowledge: Knowledge, words: str) -> Complaint | None:
    """The complaint of a caller who speaks of a danger for which such a call is stopped.

    None where they speak of none. Raises DangerCalled where no one complaint says it all.
    """
    dangers = {hazard.id for hazard in spoken_of(knowledge, words)}
    if not dangers:
        return None
    for complaint in match_complaints(knowledge, words):
        stopping = {
            hazard.id
            for hazard in knowledge.hazards.values()
            if any(trigger.complaint == complaint.id for trigger in hazard.triggers)
        }
        if dangers <= stopping:
            return complaint
    raise DangerCalled(words)


def _ask_facts(knowledge: Knowledge, terminal: Terminal, book: VisitBook) -> None:
    """The equipment facts on which most of the listed causes depend; Enter for not known."""
    facts = facts_to_ask(knowledge, book.state.unit, book.state.complaint)
    if facts:
        terminal.say("A few facts from the nameplate. Enter where it is not known.")
    for fact in facts:
        if fact.id not in book.state.unit.facts:
            ask_fact(terminal, book, fact)
