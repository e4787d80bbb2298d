"""A STOP in a conversation: take the finding afresh where that may lift it, else hand over."""

from __future__ import annotations

from troubleshoot.cli import clock
from troubleshoot.cli.hand_over_result import ask_result
from troubleshoot.cli.screens import show_stop
from troubleshoot.cli.terminal import Leave, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.visit.decision import Decision
from troubleshoot.visit.event_shapes import handed_over_event, stop_event, take_afresh_event
from troubleshoot.visit.lifting import beyond_lifting
from troubleshoot.visit.reopening import minute
from troubleshoot.visit.stops import is_all_clear, lifting_finding
from troubleshoot.visit.visit_state import Spot
from troubleshoot.visit.work_state import open_items


def stopped(
    knowledge: Knowledge,
    book: VisitBook,
    terminal: Terminal,
    decision: Decision,
    conclusions: Conclusions,
) -> bool:
    """Show a STOP and take what is done about it; False when the visit is over."""
    fired = decision.stop
    assert fired is not None and fired.hazard.stop is not None
    met = book.state.stops[-1:]
    if not met or (met[0].hazard, met[0].answers) != (fired.hazard.id, len(book.state.answers)):
        book.add(stop_event(fired.hazard.id))
    show_stop(terminal, fired)
    spot = _may_be_taken_afresh(knowledge, book, terminal, decision, conclusions)
    while True:
        typed = terminal.ask(">").lower()
        if typed == "over":
            _hand_over(book, terminal)
            return False
        if typed == "again" and spot is not None and _take_afresh(knowledge, book, terminal, spot):
            return True
        if typed in ("q", "quit"):
            raise Leave
        terminal.say("again, over, or q." if spot is not None else "over, or q.")


def _may_be_taken_afresh(
    knowledge: Knowledge,
    book: VisitBook,
    terminal: Terminal,
    decision: Decision,
    conclusions: Conclusions,
) -> Spot | None:
    """Say whether a fresh finding may lift the STOP, and which."""
    assert decision.stop is not None
    spot = lifting_finding(knowledge, book.state, conclusions, decision.stop)
    if spot is None:
        terminal.say("No further test is offered. Type over to hand the job over.")
        return None
    name = knowledge.tests[spot[0]].name
    phrase = beyond_lifting(knowledge, book.state, spot)
    if phrase is not None:
        terminal.say(f"Only {name}, taken afresh, lifts this, and that is beyond you: {phrase}.")
        terminal.say("Type over to hand the job over.")
        return None
    terminal.say(
        f"Only a fresh finding lifts this: type again to do {name} once more, or over to hand the "
        "job over."
    )
    return spot


def _take_afresh(knowledge: Knowledge, book: VisitBook, terminal: Terminal, spot: Spot) -> bool:
    """Go for the fresh finding. An all-clear is somebody's word: whose, and what shows it."""
    if not is_all_clear(knowledge.tests[spot[0]]):
        book.add(take_afresh_event(spot))
        return True
    result = ask_result(terminal, "")
    if result is None:
        terminal.say("The STOP stands: an all-clear needs who gave it, what was done and read.")
        return False
    book.add(take_afresh_event(spot, result))
    return True


def _hand_over(book: VisitBook, terminal: Terminal) -> None:
    told = ""
    while not told:
        told = terminal.ask("Who was told, and when?")
    book.add(handed_over_event(told, minute(clock.now())))
    terminal.say("The visit is closed as stopped.")
    for item in open_items(book.state.work):
        terminal.say(f"Still open on the unit: {item}", 2)
    terminal.say(
        "When whoever took it over has made it safe, go on with: "
        f"troubleshoot reopen {book.visit_id}"
    )
