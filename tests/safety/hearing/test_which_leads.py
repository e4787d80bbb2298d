"""Of what was told the right danger leads, in its own orders.

Whoever took a shot of refrigerant in the face was told of the current, and so was whoever had
several people ill in one building.
"""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import KNOWLEDGE, heard, lines, meant
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.reporting import reported

OWN = [tuple(line.split(": ", 1)) for line in lines("own_words.txt")]


@pytest.mark.parametrize(("hazards", "typed"), OWN)
def test_the_right_danger_leads(hazards: str, typed: str) -> None:
    assert heard(typed)[0] in hazards.split("|")
    assert meant(typed)[0] in hazards.split("|")


@pytest.mark.parametrize(
    "typed",
    [
        "flue pipe fell off", "the flue pipe came apart", "vent fell off the furnace section",
        "flue cap and pipe blew off and its dumping exhaust in the intake",
    ],
)  # fmt: skip
def test_a_flue_that_fell_apart_is_carbon_monoxide_to_whoever_says_yes(typed: str) -> None:
    assert hints(typed)
    assert [each.id for each in reported(KNOWLEDGE, typed)] == ["carbon-monoxide-in-room"]


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("co alarm and everybody is dizzy, my mate collapsed", "carbon-monoxide-evacuate"),
        ("co monitor in alarm and i smell gas", "overcome-by-gas"),
        ("my arm is numb, no feeling in it", "somebody-hurt"),
        ("took a shot of 410 in the face, no goggles on", "refrigerant-on-skin"),
        ("collapsed, and his head is bleeding", "cut-and-bleeding"),
    ],
)
def test_of_two_the_graver_leads_and_a_lack_hides_none(typed: str, hazard: str) -> None:
    assert meant(typed)[0] == hazard
