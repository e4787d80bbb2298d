"""Readings that make up a proof prove it, at its own prompt and at any other.

Return less supply is the split; saturation at the head less the liquid line is subcooling, the
suction line less saturation at the suction is superheat (by the refrigerant's published tables).
"""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from tests.dialogue.proved_visit import ProvedVisit
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge, Proof
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.visit.events import Answered, Event, FactTold, Repaired, Started
from troubleshoot.visit.hearing.proof_read import NOT_READ, NOT_RIGHT, unproved

QUALIFIED = Started(complaint="weak-cooling", profiles=(*FULLY_QUALIFIED,))
FACTS = (
    FactTold("circuits", "1"), FactTold("refrigerant", "R-22"), FactTold("metering", "txv"),
    Answered("outdoor-temperature", text="88 F"),
)  # fmt: skip
COIL, SPLIT = "evaporator-coil-dirty", "Split back in band"
SUPERHEAT = "Superheat in band"
REPAIRED = Repaired(COIL)


def read(test: str, text: str) -> Answered:
    return Answered(test, text=text)


@pytest.mark.parametrize(
    ("events", "why"),
    [
        ((REPAIRED, read("return-air-temperature", "76 F"), read("supply-air-temperature", "57 F")),
         None),
        ((REPAIRED, read("return-air-temperature", "76 F"), read("supply-air-temperature", "70 F")),
         NOT_RIGHT),
        ((read("return-air-temperature", "76 F"), read("supply-air-temperature", "57 F"), REPAIRED),
         NOT_READ),
        ((read("return-air-temperature", "76 F"), REPAIRED, read("supply-air-temperature", "57 F")),
         NOT_READ),
    ],
)  # fmt: skip
def test_a_split_is_proved_by_return_and_supply_read_since(
    events: tuple[Event, ...], why: str | None, shipped: Knowledge
) -> None:
    book = book_of(shipped, (QUALIFIED, *FACTS, *events))
    assert unproved(shipped, book.state, shipped.faults[COIL], {}).get(SPLIT) == why


class ReadOut(ProvedVisit):
    """One proof is answered as gauges and clamps are read out."""

    line = ""

    def _read(self, proof: Proof) -> str:
        return self.line if proof.text == SUPERHEAT else super()._read(proof)


@pytest.mark.parametrize(
    ("line", "asked"), [("118 over 347 liq 97 sl 52", 1), ("sh 12", 1)]
)  # R-410A: 347 psig is 106.9 F, 118 psig 40.0 F
def test_what_the_gauges_give_proves_every_proof_made_of_it(
    line: str, asked: int, shipped: Knowledge
) -> None:
    """Regression: it was told to be normal, and asked for again for ever."""
    fault = shipped.faults["liquid-line-restriction"]
    visit = ReadOut(reasoner_of(shipped), shipped.typical_units["light-single-phase"], fault)
    visit.line = line
    visit.drive()
    assert visit.asked.count(SUPERHEAT) == asked
    assert visit.asked.count("Subcooling in band") == (0 if "over" in line else 1)
    assert not visit.not_proved().keys() & {SUPERHEAT, "Subcooling in band"}


def test_what_the_gauges_give_wrong_is_kept_as_the_proof(shipped: Knowledge) -> None:
    fault = shipped.faults["liquid-line-restriction"]
    visit = ReadOut(reasoner_of(shipped), shipped.typical_units["light-single-phase"], fault)
    visit.line = "118 over 347 liq 97 sl 85"
    visit.drive()
    assert dict(visit.state.repairs[0].proofs)[SUPERHEAT].startswith("45")
    assert visit.not_proved()[SUPERHEAT] == NOT_RIGHT
