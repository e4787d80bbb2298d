"""What a thing is or how it looks tells of no danger: the wires are red, the screw is old.

The sentences are made up: common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.looks import tells_of_looks


@pytest.mark.parametrize(
    "said",
    [
        "the wires are red", "it is old", "dirty", "fins bent", "the unit is 10 years old",
        "that screw is hard to reach", "the label is hard to read", "no paint at all, all rusty",
    ],
)  # fmt: skip
def test_a_look_of_a_part_is_one(said: str) -> None:
    assert tells_of_looks(said)


@pytest.mark.parametrize(
    "said",
    [
        "", "10", "the unit", "it is the board", "red and hot", "the red wires came off",
        "the old disconnect is on", "wet and dirty", "the rusty panel fell",
    ],
)  # fmt: skip
def test_what_says_no_look_or_more_than_that_is_none(said: str) -> None:
    """What moves, is on or off, hot, wet, loose or burnt is asked about."""
    assert not tells_of_looks(said)
