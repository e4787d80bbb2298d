"""What is told at a test, beside the work, where hands may be in: it is asked about, or let be.

At a step whatever is told is asked about. A test asks many more things, so that there it has to
tell of a happening, or of what endangers work whatever it stands on.
"""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.safety.hearing.gone import something_happened, told_in_passing
from troubleshoot.visit.deciding.decision import Decision


def told_at_work(book: VisitBook, decision: Decision, typed: str) -> bool:
    """Whether it tells what may endanger work though no state stands on it.

    Somebody else at the unit, a jumper left on, a start by itself.
    """
    told = _hands_may_be_in(book, decision)
    return told and told_in_passing(book.knowledge, typed, book.state.name)


def happened_at_work(book: VisitBook, decision: Decision, typed: str) -> bool:
    """Whether it tells of something that happened, in words that no list holds."""
    return _hands_may_be_in(book, decision) and something_happened(typed, book.state.name)


def _hands_may_be_in(book: VisitBook, decision: Decision) -> bool:
    """Whether it is a test at a unit that is open, or not known to be on."""
    work = book.state.work
    return decision.step is None and not (work.panels == "on" and work.power == "on")
