"""On forty columns no word is broken: not in a question, nor in what went wrong."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import begin


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
