"""A right proof in the words of its own text proves; what they deny, or alone, does not."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Proof
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.stops.numbers_shown import numbers_in
from troubleshoot.visit.hearing.proof_read import why_unproved

KNOWLEDGE = load_shipped()
ON = read_unit(KNOWLEDGE, {"refrigerant": "R-410A", "charge": "8.25 lb", "supply-phase": "three"})
BLADES = ("damper-actuator-dead-or-no-signal", "Blades follow")
BUBBLES = ("access-valve-leaking", "No bubbles")
CHARGE = ("low-charge-from-leak", "Charge weighed")

POLES = ("contactor-pole-burnt-away", "Each pole under")

PROVED = {
    POLES: (".08 .09 .08", "0.08 0.09 0.08", ".08/.09/.08 V"),
    BLADES: (
        "blades follow and closed by spring", "watched: blades follow, spring closes",
        "blades follow both ways, close by spring with power off",
    ),
    BUBBLES: (
        "none, caps on and off", "no bubbles", "none", "bubbles none", "zero bubbles, caps off too",
        "locked out, none with the caps on and off",
    ),
    CHARGE: (
        "8 lb 4 oz as the data plate", "8lb 4oz as on the plate", "8 lb, 4 oz by the scale",
        "8 lb 4 oz by the scale, data plate says 8.25 lb",
    ),
}  # fmt: skip
NOTHING_PROVED = {
    POLES: (".5 .6 .5", ".08 .09"),
    BLADES: (
        "blades closed, dead", "power off", "power", "blades follow but stay open with power off",
        "blades follow, spring does not close them", "not closed by spring", "blades dont follow",
    ),
    BUBBLES: (
        "bubbles", "bubbles at the core", "a few bubbles", "caps on and off", "locked out",
        "no bubbles caps on, bubbles with caps off",
    ),
    CHARGE: ("7 lb 4 oz as the data plate", "8 lb", "8 lb 9 oz", "4 oz"),
}  # fmt: skip


def proof(fault: str, begins: str) -> Proof:
    proofs = KNOWLEDGE.faults[fault].proof
    return next(each for each in proofs if each.text.startswith(begins))


@pytest.mark.parametrize(
    ("asked", "typed"), [(asked, typed) for asked, all_ in PROVED.items() for typed in all_]
)
def test_a_right_proof_is_taken_in_its_own_words(asked: tuple[str, str], typed: str) -> None:
    """Regression: each of these was filed as a repair that is not proved."""
    assert why_unproved(KNOWLEDGE, ON, proof(*asked), typed) == ""


@pytest.mark.parametrize(
    ("asked", "typed"), [(asked, typed) for asked, all_ in NOTHING_PROVED.items() for typed in all_]
)
def test_what_is_not_right_is_refused_in_them(asked: tuple[str, str], typed: str) -> None:
    assert why_unproved(KNOWLEDGE, ON, proof(*asked), typed)


def test_a_number_in_two_parts_is_one() -> None:
    """8 lb 4 oz was 4 oz besides; two numbers of one unit stay two."""
    assert [*numbers_in("8 lb 4 oz as the plate", ("lb",))] == [("8 lb 4 oz", "lb")]
    assert [*numbers_in("0 ppm 40 ppm", ("ppm",))] == [("0 ppm", "ppm"), ("40 ppm", "ppm")]
