"""A site's folder of rules: begun, signed, listed, and named in reports."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.knowledge.small_rules import FILES, write_files, write_rules
from troubleshoot.knowledge.checks import check_rules
from troubleshoot.knowledge.load import load_rules
from troubleshoot.records.report import markdown_report
from troubleshoot.visit.telling.pack_told import pack_line

Call = Callable[..., tuple[int, str, str]]

LIMIT = """\
# What the north shop has learnt
format: 1
complaints:
  - id: swans-on-the-roof
    says: There are swans on the roof
    first-tests: [walk-round]
    brought-by: {often: [condenser-coil-dirty]}
    source: common practice, no source
"""


@pytest.fixture
def site(tmp_path: Path, command: Call) -> Path:
    code, out, _ = command(
        "rules", "pack", "init", str(tmp_path / "north"), "--name", "The north shop"
    )
    assert code == 0 and "The north shop" in out
    return write_files(tmp_path / "north", {"complaints.yaml": LIMIT})


def signed(site: Path, command: Call) -> str:
    code, out, failed = command("rules", "pack", "sign", str(site), "--by", "senior technician")
    assert code == 0, failed
    return out


def test_what_is_there_is_not_written_over(site: Path, command: Call) -> None:
    before = (site / "pack.yaml").read_text("utf-8")
    code, _, failed = command("rules", "pack", "init", str(site), "--name", "Another")
    assert code == 2 and "is there already" in failed
    assert (site / "pack.yaml").read_text("utf-8") == before


@pytest.mark.parametrize("name", ["", " , ", "x" * 200, "a\x1b[2J"])
def test_a_name_that_is_none_begins_nothing(name: str, tmp_path: Path, command: Call) -> None:
    code, _, failed = command("rules", "pack", "init", str(tmp_path / "n"), "--name", name)
    assert code == 2 and failed and not (tmp_path / "n").exists()


def test_a_signature_stands_until_what_was_signed_is_changed(site: Path, command: Call) -> None:
    assert "not signed" in command("rules", "pack", "list", "--rules", str(site))[1]
    told = signed(site, command)
    assert "signed by senior technician on " in told and "changed since" not in told
    file = site / "complaints.yaml"
    file.write_text(file.read_text("utf-8").replace("# What", "# All that"), "utf-8")
    assert command("rules", "pack", "list", "--rules", str(site))[1] == told
    assert command("rules", "format", "--check", str(site / "pack.yaml"))[0] == 0
    file.write_text(file.read_text("utf-8").replace("often", "sometimes"), "utf-8")
    assert "changed since" in command("rules", "pack", "list", "--rules", str(site))[1]
    code, out, _ = command("rules", "pack", "check", str(site))
    assert code == 0 and "pack.yaml:3:9: the rules have changed since senior technician" in out


def test_what_has_to_be_put_right_is_not_signed(site: Path, command: Call) -> None:
    text = LIMIT.replace("    brought-by: {often: [condenser-coil-dirty]}\n", "")
    (site / "complaints.yaml").write_text(text, "utf-8")
    code, _, failed = command("rules", "pack", "sign", str(site), "--by", "senior technician")
    assert code == 1 and "to fix first" in failed
    assert "signed" not in (site / "pack.yaml").read_text("utf-8")


def test_a_comment_in_the_manifest_is_not_lost(site: Path, command: Call) -> None:
    (site / "pack.yaml").write_text("# ours\nformat: 1\nname: The north shop\n", "utf-8")
    signed(site, command)
    assert (site / "pack.yaml").read_text("utf-8").startswith("# ours\nformat: 1\n")


def test_a_report_names_the_folders_in_use(tmp_path: Path) -> None:
    """Regression: nobody could tell from a report by which rules it was."""
    manifest = "format: 1\nname: The north shop\nversion: '3'\n"
    alike = FILES["faults/refrigerant/low-charge.yaml"].replace("low-charge", "charge-lost")
    alike = alike.replace("often:\n    - superheat: high", "seldom:\n    - superheat: high", 1)
    files = {"pack.yaml": manifest, "faults/refrigerant/charge-lost.yaml": alike}
    pack, rules = write_files(tmp_path / "north", files), write_rules(tmp_path)
    knowledge = load_rules([rules, pack], cache=tmp_path / "cache")
    account = {"complaint": None, "ending": "left", "minutes": 0, "causes": [], "asked": []}
    (told,) = knowledge.packs
    assert pack_line(told).startswith("The north shop, version 3, rules ")
    assert load_rules(rules, cache=tmp_path / "cache").packs == ()
    assert pack_line(told) in "\n".join(
        line for line in _report(knowledge, account).splitlines() if line.startswith("- ")
    )


def _report(knowledge: object, account: dict[str, object]) -> str:
    plain = {
        **account, "cautions": [], "stop": None, "unexplained": [], "proofs": [], "behind": [],
        "effects": [], "would_separate": [], "computed": [], "not_judged": [], "standing": [],
    }  # fmt: skip
    return markdown_report(knowledge, plain)  # type: ignore[arg-type]


def test_a_day_that_is_none_is_told(tmp_path: Path) -> None:
    manifest = "format: 1\nname: N\nsigned: {by: senior, 'on': tomorrow, rules: abc}\n"
    pack = write_files(tmp_path / "north", {"pack.yaml": manifest})
    found = [str(each) for each in check_rules([write_rules(tmp_path), pack])]
    assert any(
        "pack.yaml:3:9: tomorrow is no day; write it as 2026-11-29" in each for each in found
    )
