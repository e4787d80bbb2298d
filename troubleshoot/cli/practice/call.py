"""Committing to an answer: the cause, what lies behind it, the repair and the proof.

Causes are found by words among all that this unit can have. What is offered beside them comes from
the cause that was called and its neighbors, so that no list betrays what is true.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.cli.practice.asking import ask, show_places
from troubleshoot.cli.practice.finding import causes_called, or_nearest, possible_causes
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear
from troubleshoot.knowledge.model import Fault
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.offered import Part, mixed, offers
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Sureness
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place

NOTHING = frozenset({"nothing", "nothing wrong", "none"})
MOST_FOUND = 9
MOST_CAUSES = 4
SURENESS: tuple[tuple[Sureness, str], ...] = (
    ("sure", "sure: I would order the part"),
    ("likely", "likely: one more reading would settle it"),
    ("guess", "a guess"),
)


def ask_call(terminal: Terminal, session: Session) -> Call | None:
    """The apprentice's answer; None where they would rather go on looking. Raises Left."""
    terminal.say("What is wrong? Words of the cause; nothing, if nothing is; Enter to go on.")
    call = _call(terminal, session)
    return None if call is None else replace(call, sure=_sure(terminal, session))


def ask_found(terminal: Terminal, session: Session) -> Call:
    """What an apprentice who hands the job over says was found, as far as it is known."""
    terminal.say("What would you tell them was found? Words of the cause; Enter, if not known.")
    return _call(terminal, session) or Call()


def _sure(terminal: Terminal, session: Session) -> Sureness:
    terminal.say("How sure are you?")
    for number, (_, words) in enumerate(SURENESS, start=1):
        terminal.say(f"{number} {words}", 2)
    chosen = _number(terminal, session, len(SURENESS))
    return "" if chosen is None else SURENESS[chosen - 1][0]


def _call(terminal: Terminal, session: Session) -> Call | None:
    causes: list[TrueFault] = []
    while len(causes) < MOST_CAUSES:
        typed = ask(terminal, ">", "Words of the cause as you would name it: low charge, belt.")
        if not typed:
            break
        if typed.lower() in NOTHING:
            return Call()
        fault = _find(terminal, session, typed)
        if fault is None:
            continue
        causes.append(TrueFault(fault.id, _where(terminal, session, fault)))
        terminal.say(f"Called: {fault.name}. Words of another cause as well, or Enter.")
    if not causes:
        return None
    if session.stopped:
        return Call(tuple(causes))
    first = session.knowledge.faults[causes[0].fault]
    behind = _behind(terminal, session, first)
    repair = _choose(terminal, session, first, "What puts it right?", "repair")
    proof = _choose(terminal, session, first, "What proves it?", "proof")
    return Call(tuple(causes), behind, repair, proof)


def _find(terminal: Terminal, session: Session, typed: str) -> Fault | None:
    """The cause that is meant; other words may be typed where several are listed."""
    while typed:
        found = causes_called(session, typed)
        if len(found) == 1:
            return found[0]
        if not found:
            hear(session.knowledge, typed)
            names = (fault.name for fault in possible_causes(session))
            instead = or_nearest("other words, or Enter.", typed, names)
            terminal.say(f'No cause here is called "{typed}"; {instead}')
            return None
        listed = found[:MOST_FOUND]
        for number, fault in enumerate(listed, start=1):
            terminal.say(f"{number} {fault.name}", 2)
        if len(found) > MOST_FOUND:
            terminal.say(f"and {len(found) - MOST_FOUND} more: say more words of it.", 2)
        typed = ask(terminal, "number or words >", "The number of one of these, or more words.")
        if (chosen := choice(typed, len(listed))) is not None:
            return listed[chosen - 1]
    terminal.say("Words of the cause, or Enter.")
    return None


def _where(terminal: Terminal, session: Session, fault: Fault) -> Place | None:
    places = session.scenario.unit.layout.places(fault.per)
    if len(places) <= 1:
        return places[0] if places else None
    show_places(terminal, places)
    chosen = _number(terminal, session, len(places))
    return None if chosen is None else places[chosen - 1]


def _behind(terminal: Terminal, session: Session, fault: Fault) -> tuple[str, ...] | None:
    """What brought it about: one of the card's own, of its neighbors', or another by its words.

    Empty: nothing did. None: not said.
    """
    alike = [session.knowledge.faults[name] for name in fault.look_alikes]
    around = (name for each in (fault, *alike) for name in each.behind)
    names = mixed(
        session.scenario, [name for name in (*around, *fault.look_alikes) if name != fault.id]
    )
    terminal.say("What lies behind it?")
    for number, name in enumerate(names, start=1):
        terminal.say(f"{number} {session.knowledge.faults[name].name}", 2)
    terminal.say(f"{len(names) + 1} nothing that was found here", 2)
    while True:
        typed = ask(terminal, "number or words >", "A number, words of another cause, or Enter.")
        if not typed:
            return None
        if typed.lower() in NOTHING:
            return ()
        if (chosen := choice(typed, len(names) + 1)) is not None:
            return (names[chosen - 1],) if chosen <= len(names) else ()
        other = _find(terminal, session, typed)
        if other is not None:
            terminal.say(f"Behind it: {other.name}.")
            return (other.id,)


def _choose(
    terminal: Terminal, session: Session, fault: Fault, question: str, part: Part
) -> str | None:
    """One of several repairs or proofs: the id of the fault whose card it is from."""
    offered = offers(session.knowledge, session.scenario, fault, part)
    terminal.say(question)
    for number, offer in enumerate(offered, start=1):
        terminal.say(f"{number} {offer.text}", 2)
    chosen = _number(terminal, session, len(offered))
    return None if chosen is None else offered[chosen - 1].fault


def _number(terminal: Terminal, session: Session, most: int) -> int | None:
    """A number from 1, or None for Enter."""
    while True:
        of_these = f"A number from 1 to {most}, or Enter."
        typed = ask(terminal, "number >", of_these)
        if not typed:
            return None
        if (number := choice(typed, most)) is not None:
            return number
        hear(session.knowledge, typed)
        terminal.say(of_these)
