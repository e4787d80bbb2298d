"""Volts told of before the lock went on are asked about at most: they show nothing of now.

What was proved dead counts as long as the lock stays on (NFPA 70E 120.5, from memory); how people
tell of before is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.gone import told_gone
from troubleshoot.safety.hearing.volts_before import read_before

BEFORE = [
    "contactor pulls in and i had 478 on all three at the fan before",
    "contactor pulls in, had 478 V on all three earlier",
    "478 volts between l1 and l2 before i locked it out",
    "208 V L1 to L2 before i shut it off",
    "read 480 V across the lugs before I pulled the disconnect",
]
NOW = [
    "the contactor pulls in", "contactor pulls in and i have 478 on all three",
    "the power came back on and i had 478 before", "my lock fell off and i had 478 V before",
    "478 V between L1 and L2 before and after i locked it", "still 118 V L2 to ground as before",
    "120 V L1 to ground and it was 0 before", "120 V L1 to ground, dead before",
    "120 V L1 to ground, and it was dead before",
    "had 478 V before and now 208 V between L1 and L2", "fan is running now, had 478 V before",
    "got 118 V L2 to ground before i touched it", "contactor just pulled in and i had 478 before",
    "contactor pulls in again and i had 478 before", "480 V on L1 just before i locked the hatch",
]  # fmt: skip


@pytest.mark.parametrize("said", BEFORE)
def test_what_was_read_before_the_lock_voids_nothing_unasked(said: str, shipped: Knowledge) -> None:
    """Regression: a lock was void for what the contactor did and the meter showed before it."""
    visit = AtWork(shipped, "in")
    visit.types(said)
    assert not told_gone(shipped, said) and isinstance(visit.prompt, Choose)


@pytest.mark.parametrize("said", NOW)
def test_what_is_so_now_is_acted_on_beside_it(said: str, shipped: Knowledge) -> None:
    assert told_gone(shipped, said)


@pytest.mark.parametrize(
    ("said", "part"),
    [
        ("478 v on l1 before i locked it", "478 v on l1 before i locked it"),
        ("478 volts between l1 and l2 before i locked it out", "478 volts between l1 "),
        ("had 478 before i pulled the disconnect", "had 478 before i pulled the disconnect"),
        ("had 478 before i killed the power", "had 478 before i killed the power"),
        ("contactor pulls in, had 478 earlier", "contactor pulls in"),
        ("had 478. had 478 before", "had 478"),
    ],
)
def test_volts_in_one_sentence_with_before_were_read_before(said: str, part: str) -> None:
    assert read_before(said, part)


@pytest.mark.parametrize(
    ("said", "part"),
    [
        ("478 v between l1 and it was dead before", "478 v between l1 "),
        ("my lock fell off and i had 478 before", "my lock fell off"),
        ("had 478 before and after i locked it", "had 478 before "),
        ("478 volts just before i locked it", "478 volts just before i locked it"),
        ("contactor pulls in. had 478 earlier", "contactor pulls in"),
        ("contactor pulls in", "contactor pulls in"),
        ("had 478 but it was dead before", "had 478 "),
        ("lost power before", "lost power before"),
        ("had 478. dead before. contactor pulls in", "had 478"),
        ("l1 is hot, had 208 before", "l1 is hot"),
    ],
)
def test_volts_of_now_or_of_another_sentence_were_not(said: str, part: str) -> None:
    assert not read_before(said, part)
