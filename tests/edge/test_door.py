"""Whatever comes in at the door: typed lines, pipes, files, names. One sentence, nothing lost."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started

CASE = "complaint: no-cooling\n"
A_LOT = 400_000_000
"""Bytes of address space: what an ordinary run takes, and room to spare."""


@pytest.mark.parametrize(
    "line", ["²".encode(), b"1" * 4300, "１".encode(), b"\xe9", b"\x1b[A", b"\x00", b"1\x1b[D2",
             "\u202e1".encode(), b"9" * 100_000],
)  # fmt: skip
def test_no_line_typed_anywhere_is_a_traceback(tmp_path: Path, line: bytes) -> None:
    """Regression: isdigit took what int refuses, and a byte of another encoding ended the visit."""
    for number, first in enumerate((b"", b"RTU-7\n", b"RTU-7\nno cooling\n")):
        rest = b"no cooling\n1\n3 4 5 6\nr\n" + b"\n" * 8
        odd = b"".join(line + b"\n" + each for each in rest.splitlines(keepends=True))
        done = started(tmp_path / str(number), typed=first + odd)
        assert done.returncode == 4
        assert b"is kept" in done.stdout


def test_a_line_that_is_no_text_is_asked_for_again_and_confirms_nothing(tmp_path: Path) -> None:
    done = started(tmp_path, typed=b"caf\xe9\nRTU-7\nno cooling\n1\n3\n")
    assert b"That line: a byte that is no UTF-8 text in it" in done.stdout
    assert started(tmp_path, "visits").stdout.count(b"no cooling") == 1


def test_a_line_of_ten_megabytes_takes_neither_memory_nor_the_next_line(tmp_path: Path) -> None:
    """Regression: 440 MB and 5 s."""
    lines = b"x" * 10_000_000 + b"\nRTU-7\nno cooling\n1\n3\n"
    done = started(tmp_path, typed=lines, most_memory=A_LOT)
    assert b"more than 2000 letters" in done.stdout and len(done.stdout) < 20_000
    assert b"no cooling" in started(tmp_path, "visits").stdout


def test_an_arrow_key_at_a_step_confirms_nothing(tmp_path: Path) -> None:
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.types("RTU-3", "no cooling", "3 4 5 6 7 8")
        person.types_until("Step:", [("Test:", "s"), ("", "")])
        before = person.last.partition("Step:")[2].splitlines()[0]
        assert "That line" in person.types("\x1b[A")
        assert "Step:" not in person.last, before


LONG = "x" * 5000


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (["diagnose", LONG], 2),
        (["inspect", "RTU\x1b[2J"], 2),
        (["report", LONG], 2),
        (["reopen", LONG], 2),
        (["assess", LONG], 2),
        (["practise", LONG], 2),
        (["practise", "--apprentice", LONG], 2),
        (["practise", "--export", LONG], 2),
        (["practise", "new", LONG], 2),
        (["rules", "explain", LONG], 2),
        (["rules", "check", LONG], 2),
        (["--data", f"/{LONG}", "visits"], 2),
        (["--data", f"/{LONG}", "diagnose", "RTU-7"], 2),
        ([f"bad{LONG}"], 2),
        (["bad\x1b[2J\x07"], 2),
    ],
)
def test_a_name_that_can_be_none_is_one_sentence(
    tmp_path: Path, words: list[str], code: int
) -> None:
    done = started(tmp_path, *words)
    assert done.returncode == code, done.stderr
    assert b"\x1b" not in done.stderr + done.stdout


def _a_pipe(path: Path) -> None:
    os.mkfifo(path)


def _a_link_to_a_device(path: Path) -> None:
    path.symlink_to("/dev/zero")


def _other_bytes(path: Path) -> None:
    path.write_bytes(b"complaint: caf\xe9\n")


def _a_large_file(path: Path) -> None:
    with path.open("wb") as file:
        file.truncate(1 << 40)


@pytest.mark.parametrize("make", [_a_pipe, _a_link_to_a_device, _other_bytes, _a_large_file])
def test_no_file_is_waited_for_or_read_without_end(
    tmp_path: Path, make: Callable[[Path], None]
) -> None:
    for name in ("case.json", "case.yaml", "pack/hazards.yaml", "visits/2026-11-26-1.journal",
                 "practice/apprentice.jsonl"):  # fmt: skip
        (tmp_path / name).parent.mkdir(exist_ok=True)
        make(tmp_path / name)
    case, rules = str(tmp_path / "case.json"), str(tmp_path / "case.yaml")
    for words, code in (
        (["assess", case], 2),
        (["diagnose", "--answers", rules], 2),
        (["rules", "format", rules], 5),
        (["rules", "check", str(tmp_path / "pack")], None),
        (["practise", rules], 2),
        (["practise", "--progress"], 3),
        (["visits"], 0),
        (["report", "2026-11-26-1"], 6),
        (["reopen", "2026-11-26-1"], 6),
    ):
        done = started(tmp_path, *words, most_memory=A_LOT)
        assert done.returncode == code or (code is None and done.returncode in (1, 5)), words


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("deep.json", "[" * 100_000, "more than 24 levels inside each other"),
        ("deep.json", '{"a":' * 500 + "1" + "}" * 500, "more than 24 levels inside each other"),
        ("deep.yaml", "[" * 500, "more than 24 levels inside each other"),
        ("large.json", json.dumps({"complaint": "x" * 900_000}), "over 2000 letters"),
        ("many.json", json.dumps({"readings": [{"test": "x"}] * 20_000}), "keep to 2000"),
        ("many.json", json.dumps({"readings": {t: [{}] * 1900 for t in "ab"}}), "keep to 2000"),
        ("odd.json", '{"complaint": "\\u001b[2J"}', "U+001B"),
        ("half.json", '{"complaint": "\\ud800"}', "complaint: "),
        ("digits.json", "1" * 5000, "more digits than any meter shows"),
    ],
)
def test_a_file_of_great_size_or_depth_is_one_sentence(
    tmp_path: Path, name: str, text: str, said: str
) -> None:
    path = tmp_path / name
    path.write_text(text, "utf-8")
    for words in (["assess", str(path)], ["diagnose", "--answers", str(path), "--json"]):
        done = started(tmp_path, *words, most_memory=A_LOT)
        assert done.returncode == 3
        assert said in done.stderr.decode() and len(done.stderr) < 1000
        assert b"\x1b" not in done.stderr + done.stdout


def test_a_piped_case_is_bounded_and_is_text(tmp_path: Path) -> None:
    for typed, code, said in (
        (CASE.encode(), 0, b""),
        (b"complaint: caf\xe9\n", 2, b"not UTF-8"),
        (b"x" * 10_000_000, 2, b"over 1000000"),
    ):
        done = started(tmp_path, "assess", "-", typed=typed, most_memory=A_LOT)
        assert done.returncode == code and said in done.stderr
