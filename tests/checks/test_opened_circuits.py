"""What a repair that opens a refrigerant circuit says: a new drier, a watch after the torch.

A drier that has stood open to the air is full of water and is replaced, never cleaned (common
practice, no source). A fire watch goes on for an hour after hot work by NFPA 51B since its edition
of 2019, for half an hour by 29 CFR 1910.252(a)(2)(iii)(B); both from memory, the stricter taken.
"""

from __future__ import annotations

import re

import pytest

from troubleshoot.knowledge.load import load_shipped

CARDS = load_shipped().faults
OPENS = re.compile(r"\bevacuate|\bbrazed\b|replace the compressor|valve .*is replaced")
"""Words of a repair after which the circuit has been open."""
OPENED = sorted(
    name
    for name, card in CARDS.items()
    if "refrigerant" in card.repair.who and OPENS.search(card.repair.what)
)


@pytest.mark.parametrize("card", OPENED)
def test_whatever_opens_a_circuit_leaves_a_new_drier_in_it(card: str) -> None:
    """Regression: "Clean the drier", and of low charge and a leaking coil nothing of one."""
    said = r"\b(new|clean-up) driers?\b|drier with a new one"
    assert re.search(said, CARDS[card].repair.what)


def test_no_drier_is_ever_cleaned() -> None:
    told = [
        name
        for name, card in CARDS.items()
        if re.search(r"clean the drier", card.repair.what.lower())
    ]
    assert told == []


def test_whoever_brazes_is_told_of_the_watch_and_of_what_still_burns() -> None:
    hazard = load_shipped().hazards["brazing"]
    assert "an hour after" in hazard.what_to_do and "half an hour" not in hazard.what_to_do
    assert "blow through with nitrogen" in hazard.what_to_do
    told = {trigger.fault for trigger in hazard.triggers}
    brazed = {name for name, card in CARDS.items() if "brazed" in card.repair.what}
    assert brazed <= told


def test_what_a_supply_has_to_prove_can_be_had_from_a_supply() -> None:
    """1 % is the line of NEMA MG 1 without derating; ANSI C84.1 lets 3 % come at no load."""
    proofs = [p.finding for p in CARDS["supply-voltage-unbalanced"].proof if p.finding is not None]
    volts = [p.outcomes for p in proofs if p.test == "voltage-unbalance"]
    assert volts and all("marginal" in outcomes for outcomes in volts)


def test_a_sensor_of_a_refrigerant_that_burns_is_for_who_is_certified_and_trained() -> None:
    who = CARDS["leak-sensor-fault-or-end-of-life"].repair
    assert who.who_rule == "all" and {*who.who} == {"refrigerant", "technician"}


def test_three_starts_are_three_starts_of_a_second() -> None:
    said = [p.text for card in CARDS.values() for p in card.proof]
    assert not [text for text in said if "three times within a second" in text]
