"""Every text leaves by one door, and nothing of another language costs a start in English."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import troubleshoot

CLI = Path(troubleshoot.__file__).parent / "cli"
DOORS = {"door.py", "failures.py", "json_output.py", "terminal.py"}
"""What puts out text, each after it was told; `main.py` only says how streams are encoded."""


def writes(path: Path) -> set[str]:
    """The ways of writing to a terminal that a module uses."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Attribute):
            name = ast.unparse(node)
            if name in ("click.echo", "click.secho", "click.prompt", "click.confirm"):
                found.add(name)
            if name.startswith(("sys.stdout.write", "sys.stderr.write")):
                found.add(name)
    return found


def test_nothing_is_put_out_beside_the_door() -> None:
    assert {path.name for path in CLI.glob("*.py") if writes(path)} == DOORS


def test_a_start_in_english_loads_nothing_of_languages() -> None:
    program = (
        "import sys\n"
        "from troubleshoot.cli.failures import run_command\n"
        "from troubleshoot.cli.main import cli\n"
        "sys.argv = ['troubleshoot', '--help']\n"
        "run_command(cli)\n"
        "print('LOADED', [n for n in sys.modules if n.startswith('troubleshoot.language')])\n"
    )
    environment = {k: v for k, v in os.environ.items() if k != "TROUBLESHOOT_LANGUAGE"}
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, env=environment, check=True
    )
    assert done.stdout.splitlines()[-1] == "LOADED []"


def test_a_catalogue_that_cannot_be_used_is_named(tmp_path: Path) -> None:
    path = tmp_path / "odd.po"
    path.write_text('msgid "a"\nmsgid "b"\n', "utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "troubleshoot", "--help"], capture_output=True, text=True,
        env={**os.environ, "TROUBLESHOOT_LANGUAGE": str(path)},
        check=False,
    )  # fmt: skip
    assert done.returncode == 2 and done.stdout == ""
    assert done.stderr == f"{path}, line 2: msgid is not expected here; write msgid, then msgstr\n"
