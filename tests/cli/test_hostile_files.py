"""Files that are made to break the program: one sentence, soon, and nothing of them taken."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from troubleshoot.outside.text import MOST_SENTENCE, MOST_TYPED
from troubleshoot.visit.cases import told_all_the_same

Call = Callable[..., tuple[int, str, str]]

COOLING = "complaint: no-cooling\nreadings:\n"
LONG = "9" * 4_400
"""More digits than Python reads of one whole number."""


def case(folder: Path, text: str) -> str:
    path = folder / "case.yaml"
    path.write_text(text, "utf-8")
    return str(path)


@pytest.mark.parametrize("command_of", [("assess",), ("diagnose", "--answers")])
@pytest.mark.parametrize(
    "reading",
    [
        f'{{test: suction-pressure, text: "{LONG} psig"}}',
        f'{{test: suction-pressure, at: "circuit {LONG}", text: 118 psig}}',
        f'{{test: thermostat-setpoint, text: "it read {LONG}"}}',
    ],
)
def test_digits_without_end_are_refused_in_a_sentence(
    command: Call, tmp_path: Path, command_of: tuple[str, ...], reading: str
) -> None:
    """Regression: a traceback from the reader of spoken numbers."""
    code, _, err = command(*command_of, case(tmp_path, f"{COOLING}  - {reading}\n"))
    assert code == 3 and "Traceback" not in err and len(err) < 20 * MOST_SENTENCE


@pytest.mark.parametrize(
    "text", ["unit: {circuits: -1}\n", "unit: {circuits: '+1'}\n",
             COOLING + "  - {test: suction-pressure, at: circuit -1, text: 118 psig}\n"]
)  # fmt: skip
def test_what_counts_below_one_is_refused(command: Call, tmp_path: Path, text: str) -> None:
    """Regression: its sign was left out, and circuit 1 was read."""
    assert command("assess", case(tmp_path, text))[0] == 3


def test_a_long_text_is_named_by_its_ends(command: Call, tmp_path: Path) -> None:
    """Regression: a tag of 100,000 letters stood whole in the refusal."""
    _, _, err = command("assess", case(tmp_path, f"complaint: !{'!' * 100_000} x\n"))
    assert 0 < len(err) < 3 * MOST_SENTENCE
    _, out, _ = command("assess", "--json", case(tmp_path, f"{'k' * 3_000}: 1\n"))
    assert len(out) < 6 * MOST_SENTENCE


def test_of_a_file_without_end_no_more_is_heard_than_a_visit_says(
    command: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: each of 3,000 lines that say the same was heard for itself."""
    heard: list[str] = []
    monkeypatch.setattr(told_all_the_same, "_told", lambda _, words: heard.append(words) or ())
    same = "  - {test: suction-pressure, text: 118 psig}\n"
    assert command("assess", case(tmp_path, COOLING + same * 3_000))[0] == 3
    assert len(heard) < 5
    heard.clear()
    others = "".join(f"  - {{test: suction-pressure, text: {n} psig}}\n" for n in range(3_000))
    assert command("assess", case(tmp_path, COOLING + others))[0] == 3
    assert len(heard) <= told_all_the_same.MOST_HEARD
    heard.clear()
    assert command("assess", case(tmp_path, f"complaint: {'hot air noise ' * 9_000}\n"))[0] == 3
    long = "".join(f"note-{n}: {n} {'so it goes ' * 200}\n" for n in range(200))
    assert command("assess", case(tmp_path, long))[0] == 3
    assert max(map(len, heard)) <= MOST_TYPED
    assert 0 < sum(map(len, heard)) < 2 * told_all_the_same.MOST_LETTERS


@pytest.mark.parametrize("words", [("assess", "a\nb.yaml"), ("report", "a\nb")])
def test_a_name_breaks_no_line_of_the_sentence(command: Call, words: tuple[str, ...]) -> None:
    """Regression: the rest of a name stood on a line of its own, as a sentence of the program."""
    code, _, err = command(*words)
    assert code and "a<U+000A>b" in err and len(err.splitlines()) == 1
