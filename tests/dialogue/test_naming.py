"""What is typed where the unit's name is asked: no name is asked for again, a danger is heard."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, held
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.naming import NO_NAME, ask_name
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge


def named(shipped: Knowledge, *typed: str) -> tuple[Lines, str]:
    terminal = Lines(*typed)
    which = AskWords("Which unit?")
    return terminal, held(shipped, terminal, lambda v: ask_name(Listener(shipped, v), which))


@pytest.mark.parametrize("typed", ["-", "1", "2.1 uF", '{"a":1}', "../../etc/x"])
def test_no_name_is_asked_again_in_one_sentence(typed: str, shipped: Knowledge) -> None:
    """Regression: each of them was a unit."""
    terminal, name = named(shipped, typed, typed, "RTU-4")
    assert name == "RTU-4" and len(terminal.asked) == 3
    assert terminal.text.count(NO_NAME) == 2


@pytest.mark.parametrize("typed", ["gusts are rocking me, must be 40 mph", "wind is 45 mph"])
def test_a_danger_is_no_name(typed: str, shipped: Knowledge) -> None:
    """Regression: the wind was taken for a unit."""
    with pytest.raises(DangerCalled):
        named(shipped, typed)
