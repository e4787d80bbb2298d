"""Whoever is about to repair is led to what has to stand before hands go in, and proves it after.

Locked and tagged, proved dead and discharged (29 CFR 1910.147 and 1910.333, from memory).
"""

from __future__ import annotations

import pytest

from tests.dialogue.mended import at_the_open_unit
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.repairing import READY, TO_BE_REPAIRED, about_to_repair, repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.before_repair import LIVE
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Closing, FactTold, Started, StepDone, Undone
from troubleshoot.visit.events.codec import event_of, record_of
from troubleshoot.visit.events.replaying import replay

QUALIFIED = Started(complaint="no-cooling", profiles=(*FULLY_QUALIFIED,))
ONE_CIRCUIT, GAS = FactTold("circuits", "1"), FactTold("heat", "gas")
LIVE_OPEN = "transformer-secondary-volts"


def led(shipped: Knowledge, fault: str, *facts: FactTold) -> tuple[VisitBook, list[str]]:
    """The visit once its repair may be done, and the steps that led there from a live open unit."""
    book, voice, done = at_the_open_unit(shipped, QUALIFIED, *facts, test=LIVE_OPEN), Voice(), []
    about_to_repair(book, voice, shipped.faults[fault], "")
    decider = Decider(shipped)
    while (decision := decider.decide(book.state)).step is not None:
        done.append(decision.step.id)
        book.add(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert decision.kind == "ending"
    return book, done


@pytest.mark.parametrize(
    ("fault", "brings"),
    [
        ("control-transformer-open", {"lockout", "verified-dead"}),
        ("condenser-fan-capacitor-weak", {"lockout", "verified-dead"}),
        ("low-charge-from-leak", {"lockout", "verified-dead", "charge-recovered"}),
        ("gas-valve-failed", {"lockout", "verified-dead", "gas-cock-shut"}),
    ],
)
def test_it_is_led_to_what_its_card_wants(fault: str, brings: set[str], shipped: Knowledge) -> None:
    """Regression: a cause was named with the unit live, and repaired was the only word."""
    book, done = led(shipped, fault, ONE_CIRCUIT, GAS)
    assert brings <= {*done}
    work = book.state.work
    assert (work.power, work.dead) == ("locked-out", "proved")
    repaired(book, voice := Voice(), shipped.faults[fault])
    assert LIVE not in str(voice.heard()) and not book.state.repairs[-1].live
    assert "proved dead" not in str(voice.heard())


def test_what_is_done_from_outside_or_by_others_is_led_to_nothing(shipped: Knowledge) -> None:
    book, done = led(shipped, "setpoint-or-mode-changed")
    assert not done and book.state.work.power == "on"


def test_it_is_said_once_that_all_stands_and_taken_back_by_undo(shipped: Knowledge) -> None:
    book, _ = led(shipped, "control-transformer-open")
    about_to_repair(book, voice := Voice(), shipped.faults["control-transformer-open"], "")
    assert READY in str(voice.heard()) and TO_BE_REPAIRED not in str(voice.heard())
    assert replay(shipped, [*book.events, Closing()]).repair_wanted is None
    begun = at_the_open_unit(shipped, QUALIFIED, test=LIVE_OPEN)
    about_to_repair(begun, Voice(), shipped.faults["control-transformer-open"], "")
    assert replay(shipped, [*begun.events, Undone()]).repair_wanted is None


def test_it_is_kept_in_the_journal(shipped: Knowledge) -> None:
    book = at_the_open_unit(shipped, QUALIFIED, test=LIVE_OPEN)
    about_to_repair(book, Voice(), shipped.faults["control-transformer-open"], "")
    assert event_of(record_of(book.events[-1])) == book.events[-1]
