"""How far a card is trusted stands on what was done, and on the card as it was then."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import LOW_CHARGE, said, write_rules
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.signed_cards import digest_of_card

DRAFT = "because: not gone over\n"
SIGNED = "status: signed\nsigned: {by: S.T., on: 2026-11-29, card: abc}\n"


@pytest.mark.parametrize(
    ("trust", "told"),
    [
        ("status: signed\n", "nobody has signed low-charge; write gone-over, or sign it: "),
        ("status: draft\n", "low-charge is a draft and does not say why; say under because"),
        (SIGNED.replace("signed\n", "draft\n", 1), "is signed by S.T. and its status is draft"),
        (SIGNED.replace("2026-11-29", "soon"), "soon is no day; write it as 2026-11-29"),
        (SIGNED, "low-charge has changed since S.T. signed it; read its page, and sign it"),
    ],
)  # fmt: skip
def test_a_status_stands_on_what_was_done(trust: str, told: str, tmp_path: Path) -> None:
    found = said(write_rules(tmp_path, (LOW_CHARGE, DRAFT, trust)))
    assert any(told in line and line.endswith("[signed-cards]") for line in found)


@pytest.mark.parametrize("trust", ["status: gone-over\n", "status: reviewed\n", DRAFT])
def test_what_nobody_has_signed_needs_no_signature(trust: str, tmp_path: Path) -> None:
    assert said(write_rules(tmp_path, (LOW_CHARGE, DRAFT, trust))) == []


def test_the_word_of_before_is_written_as_that_of_today(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, (LOW_CHARGE, DRAFT, "status: reviewed\n"))
    text = (folder / LOW_CHARGE).read_text("utf-8")
    assert "status: gone-over\n" in format_file(text, kind="fault")


def test_the_hash_is_of_what_a_card_says_and_not_of_its_trust() -> None:
    card = {"fault": "f", "name": "A fault", "status": "draft", "because": "new"}
    signed = {"name": "A fault", "fault": "f", "status": "signed", "signed": {"by": "S.T."}}
    assert digest_of_card(card) == digest_of_card(signed)
    assert digest_of_card(card) != digest_of_card({**card, "name": "Another"})


def test_every_shipped_card_says_why_it_is_no_further(shipped: Knowledge) -> None:
    """Whoever signs one strikes the reason with the status."""
    cards = [fault for fault in shipped.faults.values() if fault.status != "signed"]
    assert cards and all(fault.because for fault in cards)
