"""A second language comes out on every screen, and no code is touched for it.

The language is English in capitals, made mechanically of the catalogue of all texts. What is left
in small letters on a screen was told by no entry: a text that is said and cannot be translated.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.language.screens import EXTRAS, Mode, held, left_in_english
from troubleshoot.cli.door import told
from troubleshoot.cli.pages import page_about
from troubleshoot.knowledge.checks import CHECKS
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.units import UNITS
from troubleshoot.safety.profiles import PROFILES

COMMANDS = frozenset({
    "troubleshoot", "diagnose", "inspect", "assess", "calc", "visits", "reopen", "report", "units",
    "history", "practise", "rules", "check", "explain", "find", "test", "format", "schema",
    "measure", "texts", "new", "pack", "init", "list", "sign", "watch", "draw",
})  # fmt: skip
"""What is typed into a shell."""

UNITS_SHOWN = frozenset(word for unit in UNITS.values() for word in (unit.id, unit.spoken))
FROM_THE_SYSTEM = frozenset({"such", "file", "or"})
"""Of "No such file or directory", which the operating system says."""

LEFT = COMMANDS | UNITS_SHOWN | {"wc", "points", "sq"}
VISITS: tuple[tuple[str, Mode], ...] = (
    ("does not cool", "first"),
    ("smells of gas", "sound"),
    ("dies every afternoon", "last"),
    ("no heat", "first"),
    ("runs all day", "sound"),
)

pytestmark = pytest.mark.usefixtures("in_the_language")


@pytest.mark.parametrize(("call", "mode"), VISITS)
def test_a_whole_visit(shipped: Knowledge, tmp_path: Path, call: str, mode: Mode) -> None:
    lines = held(shipped, tmp_path, call, mode, str.upper)
    assert len(lines) > 30
    assert left_in_english(lines, LEFT) == set()


def test_what_is_typed_beside_answers_is_answered_in_the_language(
    shipped: Knowledge, tmp_path: Path
) -> None:
    lines = held(shipped, tmp_path, VISITS[0][0], "sound", str.upper, map(str.upper, EXTRAS))
    said = "\n".join(lines)
    assert "AT ANY QUESTION:" in said and "NOTHING TO UNDO" not in said
    assert left_in_english(lines, LEFT) == set()


@pytest.mark.parametrize("kind", ["faults", "tests", "hazards", "complaints", "procedures"])
def test_the_pages_of_entries(shipped: Knowledge, kind: str) -> None:
    ids = list(getattr(shipped, kind))
    known = {name for each in (shipped.tests, shipped.faults, shipped.hazards) for name in each}
    known |= {*shipped.complaints, *shipped.procedures, *shipped.limits}
    lines = [told(line) for name in ids[::9] for line in page_about(shipped, name) or ()]
    assert left_in_english(lines, LEFT | known) == set()


@pytest.mark.parametrize("name", ["work-state", *sorted(CHECKS)])
def test_the_pages_of_checks_and_of_the_work_state(shipped: Knowledge, name: str) -> None:
    lines = [told(line) for line in page_about(shipped, name) or ()]
    assert lines and left_in_english(lines, LEFT) == set()


HELP = [
    (), ("diagnose",), ("inspect",), ("assess",), ("calc",), ("visits",), ("reopen",), ("report",),
    ("practise",), ("rules",), *((("rules"), each) for each in
    ("check", "draw", "explain", "find", "format", "measure", "new", "pack", "schema",
    "test", "texts", "watch")),
]  # fmt: skip


@pytest.mark.parametrize("words", HELP, ids=" ".join)
def test_help(command: Callable[..., tuple[int, str, str]], words: tuple[str, ...]) -> None:
    code, said, _ = command(*words, "--help")
    allowed = LEFT | {"spring", "fall", "or", *PROFILES, *"".join(PROFILES).split("-")}
    lines = [line for line in said.splitlines() if not line.strip().startswith("--profile")]
    assert code == 0 and left_in_english(lines, frozenset(allowed)) == set()


@pytest.mark.parametrize(
    "words",
    [
        ("foo",), ("diagnose", "--foo"), ("assess", "nofile"), ("report", "2026-01-01-1"),
        ("rules", "explain", "nosuch"), ("practise", "nosuch"), ("calc", "nosuch"),
        ("calc", "slip", "x=1"), ("calc", "slip", "sync=abc", "running=3 rpm"),
        ("practise", "--draw", "nosuch"), ("rules", "check", "--rules", "nofolder"),
        ("inspect", "--season", "spring"), ("visits",), ("practise", "--progress"),
        ("practise", "new"), ("rules", "schema", "nosuch"),
    ],
    ids=" ".join,
)  # fmt: skip
def test_errors_and_lists(
    shipped: Knowledge, command: Callable[..., tuple[int, str, str]], words: tuple[str, ...]
) -> None:
    _, said, failed = command(*words)
    typed = {"foo", "nofile", "nosuch", "nofolder", "abc", "sync", "slip", "running", "layout"}
    ids = set(FORMS)
    subsystems = {
        "capacitors", "combustion", "condensate", "condenser", "contactors", "controls", "gas",
        "economizer", "ignition", "metering", "power", "refrigerant",
    }  # fmt: skip
    allowed = LEFT | FROM_THE_SYSTEM | typed | ids | subsystems | {*shipped.subsystems}
    assert said + failed and left_in_english((said + failed).splitlines(), allowed) == set()


CASE = {
    "unit": {"refrigerant": "R-410A", "metering": "txv", "circuits": 2, "compressor-rla": "8.9 A"},
    "conditions": {"outdoor-temperature": "94 F", "minutes-running": 20},
    "complaint": "fails-hot-afternoons",
    "readings": [
        {"test": "suction-pressure", "at": "circuit 1", "text": "128 psig"},
        {"test": "suction-line-temperature", "at": "circuit 1", "text": "54 F"},
        {"test": "contactor-contacts", "at": "contactor 2", "outcome": "pole-burnt-away"},
        {"test": "compressor-windings", "at": "compressor 1", "text": "1.42/0.88/1.40"},
    ],
}


@pytest.mark.parametrize("words", [("assess",), ("diagnose", "--answers")], ids=" ".join)
def test_assess_and_a_report(
    command: Callable[..., tuple[int, str, str]],
    case_file: Callable[[dict[str, object]], str],
    words: tuple[str, ...],
) -> None:
    code, said, _ = command(*words, case_file(CASE))
    assert code == 0 and left_in_english(said.splitlines(), LEFT) == set()


def test_json_has_its_texts_in_the_language_and_its_ids_as_they_are(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, object]], str]
) -> None:
    import json

    _, said, _ = command("assess", case_file(CASE), "--json")
    cause = json.loads(said)["causes"][0]
    assert cause["name"] == "ONE CONTACTOR POLE BURNT AWAY"
    assert (cause["id"], cause["at"]) == ("contactor-pole-burnt-away", "contactor 2")


def test_a_computation(command: Callable[..., tuple[int, str, str]]) -> None:
    _, said, _ = command("calc", "slip", "sync=1800 rpm", "running=1750 rpm")
    assert left_in_english(said.splitlines(), LEFT | {"slip"}) == set()


def test_practice(command: Callable[..., tuple[int, str, str]], typed: Callable[..., None]) -> None:
    typed(
        "HELP", "?", "UNIT", "TESTS", "TESTS CAPACITORS", "FIND FAN", "STEPS", "STATE", "READINGS",
        "DO 1", "STEP 1", "HINT", "AGAIN", "DOUBT", "STOP", "CALL", "LOOSE LUG", "1", "", "", "Q",
    )  # fmt: skip
    _, said, _ = command("practise", "old-quay")
    lines = [line for line in said.splitlines() if not line.startswith(">")]
    assert "CAPACITORS: " in said and left_in_english(lines, LEFT) == set()
