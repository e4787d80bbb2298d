"""`rules measure --physics`, as it is typed, and without what it needs."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable

import pytest

from troubleshoot.cli.failures import USAGE
from troubleshoot.cli.workshop import measuring

Command = Callable[..., tuple[int, str, str]]
SMALL = (
    "from troubleshoot.knowledge.load import load_shipped\n"
    "from troubleshoot.measure.physics import forest\n"
    "forest.ROUNDS, forest.TREES = 1, 5\n"
    "from troubleshoot.measure.physics.table import measure_by_physics\n"
    "print(*measure_by_physics(load_shipped(), 2, 5), sep='\\n')\n"
)


def test_without_the_extra_one_sentence_says_how_to_come_by_it(
    command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(measuring, "find_spec", lambda _: None)
    code, out, err = command("rules", "measure", "--physics")
    assert (code, out) == (USAGE, "")
    assert err == "--physics needs more packages: pip install 'troubleshoot[physics]'\n"


def test_measuring_the_rules_by_themselves_loads_no_physics() -> None:
    program = (
        "import sys\n"
        "from troubleshoot.cli.main import cli\n"
        "sys.argv = ['troubleshoot', 'rules', 'measure', '--help']\n"
        "from troubleshoot.cli.failures import run_command\n"
        "run_command(cli)\n"
        "import troubleshoot.measure.table\n"
        "print([n for n in sys.modules if 'physics' in n or n in ('scipy', 'sklearn')])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_the_figures_are_the_same_under_any_hash_seed() -> None:
    pytest.importorskip("scipy", reason="the optional extra physics is not installed")
    pytest.importorskip("sklearn", reason="the optional extra physics is not installed")
    printed = [
        subprocess.run(
            [sys.executable, "-c", SMALL],
            capture_output=True,
            text=True,
            check=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    ]
    assert printed[0] == printed[1]
    _holds_together(printed[0].splitlines())


def _holds_together(lines: list[str]) -> None:
    """Every table's rows are as wide as its head, every share lies in 0 to 1."""
    tables = [line.split("|")[1:-1] for line in lines if line.startswith("|")]
    heads = [number for number, row in enumerate(tables) if set(row[0].strip()) == {"-"}]
    assert len(heads) >= 5
    for begin, end in zip(heads, [*(h - 1 for h in heads[1:]), len(tables)], strict=True):
        assert {len(row) for row in tables[begin - 1 : end]} == {len(tables[begin])}
    shares = [
        float(cell) for row in tables for cell in row if cell.strip()[:2] in ("0.", "1.")
        and "(" not in cell
    ]  # fmt: skip
    assert shares and all(0 <= share <= 1 for share in shares)
