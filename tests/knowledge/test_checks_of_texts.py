"""Texts: no markup, and nothing unsaid."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import LOW_CHARGE, said, write_rules


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("<b>Find</b> the leak", "a tag in angle brackets in a text; use words"),
        ("Find the `leak`", "a back quote in a text; use words"),
        ("Find {leak}", "a brace in a text; use words"),
        ("Find [the leak](there)", "a link or mark in brackets in a text; use words"),
        ("Find the **leak**", "emphasis marks in a text; use words"),
        ("See www.leak.example", "an address in a text; use words"),
        ("TODO", "the text TODO says nothing; write it, or delete the key"),
        ("???", "the text ??? says nothing; write it, or delete the key"),
    ],
)
def test_markup_and_empty_words_are_found_at_their_place(
    tmp_path: Path, text: str, what: str
) -> None:
    change = (LOW_CHARGE, "Find the leak, mend it, weigh the charge in.", f"'{text}'")
    assert said(write_rules(tmp_path, change)) == [
        f"rules/faults/refrigerant/low-charge.yaml:17:9: {what} [clean-texts]"
    ]


def test_signs_of_the_trade_are_no_markup(tmp_path: Path) -> None:
    text = "'Under <0.5 in. w.c., or > 2 x clean (6 %): 208/230 V, #10 screws, 1-1/8 in.'"
    change = (LOW_CHARGE, "Find the leak, mend it, weigh the charge in.", text)
    assert said(write_rules(tmp_path, change)) == []
