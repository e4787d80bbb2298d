"""A burner that lights and burns is no fire; whatever else burns is heard beside it.

What is watched at an ignition trial is common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.burner_lit import as_watched
from troubleshoot.safety.hearing.dangers import cried, spoken_of, told_at

WATCHED = [
    "lights first try and burns till the limit opens at 5 min",
    "lights on the second try and burns",
    "lit first try, burned steady until the limit opened",
    "Fires up, burns 4 min, limit opens", "ignites first try and burns clean",
    "burner lights and burns 10 minutes then drops out", "lights every time and burns blue",
]  # fmt: skip
DANGERS = [
    "burns", "its burning", "on fire", "lights and burns the wires",
    "lights first try and burns the insulation", "lights first try, something is burning",
    "lights first try and the panel burns", "lights first try with a burning smell",
    "lights first try and burned my hand", "lights first try and burns, smoke from the board",
    "lights first try and burns till the limit opens, wires burning",
    "burner lights and burns steady, and the panel is on fire", "the motor lit up and burns",
    "lights first try and burns till the limit opens, smell of gas", "filter ignited and burns",
]  # fmt: skip


@pytest.mark.parametrize("said", WATCHED)
def test_a_burner_that_lights_and_burns_is_no_fire(said: str, shipped: Knowledge) -> None:
    """Regression: a whole visit was stopped for it, with a call to 911."""
    test = shipped.tests["ignition-trials"]
    assert not told_among(shipped, said) and not told_at(shipped, test, said)
    assert not spoken_of(shipped, said) and not cried(shipped, said)


@pytest.mark.parametrize("said", DANGERS)
def test_what_burns_besides_is_still_heard(said: str, shipped: Knowledge) -> None:
    assert told_among(shipped, said) or spoken_of(shipped, said)


@pytest.mark.parametrize(
    ("said", "heard"),
    [
        ("LIGHTS first try AND BURNS", "LIGHTS first try AND runs"),
        ("FIRES UP first try, burns 4 min", "starts UP first try, runs 4 min"),
        ("lights first try and keeps burning", "lights first try and keeps runs"),
        ("Burner lights and burns", "Burner lights and runs"),
        ("lights and burns", "lights and burns"),
        ("the first try, nothing", "the first try, nothing"),
    ],
)
def test_only_the_burning_of_a_burner_becomes_its_run(said: str, heard: str) -> None:
    """However it is typed; the rest of the words is as it was told."""
    assert as_watched(said) == heard
