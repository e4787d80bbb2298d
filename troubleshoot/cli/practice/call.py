"""Committing to an answer: the cause, what lies behind it, the repair and the proof.

Causes are found by words among all that this unit can have; the rest is chosen from short lists
that also hold what belongs to look-alikes.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence

from troubleshoot.cli.practice.asking import show_places
from troubleshoot.cli.practice.finding import causes_called, or_nearest, possible_causes
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import hear
from troubleshoot.knowledge.model import Fault
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place

MOST_FOUND = 9
MOST_CHOICES = 4
MOST_CAUSES = 4


def ask_call(terminal: Terminal, session: Session) -> Call | None:
    """The apprentice's answer; None where they would rather go on looking."""
    terminal.say("What is wrong? Words of the cause; nothing, if nothing is; Enter to go on.")
    return _call(terminal, session)


def ask_found(terminal: Terminal, session: Session) -> Call:
    """What an apprentice who hands the job over says was found, as far as it is known."""
    terminal.say("What would you tell them was found? Words of the cause; Enter, if not known.")
    return _call(terminal, session) or Call()


def _call(terminal: Terminal, session: Session) -> Call | None:
    causes: list[TrueFault] = []
    while len(causes) < MOST_CAUSES:
        typed = terminal.ask(">")
        if not typed:
            break
        if typed.lower() in ("nothing", "nothing wrong", "none"):
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
        typed = terminal.ask("number or words >")
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
    """What brought it about: one of the card's own, or of those that others may have behind.

    Empty: nothing did. None: not said.
    """
    true = session.scenario.truth.behind
    names = _mixed(session, [*true[:1], *fault.behind, *fault.look_alikes])
    terminal.say("What lies behind it?")
    for number, name in enumerate(names, start=1):
        terminal.say(f"{number} {session.knowledge.faults[name].name}", 2)
    terminal.say(f"{len(names) + 1} nothing that was found here", 2)
    chosen = _number(terminal, session, len(names) + 1)
    if chosen is None:
        return None
    return (names[chosen - 1],) if chosen <= len(names) else ()


def _choose(
    terminal: Terminal, session: Session, fault: Fault, question: str, what: str
) -> str | None:
    """One of several repairs or proofs; the id of the fault whose card it is from."""
    true = [fault.fault for fault in session.scenario.truth.faults]
    # A true fault that was called owns its text, where a look-alike's card says the same.
    order = sorted([fault.id, *true, *fault.look_alikes], key=lambda name: name not in true)
    owners: dict[str, str] = {}
    for name in order:
        owners.setdefault(_text(session.knowledge.faults[name], what), name)
    offered = _mixed(session, [fault.id, *fault.look_alikes[:2], *true[:1], *fault.look_alikes])
    texts = list(dict.fromkeys(_text(session.knowledge.faults[name], what) for name in offered))
    texts = [text for text in texts if text]
    terminal.say(question)
    for number, text in enumerate(texts, start=1):
        terminal.say(f"{number} {text}", 2)
    chosen = _number(terminal, session, len(texts))
    return None if chosen is None else owners[texts[chosen - 1]]


def _text(card: Fault, what: str) -> str:
    if what == "repair":
        return card.repair.what
    return "; ".join(proof.text for proof in card.proof[:2])


def _mixed(session: Session, names: Sequence[str]) -> list[str]:
    """At most four of the names, in an order that tells nothing and is always the same."""
    chosen = list(dict.fromkeys(names))[:MOST_CHOICES]

    def place(name: str) -> str:
        return hashlib.sha256(f"{session.scenario.id} {name}".encode()).hexdigest()

    return sorted(chosen, key=place)


def _number(terminal: Terminal, session: Session, most: int) -> int | None:
    """A number from 1, or None for Enter."""
    while True:
        typed = terminal.ask("number >")
        if not typed:
            return None
        if (number := choice(typed, most)) is not None:
            return number
        hear(session.knowledge, typed)
        terminal.say(f"A number from 1 to {most}, or Enter.")
