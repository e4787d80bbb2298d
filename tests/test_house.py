"""The order of the house: who may import whom, who prints, what the way to a question loads."""

from __future__ import annotations

import ast
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "troubleshoot"
MODULES = sorted(PACKAGE.rglob("*.py"))
LEVEL = {
    "outside": 0, "quantities": 1, "knowledge": 2, "reasoning": 3, "safety": 4, "visit": 5,
    "dialogue": 6, "records": 7, "practice": 7, "measure": 7, "physics": 7, "authoring": 7,
    "language": 8, "cli": 9,
}  # fmt: skip


@cache
def imports(path: Path) -> tuple[str, ...]:
    return tuple(_imports(path))


def _imports(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


@cache
def attributes(path: Path) -> set[str]:
    nodes = ast.walk(ast.parse(path.read_text("utf-8")))
    return {node.attr for node in nodes if isinstance(node, ast.Attribute)}


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_run_one_way(path: Path) -> None:
    folder = path.relative_to(PACKAGE).parts[0]
    if folder not in LEVEL:
        return
    for name in imports(path):
        parts = name.split(".")
        if parts[0] == "troubleshoot" and len(parts) > 1 and parts[1] in LEVEL:
            assert LEVEL[parts[1]] <= LEVEL[folder], f"{path} imports {name}"


@pytest.mark.parametrize(
    ("package", "allowed"),
    [
        ("experta", {"reasoning/chaining/engine.py"}),
        ("pint", {"quantities/pint_bridge.py"}),
        ("CoolProp", {"quantities/make_saturation_tables.py", "physics/make_property_tables.py"}),
        ("scipy", {"physics/solving.py", "physics/sizing.py"}),
        ("sklearn", {"measure/physics/forest.py"}),
    ],
)
def test_only_these_modules_import_it(package: str, allowed: set[str]) -> None:
    found = {
        str(path.relative_to(PACKAGE))
        for path in MODULES
        if any(name.split(".")[0] == package for name in imports(path))
    }
    assert found == allowed


def test_only_measuring_by_physics_imports_physics() -> None:
    ours = {"physics", "measure/physics"}
    for path in MODULES:
        if not ours & {str(parent) for parent in path.relative_to(PACKAGE).parents}:
            assert not any(name.startswith("troubleshoot.physics") for name in imports(path)), path


def test_only_its_command_imports_measuring_by_physics() -> None:
    room = "troubleshoot.measure.physics"
    found = {
        str(path.relative_to(PACKAGE))
        for path in MODULES
        if path.parent != PACKAGE / "measure" / "physics"
        and any(name.startswith(room) for name in imports(path))
    }
    assert found == {"cli/workshop/measuring.py"}


def test_only_the_command_line_prints() -> None:
    for path in MODULES:
        if path.relative_to(PACKAGE).parts[0] == "cli" or path.name == "make_saturation_tables.py":
            continue
        calls = [
            node.func.id
            for node in ast.walk(ast.parse(path.read_text("utf-8")))
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        ]
        assert "print" not in calls and "input" not in calls, path


def test_numbers_that_people_type_are_read_by_one_reader() -> None:
    """`isdigit` takes what `int` refuses; `outside.numbers` takes plain digits."""
    for path in MODULES:
        found = attributes(path)
        assert not found & {"isdigit", "isdecimal", "isnumeric"}, path


def test_files_from_outside_are_read_by_one_reader() -> None:
    """What is behind a name may never end, or never begin; `outside.files` looks first."""
    ours = {
        "quantities/saturation.py",
        "quantities/make_saturation_tables.py",
        "quantities/expected.py",
        "physics/refrigerant.py",
        "physics/make_property_tables.py",
    }  # shipped tables
    for path in MODULES:
        if (
            path.relative_to(PACKAGE).parts[0] == "outside"
            or str(path.relative_to(PACKAGE)) in ours
        ):
            continue
        found = attributes(path)
        assert not found & {"read_bytes", "read_text"}, path


def test_the_way_to_the_first_question_loads_nothing_heavy() -> None:
    program = (
        "import io, sys\n"
        "from troubleshoot.knowledge.load import load_shipped\n"
        "load_shipped()\n"
        "from troubleshoot.cli.failures import run_command\n"
        "from troubleshoot.cli.main import cli\n"
        "sys.stdin = io.StringIO('unit\\nno cooling\\n1\\n\\n')\n"
        "sys.argv = ['troubleshoot']\n"
        "heavy = ('pint', 'yaml', 'psychrolib', 'CoolProp', 'numpy', 'jinja2', 'hypothesis',\n"
        "         'scipy', 'troubleshoot.physics',\n"
        "         'troubleshoot.knowledge.checks', 'troubleshoot.knowledge.advice.defeats')\n"
        "def loaded():\n"
        "    return [n for n in sys.modules if any(f'{n}.'.startswith(f'{h}.') for h in heavy)]\n"
        "for name in loaded():  # the rules may have had to be read anew above\n"
        "    del sys.modules[name]\n"
        "run_command(cli)\n"
        "print('HEAVY', loaded())\n"
    )
    import os
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        done = subprocess.run(
            [sys.executable, "-c", program],
            capture_output=True,
            text=True,
            check=True,
            env={**os.environ, "TROUBLESHOOT_DATA": folder},
        )
    assert done.stdout.splitlines()[-1] == "HEAVY []"
    assert "Who is asking?" in done.stdout


def test_the_wheel_holds_rules_scenarios_and_tables(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--no-build-isolation",
         "--wheel-dir", str(tmp_path), str(ROOT)],
        check=True, capture_output=True,
    )  # fmt: skip
    (wheel,) = tmp_path.glob("*.whl")
    names = set(zipfile.ZipFile(wheel).namelist())
    assert "troubleshoot/shipped/rules/hazards/people.yaml" in names
    rules = [n for n in names if n.startswith("troubleshoot/shipped/rules/faults/")]
    assert len(rules) == len(list((ROOT / "rules" / "faults").rglob("*.yaml")))
    assert any(n.startswith("troubleshoot/shipped/scenarios/") for n in names)
    assert any(n.startswith("troubleshoot/quantities/saturation_tables/") for n in names)
    assert "troubleshoot/quantities/expected_table.json" in names
    assert any(n.startswith("troubleshoot/physics/property_tables/") for n in names)
    assert not any(n.startswith("tests/") for n in names)
