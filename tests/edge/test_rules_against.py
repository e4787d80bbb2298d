"""A copy of the program whose rules somebody thinned: what the command line says of it."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WINDINGS = "tests/compressor-windings.yaml"
START = "from troubleshoot.cli.main import main; main()"
INSULATION = re.compile(
    r"(?P<before>  - id: compressor-insulation\n(?:    .*\n)*?)"
    r"(?P<needs>    needs-state: .*\n)(?P<hazards>    hazards:\n(?:      - .*\n)+)"
)


@pytest.fixture
def program(tmp_path: Path) -> Path:
    """A checkout of its own: the package and its rules."""
    ignored = shutil.ignore_patterns("__pycache__")
    for name in ("troubleshoot", "rules"):
        shutil.copytree(ROOT / name, tmp_path / "program" / name, ignore=ignored)
    return tmp_path / "program"


def rules_check(program: Path, *words: str) -> tuple[int, list[str]]:
    """Exit code and lines of `troubleshoot rules check`, run in the copy."""
    done = subprocess.run(
        [sys.executable, "-c", START, "rules", "check", *words],
        capture_output=True,
        text=True,
        check=False,
        cwd=program,
        env={**os.environ, "PYTHONPATH": str(program)},
    )
    assert "Traceback" not in done.stderr
    said = (done.stdout + done.stderr).replace(f"{program}/", "")
    return done.returncode, said.splitlines()


def thin(program: Path) -> None:
    """Take all needs and three hazards from the insulation test, as the field trial did."""
    file = program / "rules" / WINDINGS
    text, count = INSULATION.subn(
        r"\g<before>    hazards: [compressor-terminal-venting]\n", file.read_text("utf-8")
    )
    assert count == 1
    file.write_text(text, "utf-8")


LOST = (
    "needs meter-proved",
    "needs capacitors-discharged",
    "shows compressor-in-vacuum before it",
    "shows insulation-test-near-electronics before it",
    "shows stored-charge before it",
)


def test_a_thinned_test_is_found_by_itself(program: Path) -> None:
    assert rules_check(program)[0] == 0
    thin(program)
    code, lines = rules_check(program)
    assert code == 1
    told = [line for line in lines if "compressor-insulation lacks" in line]
    for word in ("compressor-in-vacuum", "stored-charge", "meter-proved, capacitors-discharged"):
        assert any(word in line for line in told)
    assert all(line.startswith(f"rules/{WINDINGS}:") for line in told)


def test_against_the_rules_before_every_loss_is_one_line(program: Path) -> None:
    thin(program)
    code, lines = rules_check(program, "--against", str(ROOT / "rules"))
    dropped = [line for line in lines if line.endswith("[dropped-cautions]")]
    assert code == 1
    assert len(dropped) == len(LOST)
    for lost in LOST:
        assert any(f"compressor-insulation no longer {lost}; put it back" in d for d in dropped)


def test_a_loss_passes_once_somebody_signed_it(program: Path) -> None:
    file = program / "rules" / "tests" / "filters-coil-duct.yaml"
    text = file.read_text("utf-8")
    hazards = re.search(r"  - id: air-filters\n(?:    .*\n)*?    hazards: \[(.*?)\]\n", text)
    assert hazards is not None and "sharp-edges" in hazards[1]
    left = ", ".join(h for h in hazards[1].split(", ") if h != "sharp-edges")
    bare = f"{text[: hazards.start(1)]}{left}{text[hazards.end(1) :]}"
    file.write_text(bare, "utf-8")
    code, lines = rules_check(program, "--against", str(ROOT / "rules"))
    assert code == 1
    assert "sign it there: signed: [{drops: sharp-edges," in "".join(lines)

    signature = (
        "      - {drops: sharp-edges, by: senior technician, on: 2026-11-29, "
        "why: the racks were replaced by rails without edges}\n"
    )
    signed = "    signed:\n"
    place = bare.index(signed, hazards.start(1)) + len(signed)
    file.write_text(f"{bare[:place]}{signature}{bare[place:]}", "utf-8")
    code, lines = rules_check(program, "--against", str(ROOT / "rules"))
    assert (code, lines[-1].split(",")[0]) == (0, "0 to fix")


def test_a_pack_cannot_bring_a_500_volt_test_without_a_caution(program: Path) -> None:
    pack = program / "north"
    (pack / "tests").mkdir(parents=True)
    (pack / "pack.yaml").write_text("format: 1\nname: North\n", "utf-8")
    (pack / "tests" / "fan.yaml").write_text(
        "format: 1\narea: condenser\ntests:\n  - id: fan-insulation\n    name: Fan to frame\n"
        "    kind: measurement\n    work-state: any\n    instrument: insulation tester, 500 V\n"
        "    outcomes: [{id: good}, {id: bad}]\n    source: from memory\n",
        "utf-8",
    )
    code, lines = rules_check(program, str(pack))
    assert code == 5
    assert any("fan-insulation is not locked-out work" in line for line in lines)


@pytest.mark.parametrize(
    ("files", "said"),
    [
        (None, "the folder of rules cannot be read"),
        ({}, "holds no tests and no hazards; name a folder of rules"),
        ({"hazards.yaml": "format: 1\nhazards: [{id: gas"}, "hazards.yaml:2:"),
        ({"hazards.yaml": "format: 1\nhazards: [{id: gas}]\n"}, "hazards.yaml:2:"),
    ],
)
def test_what_cannot_be_read_as_rules_is_said_with_its_own_exit_code(
    program: Path, files: dict[str, str] | None, said: str
) -> None:
    folder = program / "before"
    if files is not None:
        folder.mkdir()
        for name, text in files.items():
            (folder / name).write_text(text, "utf-8")
    code, lines = rules_check(program, "--against", str(folder))
    assert code == 5
    assert any(said in line for line in lines)
