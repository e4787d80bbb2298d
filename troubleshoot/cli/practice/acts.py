"""Doing something to a unit that moves, at the terminal: found by words, priced, then done."""

from __future__ import annotations

from troubleshoot.cli.practice.asking import ask, ask_place
from troubleshoot.cli.practice.finding import causes_called
from troubleshoot.cli.practice.screens import show_stopped
from troubleshoot.cli.screens.cautions import show_cautions
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import cautions_of
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.acting import HandedOver, act, cautions_of_deed, who_does
from troubleshoot.practice.deeds import Deed, deeds_by_feel, repair_of
from troubleshoot.practice.loading import scenarios_folder
from troubleshoot.practice.played import Stopped
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place

STANDS_STILL = "Nothing can be done to this unit: read, and call."
WHICH = (
    "act with what you would put right, or with a deed: act filters, act add refrigerant. Its "
    "price comes first."
)
MOST_FOUND = 9


def do_act(terminal: Terminal, session: Session, words: str, shown_cautions: set[str]) -> None:
    """Do what the words name to the unit, once its cautions and its price have been seen and yes
    has been typed.
    """
    if not session.scenario.moves:
        terminal.say(STANDS_STILL)
        return
    found = _called(session, words) if words else []
    if words and not found:
        terminal.say(f'Nothing that can be done here is called "{words}".')
    deed = _chosen(terminal, found)
    if deed is None:
        return
    for at in _places(terminal, session, deed):
        hazards, wanted = cautions_of_deed(session, deed)
        show_cautions(terminal, cautions_of(hazards, shown_cautions))
        if wanted:
            terminal.say(wanted, strong=True)
        priced = f"{deed.minutes:.0f} min; {spoken(deed.part_cost)}; by {who_does(deed)} only"
        terminal.say(f"{deed.name} ({priced})")
        typed = ask(terminal, "y does it, Enter leaves it >", "y does it; Enter does not.")
        if typed.lower() in ("y", "yes"):
            _show(terminal, session, act(session, deed, at))
        else:
            terminal.say("Not done.")


def _places(terminal: Terminal, session: Session, deed: Deed) -> tuple[Place | None, ...]:
    """Where to do it: asked where the unit has several such places."""
    per = deed.fault.per
    test = next((test for test in session.tests() if test.per == per), None)
    if per is None or test is None:
        return (None,)
    return ask_place(
        terminal, session, test, "", lambda prompt: ask(terminal, prompt, "Where to do it.")
    )


def _called(session: Session, words: str) -> list[Deed]:
    """The deeds by feel whose name holds every word, then the repairs of the causes called so."""
    wanted = words.lower().split()
    by_feel = [
        deed
        for deed in deeds_by_feel(session.knowledge, scenarios_folder())
        if all(word in deed.name.lower() for word in wanted)
        and session.scenario.unit.allows(deed.fault.exists_when)
    ]
    return [*by_feel, *(repair_of(fault) for fault in causes_called(session, words))]


def _chosen(terminal: Terminal, found: list[Deed]) -> Deed | None:
    if not found:
        terminal.say(WHICH)
        return None
    if len(found) == 1:
        return found[0]
    for number, deed in enumerate(found[:MOST_FOUND], start=1):
        terminal.say(f"{number} {deed.said}", 2)
    listed = found[:MOST_FOUND]
    typed = ask(terminal, "number, or Enter for none >", WHICH)
    number_of = choice(typed, len(listed))
    if number_of is None:
        terminal.say("Nothing is done.")
        return None
    return listed[number_of - 1]


def _show(terminal: Terminal, session: Session, result: object) -> None:
    """What came of it: done, stopped or handed over. Whether it was right, readings tell."""
    if isinstance(result, Stopped):
        show_stopped(terminal, session, result)
    elif isinstance(result, HandedOver):
        terminal.say("Nobody does that here: tag the unit out and hand it over.")
    else:
        terminal.say(f"Done, {session.minutes:.0f} min in all. Read again to see what came of it.")
