"""A part that does not belong is no repair, in whatever order it is told; the right one is.

An attacker's deeds and more of their kind. No overcurrent protection larger than its conductors'
(NEC 240.4), no metal without its way back to the source (NEC 250.4); the rest is common practice.
"""

from __future__ import annotations

import pytest

from tests.safety.stops.repairs_told import rows
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words

SMOKE, GAS, WATER = "smoke-or-heat-now", "gas-odour", "wet-electrical"
STRAY = "unexplained-voltage"

REFUSED = {
    SMOKE: [
        "changed the 30 A fuse for a 60",
        "fitted a copper slug",
        "swapped breaker one from the spare shelf, 20 more amps",
        "replaced the contactor with a 1-pole smaller one",
        "swapped the 40 amp breaker to a 50 amp",
        "15 A fuse changed out for a 20 A",
        "took the 25 A fuses out and put 35s in",
        "replaced the fuses, ten amps more than before",
        "new breaker, 10 amps over the plate",
        "put a piece of copper rod in the fuse holder",
        "fuse replaced with a nail",
        "fitted dummy fuses in the block",
        "replaced the fuse with a bit of wire",
        "new contactor, a size smaller than the old one",
        "replaced the 40 A contactor with a 30 A one",
        "replaced the 3 pole contactor with a 2 pole",
        "went up from 20 A fuses to 30 A fuses",
        "swapped the blown 15 A for a 25 A I had on the truck",
        "changed it to a 70 amp breaker from a 50 amp",
        "put in a breaker that takes 15 amps more",
        "stuck a steel bolt in the fuse clips",
        "replaced the blown fuse by a piece of 10 gauge wire",
        "replaced the 3-pole contactor with a single pole one",
        "new contactor came cracked, fitted it anyway",
    ],
    GAS: [
        "tightened the union with tape over it",
        "snugged the flare, wrapped in tape",
        "tightened it up and put tape round the union",
        "tightened the nut and wound tape around it",
    ],
    WATER: [
        "dried it with a heat gun",
        "dried the box with a hair dryer",
        "blew it out with the compressor and dried it",
        "let the switch dry, all dry now",
        "dried the lugs with the blow torch",
        "aired out the box until it was dry",
    ],
    STRAY: [
        "taped the bare wire",
        "moved the ground wire off",
        "put rubber mat down",
        "wrapped tape around the chafed wire",
        "lifted the ground wire off the lug",
        "disconnected the earth from the frame",
        "laid a rubber mat by the unit",
        "wore rubber gloves and boots",
        "cut off the ground",
        "stood on a board",
        "removed the ground strap",
        "tape round the nicked conductor",
        "wires taped up",
        "put down a plank to stand on",
    ],
}
TAKEN = {
    SMOKE: [
        "cut back the burnt wire and put on a new crimp",
        "changed the 60 A fuses for 60 A, lugs torqued",
        "replaced the 60 A fuse for a 45 A as on the plate, burnt clip renewed",
        "put in the right 30 A breaker where someone had a 50",
        "burnt lug cut back, new crimp lug, torqued",
        "stripped the scorched wire back and put new lugs on",
        "new contactor 2 pole same as the old, wires cut back",
        "replaced the contactor with one of the same size",
        "replaced the burnt 50 A breaker with a new 50 A one",
        "replaced 3 fuses with new 30 A fuses",
        "replaced the 30 A fuses and the 40 A contactor",
        "motor drew 4 amps over its plate, motor replaced",
        "compressor shorted to ground, disconnected the compressor, replaced the contactor",
        "found a copper slug in the fuse clip, fitted the right 30 A fuse",
        "burnt neutral lug replaced, ground wire moved to its own lug",
        "replaced the 60 A fuses with 45 A per the plate",
        "tape on the splice had burnt, splice cut out and new wire run",
    ],
    GAS: [
        "shut the cock and capped the line",
        "tightened the union with new dope, soaped it",
        "pulled the old tape off the threads, doped and tightened the union",
        "cock itself leaked, replaced the cock",
        "taped threads with ptfe tape and tightened the union",
        "wrapped the threads with new tape, tightened the nipple, soaped",
    ],
    WATER: [
        "dried it with a heat gun, replaced the gasket, megged 200 Mohm",
        "dried it and megged all three legs 500 Mohm",
        "dried the disconnect, sealed the hub above it",
        "water in the conduit, seal-off fitted and dried",
        "cleaned and dried the terminals, megged 300 Mohm",
    ],
    STRAY: [
        "ground wire was broken, ran a new one to the panel",
        "new ground wire pulled to the panel and bonded",
        "bare wire replaced, run in new conduit",
        "chafed wire cut out, new wire with bushing",
        "ground wire had come off the lug, landed it again and torqued",
        "ground was broken at the lug, electrician ran a new equipment ground",
        "wire had rubbed on the frame, replaced the wire, cabinet bonded",
        "ground strap had been removed, new strap bonded to the frame",
        "screw had pierced the feeder, feeder replaced",
        "two feeds to the box, second feed locked and tagged",
    ],
}


@pytest.mark.parametrize(("hazard", "typed"), rows(REFUSED))
def test_what_does_not_belong_is_no_repair(hazard: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])
    with pytest.raises(NotAResult):
        in_words(shipped, typed.replace("'", "\u2019"), shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), rows(TAKEN))
def test_what_belongs_is_one(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed
