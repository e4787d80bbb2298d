"""Sentences of somebody who had not seen the rules are understood first time, or asked about."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.visit.hearing.understood import counted, judged, reply_to, sentences
from troubleshoot.knowledge.model import Knowledge

TABLE = Path(__file__).with_name("sentences.tsv")


@pytest.mark.parametrize(
    ("kind", "half", "understood"),
    [
        ("complaint", "tuned", 78), ("complaint", "held", 70),
        ("test", "tuned", 35), ("test", "held", 35),
        ("cause", "tuned", 25), ("cause", "held", 25),
        ("fact", "tuned", 19), ("fact", "held", 17),
        ("place", "tuned", 10), ("place", "held", 10),
    ],
)  # fmt: skip
def test_so_many_are_understood_first_time(
    kind: str, half: str, understood: int, shipped: Knowledge
) -> None:
    """Taken rightly, or first of those that are asked about; of the rest none taken wrongly."""
    found = counted(shipped, kind, half, TABLE)
    assert found["understood"] >= understood, found


def test_nothing_is_taken_for_what_it_is_not(shipped: Knowledge) -> None:
    wrong = [
        (sentence.said, reply.taken)
        for sentence in sentences(TABLE)
        if judged(sentence, reply := reply_to(shipped, sentence)) == "wrong"
    ]
    assert wrong == []
