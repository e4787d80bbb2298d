"""A STOP in a conversation: take the finding afresh where that may lift it, else hand over."""

from __future__ import annotations

from troubleshoot.cli import clock
from troubleshoot.cli.hand_over_result import ask_told
from troubleshoot.cli.screens import show_stop
from troubleshoot.cli.terminal import DangerCalled, Leave, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.visit.dangers import spoken_of
from troubleshoot.visit.decision import Decision
from troubleshoot.visit.event_shapes import handed_over_event, stop_event, take_afresh_event
from troubleshoot.visit.lifting import beyond_lifting
from troubleshoot.visit.reopening import minute, still_waiting
from troubleshoot.visit.stops import finding_of, lifting_finding
from troubleshoot.visit.tags import tag_lines
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
    assert fired is not None
    met = book.state.stops[-1:]
    if not met or (met[0].hazard, met[0].answers) != (fired.hazard.id, len(book.state.answers)):
        spot = finding_of(knowledge, book.state, conclusions, fired)
        book.add(stop_event(fired.hazard.id, spot))
    show_stop(terminal, fired, tag_lines(knowledge, book.state, conclusions, fired))
    return _answered(knowledge, book, terminal, fired, conclusions)


def _answered(
    knowledge: Knowledge,
    book: VisitBook,
    terminal: Terminal,
    fired: FiredHazard,
    conclusions: Conclusions,
) -> bool:
    """What the people at a STOP do about it; False when the visit is over."""
    spot = _may_be_taken_afresh(knowledge, book, terminal, fired, conclusions)
    while True:
        typed = terminal.ask(">")
        book.watch_the_clock()
        word = typed.lower()
        if word == "over":
            _hand_over(book, terminal)
            return False
        if word == "again" and spot is not None:
            met = book.state.met(fired.hazard.id)
            if met is not None and (waiting := still_waiting(knowledge, met, clock.now())):
                terminal.say(waiting)
                continue
            book.add(take_afresh_event(spot))
            return True
        if word in ("q", "quit"):
            raise Leave
        danger = spoken_of(knowledge, typed)
        if danger is not None and danger.id != fired.hazard.id:
            raise DangerCalled(typed)
        terminal.say("again, over, or q." if spot is not None else "over, or q.")


def _may_be_taken_afresh(
    knowledge: Knowledge,
    book: VisitBook,
    terminal: Terminal,
    fired: FiredHazard,
    conclusions: Conclusions,
) -> Spot | None:
    """Say whether a fresh finding may lift the STOP, and which."""
    spot = lifting_finding(knowledge, book.state, conclusions, fired)
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


def _hand_over(book: VisitBook, terminal: Terminal) -> None:
    if not book.state.name:
        name = terminal.ask("Which unit is it? Its name meets whoever comes next >")
        if name:
            book.add({"event": "named", "name": name})
    book.add(handed_over_event(ask_told(terminal), minute(clock.now())))
    terminal.say("The visit is closed as stopped.")
    for item in open_items(book.state.work):
        terminal.say(f"Still open on the unit: {item}", 2)
    terminal.say(
        "When whoever took it over has made it safe, go on with: "
        f"troubleshoot reopen {book.visit_id}"
    )
