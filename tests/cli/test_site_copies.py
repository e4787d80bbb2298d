"""A site's folder that is away: its last good copy stands in, and it is said so."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.test_site_rules import CASE, FILES
from tests.knowledge.small_rules import write_files, write_rules
from troubleshoot.cli import rule_base
from troubleshoot.cli.rule_base import kept_with_visit, rules_in_force
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.problems import RulesInvalid
from troubleshoot.visit.kept.journal import Journal

Call = Callable[..., tuple[int, str, str]]
MANIFEST = {"pack.yaml": "format: 1\nname: The north shop\nversion: '3'\n"}
HAZARDS = {
    "hazards.yaml": "format: 1\nhazards:\n  - id: swans\n    signal: CAUTION\n"
    "    when: [{findings: {capacitor-look: oil}}]\n"
    "    what-to-do: Swans bite in spring.\n    source: common practice, no source\n"
}


@pytest.fixture
def cache(tmp_path: Path) -> Path:
    return tmp_path / "cache"


@pytest.fixture
def base(tmp_path: Path) -> Path:
    return write_rules(tmp_path)


@pytest.fixture
def north(tmp_path: Path) -> Path:
    return write_files(tmp_path / "north", MANIFEST)


def _away(folder: Path) -> None:
    shutil.rmtree(folder)


def _not_mounted(folder: Path) -> None:
    shutil.rmtree(folder)
    folder.mkdir()


def _a_file_in_its_place(folder: Path) -> None:
    shutil.rmtree(folder)
    folder.write_text("", "utf-8")


@pytest.mark.parametrize("gone", [_away, _not_mounted, _a_file_in_its_place])
def test_the_last_good_copy_stands_in(
    gone: Callable[[Path], None], base: Path, north: Path, cache: Path
) -> None:
    first = load_rules([base, north], cache=cache)
    gone(north)
    again = load_rules([base, north], cache=cache)
    assert again.packs == first.packs and not first.copies and list(again.copies) == [str(north)]
    assert again.digest == first.digest


def test_it_is_the_last_one_that_could_be_used(base: Path, north: Path, cache: Path) -> None:
    load_rules([base, north], cache=cache)
    manifest = north / "pack.yaml"
    newer = MANIFEST["pack.yaml"].replace("'3'", "'4'")
    manifest.write_text(newer, "utf-8")
    load_rules([base, north], cache=cache)
    manifest.write_text("name: [", "utf-8")
    with pytest.raises(RulesInvalid):  # it can be read, and its author is told
        load_rules([base, north], cache=cache)
    _away(north)
    assert [pack.version for pack in load_rules([base, north], cache=cache).packs] == ["4"]


def test_a_folder_that_comes_back_is_used_as_it_is(base: Path, north: Path, cache: Path) -> None:
    load_rules([base, north], cache=cache)
    _away(north)
    load_rules([base, north], cache=cache)
    write_files(north, {"pack.yaml": MANIFEST["pack.yaml"].replace("'3'", "'5'")})
    back = load_rules([base, north], cache=cache)
    assert not back.copies and [pack.version for pack in back.packs] == ["5"]


@pytest.mark.parametrize("data", [b"", b"[1]", b"\xff", b'{"pack.yaml": 3}', b'"x"'])
def test_a_damaged_copy_is_none(data: bytes, base: Path, north: Path, cache: Path) -> None:
    load_rules([base, north], cache=cache)
    (copy,) = cache.glob("site-*.kept")
    copy.write_bytes(data)
    _away(north)
    with pytest.raises(RulesInvalid, match="cannot be read"):
        load_rules([base, north], cache=cache)


def test_without_a_cache_or_a_copy_the_folder_is_refused(base: Path, tmp_path: Path) -> None:
    with pytest.raises(RulesInvalid, match="cannot be read"):
        load_rules([base, tmp_path / "nowhere"], cache=tmp_path / "cache")


def test_one_sentence_says_so_and_the_report_says_which_rules_it_began_with(
    command: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TROUBLESHOOT_CACHE", str(tmp_path / "cache"))
    rule_base._tell_once.cache_clear()
    north = write_files(tmp_path / "north", FILES)
    case = tmp_path / "case.yaml"
    case.write_text(CASE, "utf-8")
    monkeypatch.setenv("TROUBLESHOOT_RULES", str(north))
    header = {"program": "1.2", "date": "2026-11-26", **kept_with_visit(rules_in_force())}
    with Journal.create(tmp_path / "data" / "visits", "2026-11-26-1", header) as journal:
        journal.append({"event": "call", "words": "it hisses"})
    (north / "pack.yaml").write_text(f"{FILES['pack.yaml']}version: '2'\n", "utf-8")
    _, report, _ = command("report", "2026-11-26-1")
    told = report.partition("Rules that the visit began with")[2]
    assert "program 1.2, rules " in told and "The north site, rules " in told
    assert "written here by those of now" in told
    assert "The north site, version 2, rules " in told
    _away(north)
    code, out, error = command("assess", str(case))
    assert code == 0 and "A nest of swans" in out
    assert error.count("cannot be read now; their last good copy, of ") == 1
