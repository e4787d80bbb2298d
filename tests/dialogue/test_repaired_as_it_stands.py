"""What the record says of the unit when a repair is said: live, or with leads that may be off."""

from __future__ import annotations

import pytest

from tests.dialogue.mended import at_the_open_unit
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.repairing import repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.before_repair import LIVE
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import (
    ARC_CLOTHING,
    LEADS_BACK,
    LOCK_OFF,
    PANELS_ON,
    RESTART,
    SECOND_PERSON,
)
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, FactTold, ProofRead, Started, StepDone, Undone
from troubleshoot.visit.events.replaying import replay
from troubleshoot.visit.kept.understanding import Understanding
from troubleshoot.visit.telling.kept_visit import kept_account

QUALIFIED = Started(complaint="no-cooling", profiles=(*FULLY_QUALIFIED,))
DEAD, LIVE_OPEN = "contactor-contacts", "transformer-secondary-volts"


def said_repaired(shipped: Knowledge, fault: str, *, at: str) -> tuple[VisitBook, str]:
    book, voice = at_the_open_unit(shipped, QUALIFIED, test=at), Voice()
    repaired(book, voice, shipped.faults[fault])
    return book, str(voice.heard())


def steps_back(shipped: Knowledge, book: VisitBook) -> list[str]:
    """The steps until the unit is back, its proofs left unread."""
    done, decider = [], Decider(shipped)
    while (decision := decider.decide(book.state)).kind in ("step", "prove"):
        if decision.proof is not None:
            book.add(ProofRead(decision.proof.text, ""))
        elif decision.step is None:
            break
        else:
            done.append(decision.step.id)
            book.add(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    return done


@pytest.mark.parametrize(
    ("fault", "is_asked"),
    [
        ("control-transformer-open", True), ("flame-rod-dirty", True),
        ("contactor-pole-burnt-away", True), ("filters-loaded", False),
        ("condenser-coil-dirty", False), ("blower-belt-broken", False),
        ("setpoint-or-mode-changed", False),
    ],
)  # fmt: skip
def test_leads_of_a_part_that_was_changed_dead_are_looked_for(
    fault: str, is_asked: bool, shipped: Knowledge
) -> None:
    """Regression: a transformer was changed, and nothing had every lead put back before power."""
    book, _ = said_repaired(shipped, fault, at=DEAD)
    steps = steps_back(shipped, book)
    assert (LEADS_BACK in steps) is is_asked
    assert LEADS_BACK not in steps or steps.index(LEADS_BACK) < steps.index(LOCK_OFF)


def test_leads_stay_looked_for_when_the_repair_is_taken_back(shipped: Knowledge) -> None:
    book, _ = said_repaired(shipped, "control-transformer-open", at=DEAD)
    then = replay(shipped, [*book.events, Undone()])
    assert not then.repairs and then.work.leads_off


@pytest.mark.parametrize(
    ("fault", "at", "told"),
    [
        ("control-transformer-open", LIVE_OPEN, True), ("blower-belt-broken", LIVE_OPEN, True),
        ("control-transformer-open", DEAD, False), ("manifold-pressure-low", LIVE_OPEN, False),
        ("supply-voltage-low", LIVE_OPEN, False),
    ],
)  # fmt: skip
def test_a_repair_said_of_a_live_open_unit_is_told_so_and_stays_open(
    fault: str, at: str, told: bool, shipped: Knowledge
) -> None:
    """Regression: it was accepted without a word, and only then the unit was to be locked out."""
    book, said = said_repaired(shipped, fault, at=at)
    assert (LIVE in said) is told
    _, extras = kept_account(shipped, "2026-11-26-1", book.state, Understanding())
    line = f"{LIVE}: {shipped.faults[fault].name}"
    assert [each for each in extras["open_items"] if each.startswith(LIVE)] == [line] * told


def test_at_480_volts_a_live_proof_is_led_to_with_the_panel_off_dressed_and_called(
    shipped: Knowledge,
) -> None:
    """Regression: what was put on before the repair counted after it, and nothing was called."""
    at_480 = FactTold("nameplate-volts", "480 V")
    book = at_the_open_unit(shipped, QUALIFIED, at_480, test=LIVE_OPEN)
    while steps := steps_before(book.state, shipped.tests[DEAD], None):
        book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
    repaired(book, Voice(), shipped.faults["control-transformer-open"])
    decider, done = Decider(shipped), []
    while (decision := decider.decide(book.state)).proof is None or not decision.cautions:
        if decision.proof is not None:
            book.add(ProofRead(decision.proof.text, ""))
            continue
        assert decision.step is not None
        done.append(decision.step.id)
        book.add(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert decision.proof.text == "24 to 28 V with everything called in"
    assert book.state.work.panels == "off" and PANELS_ON not in done
    on = done.index(LOCK_OFF)
    assert {SECOND_PERSON, ARC_CLOTHING, LEADS_BACK} <= {*done[:on]}
    assert RESTART in done[on:]


@pytest.mark.parametrize(
    ("fault", "live", "first"),
    [
        ("transformer-on-wrong-tap", "transformer-primary-and-tap", True),
        ("control-transformer-open", "transformer-secondary-volts", False),
    ],
)
def test_only_what_is_not_started_is_read_live_before_a_fan_that_stood_still(
    fault: str, live: str, first: bool, shipped: Knowledge
) -> None:
    """Regression: with a finding to take afresh the panel went on before every live proof."""
    book = at_the_open_unit(shipped, QUALIFIED, test="condenser-fan-turning")
    book.add(Answered("condenser-fan-turning", outcomes=("stopped",)))
    while steps := steps_before(book.state, shipped.tests[DEAD], None):
        book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
    repaired(book, Voice(), shipped.faults[fault])
    decider = Decider(shipped)
    while (decision := decider.decide(book.state)).kind in ("step", "prove"):
        if decision.proof is not None and book.state.work.power == "locked-out":
            book.add(ProofRead(decision.proof.text, ""))  # what is read dead comes before both
            continue
        if decision.step is None:
            break
        assert not first or decision.step.id not in (PANELS_ON, RESTART)
        book.add(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert decision.test is not None
    assert decision.test.id == (live if first else "condenser-fan-turning")
