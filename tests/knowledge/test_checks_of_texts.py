"""Texts: no markup, nothing unsaid, and no advice that offers a way round safety."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import LOW_CHARGE, said, write_rules
from troubleshoot.knowledge.checks.safe_advice import bad_advice

WAY_ROUND = "a way round a safety device"
SHORTED = "a capacitor shorted with a tool"
LET_GO = "refrigerant let into the air"
RESET = "a tripped safety reset without finding out why"


@pytest.mark.parametrize(
    ("text", "advised"),
    [
        ("Jumper the rollout switch and see if it lights.", WAY_ROUND),
        ("Bypass the high-pressure switch.", WAY_ROUND),
        ("If it is not hot, jumper out the limit.", WAY_ROUND),
        ("Do not wait: bypass the smoke detector.", WAY_ROUND),
        ("Bridge the pressure switch to prove the board.", WAY_ROUND),
        ("Try jumping the safeties one by one.", WAY_ROUND),
        ("Wire around the float switch.", WAY_ROUND),
        ("Without a spare, bridge the door switch, then run it.", WAY_ROUND),
        ("Short the capacitor with an insulated screwdriver.", SHORTED),
        ("A screwdriver across the capacitor bleeds it.", SHORTED),
        ("Vent the refrigerant until the pressure drops.", LET_GO),
        ("Let the charge out to the atmosphere.", LET_GO),
        ("Reset the limit and go.", RESET),
        ("Keep resetting until it holds.", RESET),
    ],
)
def test_advice_that_could_kill_is_found(text: str, advised: str) -> None:
    assert [what for what, _ in bad_advice(text)] == [advised]


@pytest.mark.parametrize(
    "text",
    [
        "Never jumper, bridge or bypass a safety to keep it running.",
        "Somebody jumpered the rollout switch.",
        "Look for a jumper across the limit switch.",
        "Remove the jumper left on the high-pressure switch.",
        "No bypass of any safety.",
        "A blown fuse is never bridged.",
        "Bridging a fuse is forbidden.",
        "Do not short a capacitor with a screwdriver.",
        "Bleed the capacitor through a resistor, never with a screwdriver.",
        "Recover it; venting refrigerant is against the law.",
        "Recover the refrigerant instead of venting the charge.",
        "Reset once, after the cause is found.",
        "Jumper R to Y at the board.",
        "The internal bypass of the compressor opens, and the overload trips.",
        "A hot gas bypass valve is fitted; the limit is 20 F.",
        "Find out who defeated the smoke detector.",
        "Vent blocked: the rollout trips.",
    ],
)
def test_a_text_that_forbids_or_reports_is_left_alone(text: str) -> None:
    assert list(bad_advice(text)) == []


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


def test_bad_advice_is_named_at_its_place(tmp_path: Path) -> None:
    change = (LOW_CHARGE, "Find the leak, mend it, weigh the charge in.", "Vent the charge.")
    assert said(write_rules(tmp_path, change)) == [
        "rules/faults/refrigerant/low-charge.yaml:17:9: the text advises refrigerant let into the "
        "air; say: recover it [safe-advice]"
    ]
