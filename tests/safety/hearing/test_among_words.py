"""A danger told among other words is heard; what was put right, tested or denied is none."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.among_words import told_among

TOLD = (
    "fuse held then wires caught fire",
    "dead short again box is on fire",
    "fuse held, wires caught fire",
    "26 v then i smelled gas",
    "replaced fuse box is on fire",
    "replaced the fuse and wires caught fire",
    "wires caught fire, replaced fuse",
    "gas leak not fixed",
    "still smell gas",
    "26 v and box is on fire",
    "fuse blew box is on fire",
    "held 5 min contactor smoking",
    "no trip then contactor is smoking",
    "closes fine and i smell gas",
    "9 uF wires burning",
    "amps ok, mate collapsed",
    "dry now but gas smell",
    "steady 7 percent n flames out the front",
    "gas leak fixed but still smell gas",
)
HARMLESS = (
    "found the gas leak at the union and mended it",
    "fuse held, no smoke",
    "no smell of gas",
    "smoke alarm tested ok",
    "no sparks, contactor pulls in",
    "leak at union fixed, no bubbles",
    "flame steady, no rollout",
    "0 ppm no co in the rooms",
    "flue 40 ppm",
    "burners light smooth no flashback",
    "no arcing at the contactor",
    "gas smell gone after union remade",
    "gas off, no leak",
    "smoke detector reset and normal",
    "spark igniter fires ok",
    "flame sense 3.2 uA",
    "rollout switch held",
    "no water in the box",
    "wires cool no burning smell",
    "shut gas off and no smell",
    "igniter glows then lights",
    "no more smoke",
    "smoke gone",
    "fire panel back on test",
    "fire alarm panel normal",
    "breaker held no trip",
    "no hot spots on the lugs",
    "burnt wire replaced, runs 9 A",
    "burnt contactor replaced no arcing",
    "CO 0 ppm in supply",
    "co alarm quiet",
    "no refrigerant leak found",
    "leak sealed holds 150 psig",
    "capacitor discharged 0 V",
    "fan stopped wobbling",
    "belt no longer smokes",
    "smoke test passed",
    "puff of smoke from smoke pencil drawn in",
    "drawn in smoke at draft hood",
    "draft pulls the smoke in",
    "lit match pulled in at the draft hood",
    "smells clean",
    "gas valve shuts tight, no gas smell",
    "ignites with no boom",
    "compressor starts and runs 12 A, not hot",
    "crankcase heater warm",
    "oil stain wiped no new oil",
    "bees gone",
    "nobody hurt",
    "ladder tied off",
    "roof dry",
    "fixed arcing lug holds 9 A",
    "replaced smoking contactor",
    "cleared smoke from the room",
    "gas leak test passed",
    "gas leak check ok, bubbles none",
    "found smoke coming from the contactor, replaced contactor",
    "found burnt wire at T2 and replaced it",
    "had gas smell at the union, remade it, gone now",
    "heat exchanger smoke test done",
    "burnt lugs cut back and redone",
    "fire panel told, back in service",
    "sooted burners cleaned",
    "roll out switch reset holds",
    "flame off the burners stays in the tubes",
    "leak fixed at the flare holds vacuum 300 micron",
    "no gas smell and no smoke and no fire",
    "no smoke, fire or gas smell",
    "gas smell? no",
    "shut gas, no leaks on soap",
    "water drained, box dry",
    "carbon monoxide alarm tested good",
    "pressure relief not blown",
    "door interlock stopped sparking gone",
)


@pytest.mark.parametrize("typed", TOLD)
def test_words_in_front_or_behind_hide_no_danger(typed: str, shipped: Knowledge) -> None:
    """Regression: fire told as the proof of a repair was kept as a reading."""
    assert told_among(shipped, typed)


@pytest.mark.parametrize("typed", HARMLESS)
def test_what_is_mended_tested_or_denied_is_no_danger(typed: str, shipped: Knowledge) -> None:
    assert told_among(shipped, typed) == ()


@pytest.mark.parametrize("typed", ["the", "all", "any", "a", "The."])
def test_an_article_alone_is_no_danger(typed: str, shipped: Knowledge) -> None:
    """Regression: with no other word beside it, asking what was mended ended the program."""
    assert not told_among(shipped, typed)
