"""A site's own folder of rules, named to the program: every command goes by it."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.edge.person import Person
from tests.edge.started import run as started_with

FAULT = "swans-nest-on-fan-guard"
FILES = {
    "pack.yaml": "format: 1\nname: The north site\n",
    "tests/roof-birds.yaml": """\
format: 1
area: roof-birds
tests:
  - id: birds-on-fan-guard
    name: Nests on the condenser fan guards
    kind: look
    work-state: any
    how: Look at the fan guards from the walkway.
    minutes: 2
    healthy: none-there
    background: {nest-there: 0.0005}
    outcomes:
      - {id: none-there, means: the guards are bare}
      - {id: nest-there, means: a nest lies on a guard}
    source: common practice, no source
""",
    "complaints.yaml": """\
format: 1
complaints:
  - id: hissing-from-the-roof
    says: Something hisses at us from the roof
    words: [hissing swan, hisses from the roof]
    first-tests: [birds-on-fan-guard]
    source: common practice, no source
""",
    f"faults/condenser/{FAULT}.yaml": f"""\
format: 1
fault: {FAULT}
name: A nest of swans lies on a fan guard
subsystem: condenser
is: cause
how-common: uncommon
calls: {{almost-always: [hissing-from-the-roof], often: [no-cooling]}}
evidence:
  almost-always:
    - birds-on-fan-guard: nest-there
  never:
    - birds-on-fan-guard: none-there
repair:
  what: Keep away and call the people who may move a nest.
  minutes: 30
  part-cost: adjust
  who: {{all: [owner]}}
proof:
  - {{text: The guards are bare, finding: {{birds-on-fan-guard: none-there}}}}
source: common practice, no source
status: reviewed
examples:
  - name: a nest on the guard
    names-it: true
    complaint: hissing-from-the-roof
    readings:
      - {{test: birds-on-fan-guard, outcome: nest-there}}
  - name: bare guards
    names-it: false
    complaint: hissing-from-the-roof
    readings:
      - {{test: birds-on-fan-guard, outcome: none-there}}
""",
}
CASE = """\
complaint: hissing-from-the-roof
readings:
  - {test: birds-on-fan-guard, outcome: nest-there}
"""
SCENARIO = f"""\
format: 1
scenario: swans
title: 'Boat house at an invented place, unit 1: it hisses'
subsystem: condenser
difficulty: 1
call: Something hisses at us.
complaint: hissing-from-the-roof
unit: {{circuits: 1}}
readings:
  - {{test: birds-on-fan-guard, outcome: nest-there}}
truth:
  faults:
    - {{fault: {FAULT}}}
  repair: The nest was moved by those who may.
  proof: Bare guards.
  proof-readings:
    - {{test: birds-on-fan-guard, outcome: none-there}}
teaches: Look before you reach.
source: common practice, no source
"""


SHIPPED_CALL = CASE.replace("hissing-from-the-roof", "no-cooling")


@pytest.fixture
def north(tmp_path: Path) -> Path:
    return written(tmp_path / "north", FILES)


@pytest.fixture
def case(tmp_path: Path) -> Path:
    path = tmp_path / "case.yaml"
    path.write_text(CASE, "utf-8")
    return path


def written(folder: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, "utf-8")
    return folder


def run(*words: object, folder: Path, **environment: str) -> tuple[int, str, str]:
    """Exit code, what was printed, and what was said of errors."""
    done = started_with(["--data", str(folder / "data"), *map(str, words)], environment)
    said, wrong = done.stdout.decode(), done.stderr.decode()
    assert "Traceback" not in wrong
    return done.returncode, said, wrong


def test_a_pack_that_passes_the_check_is_used_by_every_command(
    north: Path, case: Path, tmp_path: Path
) -> None:
    code, said, _ = run("rules", "check", "--rules", north, folder=tmp_path)
    assert code == 0, said
    code, said, _ = run("rules", "test", FAULT, "--rules", north, folder=tmp_path)
    assert (code, said.splitlines()[-1].split(",")[:2]) == (0, ["2 examples tried", " 0 failed"])
    for command in (("diagnose", "--answers", case), ("assess", case)):
        code, said, _ = run(*command, "--json", "--rules", north, folder=tmp_path)
        account = json.loads(said)
        assert (code, account["causes"][0]["id"]) == (0, FAULT), command
    case.write_text(SHIPPED_CALL, "utf-8")
    code, said, _ = run("assess", case, "--json", "--rules", north, folder=tmp_path)
    assert json.loads(said)["causes"][0]["id"] == FAULT
    code, said, _ = run("rules", "explain", FAULT, "--rules", north, folder=tmp_path)
    assert (code, "A nest of swans" in said) == (0, True)
    assert "Repair: The north site says: Keep away" in " ".join(said.split())
    code, said, _ = run("rules", "schema", "fault", "--rules", north, folder=tmp_path)
    assert "birds-on-fan-guard" in said


@pytest.mark.parametrize(
    ("how", "state"),
    [
        ("Spin the blower wheel by hand.", "any"),
        ("Loosen the plug at the gas valve outlet and put the hose on.", "any"),
        ("Lean over the fan guard with a lamp.", "running"),
    ],
)
def test_a_look_that_sends_hands_in_without_a_word_leads_nobody(
    how: str, state: str, north: Path, case: Path, tmp_path: Path
) -> None:
    """Regression: five such looks of a site were used."""
    look = north / "tests/roof-birds.yaml"
    thin = look.read_text("utf-8").replace("Look at the fan guards from the walkway.", how)
    look.write_text(thin.replace("work-state: any", f"work-state: {state}"), "utf-8")
    code, said, error = run("assess", case, "--rules", north, folder=tmp_path)
    assert (code, said) == (5, "") and "birds-on-fan-guard" in error


def test_an_apprentice_practises_on_a_sites_own_fault(north: Path, tmp_path: Path) -> None:
    scenario = tmp_path / "swans.yaml"
    scenario.write_text(SCENARIO, "utf-8")
    code, said, error = run("practise", scenario, "--rules", north, folder=tmp_path)
    assert (code, "Something hisses" in said) == (0, True), error
    code, _, error = run("practise", scenario, folder=tmp_path)
    assert (code, f"{FAULT} is no fault of the rule base" in error) == (1, True)


def test_the_shipped_rules_alone_know_nothing_of_it(case: Path, tmp_path: Path) -> None:
    code, _, error = run("assess", case, folder=tmp_path)
    assert code == 3
    assert "hissing-from-the-roof" in error


@pytest.mark.parametrize("where", ["before the command", "after it", "environment"])
def test_a_folder_is_named_before_or_after_the_command_or_by_the_environment(
    where: str, north: Path, case: Path, tmp_path: Path
) -> None:
    named, environment = ("--rules", north), {}
    if where == "environment":
        named, environment = (), {"TROUBLESHOOT_RULES": os.pathsep.join(["", str(north)])}
    words = (*named, "assess", case) if where == "before the command" else ("assess", case, *named)
    code, said, error = run(*words, folder=tmp_path, **environment)
    assert code == 0, error
    assert "A nest of swans" in said


def test_several_folders_stand_side_by_side_and_one_named_twice_counts_once(
    north: Path, case: Path, tmp_path: Path
) -> None:
    hazards = (
        "format: 1\nhazards:\n  - id: swans\n    signal: CAUTION\n"
        "    when: [{findings: {birds-on-fan-guard: nest-there}}]\n"
        "    what-to-do: Swans bite in spring.\n    source: common practice, no source\n"
    )
    south = written(
        tmp_path / "south", {"pack.yaml": "format: 1\nname: South\n", "hazards.yaml": hazards}
    )
    code, said, error = run("assess", case, "--rules", north, "--rules", south, folder=tmp_path)
    assert (code, "Swans bite" in said) == (0, True), error
    code, said, error = run("--rules", north, "assess", case, "--rules", north, folder=tmp_path)
    assert code == 0, error


@pytest.mark.parametrize(
    ("files", "said"),
    [
        (None, "the folder of rules cannot be read (No such file or directory); name a folder"),
        ({}, "the folder holds no rule file; put pack.yaml and rules in it"),
        ({"hazards.yaml": "format: 1\nhazards: []\n"}, "this folder of rules has no pack.yaml"),
        (
            {"pack.yaml": FILES["pack.yaml"], "hazards.yaml": "format: 1\nhazards: [{id: gas"},
            "hazards.yaml:2:",
        ),
        (
            {
                "pack.yaml": FILES["pack.yaml"],
                "faults/contactors/contactor-coil-open.yaml": FILES[
                    f"faults/condenser/{FAULT}.yaml"
                ].replace(FAULT, "contactor-coil-open"),
            },
            "a pack may add, never replace",
        ),
    ],
    ids=["missing", "empty", "no manifest", "broken", "an id that is shipped"],
)
def test_a_folder_that_cannot_be_used_is_refused_before_anything_is_asked(
    files: dict[str, str] | None, said: str, case: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "south"
    if files is not None:
        folder.mkdir()
        written(folder, files)
    for command in (("assess", case), ("diagnose", "--answers", case), ("diagnose",)):
        code, printed, error = run(*command, "--rules", folder, folder=tmp_path)
        assert (code, printed) == (5, "")
        assert any(said in line and str(folder) in line for line in error.splitlines()), error


def test_a_file_that_nobody_may_read_is_named(north: Path, case: Path, tmp_path: Path) -> None:
    os.mkfifo(north / "limits.yaml")
    code, _, error = run("assess", case, "--rules", north, folder=tmp_path)
    assert code == 5
    assert "limits.yaml" in error


def test_a_kept_visit_says_which_rules_it_began_with(north: Path, tmp_path: Path) -> None:
    data = tmp_path / "data"
    with Person(data, "--rules", str(north)) as person:
        person.types("RTU-7", "no-cooling", "q")  # an empty one is not offered again
    (journal,) = (data / "visits").glob("*.journal")
    assert str(north) in journal.read_text("utf-8").splitlines()[0]
    for words, missing in (((), True), (("--rules", str(north)), False)):
        with Person(data, *words) as person:
            said = "".join(person.types("y").split())  # lines break anywhere
            assert (f"--rules{north}" in said) is missing, said
            person.types("q")


HARMFUL = (
    (
        {"what: Keep away and": "what: Clip a wire from R to W across the open limit and"},
        "the text advises a way round a safety device",
    ),
    (
        {"work-state: any": "work-state: any\n    exposes: line"},
        "birds-on-fan-guard exposes line voltage with the panels on",
    ),
    ({"the people who may move a nest.": "**people**."}, "emphasis marks in a text"),
)


@pytest.mark.parametrize(("changes", "told"), HARMFUL, ids=["advice", "live parts", "marks"])
def test_what_the_check_refuses_since_it_can_hurt_no_command_goes_by(
    changes: dict[str, str], told: str, north: Path, case: Path, tmp_path: Path
) -> None:
    """Regression: it was shown to whoever asked, without a word, as a repair of the site."""
    for path in north.rglob("*.yaml"):
        text = path.read_text("utf-8")
        for before, after in changes.items():
            text = text.replace(before, after)
        path.write_text(text, "utf-8")
    code, said, _ = run("rules", "check", "--rules", north, folder=tmp_path)
    line = next(line for line in said.splitlines() if told in line)
    place = line.partition(": ")[0]
    assert code == 5 and str(north) in place
    for command in (
        ("assess", case),
        ("diagnose", "--answers", case),
        ("diagnose",),
        ("inspect",),
        ("practise", "--progress"),
        ("rules", "explain", FAULT),
    ):
        code, said, error = run(*command, "--rules", north, folder=tmp_path)
        assert (code, said) == (5, ""), (command, said)
        assert any(each.startswith(place) and told in each for each in error.splitlines()), error


def test_a_pack_that_makes_ok_alike_to_locked_leads_nobody(
    north: Path, case: Path, tmp_path: Path
) -> None:
    """Regression: `rules check` refused it and every other command used it."""
    words = "format: 1\nalike:\n  locked: [ok, 'yes']\n"
    written(north, {"synonyms.yaml": words})
    for command in (("assess", case), ("diagnose",), ("inspect",)):
        code, said, error = run(*command, "--rules", north, folder=tmp_path)
        assert (code, said) == (5, ""), (command, said)
        assert f"{north}/synonyms.yaml:3:3: " in error and "confirms a safety step" in error
