"""The end of a visit: a repair that is proved, and the unit that is back as it was."""

from __future__ import annotations

from troubleshoot.cli.terminal import Leave, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Fault
from troubleshoot.visit.decision import Decision


def repaired(book: VisitBook, terminal: Terminal, fault: Fault) -> None:
    """Write down what proves a repair, and whether the complaint has gone with it."""
    for proof in fault.proof:
        terminal.say(f"Proof: {proof.text}. What did you read?")
        reading = terminal.ask(">")
        book.add({"event": "proof", "reason": proof.text, "text": reading})
    terminal.say("Is the complaint still there? (y/n)")
    answer = terminal.ask(">")
    book.add({"event": "repaired", "fault": fault.id, "words": answer})
    if not answer.lower().startswith("y"):
        book.add({"event": "closing", "cured": True})


def closed(book: VisitBook, terminal: Terminal, decision: Decision) -> bool:
    """Close the visit, which ends it: False. One whose way back is beyond this person is kept.

    Raises Leave.
    """
    for step, phrase in decision.handed_over:
        terminal.say(f"{book.knowledge.tests[step].name} is beyond you: {phrase}.")
        raise Leave
    book.add({"event": "end", "ending": "closed"})
    terminal.say(
        f"The unit stays off and locked: {decision.reason}. The visit is closed."
        if decision.reason
        else "The unit is back as it was. The visit is closed."
    )
    terminal.say(f"Report: troubleshoot report {book.visit_id}")
    return False
