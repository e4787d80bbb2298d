"""A card is trusted as far as somebody has looked at it: gone over, or signed as it was read."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import yaml

from tests.authoring.test_draft import DRAFT
from tests.edge.test_site_rules import FAULT, FILES
from tests.knowledge.small_rules import write_files
from troubleshoot.authoring.draft import NOT_GONE_OVER, card_text
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]


CARD = f"faults/condenser/{FAULT}.yaml"
NAME = "A nest of swans lies on a fan guard"
TRUST = f"status: draft\nbecause: {NOT_GONE_OVER}\n"
TOLD = {**FILES, CARD: FILES[CARD].replace("status: reviewed\n", TRUST)}


@pytest.fixture
def north(tmp_path: Path) -> Path:
    """A site's folder with one card, of which nobody but its author knows."""
    return write_files(tmp_path / "north", TOLD)


def doubts(command: Call, north: Path) -> Iterator[str]:
    """What the check says of how far the site's card is trusted."""
    _, out, _ = command("rules", "check", "--one-line", "--rules", str(north))
    return (line for line in out.splitlines() if line.endswith("[signed-cards]"))


@pytest.fixture
def go_over(command: Call, north: Path, monkeypatch: pytest.MonkeyPatch) -> Call:
    """The command on the site's card, with what is typed at it."""

    def call(typed: str) -> tuple[int, str, str]:
        monkeypatch.setattr("sys.stdin", io.StringIO(typed))
        return command("rules", "go-over", FAULT, "--rules", str(north))

    return call


def test_a_new_card_is_a_draft_and_says_why(shipped: Knowledge, command: Call, north: Path) -> None:
    assert card_text(shipped, DRAFT).count(TRUST) == 1
    assert list(doubts(command, north)) == []


def test_the_page_is_shown_before_anybody_signs(go_over: Call, command: Call, north: Path) -> None:
    code, out, _ = go_over("s\nsenior technician, S.T.\n")
    assert code == 0
    page, asked, after = out.partition("g gone over, s signed, Enter leaves it >")
    assert asked and "How often each finding shows when the fault is there:" in page
    assert f"Trust: draft: {NOT_GONE_OVER}" in page
    assert f"{NAME}: signed by senior technician, S.T. on 20" in " ".join(after.split())
    card = yaml.safe_load((north / CARD).read_text("utf-8"))
    assert card["status"] == "signed" and card["signed"]["by"] == "senior technician, S.T."
    assert "because" not in card and list(doubts(command, north)) == []


def test_a_signature_goes_stale_when_the_card_changes(
    go_over: Call, command: Call, north: Path
) -> None:
    go_over("s\nsenior technician\n")
    card = north / CARD
    signed = card.read_text("utf-8")
    card.write_text(f"# laid out anew\n\n{signed}", "utf-8")
    assert list(doubts(command, north)) == []
    card.write_text(signed.replace(f"name: {NAME}", f"name: {NAME} there"), "utf-8")
    (said,) = doubts(command, north)
    assert f"{FAULT} has changed since senior technician signed it; read its page" in said
    _, page, _ = command("rules", "explain", FAULT, "--rules", str(north))
    assert ", and changed since" in page
    go_over("s\nsenior technician\n")
    assert list(doubts(command, north)) == []


def test_gone_over_says_what_is_still_to_do(go_over: Call, north: Path) -> None:
    assert go_over("g\n\n")[0] == 0
    text = (north / CARD).read_text("utf-8")
    assert "status: gone-over\nbecause: nobody has signed it\n" in text


@pytest.mark.parametrize("typed", ["\n", "s\nq\ny\n"])
def test_whoever_leaves_changes_nothing(typed: str, go_over: Call, north: Path) -> None:
    before = (north / CARD).read_text("utf-8")
    code, out, _ = go_over(typed)
    assert code == 0 and "The card is left as it is." in out
    assert (north / CARD).read_text("utf-8") == before


def test_what_does_not_hold_is_not_signed(go_over: Call, north: Path) -> None:
    card = north / CARD
    before = card.read_text("utf-8").replace("names-it: true", "names-it: false")
    card.write_text(before, "utf-8")
    code, _, err = go_over("s\nsenior technician\n")
    assert code == 1 and "put this right first" in err and card.read_text("utf-8") == before


def test_a_comment_is_not_lost(go_over: Call, north: Path) -> None:
    card = north / CARD
    before = card.read_text("utf-8").replace("status: draft", "status: draft  # ask Sam")
    card.write_text(before, "utf-8")
    code, _, err = go_over("s\nsenior technician\n")
    assert code == 5 and "comment" in err and card.read_text("utf-8") == before


def test_what_a_site_wrote_before_is_still_read(command: Call, north: Path) -> None:
    card = north / CARD
    text = card.read_text("utf-8")
    card.write_text(text.replace(TRUST, "status: reviewed\n"), "utf-8")
    assert command("rules", "explain", FAULT, "--rules", str(north))[0] == 0
    assert command("rules", "format", str(card))[0] == 0
    assert "status: gone-over" in card.read_text("utf-8")
