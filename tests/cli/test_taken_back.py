"""`rules new`: u takes back what is in hand, and nothing that was told before it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from troubleshoot.authoring.draft import Draft
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.workshop.asker import Asker
from troubleshoot.cli.workshop.card_choices import choose_finding
from troubleshoot.cli.workshop.card_questions import QUESTIONS
from troubleshoot.knowledge.model import Finding, Knowledge

Typed = Callable[..., None]
MATTED = ("coil face", "2", "matted", "1")


def test_u_at_an_outcome_asks_for_the_test_again(shipped: Knowledge, typed: Typed) -> None:
    """Regression: it went back over the repair, which was asked anew with its four parts."""
    typed("filters", "1", "u", "head pressure", "1", "high")
    found = choose_finding(Asker(Terminal()), shipped)
    assert found == Finding("head-pressure", ("high",))


@pytest.mark.parametrize("in_hand", [("head pressure", "1", "u"), ("head pressure", "1", "2", "u")])
def test_u_in_an_answer_keeps_the_one_before_it(
    in_hand: tuple[str, ...], shipped: Knowledge, typed: Typed
) -> None:
    """Regression: "The last one is taken back" took the one that had been told."""
    typed(*MATTED, *in_hand, "")
    (seen,) = (each for each in QUESTIONS if each.called == "What shows")
    draft = seen.ask(Asker(Terminal()), shipped, Draft())
    assert [item.findings for item in draft.seen] == [
        (Finding("condenser-coil-face", ("matted",)),),
    ]  # fmt: skip


def test_u_before_an_answer_takes_back_the_one_before(shipped: Knowledge, typed: Typed) -> None:
    typed(*MATTED, "filters", "1", "2", "2", "u", "")
    (seen,) = (each for each in QUESTIONS if each.called == "What shows")
    assert len(seen.ask(Asker(Terminal()), shipped, Draft()).seen) == 1
