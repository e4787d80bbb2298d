"""The maker of mutants makes them, no listed mutant is gone, and a sample of them is killed."""

from __future__ import annotations

import ast
import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.mutation.mutate import all_mutants, equivalent
from tests.mutation.operators import mutants_of
from tests.mutation.sample import NOTHING_CHANGED, SAMPLE
from tests.mutation.trying import seconds_for


def changes(source: str) -> set[str]:
    """What the mutants of a few lines look like, each as one line of code."""
    made = mutants_of("m.py", source.encode())
    return {ast.unparse(ast.parse(m.applied(source.encode()))) for m in made}


@pytest.mark.parametrize(
    ("source", "mutants"),
    [
        ("if a:\n    b()", {"if True:\n    b()", "if False:\n    b()", "if a:\n    pass"}),
        ("x = a and b", {"x = b", "x = a"}),
        ("x = a < b", {"x = a <= b", "x = True", "x = False"}),
        ("x = (a or 0) >= (b)", {"x = (a or 0) > b"}),
        ("def f():\n    x = (yield a), b", {"def f():\n    x = ((yield a),)"}),
        ("x = a if b else c", {"x = a", "x = c"}),
        ("x = a | b", {"x = a", "x = b"}),
        ("x = min(a)", {"x = max(a)"}),
        ("LEAST = 3", {"LEAST = 4", "LEAST = 2"}),
        ("f(a=b)", {"f()", "pass"}),
        ("T = {a: b, c: d}", {"T = {c: d}", "T = {a: b}"}),
        ("T = {a: b, **(c if d else e)}", {"T = {a: b}", "T = {**(c if d else e)}"}),
        ("T = (a, b)", {"T = (b,)", "T = (a,)"}),
        ("for x in y:\n    z()", {"for x in ():\n    z()", "for x in y:\n    pass"}),
        ("def f() -> str:\n    return g(x)", {'def f() -> str:\n    return \'\''}),
        ('A: Final = "a"\nB = {C}', {"A: Final = 'a'\nB = {C, A}"}),
        ("P = re.compile('a')", {"P = re.compile('~')"}),
        ("assert a < b", set()),
        ('x = f"words {a < b}"', set()),
    ],
)  # fmt: skip
def test_every_careless_change_is_made(source: str, mutants: set[str]) -> None:
    assert mutants <= changes(source)
    assert mutants or not changes(source)


def test_every_mutant_is_code_and_has_a_name_of_its_own() -> None:
    made = all_mutants()
    assert len({mutant.name for mutant in made}) == len(made) > 3000
    package = Path(__file__).resolve().parents[2] / "troubleshoot"
    for mutant in made[::25]:
        source = (package / mutant.module).read_bytes()
        assert mutant.applied(source) != source
        ast.parse(mutant.applied(source))


def test_no_mutant_that_is_said_to_change_nothing_is_gone_or_without_a_reason() -> None:
    listed = equivalent()
    assert sorted(listed.keys() - {mutant.name for mutant in all_mutants()}) == []
    assert all(listed.values())


def test_a_mutant_has_longer_than_its_tests_take() -> None:
    """What survived the slow tests of `--again` ran out of time, and counted as killed."""
    known = {"seconds": {"a.py::slow": 30.0, "a.py::slower": 50.0, "b.py::slower": 50.0}}
    one, two = (seconds_for(["a.py::slow", f"{file}.py::slower"], known) for file in "ab")
    assert one > 80 and two > one, "each file is collected too"


def test_a_sample_of_mutants_is_killed_and_the_sound_code_is_not(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.mutation.sample", str(tmp_path / "copy")],
        capture_output=True, text=True, check=True, cwd=Path(__file__).resolve().parents[2],
    )  # fmt: skip
    killers = json.loads(done.stdout)
    assert killers.pop(NOTHING_CHANGED) == ""
    assert {name: killer.partition("[")[0] for name, killer in killers.items()} == SAMPLE
