"""A proof that was read and is not right leads back to the tests, whatever the complaint does."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.mended import at_the_open_unit, mended
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import BACK_TO_THE_TESTS, STILL_THERE, close, prove
from troubleshoot.dialogue.proof_dangers import A_DANGER, A_LEG_IS_GONE, LEGS_APART
from troubleshoot.dialogue.repairing import repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.steps import LOCKOUT, ROOF, STOP_BY_CONTROLS, TELL_OCCUPANTS
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Closing, FactTold, Resumed, Started, StepDone
from troubleshoot.visit.hearing.proof_read import lacking_of

START = Started(complaint="weak-cooling", profiles=(*FULLY_QUALIFIED,))
THREE = (
    FactTold("supply-phase", "three"),
    FactTold("compressor-phase", "three"),
    FactTold("compressor-rla", None),
    FactTold("compressor-lra", None),
)
FAULT = "contactor-pole-burnt-away"


def at_the_amps(shipped: Knowledge) -> VisitBook:
    """A visit behind an open panel with the unit running, where the legs are read."""
    return at_the_open_unit(shipped, START, *THREE, test="compressor-amps")


def said_repaired(book: VisitBook, shipped: Knowledge, *typed: str) -> Lines:
    terminal = Lines(*typed)
    held(shipped, terminal, lambda voice: mended(book, voice, shipped.faults[FAULT]))
    return terminal


@pytest.mark.parametrize("locked_rotor", [None, "60 A"])
@pytest.mark.parametrize("typed", ["18.2/2.1/19.5 A", "9.1, 4.0, 9.3", "0/9.1/9.0 A"])
def test_a_leg_that_is_gone_ends_the_proofs_and_stops_the_unit(
    typed: str, locked_rotor: str | None, shipped: Knowledge
) -> None:
    """Regression: the next live proof was asked, on two legs."""
    book = at_the_amps(shipped)
    book.add(FactTold("compressor-lra", locked_rotor))
    terminal = said_repaired(book, shipped, typed)
    assert A_LEG_IS_GONE in terminal.text and STILL_THERE.question not in str(terminal.asked)
    assert not book.state.closing and not book.state.cured
    assert "compressor-amps" in {answer.test for answer in book.state.answers}
    found = conclude_visit(Decider(shipped).reasoner, book.state)
    assert "motor-on-bad-supply" in {fired.hazard.id for fired in found.hazards}
    first = Decider(shipped).decide(book.state)
    assert first.step is not None and first.step.id == STOP_BY_CONTROLS
    book.add(StepDone.of(first.step, (CONFIRMED[first.step.id],)))
    test = Decider(shipped).decide(book.state).test
    assert test is not None and not test.work_state.startswith("running")


def test_after_a_break_the_roof_and_the_people_come_before_that_stop(shipped: Knowledge) -> None:
    """Regression: the step to stop the unit was shown an hour after anybody had seen the roof."""
    book = at_the_amps(shipped)
    said_repaired(book, shipped, "18.2/2.1/19.5 A")
    book.add(Resumed(minutes_away=45.0, same_day=True))
    shown: list[str] = []
    while STOP_BY_CONTROLS not in shown:
        step = Decider(shipped).decide(book.state).step
        assert step is not None and len(shown) < len(CONFIRMED)
        shown.append(step.id)
        book.add(StepDone.of(step, (CONFIRMED[step.id],)))
    assert shown[:2] == [ROOF, TELL_OCCUPANTS]
    assert LOCKOUT not in shown


@pytest.mark.parametrize("still", ["n", "y"])
def test_a_proof_read_bad_is_not_cured(still: str, shipped: Knowledge) -> None:
    """Regression: 5 V across a pole was "not proved", and the unit went back into service."""
    book = at_the_amps(shipped)
    typed = ("9.1/9.0/9.2 A", "5 V, 0.1, 0.1", "", "")
    terminal = said_repaired(book, shipped, *typed, still)
    assert "Not proved, read, and not as it has to be: Each pole" in terminal.text
    assert BACK_TO_THE_TESTS in terminal.text
    assert not book.state.closing and not book.state.cured
    assert Decider(shipped).decide(book.state).kind in ("ask", "step", "ending")


def test_a_pole_that_does_not_close_ends_the_proofs(shipped: Knowledge) -> None:
    """A three-phase motor on two legs burns: 90 V across a pole is no matter for the next proof."""
    book = at_the_amps(shipped)
    terminal = said_repaired(book, shipped, "9.1/9.0/9.2 A", "90 V, 0.1, 0.1")
    assert A_DANGER in terminal.text
    assert not book.state.closing and not book.state.cured


def test_nothing_is_started_to_prove_more_once_one_is_bad(shipped: Knowledge) -> None:
    book = at_the_open_unit(shipped, START, *THREE, test="contactor-contacts")
    terminal = said_repaired(book, shipped, "OL/0.4/OL ohm", "", "n")
    assert BACK_TO_THE_TESTS in terminal.text
    assert book.state.work.power == "locked-out"


def test_who_closes_all_the_same_is_told_that_it_is_not_proved(shipped: Knowledge) -> None:
    book = at_the_amps(shipped)
    said_repaired(book, shipped, "9.1/9.0/9.2 A", "90 V, 0.1, 0.1", "", "", "n")
    book.add(Closing())
    decider, voice = Decider(shipped), Voice()
    found = conclude_visit(decider.reasoner, book.state)
    close(book, voice, decider.decide(book.state, found), found)
    assert "The repair is not proved, read, and not as it has to be: Each pole" in str(
        voice.heard()
    )


WINDINGS, INSULATION = "Windings read right on a cold shell", "Windings at 1 Mohm or more to ground"


def at_the_windings(shipped: Knowledge) -> VisitBook:
    return at_the_open_unit(shipped, START, *THREE, test="compressor-windings")


def stops_of(book: VisitBook, shipped: Knowledge) -> set[str]:
    found = conclude_visit(Decider(shipped).reasoner, book.state)
    return {fired.hazard.id for fired in found.hazards if fired.stops}


@pytest.mark.parametrize(
    "typed",
    [
        "T1 to ground 0 ohm", "windings good, T1 to ground 40 ohm", "megger reads 5 kohm to ground",
        "windings 1.1 1.1 1.1 ohm, 2 ohm to ground", "1.1/1.1/1.1 ohm, all to ground 4 kohm",
    ],
)  # fmt: skip
def test_a_grounded_winding_told_at_a_proof_stops_the_job(typed: str, shipped: Knowledge) -> None:
    """Regression: a short to ground was taken for windings that are sound, and power went on."""
    book = at_the_windings(shipped)
    terminal = said_repaired(book, shipped, typed)
    assert A_DANGER in terminal.text and len(terminal.asked) == 1
    assert "compressor-terminal-venting" in stops_of(book, shipped)
    assert [a.test for a in book.state.answers][-1] == "compressor-insulation"
    assert not book.state.closing and not book.state.cured


def test_windings_and_insulation_are_proved_by_two_readings(shipped: Knowledge) -> None:
    book = at_the_windings(shipped)
    said_repaired(book, shipped, "1.1/1.1/1.1 ohm", "200 Mohm")
    lacking = lacking_of(shipped, book.state)
    assert {WINDINGS, INSULATION} <= {what for what, _ in book.state.repairs[-1].proofs}
    assert {WINDINGS, INSULATION}.isdisjoint(lacking)


def read_for(book: VisitBook, shipped: Knowledge, fault: str, text: str, *typed: str) -> Lines:
    """One proof read, whichever would come next."""
    proof = next(each for each in shipped.faults[fault].proof if each.text == text)
    terminal, decision = Lines(*typed), Decision("prove", proof=proof)

    def part(voice: Voice) -> Talk[None]:
        repaired(book, voice, shipped.faults[fault])
        return (yield from prove(book, voice, Decider(shipped).reasoner, decision))

    held(shipped, terminal, part)
    return terminal


@pytest.mark.parametrize(
    ("text", "typed"),
    [
        ("No leak on the sweep", "12 % LEL at the valve union"),
        ("Lights at the first try", "lit, but 12 % LEL at the union"),
    ],
)
def test_gas_read_at_a_proof_stops_the_job_at_once(
    text: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: it was asked whether somebody is in danger, and n led on to the next proof."""
    start = Started(complaint="no-heat", profiles=(*FULLY_QUALIFIED,))
    book = book_of(shipped, [start, FactTold("heat", "gas")])
    terminal = read_for(book, shipped, "gas-shut-off-or-tank-empty", text, typed)
    assert len(terminal.asked) == 1
    assert Decider(shipped).decide(book.state).kind == "stop"


def test_legs_far_apart_end_the_proofs_and_call_up_their_hazard(shipped: Knowledge) -> None:
    """Regression: with 12 A beside 18 A the next proof was asked for, live."""
    book = at_the_amps(shipped)
    terminal = said_repaired(book, shipped, "18.1/12/18.3 A")
    assert LEGS_APART in terminal.text and len(terminal.asked) == 1
    assert "motor-on-bad-supply" in stops_of(book, shipped)
    assert not book.state.closing and not book.state.cured
