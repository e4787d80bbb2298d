"""`troubleshoot reopen VISIT`: go on with a stopped visit, on the hand-over's result."""

from __future__ import annotations

import click

from troubleshoot.cli import clock
from troubleshoot.cli.beginning import ask_profiles
from troubleshoot.cli.conversation import Conversation
from troubleshoot.cli.failures import KEPT, USAGE, Failure
from troubleshoot.cli.hand_over_result import ask_result
from troubleshoot.cli.kept_visits import opened
from troubleshoot.cli.rule_base import shipped_rules
from troubleshoot.cli.terminal import DangerCalled, EndOfInput, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Hazard
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.event_shapes import reopened_event
from troubleshoot.visit.reopening import NotReopened, still_waiting, what_stopped
from troubleshoot.visit.stops import conclude_visit
from troubleshoot.visit.visit_state import StopMet

APPRENTICE = "apprentice"
NOT_BY_AN_APPRENTICE = (
    "The visit stays closed: an apprentice takes no hand-over back. Ask the supervising technician "
    "to reopen it."
)


@click.command()
@click.argument("visit")
@click.pass_context
def reopen(ctx: click.Context, visit: str) -> None:
    """Go on with a visit that a STOP ended, once it has been made safe.

    Asks who made it safe, what they found and did, and the reading that shows it. Then the finding
    that stopped the visit is taken afresh, before anything else.
    """
    with opened(visit, ctx) as journal:
        knowledge, terminal = shipped_rules(), Terminal()
        book = VisitBook(knowledge, visit, journal, list(journal.events))
        terminal.say_all(book.notices)
        conversation = Conversation(knowledge, book, terminal)
        if reopened(conversation.decider.reasoner, book, terminal):
            ctx.exit(conversation.run())
        ctx.exit(KEPT)


def reopened(reasoner: Reasoner, book: VisitBook, terminal: Terminal) -> bool:
    """Ask for the hand-over's result and reopen the visit; False where it stays closed."""
    knowledge, state = reasoner.knowledge, book.state
    conclusions = conclude_visit(reasoner, state)
    try:
        hazard, spot = what_stopped(knowledge, state, conclusions)
    except NotReopened as error:
        raise Failure([f"visit {book.visit_id} is not reopened: {error}"], USAGE) from None
    _say_what_stopped(terminal, book, hazard)
    met = state.met(hazard.id) or StopMet(hazard.id, 0)
    if waiting := still_waiting(knowledge, met, clock.now()):
        terminal.say(f"The visit stays closed: {waiting}")
        return False
    try:
        profiles = ask_profiles(terminal)
        if APPRENTICE in profiles:
            terminal.say(NOT_BY_AN_APPRENTICE)
            return False
        terminal.say("What came of it? q leaves the visit closed.")
        result = ask_result(terminal, met, knowledge)
    except (EndOfInput, DangerCalled):
        result = None
    if result is None:
        terminal.say(
            "The visit stays closed: it is reopened only with all of the hand-over's result. "
            f"When you have it: troubleshoot reopen {book.visit_id}"
        )
        return False
    book.add({**reopened_event(hazard.id, result, spot), "profiles": list(profiles)})
    terminal.say(
        f"Reopened. The STOP still stands: {knowledge.tests[spot[0]].name} comes first and decides."
    )
    terminal.say("States that others could have changed are asked again.")
    return True


def _say_what_stopped(terminal: Terminal, book: VisitBook, hazard: Hazard) -> None:
    name = f", {book.state.name}," if book.state.name else ""
    reason = hazard.id.replace("-", " ")
    terminal.say(f"Visit {book.visit_id}{name} was stopped: {reason}.", strong=True)
    terminal.say(f"It was for: {hazard.defer_to}.", 2)
    for met in book.state.stops[-1:]:
        if met.told:
            terminal.say(f"Told: {met.told}", 2)
