"""Short words for readings: what nobody could type, and what is another's, is named."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import CAPACITORS, REFRIGERANT, said, write_rules

READS = "    reads: [{quantity: line-temperature}]\n    outcomes: []\n"
WORDS = f"{READS}    short-words: "
LOOK = "      - {id: oil, means: oil about it}\n"
CIRCUITS = "rules/tests/refrigerant.yaml"


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("[{words: [sl]}, {words: [line], with-unit: true}]", None),
        ("[{words: [SL]}]", '"SL" is not read as words; write small letters, and no number'),
        ("[{words: [one twenty]}]", '"one twenty" is not read as words; write small letters'),
        ("[{words: [sl, sl]}]", '"sl" stands twice in line-temperature; keep one'),
        ("[{words: [superheat]}]", '"superheat" is the name of superheat; add it to superheat'),
        ("[{with-unit: true}]", "there are no words; write words, or over, or out"),
        ("[{over: line-temperature}]", "both numbers are of line-temperature; name the test"),
        ("[{words: [sl]}, {over: evaporating-temperature}]",
         "evaporating-temperature has no short words of its own; add them"),
        ("[{over: superheet}]", "no test is called superheet"),
    ],
)  # fmt: skip
def test_a_slip_is_named_at_its_test(tmp_path: Path, words: str, message: str | None) -> None:
    folder = write_rules(tmp_path, (REFRIGERANT, READS, f"{WORDS}{words}\n"))
    found = said(folder)
    if message is None:
        assert found == []
    else:
        assert any(f": {message}" in each and each.startswith(CIRCUITS) for each in found), found


def test_a_look_reads_no_number(tmp_path: Path) -> None:
    folder = write_rules(
        tmp_path, (CAPACITORS, LOOK, f"{LOOK}    short-words: [{{words: [can]}}]\n")
    )
    assert any("capacitor-look reads no number" in each for each in said(folder))
