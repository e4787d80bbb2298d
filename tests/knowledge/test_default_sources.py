"""One source for a file: said once at the top, it holds for every entry that names none."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import CAPACITORS, FILES, said, write_rules
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.load import load_rules

REFRIGERANT = "tests/refrigerant.yaml"


def test_an_entry_that_names_no_source_has_that_of_its_file(tmp_path: Path) -> None:
    change = (
        CAPACITORS,
        "area: capacitors\n",
        "area: capacitors\nsource: [invented-standard, from memory]\n",
    )
    folder = write_rules(tmp_path, change)
    assert said(folder) == []
    before = load_rules(write_rules(tmp_path / "before"), cache=tmp_path / "cache")
    after = load_rules(folder, cache=tmp_path / "cache")
    for name, test in after.tests.items():
        own = before.tests[name].source
        inherits = not own and test.area == "capacitors"
        assert test.source == ("invented-standard; from memory" if inherits else own)
        assert [o.source for o in test.outcomes] == [o.source for o in before.tests[name].outcomes]


def test_a_source_of_a_file_that_nobody_published_is_found(tmp_path: Path) -> None:
    change = (CAPACITORS, "area: capacitors\n", "area: capacitors\nsource: invented-standart\n")
    assert said(write_rules(tmp_path, change)) == [
        "rules/tests/capacitors.yaml:3:9: no source is called invented-standart; did you mean "
        "invented-standard [unknown-names]"
    ]


@pytest.mark.parametrize(
    ("sources", "top", "left"),
    [
        (["from memory", "from memory", "calculated"], "source: from memory\n", ["calculated"]),
        (["from memory", "calculated"], None, ["from memory", "calculated"]),
        (["from memory", "from memory", None], None, ["from memory", "from memory"]),
        (["from memory"], None, ["from memory"]),
    ],
)
def test_formatting_says_once_what_most_entries_say(
    sources: list[str | None], top: str | None, left: list[str]
) -> None:
    entries = "".join(
        f"  - id: a{number}\n    signal: NOTICE\n    what-to-do: Look.\n"
        + (f"    source: {source}\n" if source else "")
        for number, source in enumerate(sources)
    )
    formatted = format_file(f"format: 1\nhazards:\n{entries}", kind="hazards")
    assert formatted.startswith("format: 1\n" + (top or "hazards:\n"))
    said_in_entries = [
        line.split(": ")[1] for line in formatted.splitlines() if line.startswith("    source")
    ]
    assert said_in_entries == left


def test_the_small_rules_mean_the_same_when_formatted(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    before = load_rules(folder, cache=tmp_path / "cache")
    for name in FILES:
        path = folder / name
        path.write_text(format_file(path.read_text("utf-8")), "utf-8")
    after = load_rules(folder, cache=tmp_path / "cache")
    assert {**vars(after), "digest": ""} == {**vars(before), "digest": ""}
