"""Which words say that a tool or a part was left in a unit, and which that it is out of it.

The sentences are made up: common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.left_in import tells_of_left_in


@pytest.mark.parametrize(
    "said",
    [
        "my pliers are still there", "left my pliers by the blower", "forgot my wrench",
        "there is a rag in the blower", "a screw fell into the pan", "a bolt fell by the wheel",
        "looked, got nothing, cant find my wrench", "looked, got nothing, cannot find my wrench",
        "looked, got nothing, couldn't find my wrench", "dropped a screw driver",
    ],
)  # fmt: skip
def test_what_is_left_or_not_to_be_found_is_left_in(said: str) -> None:
    assert tells_of_left_in(said)


@pytest.mark.parametrize(
    "said",
    [
        "my pliers are still out", "the heat is still on", "my pliers are in my pouch",
        "the wrench is in the tool bag", "left the panel off", "the screw is tight",
        "the screw in the door", "my wrench is 10 mm", "no tools left in the unit",
        "got my wrench back that fell in", "the cat is in the unit",
    ],
)  # fmt: skip
def test_what_is_out_put_away_or_belongs_there_is_not(said: str) -> None:
    assert not tells_of_left_in(said)
