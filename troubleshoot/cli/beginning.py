"""The beginning of a visit: who is asking, the caller's words, the facts that matter."""

from __future__ import annotations

from troubleshoot.cli.call import show_call_cautions, show_looks
from troubleshoot.cli.known_values import ask_fact
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.visit.case_file import ROUTINE
from troubleshoot.visit.complaints import match_complaints
from troubleshoot.visit.dangers import reported
from troubleshoot.visit.event_shapes import danger_event
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
        words, complaint = _ask_complaint(knowledge, terminal, book)
    show_call_cautions(terminal, knowledge, complaint)
    if complaint != ROUTINE:
        show_looks(terminal, knowledge, complaint)
    held = profiles or ask_profiles(terminal)
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


def ask_unit(terminal: Terminal) -> str:
    """The name of the unit; empty where none is given."""
    terminal.say("Which unit? A name for the record, or Enter for none.")
    return terminal.ask(">", MOST_NAME)


def report_danger(book: VisitBook, name: str, words: str) -> None:
    """Put a danger into the book, which may have nothing in it yet."""
    if not book.begun:
        book.add({"event": "start", "name": name, "profiles": [TECHNICIAN]})
    book.add(danger_event(reported(book.knowledge, words), words))


def ask_profiles(terminal: Terminal) -> tuple[str, ...]:
    """Who is asking: every profile that holds. Enter is a technician without any licence."""
    terminal.say(
        "Who is asking? Give the numbers of all that hold. Enter is a technician, no licence."
    )
    for number, profile in enumerate(PROFILES, start=1):
        terminal.say(f"{number} {profile.replace('-', ' ')}", 2)
    while True:
        typed = terminal.ask(">").replace(",", " ").split()
        if not typed:
            return (TECHNICIAN,)
        if all(choice(part, len(PROFILES)) for part in typed):
            return tuple(dict.fromkeys(PROFILES[int(part) - 1] for part in typed))
        terminal.say(f"Numbers from 1 to {len(PROFILES)}, with spaces between them.")


def _ask_complaint(knowledge: Knowledge, terminal: Terminal, book: VisitBook) -> tuple[str, str]:
    """The caller's words, kept as they are typed, and the complaint that they are taken for."""
    if book.state.words:
        terminal.say(f'Before it broke off, the caller\'s words were: "{book.state.words}"')
    terminal.say("What does the caller say? Their own words, or Enter for a routine round.")
    while True:
        words = terminal.ask(">")
        if not words:
            return "", ROUTINE
        book.add({"event": "call", "words": words})
        if words in knowledge.complaints:
            return words, words
        found = match_complaints(knowledge, words)
        if not found:
            terminal.say("Nothing known sounds like that. Say it in other words, or Enter.")
            continue
        terminal.say("Which is nearest?")
        for number, complaint in enumerate(found, start=1):
            terminal.say(f"{number} {complaint.says}", 2)
        terminal.say(f"{len(found) + 1} none of these: say it again", 2)
        typed = terminal.ask(">")
        if (chosen := choice(typed, len(found))) is not None:
            return words, found[chosen - 1].id
        terminal.say("What does the caller say?")


def _ask_facts(knowledge: Knowledge, terminal: Terminal, book: VisitBook) -> None:
    """The equipment facts on which most of the listed causes depend; Enter for not known."""
    facts = facts_to_ask(knowledge, book.state.unit, book.state.complaint)
    if facts:
        terminal.say("A few facts from the nameplate. Enter where it is not known.")
    for fact in facts:
        if fact.id not in book.state.unit.facts:
            ask_fact(terminal, book, fact)
