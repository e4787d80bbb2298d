"""On forty columns no word is broken: in a question, in the workshop, or in what went wrong."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin

Call = Callable[..., tuple[int, str, str]]
BROKEN_CARD = f"format: 1\nfault: north-coil\nname: Coil\nwhy: {'The lid leaked. ' * 9}\nhows: no\n"


def test_a_question_keeps_its_words_whole(tmp_path: Path) -> None:
    """Regression: the line at which is answered was written past the edge: "Go on with i/t?"."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    with begin(data, clock) as person:
        person.types("q")
    with Person(data, clock=clock, columns=40) as person:
        asked = person.last.splitlines()
        assert all(len(line) <= 40 for line in asked), asked
        assert "Go on with it? (y/n, Enter is y)" in " ".join(" ".join(asked).split())


def test_a_refusal_keeps_its_words_whole(tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text("complaint: fails-hot-afternoon\ncolour: red\n", "utf-8")
    with Person(tmp_path, "assess", str(case), columns=40) as person:
        words = person.said.split()
        lines = person.said.splitlines()
        assert "fails-hot-afternoons" in " ".join(words)
        assert all(len(line) <= 40 or " " not in line.strip() for line in lines), lines


@pytest.mark.parametrize("columns", [40, 80])
@pytest.mark.parametrize(
    "words",
    [
        "explain contactor-coil-open",
        "explain capacitance-out-of-circuit",
        "explain order-of-cautions",
        "explain checks",
        "find belt dust",
        "check NORTH",
        "test contactor-coil-open --rivals",
        "test contactor-coil-open --margins",
        "pack list",
    ],
)
def test_what_the_workshop_tells_keeps_its_words_whole(
    words: str, columns: int, tmp_path: Path
) -> None:
    """Regression: "refriger/ant": the terminal broke what was written past its edge."""
    card = tmp_path / "north/faults/contactors/north-coil.yaml"
    card.parent.mkdir(parents=True)
    card.write_text(BROKEN_CARD, "utf-8")
    typed = words.replace("NORTH", str(tmp_path / "north")).split()
    with Person(tmp_path / "data", "rules", *typed, columns=columns) as person:
        lines = person.said.splitlines()
    assert len(lines) > 1 or words == "pack list"
    assert not [line for line in lines if len(line) > columns and " " in line.strip()]


def test_a_source_line_that_is_pointed_at_is_cut_to_the_screen(tmp_path: Path) -> None:
    """Regression: the mark stood under another word where the terminal had broken the line."""
    card = tmp_path / "north/faults/contactors/north-coil.yaml"
    card.parent.mkdir(parents=True)
    card.write_text(BROKEN_CARD.replace(". \nhows: no", ": because\nhows: no"), "utf-8")
    with Person(tmp_path, "rules", "check", str(tmp_path / "north"), columns=40) as person:
        lines = person.said.splitlines()
    (mark,) = (number for number, line in enumerate(lines) if line.strip() == "^")
    assert max(len(line) for line in lines[mark - 1 : mark + 1]) <= 40
    assert lines[mark - 1][lines[mark].index("^")] == ":"


def test_what_a_script_reads_stays_a_line_each(command: Call) -> None:
    _, out, _ = command("rules", "explain", "contactor-coil-open")
    assert max(map(len, out.splitlines())) > 100
