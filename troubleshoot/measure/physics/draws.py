"""Units, days and faults, drawn by a seed: with one fault, with two, with none."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.measure.physics.cards import COOLING, HEATING, Mode, cards_of
from troubleshoot.physics.knobs import Day, Faults
from troubleshoot.physics.sizing import Design, Nameplate

ROUND: Final[tuple[tuple[tuple[str, ...], Mode], ...]] = (
    *(((card,), "cooling") for card in COOLING),
    *(((card,), "heating") for card in HEATING),
    ((), "cooling"),
    ((), "cooling"),
    ((), "heating"),
)  # fmt: skip
"""Each card in its turn, and three units with nothing wrong."""


@frozen
class Drawn:
    """A unit with what is wrong with it, on a day; no `cards` where nothing is."""

    plate: Nameplate
    cards: tuple[str, ...]
    mode: Mode
    faults: Faults
    day: Day


def a_plate(dice: random.Random) -> Nameplate:
    """A packaged unit of 3 to 25 tons, of any age."""
    refrigerant = dice.choice(("R-410A", "R-410A", "R-22", "R-32", "R-454B"))
    tons = dice.choice((3.0, 4.0, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0))
    single = tons <= 5 and dice.random() < 0.5
    older = refrigerant == "R-22"
    over = dice.uniform(13, 17) if older else dice.uniform(9, 13)
    design = Design(
        dice.uniform(6.5, 8.5) if older else dice.uniform(7.5, 10.5),
        over,
        dice.uniform(5, 7),
        dice.uniform(4.5, 6.5),
        dice.uniform(360, 420),
        dice.uniform(0.60, 0.65) if older else dice.uniform(0.66, 0.72),
    )
    orifice = dice.random() < (0.6 if older else 0.25)
    return Nameplate(
        refrigerant,
        tons,
        2 if tons > 7.5 else 1,
        "fixed-orifice" if orifice else "txv",
        230.0 if single else dice.choice((208.0, 460.0)),
        not single,
        round(design.cfm_per_ton * tons * 58, -3),
        design,
    )


def singles(cases: int, seed: str) -> Iterator[tuple[Drawn, random.Random]]:
    """So many units of the round, each with the dice that its readings are thrown with."""
    for number in range(cases):
        dice = random.Random(f"{seed} {number}")
        cards, mode = ROUND[number % len(ROUND)]
        known = cards_of(mode)
        plate = a_plate(dice)
        while not all(known[card].fits(plate) for card in cards):
            plate = a_plate(dice)
        yield _with(dice, plate, cards, mode), dice


def pairs(cases: int, seed: str) -> Iterator[tuple[Drawn, random.Random]]:
    """So many units with two faults each, every fourth on a call for heat."""
    for number in range(cases):
        dice = random.Random(f"{seed} two {number}")
        mode: Mode = "heating" if number % 4 == 3 else "cooling"
        known = cards_of(mode)
        plate = a_plate(dice)
        able = [card for card in known if known[card].fits(plate)]
        one, other = dice.sample(able, 2)
        while not known[one].goes_with(known[other], plate):
            one, other = dice.sample(able, 2)
        yield _with(dice, plate, (one, other), mode), dice


def _with(dice: random.Random, plate: Nameplate, cards: tuple[str, ...], mode: Mode) -> Drawn:
    """This unit with these faults, on a day of their season."""
    known, faults = cards_of(mode), Faults()
    for card in cards:
        faults = known[card].turned(faults, dice)
    everywhere = any(known[card].everywhere for card in cards)
    faults = replace(faults, circuit=0 if everywhere else dice.randint(1, plate.circuits))
    return Drawn(plate, cards, mode, faults, _a_day(dice, mode))


def _a_day(dice: random.Random, mode: Mode) -> Day:
    if mode == "heating":
        return Day(dice.uniform(15, 50), dice.uniform(64, 71), 54)
    wet = dice.uniform(60, 69)
    return Day(dice.uniform(74, 104), wet + dice.uniform(9, 14), wet)
