"""What the README shows is what the program says today, shortened where it says so."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.whole_visit import whole_visit
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge

README = Path(__file__).parents[2] / "README.md"
LEFT_OUT = "..."
PLAYED = (
    "do visit history",
    "step roof", "step tell the people", "step combustible", "step prove the meter",
    "step controls", "step tools", "step call for", "step connect", "do subcooling", "8 to 12",
    "step controls", "step panel with", "step tools", "step call for", "do sight glass",
    "call", "low charge from a leak", "", "2", "1", "4", "1", "",
)  # fmt: skip


def shown_in_readme(after_words: str) -> str:
    """What the README shows after these words."""
    _, _, after = README.read_text("utf-8").partition(f"{after_words}\n\n```\n")
    return after.partition("\n```")[0]


def left_of(said: list[str], shown: list[str]) -> list[str]:
    """The lines shown that are not said, in the order shown; what is left out may be anything."""
    at = 0
    after_gap = False
    missing = []
    for line in shown:
        if line.strip() == LEFT_OUT:
            after_gap = True
            continue
        found = said.index(line, at) if line in said[at:] else None
        if found is None or (found != at and not after_gap):
            missing.append(line)
            continue
        at, after_gap = found + 1, False
    return missing


def test_the_visit_in_the_readme_and_its_report_are_todays(
    shipped: Knowledge,
    command: Callable[..., tuple[int, str, str]],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    monkeypatch.setattr(clock, "now", clock.now)  # put back after the visit has set its own
    monkeypatch.setenv("TROUBLESHOOT_DATA", str(tmp_path))
    said = whole_visit(shipped, tmp_path).splitlines()
    code, report, _ = command("report", "2026-11-26-1")
    assert code == 0
    for title, told in (
        ("what may be typed:", said), ("The beginning of its report:", report.splitlines())
    ):  # fmt: skip
        shown = shown_in_readme(title).splitlines()
        assert len(shown) > 10
        assert left_of([line.rstrip() for line in told], shown) == [], "\n".join(told)


def test_the_debrief_in_the_readme_is_todays(
    command: Callable[..., tuple[int, str, str]],
    typed: Callable[..., None],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "64")
    typed(*PLAYED)
    code, out, _ = command("practise", "quarry-road")
    said = out.partition("DEBRIEF\n")[2].splitlines()
    shown = shown_in_readme("thing to do otherwise:").splitlines()
    assert code == 0
    assert len(shown) > 15
    assert left_of(said, shown) == [], "\n".join(said)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("rules find contacts", ("(contactor-contacts)", "(contactor-contacts-pitted)")),
        ("rules find hot afternoons", ("(fails-hot-afternoons)",)),
        ("rules explain contactor-contacts", ("clean (sound)", "pole-burnt-away")),
        ("units columns", ("metering:", "compressor-rla")),
    ],
)
def test_what_a_file_calls_things_is_told_as_the_readme_says(
    command: Callable[..., tuple[int, str, str]], asked: str, told: tuple[str, ...]
) -> None:
    """A stranger met the ids of tests, outcomes and calls by error messages alone."""
    assert f"`troubleshoot {asked}`" in " ".join(README.read_text("utf-8").split())
    code, out, _ = command(*asked.split())
    assert code == 0
    assert all(each in out for each in told)


def test_a_line_that_was_changed_or_left_out_unmarked_is_found() -> None:
    said = ["a", "b", "c", "d"]
    assert left_of(said, ["a", "b", "...", "d"]) == []
    assert left_of(said, ["a", "c"]) == ["c"]
    assert left_of(said, ["a", "x"]) == ["x"]
