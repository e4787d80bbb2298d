"""What an author reads when a rule file does not fit its form: exact words, exact places."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.knowledge.small_rules import (
    CAPACITORS,
    ELECTRICAL,
    FILES,
    LOW_CHARGE,
    WEAK,
    Change,
    said,
    write_files,
    write_rules,
)
from troubleshoot.knowledge import layout
from troubleshoot.knowledge.layout import MOST_FOLDERS_DEEP


def test_the_small_rules_have_no_problem(tmp_path: Path) -> None:
    assert said(write_rules(tmp_path)) == []


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            (CAPACITORS, "    minutes: 6\n", "    minutes: six\n"),
            "rules/tests/capacitors.yaml:27:14: minutes must be a number; "
            "write a number from 0 to 600 [form]",
        ),
        (
            (CAPACITORS, "    minutes: 6\n", "    minutes: 601\n"),
            "rules/tests/capacitors.yaml:27:14: minutes cannot be 601; "
            "write a number from 0 to 600 [form]",
        ),
        (
            (CAPACITORS, "    healthy: normal\n", "    helthy: normal\n"),
            "rules/tests/capacitors.yaml:28:5: unknown key helthy in test; "
            "did you mean healthy [form]",
        ),
        (
            (CAPACITORS, "    kind: look\n", "    kind: loook\n"),
            "rules/tests/capacitors.yaml:6:11: kind cannot be loook; did you mean look [form]",
        ),
        (
            (CAPACITORS, "    name: Look at the can\n", ""),
            "rules/tests/capacitors.yaml:4:5: name is missing in test; "
            "add name: what people call it [form]",
        ),
        (
            (CAPACITORS, "area: capacitors\n", "area: 5\n"),
            "rules/tests/capacitors.yaml:2:7: area must be the name of an area, "
            "not 5; put it in quotes [form]",
        ),
        (
            (CAPACITORS, "{id: oil, means: oil about it}", "{id: Oil, means: oil about it}"),
            "rules/tests/capacitors.yaml:15:14: id 'Oil' is not well formed; "
            "write small letters and digits, words joined by hyphens [form]",
        ),
        (
            (CAPACITORS, "            between: [-6, 6]\n", "            between: [-6]\n"),
            "rules/tests/capacitors.yaml:38:22: between holds 1 items; write 2 [form]",
        ),
        (
            (CAPACITORS, "            above: 6\n", ""),
            "rules/tests/capacitors.yaml:42:13: bound says nothing; write at least one of: "
            "above, at-least, below, at-most, between, reads [form]",
        ),
        (
            (CAPACITORS, "    name: Look at the can\n", "    name:\n"),
            "rules/tests/capacitors.yaml:5:10: name has no value; "
            "write a text, or delete the key [form]",
        ),
        (
            (CAPACITORS, "    how: [Look at it from outside.]\n", "    how: {a: b}\n"),
            "rules/tests/capacitors.yaml:8:10: how must be a text, not a mapping; "
            "write a text [form]",
        ),
        (
            (WEAK, "format: 1\n", "format: 2\n"),
            "rules/faults/capacitors/fan-capacitor-weak.yaml:1:9: another format than this "
            "program knows; this program reads format: 1 [form]",
        ),
        (
            (WEAK, "    names-it: true\n", "    names-it: yes\n"),
            "rules/faults/capacitors/fan-capacitor-weak.yaml:26:15: names-it must be true or "
            "false; write true or false [form]",
        ),
        (
            (WEAK, "who: {all: [electrical]}", "who: [electrical]"),
            "rules/faults/capacitors/fan-capacitor-weak.yaml:20:8: who has none of its possible "
            "keys; write exactly one of: all, any [form]",
        ),
        (
            (WEAK, "    - capacitor-look: swollen\n", "    - capacitor-look\n"),
            "rules/faults/capacitors/fan-capacitor-weak.yaml:13:7: an item of sometimes must be "
            "a mapping; write {test: outcome} [form]",
        ),
        (
            (LOW_CHARGE, "  - when: {metering: txv}\n", "  - when: {metering: []}\n"),
            "rules/faults/refrigerant/low-charge.yaml:12:22: metering names no word; "
            "name at least one [form]",
        ),
        (
            (ELECTRICAL, "    when: {derived: can-worn-out}\n", "    when: {a: b}\n"),
            "rules/procedures/electrical.yaml:13:11: condition has none of its possible keys; "
            "write exactly one of: all, any, at-least, not, finding, fact, state, derived [form]",
        ),
        (
            (
                ELECTRICAL,
                "    when: {derived: can-worn-out}\n",
                "    when: {derived: can-worn-out, state: warm-line}\n",
            ),
            "rules/procedures/electrical.yaml:13:11: condition has more than one of its possible "
            "keys; write exactly one of: all, any, at-least, not, finding, fact, state, derived "
            "[form]",
        ),
        (
            ("hazards.yaml", "    signal: WARNING\n", "    signal: Warning\n"),
            "rules/hazards.yaml:4:13: signal cannot be Warning; did you mean WARNING [form]",
        ),
        (
            (LOW_CHARGE, "name: Low charge\n", f"name: {'x' * 121}\n"),
            "rules/faults/refrigerant/low-charge.yaml:3:7: name has 121 characters; "
            "keep it under 120 [form]",
        ),
    ],
)
def test_a_slip_is_named_at_its_place(tmp_path: Path, change: Change, message: str) -> None:
    assert said(write_rules(tmp_path, change)) == [message]


def test_problems_of_all_files_are_told_in_order(tmp_path: Path) -> None:
    folder = write_rules(
        tmp_path,
        ("hazards.yaml", "    signal: WARNING\n", "    signal: RED\n"),
        (CAPACITORS, "    minutes: 6\n", "    minutes: six\n"),
        (CAPACITORS, "    kind: look\n", "    kind: loook\n"),
        (LOW_CHARGE, "    - superheat: high\n", "    - superheet: high\n"),
    )
    assert [line.split(": ")[0] for line in said(folder)] == [
        "rules/faults/refrigerant/low-charge.yaml:10:7",
        "rules/hazards.yaml:4:13",
        "rules/tests/capacitors.yaml:6:11",
        "rules/tests/capacitors.yaml:27:14",
    ]


def test_while_a_file_cannot_be_read_its_names_are_not_called_unknown(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, (CAPACITORS, "area: capacitors", "area: one: two"))
    assert said(folder) == [
        "rules/tests/capacitors.yaml:2:10: a colon inside unquoted text; "
        "put the text in quotes [yaml]"
    ]


@pytest.mark.parametrize(
    ("name", "message"),
    [
        (
            "tests/more.yml",
            "rules/tests/more.yml:1:1: no kind of rule file has this name; name it "
            "tests/more.yaml [layout]",
        ),
        (
            "hazard.yaml",
            "rules/hazard.yaml:1:1: no kind of rule file has this name; rules live in "
            "tests/AREA.yaml, faults/SUBSYSTEM/FAULT.yaml, procedures/NAME.yaml, "
            "hazards/KIND.yaml, units/UNIT.yaml and files such as complaints.yaml [layout]",
        ),
    ],
)
def test_a_file_of_no_kind_is_named(tmp_path: Path, name: str, message: str) -> None:
    assert said(write_files(tmp_path / "rules", {**FILES, name: "format: 1\n"})) == [message]


def test_other_files_and_hidden_ones_are_left_alone(tmp_path: Path) -> None:
    others = {"README.md": "about", "tests/.draft.yaml": "x: [", "schema/tests.json": "{}"}
    assert said(write_files(tmp_path / "rules", {**FILES, **others})) == []


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    assert said(tmp_path / "nowhere") == [
        "nowhere:1:1: the folder of rules cannot be read (No such file or directory); "
        "name a folder that holds rule files [layout]"
    ]


def test_symbolic_links_are_not_followed(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    outside = write_files(tmp_path / "outside", {"more.yaml": "format: 1\n", "a/b.yaml": "x"})
    (folder / "tests" / "more.yaml").symlink_to(outside / "more.yaml")
    (folder / "faults" / "linked").symlink_to(outside / "a", target_is_directory=True)
    assert said(folder) == [
        "rules/faults/linked:1:1: a symbolic link; put the file itself here [layout]",
        "rules/tests/more.yaml:1:1: a symbolic link; put the file itself here [layout]",
    ]


def test_a_file_of_great_size_is_not_read(tmp_path: Path) -> None:
    folder = write_files(tmp_path / "rules", {**FILES, "round.yaml": "#" * 1_000_001})
    assert said(folder) == [
        "rules/round.yaml:1:1: the file is over 1000000 bytes; divide it into smaller files "
        "[layout]"
    ]


def test_a_pipe_called_like_a_rule_file_is_named(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    (folder / "round.yaml").unlink()
    os.mkfifo(folder / "round.yaml")
    assert said(folder) == ["rules/round.yaml:1:1: this is no regular file; name a file [layout]"]


def test_folders_too_deep_are_named_and_not_walked(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    deep = folder.joinpath(*"a" * 200)
    deep.mkdir(parents=True)
    assert said(folder) == [
        f"rules/{'a/' * MOST_FOLDERS_DEEP}a:1:1: too many folders inside each other; flatten them "
        "[layout]"
    ]


@pytest.mark.parametrize("limit", ["MOST_FILES", "MOST_BYTES_IN_ALL"])
def test_more_than_anybody_writes_is_not_read_to_its_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, limit: str
) -> None:
    monkeypatch.setattr(layout, limit, 2)
    (problem,) = said(write_rules(tmp_path))
    assert "rules:1:1: more rule files than anybody writes by hand" in problem
