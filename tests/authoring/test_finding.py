"""Words of the trade find what the rules say of them, wherever it stands."""

from __future__ import annotations

import pytest

from troubleshoot.authoring.finding import find_entries
from troubleshoot.knowledge.model import Knowledge


def ids(knowledge: Knowledge, words: str) -> list[str]:
    return [found.id for found in find_entries(knowledge, words)]


@pytest.mark.parametrize(
    ("words", "among"),
    [
        ("nest", "vent-blocked"),
        ("insulation", "compressor-insulation"),
        ("dust on the blower wheel", "blower-wheel-dirty"),
        ("cond fan cap", "condenser-fan-capacitor-weak"),
        ("voltage imbalance", "voltage-unbalance"),
        ("burnt pole contacter", "contactor-pole-burnt-away"),
    ],
)
def test_a_word_is_found_wherever_it_stands(shipped: Knowledge, words: str, among: str) -> None:
    """Regression: `explain nest` and `explain insulation` said that they were not in the rules."""
    assert among in ids(shipped, words)


def test_what_is_called_just_so_stands_first(shipped: Knowledge) -> None:
    """Regression: "head pressure" offered two other readings before that of the head pressure."""
    first, *_ = find_entries(shipped, "head pressure", ("test",))
    assert first.id == "head-pressure"


def test_what_is_called_so_comes_before_what_only_speaks_of_it(shipped: Knowledge) -> None:
    assert ids(shipped, "contactor coil open")[0] == "contactor-coil-open"
    assert ids(shipped, "open contactor coil")[0] == "contactor-coil-open"


def test_where_it_was_found_is_told_unless_its_name_says_so(shipped: Knowledge) -> None:
    assert find_entries(shipped, "contactor coil open")[0].said == ""
    speaking = [each for each in find_entries(shipped, "nest") if each.said]
    assert speaking and all("nest" in each.said.lower() for each in speaking)


@pytest.mark.parametrize("words", ["", ",", "the of", "qqqzzz"])
def test_what_tells_nothing_finds_nothing(shipped: Knowledge, words: str) -> None:
    assert find_entries(shipped, words) == ()


def test_one_kind_alone(shipped: Knowledge) -> None:
    assert {each.kind for each in find_entries(shipped, "belt", kinds=("test",))} == {"test"}
