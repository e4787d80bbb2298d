"""No ending calls a unit sound over a danger that was found and stands."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of
from troubleshoot.cli.screens.findings import show_ending
from troubleshoot.dialogue.prompts import Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.report import markdown_report
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started
from troubleshoot.visit.telling.whole_visit import visit_account

START = Started(routine=True, profiles=("technician",))
STAIN = Answered("walk-round", outcomes=("oil-stain", "nest"))


@pytest.mark.parametrize(("events", "stands"), [([START, STAIN], True), ([START], False)])
def test_what_stands_is_named_with_the_ending(
    events: list[Event], stands: bool, shipped: Knowledge
) -> None:
    """Regression: a round ended as if nothing was wrong with a STOP for a step on record."""
    state, reasoner = book_of(shipped, events).state, Decider(shipped).reasoner
    found, terminal = conclude_visit(reasoner, state), Lines()
    decision = Decision("ending", ending="nothing-wrong")
    show_ending(terminal, Settled(decision, found, ""))
    assert ("besides what stands" in terminal.text) == stands
    account = visit_account(shipped, state, found, ending="nothing-wrong")
    report = markdown_report(shipped, account)
    assert ("Nothing wrong was found besides what stands above." in report) == stands
