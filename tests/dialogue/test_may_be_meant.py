"""What may be meant and protects nobody is asked, yes or no; a word that protects is typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue.read_out import typed_at
from troubleshoot.dialogue.may_be_meant import SAY_OTHERWISE
from troubleshoot.knowledge.model import Knowledge

ASKED = 'Is "stopped" meant? (y/n)'


def found(shipped: Knowledge, folder: Path, *typed: str) -> tuple[str, list[tuple[str, ...]]]:
    text, book = typed_at(shipped, folder, "condenser-fan-turning", *typed)
    return text, [a.outcomes for a in book.state.answers if a.test == "condenser-fan-turning"]


@pytest.mark.parametrize("said", ["y", "stopped"])
def test_a_yes_or_the_word_itself_takes_it(said: str, shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: humming had to be typed again as stopped."""
    text, answers = found(shipped, tmp_path, "humming", said)
    assert ASKED in text and ("stopped",) in answers


@pytest.mark.parametrize("said", ["n", "u"])
def test_a_no_leaves_it_open(said: str, shipped: Knowledge, tmp_path: Path) -> None:
    text, answers = found(shipped, tmp_path, "humming", said)
    assert ASKED in text and SAY_OTHERWISE in text and answers == []
