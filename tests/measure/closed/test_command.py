"""`rules measure --visits FOLDER`: what is told, and that nothing is changed by it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.whole_visit import whole_visit
from tests.measure.closed.test_counting import OHMS, ended_in, held
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]


@pytest.fixture
def visits(tmp_path: Path) -> Path:
    for number in range(9):
        held(tmp_path, number, {OHMS: "open" if number < 3 else "normal"})
    held(tmp_path, 9, {}, ending="")
    return tmp_path


def test_a_word_is_gainsaid_with_its_evidence(command: Call, visits: Path) -> None:
    before = {path: path.read_bytes() for path in visits.iterdir()}
    code, out, err = command("rules", "measure", "--visits", str(visits))
    assert (code, err) == (0, "")
    for words in (
        "Of 10 visits 9 were closed with their cause put right.",
        "- 1 not closed",
        "- contactor-coil-open: 9; the rules say",
        "almost always (over 90 %) might become often: so on 3 of 9 visits",
        "Nothing is changed by this.",
    ):
        assert words in out, words
    assert {path: path.read_bytes() for path in visits.iterdir()} == before


def test_a_folder_without_visits_and_other_options_are_refused(
    command: Call, tmp_path: Path
) -> None:
    code, out, err = command("rules", "measure", "--visits", str(tmp_path / "none"))
    assert (code, out) == (2, "") and "there is no kept visit in this folder" in err
    code, _, err = command("rules", "measure", "--visits", str(tmp_path), "--physics")
    assert code == 2 and "goes by itself" in err
    assert command("rules", "measure", "--visits", "0")[0] == 2


def test_a_visit_as_a_technician_holds_it_counts(
    shipped: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(clock, "now", clock.now)
    whole_visit(shipped, tmp_path)
    (ended,) = ended_in(shipped, tmp_path / "visits")
    assert ended.call.id == "cooling-short-cycles"
    assert ended.fault.id == "condenser-fan-capacitor-weak"
    assert str(ended.truth.at) == "capacitor condenser fan 1"
    read = "capacitance-out-of-circuit"
    assert ended.seen[read] != ("normal",) and ended.seen["condenser-fan-hand-spin"] == ("free",)
