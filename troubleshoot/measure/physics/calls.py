"""What the caller says of a drawn unit: by what the rooms get, not by what is wrong."""

from __future__ import annotations

import random

from troubleshoot.measure.physics.draws import Drawn
from troubleshoot.measure.physics.sights import freezes
from troubleshoot.physics.gas_heat import Fired
from troubleshoot.physics.knobs import Faults
from troubleshoot.physics.plate import DRAFT_SET_POINT
from troubleshoot.physics.unit import Cooling, cool


def call(drawn: Drawn, made: Cooling | None, fired: Fired | None, dice: random.Random) -> str:
    """The complaint of somebody who is in the rooms."""
    if fired is not None:
        return _heat_call(drawn, fired, dice)
    assert made is not None
    off = [read.stopped for read in made.circuits if read.stopped]
    if len(off) == len(made.circuits):
        hot = drawn.day.outdoor > 90 and "high" in off[0]
        return dice.choice(("no-cooling", "fails-hot-afternoons")) if hot else "no-cooling"
    if off:
        return dice.choice(("only-half-runs", "weak-cooling"))
    sound = cool(drawn.plate, Faults(), drawn.day)
    kept = made.cooling / sound.cooling
    if any(freezes(read) for read in made.circuits):
        return dice.choice(("ice-on-pipes-or-coil", "weak-cooling"))
    if made.air.cfm < 0.75 * sound.air.cfm and dice.random() < 0.6:
        return "weak-airflow"
    if kept < 0.88:
        return "weak-cooling"
    if made.eer < 0.9 * sound.eer and dice.random() < 0.5:
        return "high-energy-bill"
    return dice.choice(("routine-inspection", "weak-cooling", "high-energy-bill", "season-change"))


def _heat_call(drawn: Drawn, fired: Fired, dice: random.Random) -> str:
    if fired.draft < DRAFT_SET_POINT or fired.flame_current < 0.5:
        return "no-heat"
    if fired.rise > 60 or drawn.faults.gas.rod < 0.2:
        return "heat-short-cycles"
    if fired.rise < 37:
        return "weak-heat"
    return dice.choice(("routine-inspection", "high-energy-bill", "season-change"))
