"""The orders that come first are those of what is happening, not of what it is near to.

A trainer's first run: somebody held by a contactor was told of a welded contactor, whoever lay
under a ladder to climb with three points on it, and a ladder on a line to be kept 10 ft away.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
HELD, WELDED = "held-by-current", "contactor-will-not-open"
FELL, LADDER = "somebody-fell", "ladder-and-hatch"
TOUCHED, NEAR = "line-down-or-touched", "overhead-line-near"
GAS, WET, VOLTS, SMOKE = "gas-odour", "wet-electrical", "unexplained-voltage", "smoke-or-heat-now"

FIRST = [
    (HELD, "my mate is hung up on the contactor and cant let go"),
    (HELD, "he is stuck on the contactor and cannot let go"),
    (HELD, "im hung up on the contactor and cant let go"),
    (HELD, "hand is hung on the contactor and wont come off"),
    (HELD, "buddy froze to the lug"),
    (WELDED, "contactor will not let go"),
    (WELDED, "my partner says the contactor cant let go"),
    (FELL, "ladder kicked out and Im lying on the ground"),
    (FELL, "ladder slid out and my partner is laying on the ground"),
    (FELL, "ladder slipped from under me and I am on the ground"),
    (FELL, "ladder kicked out and he hit the deck"),
    (FELL, "the ladder went and I landed on my back"),
    (FELL, "ladder kicked out and he is on the ground and not moving"),
    (LADDER, "ladder slipped but I am ok"),
    (LADDER, "ladder kicked out while nobody was on it"),
    (LADDER, "ladder fell and is lying on the ground"),
    (LADDER, "ladder is gone and we're stuck up here"),
    (TOUCHED, "tip of my aluminium ladder is touching the power line"),
    (TOUCHED, "my ladder is leaning on the power line"),
    (TOUCHED, "the ladder is on the wires"),
    (TOUCHED, "pole is against the power line"),
    (TOUCHED, "conduit is touching the overhead wires"),
    (TOUCHED, "power line touches the unit"),
    (TOUCHED, "the roofer touched the power line"),
    (TOUCHED, "power line came down"),
    (TOUCHED, "power line down"),
    (TOUCHED, "power line is lying on the roof"),
    (TOUCHED, "my ladder is on the power line"),
    (NEAR, "ladder is about to touch the power line"),
    (NEAR, "ladder nearly touched the power line"),
    (NEAR, "the boom is about to touch the power line"),
    (NEAR, "the ladder is close to the power line"),
    (GAS, "my sniffer is going crazy round the manifold"),
    (GAS, "sniffer is going nuts at the gas valve"),
    (GAS, "sniffer is pegged at the union"),
    (WET, "standing water in the bottom of the disconnect"),
    (WET, "an inch of water at the bottom of the panel"),
    (VOLTS, "tingle off the door every time I touch it"),
    (SMOKE, "control board just caught"),
]  # fmt: skip
NEAR_TO_IT = [
    "the contactor is hung up in a box at the shop", "belt is hung up on the pulley",
    "ladder is leaning on the parapet", "the ladder was touching the gutter",
    "ladder left lying on the ground by the truck", "sniffer is in the truck",
    "sniffer passed its bump test at the manifold",
    "standing water in the drain pan", "standing water on the roof by the disconnect",
    "no water in the disconnect", "control board just caught my eye",
    "the gas line touches the conduit", "the power went down, line side is covered",
    "line voltage is down on the unit", "power is off at the unit, line side is covered",
    "turned the power on at the unit, liquid line came up warm",
]  # fmt: skip


@pytest.mark.parametrize(("hazard", "typed"), FIRST)
def test_it_is_told_first_at_any_prompt(hazard: str, typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed)[0].id == hazard
    assert reported(KNOWLEDGE, typed)[0].id == hazard
    assert hazard in [each.id for each in told_among(KNOWLEDGE, typed)]


@pytest.mark.parametrize("typed", NEAR_TO_IT)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize(
    ("typed", "other"),
    [
        ("my mate is hung up on the contactor and cant let go", WELDED),
        ("ladder kicked out and Im lying on the ground", LADDER),
        ("tip of my aluminium ladder is touching the power line", NEAR),
    ],
)
def test_orders_that_would_hurt_are_not_told_beside_them(typed: str, other: str) -> None:
    told = [*spoken_of(KNOWLEDGE, typed), *reported(KNOWLEDGE, typed)]
    assert other not in [hazard.id for hazard in told]


@pytest.mark.parametrize(
    "typed", ["sniffer goes wild at the flare", "my sniffer is going crazy round the coil"]
)
def test_a_sniffer_that_answers_anywhere_is_asked_about(typed: str) -> None:
    assert hints(typed)


def test_what_touches_a_line_is_left_where_it_is() -> None:
    """35 ft and the shuffle: as for a machine on a line, from memory of OSHA's and utilities'."""
    orders = KNOWLEDGE.hazards[TOUCHED].what_to_do
    assert orders.startswith("Do not touch what is on the line, and do not move it")
    for words in ("short shuffling steps, feet together", "nobody within 35 ft", "Call 911 and"):
        assert words in orders
    assert KNOWLEDGE.hazards[NEAR].what_to_do.startswith("About to touch:")
