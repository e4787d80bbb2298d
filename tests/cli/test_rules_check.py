"""`rules check`: the place with its line, the cause before what follows from it, exit codes."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from troubleshoot.knowledge.load import shipped_folder

Call = Callable[..., tuple[int, str, str]]

CARD = "faults/contactors/contactor-coil-open.yaml"
OWN = "faults/contactors/north-coil.yaml"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A site with a card of its own, a shipped one by another name."""
    text = (shipped_folder() / CARD).read_text("utf-8")
    text = text.replace("contactor-coil-open", "north-coil").replace("name: C", "name: North c")
    text = text.replace("Coil resistance", "Coil").replace("words: [", "words: [north ")
    path = tmp_path / "north" / OWN
    path.parent.mkdir(parents=True)
    path.write_text(text, "utf-8")
    (tmp_path / "north" / "pack.yaml").write_text("format: 1\nname: The north site\n", "utf-8")
    return tmp_path / "north"


def spoil(site: Path, old: str, new: str) -> int:
    """Change the card in one place, and return its line."""
    text = (site / OWN).read_text("utf-8")
    assert text.count(old) == 1
    (site / OWN).write_text(text.replace(old, new), "utf-8")
    return text[: text.index(old)].count("\n") + 1


def test_a_problem_shows_its_line_with_a_mark_under_its_place(site: Path, command: Call) -> None:
    line = spoil(site, "contactor-coil-ohms: open", "contactor-coil-ohm: open")
    code, out, _ = command("rules", "check", "--rules", str(site))
    lines = out.splitlines()
    assert lines[0].startswith(f"{site / OWN}:{line}:7: no test is called contactor-coil-ohm; ")
    assert lines[1] == "        - contactor-coil-ohm: open"
    assert lines[2] == f"    {' ' * 6}^"
    assert (code, lines[-1]) == (5, "1 to fix, 0 to know")


def test_one_line_is_one_line_each(site: Path, command: Call) -> None:
    spoil(site, "contactor-coil-ohms: open", "contactor-coil-ohm: open")
    out = command("rules", "check", "--rules", str(site), "--one-line")[1]
    assert len(out.splitlines()) == 2


def test_scripts_get_the_same_as_data(site: Path, command: Call) -> None:
    line = spoil(site, "contactor-coil-ohms: open", "contactor-coil-ohm: open")
    code, out, _ = command("rules", "check", "--rules", str(site), "--json")
    told = json.loads(out)
    assert (code, told["schema"], told["to_fix"], told["usable"]) == (5, 1, 1, False)
    (problem,) = told["problems"]
    assert problem == {
        "path": str(site / OWN), "line": line, "column": 7,
        "what": "no test is called contactor-coil-ohm",
        "instead": "did you mean contactor-coil-ohms",
        "check": "unknown-names", "level": "error", "goes_with_it": [],
    }  # fmt: skip


def test_a_misspelt_id_is_one_problem_of_the_file_that_has_it(site: Path, command: Call) -> None:
    """Regression: it gave a line for each file that names the card, and none for the guilty one."""
    (site / CARD).parent.mkdir(parents=True, exist_ok=True)
    others = site / "faults" / "contactors" / "north-relay.yaml"
    text = (site / OWN).read_text("utf-8").replace("north-coil", "north-relay")
    others.write_text(text.replace("look-alikes: [", "look-alikes: [north-coil, "), "utf-8")
    spoil(site, "fault: north-coil", "fault: north-coli")
    code, out, _ = command("rules", "check", "--rules", str(site))
    lines = out.splitlines()
    assert lines[0].startswith(f"{site / OWN}:2:8: the fault north-coli stands in north-coil.yaml;")
    assert "or write fault: north-coil " in lines[0]
    assert lines[3].startswith(f"    goes with it: {others}:")
    assert (code, lines[-1]) == (5, "1 to fix, 0 to know, 1 that go with them")


def test_what_can_be_used_all_the_same_is_told_from_what_cannot(site: Path, command: Call) -> None:
    spoil(site, "source: common practice, no source\n", "")
    code, out, _ = command("rules", "check", "--rules", str(site))
    assert code == 1 and "has no source" in out
    assert command("rules", "explain", "north-coil", "--rules", str(site))[0] == 0


def test_a_name_of_two_lines_splits_no_line(site: Path, command: Call) -> None:
    """Regression: the place stood on two lines, of which neither was one."""
    (site / "tests").mkdir()
    (site / "tests" / "a\nb.yaml").write_text("x: 1\n", "utf-8")
    out = command("rules", "check", "--rules", str(site), "--one-line")[1]
    problems = [line for line in out.splitlines() if "is missing in tests" in line]
    assert problems and all("a<U+000A>b.yaml:1:1: " in line for line in problems)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("  often:\n    - cond", "  mostly:\n    - cond", "write one of: almost-always, often,"),
        ("no-cooling, only", "breaker-trips, only", "did you mean trips-breaker-or-fuse"),
        ("subsystem: contactors", "subsystem: 'contactors", "a quote that is never closed"),
    ],
)
def test_what_to_write_instead(site: Path, command: Call, old: str, new: str, told: str) -> None:
    line = spoil(site, old, new)
    out = command("rules", "check", "--rules", str(site), "--one-line")[1]
    assert f"{site / OWN}:{line}:" in out and told in out


def test_shipped_rules_have_nothing_to_fix(command: Call, tmp_path: Path) -> None:
    shutil.rmtree(tmp_path)
    code, out, _ = command("rules", "check", "--json")
    assert (code, json.loads(out)["to_fix"]) == (0, 0)
