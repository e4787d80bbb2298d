"""No screen says a word that mechanics do not: `struck_words.tsv` lists them; ids stay."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from troubleshoot.language.notes import HEARD
from troubleshoot.language.program_texts import program_texts
from troubleshoot.language.rule_texts import rule_texts, scenario_texts

ROOT = Path(__file__).parents[2]
ROWS = [
    line.split("\t")
    for line in Path(__file__).with_name("struck_words.tsv").read_text("utf-8").splitlines()
    if line and not line.startswith("#")
]
STRUCK = {re.compile(rf"(?<![-\w/])(?:{word})(?![-\w])", re.IGNORECASE): say for word, say in ROWS}
NOT_OURS = ("rules/sources.yaml", "rules/round.yaml", "click/")
"""Titles of published sources, another's work in hand, a library's texts."""
INJURED = "Heavy bleeding"
OTHERWISE = {
    "rules/faults/refrigerant/air-in-refrigerant.yaml": "refrigerant cannot be bled",
    "rules/tests/gas-valve-and-burners.yaml": "a hose of gas is bled outdoors",
    "troubleshoot/safety/hearing/": "words that people say, and are heard",
    "troubleshoot/safety/stops/": "words that people say, and are heard",
    "troubleshoot/visit/hearing/": "words that people say, and are heard",
    "troubleshoot/dialogue/metered_in_words.py": "words that people say, and are heard",
    "troubleshoot/knowledge/checks/": "for authors of rules",
}


def shown() -> Iterator[tuple[str, str]]:
    """Where a text that people see stands, and the text."""
    for found in (*rule_texts([ROOT / "rules"]), *scenario_texts(), *program_texts()):
        if found.note != HEARD and not found.place.startswith(NOT_OURS):
            yield found.place, found.english.replace(INJURED, "")


def test_no_text_says_a_struck_word() -> None:
    found = [
        f"{place}: {match[0]!r}, say {say}: {text[:60]}"
        for place, text in shown()
        for pattern, say in STRUCK.items()
        if not place.startswith(tuple(OTHERWISE)) and (match := pattern.search(text))
    ]
    assert found == [], "\n".join(found)


def test_the_readme_says_none() -> None:
    lines = (ROOT / "README.md").read_text("utf-8").splitlines()
    found = [
        f"{number}: {match[0]!r}, say {say}"
        for number, line in enumerate(lines, start=1)
        for pattern, say in STRUCK.items()
        if (match := pattern.search(line))
    ]
    assert found == [], "\n".join(found)


@pytest.mark.parametrize(
    "text", ["Bleed the capacitor.", "as the plate says", "a gas odour", "Mend it.", "Late light"]
)
def test_one_that_comes_back_is_found(text: str) -> None:
    assert any(pattern.search(text) for pattern in STRUCK)


@pytest.mark.parametrize("text", ["bleed-down", "gas-odour", "the data plate", "a bleed resistor"])
def test_an_id_or_another_thing_is_not(text: str) -> None:
    assert not any(pattern.search(text) for pattern in STRUCK)
