"""What an author is asked and told comes out in another language, as all else does."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.language.screens import left_in_english
from tests.language.test_every_screen import LEFT
from troubleshoot.knowledge.checks import CHECKS

Call = Callable[..., tuple[int, str, str]]

TOLD = (
    "NORTH", "?", ",", "BLOWER SHEAVE HOOKED", "DUST", "12", "2", "", "",
    "HARDLY ANY AIR", "1", "1", "", "SHEAVES", "1", "1", "1", "BELT", "1", "3", "2", "",
    "LOADED FILTERS", "1", "", "WEAR", "STOPS", "NEW SHEAVES", "60", "2", "1",
    "RUNS", "", "", "Q", "Y",
)  # fmt: skip

pytestmark = pytest.mark.usefixtures("in_the_language")


def test_the_questions_for_a_card(
    command: Call, typed: Callable[..., None], tmp_path: Path
) -> None:
    typed(*TOLD)
    code, out, _ = command("rules", "new", str(tmp_path / "NORTH"))
    lines = out.replace(str(tmp_path), "").splitlines()
    assert code == 0 and "NOTHING WAS WRITTEN." in lines and len(lines) > 100
    assert left_in_english(lines, LEFT) == set()


@pytest.mark.parametrize(
    "words",
    [("find", "belt"), ("test", "contactors", "--rivals", "--margins"), ("explain", "checks"),
     ("pack", "list")],
    ids=" ".join,
)  # fmt: skip
def test_what_is_told_of_rules(command: Call, words: tuple[str, ...]) -> None:
    code, out, _ = command("rules", *words)
    ids = {word for line in out.splitlines() for word in line.replace(":", " ").split()
           if "-" in word or word.startswith("(")} | {*CHECKS}  # fmt: skip
    kept = LEFT | {part for word in ids for part in word.strip("()").split("-")}
    assert code == 0 and left_in_english(out.splitlines(), frozenset(kept)) == set()
