"""What answers a question about the flue is flue gas, with the flue's own limits.

400 ppm air-free is the most a vented furnace may show to be certified (ANSI Z21.47), 9 ppm the
limit of air that people breathe (EPA, 8 hours): the one is never judged by the other.
"""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.visit.deciding.test_stops import UNIT
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import prove
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.dangers import told_at
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import PANELS_ON, RESTART
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.deciding.proving import can_be_read
from troubleshoot.visit.events import Closing, ProofRead, Repaired, Skipped, Started, StepDone

MENDED = "vent-blocked"
FLUE = "Flue under the unit's limit"
DRAFT = "Draft beats the set point by 0.1 in wc"
FURNACE = {**UNIT, "heat": "gas", "fuel": "natural-gas", "draft": "induced"}


def at_the_proof(shipped: Knowledge, *typed: str) -> tuple[VisitBook, str]:
    """What is said to readings at the flue's proof, the unit closed up and alight."""
    book = book_of(shipped, [Started(complaint="no-heat", unit=FURNACE)])
    while steps := steps_before(book.state, shipped.tests["flue-gas-analysis"], None):
        book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
    book.add(Repaired(MENDED))
    proof = next(each for each in shipped.faults[MENDED].proof if each.text == FLUE)
    decider = Decider(shipped)

    def part(voice: Voice) -> Talk[None]:
        telling = Telling(book, voice, decider.reasoner)
        voice.readings = ReadingOut(book, voice, decider, telling).take_beside
        yield from prove(book, voice, decider.reasoner, Decision("prove", proof=proof))

    terminal = Lines(*typed)
    held(shipped, terminal, part)
    return book, terminal.text


@pytest.mark.parametrize(
    "typed",
    ["CO 40 ppm, O2 7.5 %", "flue CO 40 ppm O2 7.5", "co 40 ppm, o2 7.5", "O2 7.5 CO 40 ppm",
     "carbon monoxide 40 ppm at 7.5 % oxygen", "analyzer says CO 40 ppm, O2 7.5 %"],
)  # fmt: skip
def test_flue_gas_under_its_limit_proves_the_flue(typed: str, shipped: Knowledge) -> None:
    """Regression: it stopped the whole job as carbon monoxide that people breathe."""
    book, said = at_the_proof(shipped, typed)
    assert "Not proved" not in said
    assert dict(book.state.repairs[-1].proofs)[FLUE] == typed


@pytest.mark.parametrize(
    "typed",
    ["CO 40 ppm in the room", "my monitor says CO 40 ppm", "CO 40 ppm on my clip-on",
     "co 40 ppm in the supply air", "CO monitor shows 40 ppm", "CO 40 PPM IN THE ROOM"],
)  # fmt: skip
def test_what_speaks_of_air_people_breathe_stops_the_job_there_too(
    typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(DangerCalled):
        at_the_proof(shipped, typed)


@pytest.mark.parametrize(
    ("typed", "calls_up"),
    [("CO 150 ppm, O2 7.5 %", "flue-carbon-monoxide-high"),
     ("CO 450 ppm, O2 7.5 %", "flue-carbon-monoxide-extreme")],
)  # fmt: skip
def test_flue_gas_over_its_limit_is_a_danger_of_the_flue(
    typed: str, calls_up: str, shipped: Knowledge
) -> None:
    book, said = at_the_proof(shipped, typed)
    assert "That reading calls up a danger" in said
    found = Decider(shipped).reasoner.conclude(book.state.case).hazards
    names = {fired.hazard.id for fired in found}
    assert calls_up in names and "carbon-monoxide-in-room" not in names


def test_the_question_itself_says_what_a_number_is_of(shipped: Knowledge) -> None:
    test = shipped.tests["flue-carbon-monoxide"]
    listener = Listener(shipped, Voice(), asked=test)
    assert told_at(shipped, test, "CO 40 ppm") == ()
    listener.hear("CO 40 ppm, O2 7.5 %")
    with pytest.raises(DangerCalled):
        listener.hear("CO 40 ppm, smoke from the control panel")
    with pytest.raises(DangerCalled):
        listener.hear("room CO 40 ppm")
    with pytest.raises(DangerCalled):
        Listener(shipped, Voice()).hear("CO 40 ppm")


def test_the_panels_are_on_again_before_flue_gas_is_read(shipped: Knowledge) -> None:
    """Regression: it was asked at the open panel, where no reading of it was taken."""
    book = book_of(shipped, [Started(complaint="no-heat", unit=FURNACE)])
    while steps := steps_before(book.state, shipped.tests["draft-at-pressure-switch"], None):
        book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
    book.add(Repaired(MENDED), ProofRead("Open, hood and screen on", "clear"))
    book.add(ProofRead(DRAFT, "0.8 in"), Closing())
    decider = Decider(shipped)
    proof = next(each for each in shipped.faults[MENDED].proof if each.text == FLUE)
    assert book.state.work.panels == "off" and not can_be_read(shipped, book.state, proof)
    told = []
    while (decision := decider.decide(book.state)).proof is None:
        if decision.step is None:  # what judges the proof is asked before, and may be gone without
            assert decision.test is not None
            book.add(Skipped.over(decision.test.id, None))
        else:
            told.append(decision.step.id)
            book.add(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert decision.proof.text == FLUE
    assert {PANELS_ON, RESTART} <= {*told} and book.state.work.panels == "on"
