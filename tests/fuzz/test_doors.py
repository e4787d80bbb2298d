"""A few mutants through every door: taken, or turned away as the door promises. More by hand:
python tests/bench/fuzz_doors.py"""

from __future__ import annotations

from collections.abc import Mapping
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.doors import Door, doors
from tests.fuzz.mutants import mutant
from troubleshoot.knowledge.model import Knowledge

NAMES = (
    "case file, YAML", "case file, JSON", "rule file", "scenario", "journal, bytes",
    "journal, events", "kept rules", "record of plays", "typed, a visit", "typed, a practice",
    "unit of the register", "table of units", "table of visits", "table of instruments",
    "table of refrigerant",
)  # fmt: skip


@pytest.fixture(scope="module")
def all_doors(shipped: Knowledge, tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Door]:
    return doors(shipped, tmp_path_factory.mktemp("doors"))


def test_every_door_is_tried(all_doors: Mapping[str, Door]) -> None:
    assert tuple(all_doors) == NAMES


@pytest.mark.parametrize("name", NAMES)
def test_what_is_whole_is_taken(all_doors: Mapping[str, Door], name: str) -> None:
    door = all_doors[name]
    assert [door.enter(sample) for sample in door.samples] == [True] * len(door.samples)


@pytest.mark.parametrize("name", NAMES)
@settings(max_examples=15)
@given(st.integers(0, 2**64))
def test_any_mutant_is_taken_or_turned_away(
    all_doors: Mapping[str, Door], name: str, seed: int
) -> None:
    door = all_doors[name]
    door.enter(mutant(door.samples, Random(seed), most=20_000))
