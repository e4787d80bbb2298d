"""Packs: a site's own folder of rules may add, and never weaken what is shipped."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import said, write_files, write_rules
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.problems import RulesInvalid

MANIFEST = "format: 1\nname: The north site\n"
ADDED = """\
format: 1
hazards:
  - id: swans
    signal: CAUTION
    when: [{work-state: running}]
    what-to-do: Swans nest on this roof in spring; keep away.
    source: common practice, no source
"""
ADD_ONLY = "a pack may add, never change what is shipped [packs]"


def with_pack(tmp_path: Path, files: dict[str, str]) -> list[str]:
    return said(write_rules(tmp_path), write_files(tmp_path / "north", files))


def test_a_pack_adds_to_the_shipped_rules(tmp_path: Path) -> None:
    pack = write_files(tmp_path / "north", {"pack.yaml": MANIFEST, "hazards.yaml": ADDED})
    shipped = write_rules(tmp_path)
    assert said(shipped, pack) == []
    knowledge = load_rules([shipped, pack], cache=tmp_path / "cache")
    assert list(knowledge.hazards) == [
        "stored-charge",
        "gas-smell",
        "lockout-and-verify-dead",
        "swans",
    ]


def test_hazards_may_lie_in_files_by_kind(tmp_path: Path) -> None:
    birds = ADDED.replace("swans", "gulls")
    files = {"pack.yaml": MANIFEST, "hazards/swans.yaml": ADDED, "hazards/gulls.yaml": birds}
    pack = write_files(tmp_path / "north", files)
    shipped = write_rules(tmp_path)
    assert said(shipped, pack) == []
    knowledge = load_rules([shipped, pack], cache=tmp_path / "cache")
    assert list(knowledge.hazards)[-2:] == ["gulls", "swans"]


def test_what_a_pack_tells_people_to_do_is_told_under_its_name(tmp_path: Path) -> None:
    """Regression: "carry on with the burner lit" was read as the program's own word."""
    tagged = ADDED.replace("    source:", "    tag: Swans bite.\n    source:")
    look = a_test("look", "    work-state: any\n")
    files = {"pack.yaml": MANIFEST, "hazards.yaml": tagged, "tests/quick.yaml": look}
    pack, shipped = write_files(tmp_path / "north", files), write_rules(tmp_path)
    alone = load_rules(shipped, cache=tmp_path / "cache")
    both = load_rules([shipped, pack], cache=tmp_path / "cache")
    swans = both.hazards["swans"]
    assert swans.what_to_do.startswith("The north site says: Swans nest")
    assert swans.tag == "The north site says: Swans bite."
    assert both.tests["quick-look"].how == ("The north site says: Look at it.",)
    assert {name: both.hazards[name] for name in alone.hazards} == alone.hazards
    assert {name: both.tests[name] for name in alone.tests} == alone.tests


def a_test(kind: str, state: str = "") -> str:
    return (
        "format: 1\narea: capacitors\nsource: from memory\ntests:\n  - id: quick-look\n"
        f"    name: Quick look at the can\n    kind: {kind}\n{state}    how: [Look at it.]\n"
        "    minutes: 1\n    healthy: fine\n    outcomes:\n      - {id: fine, means: it holds}\n"
        "      - {id: loose, means: it moves}\n"
    )


@pytest.mark.parametrize("kind", ["look", "measurement"])
def test_a_look_of_a_pack_says_in_which_state_the_unit_must_be(kind: str, tmp_path: Path) -> None:
    """Regression: "reach in behind the panel" came without a lock, for want of that one word."""
    files = {"pack.yaml": MANIFEST, "tests/quick.yaml": a_test(kind)}
    pack = write_files(tmp_path / "north", files)
    with pytest.raises(RulesInvalid, match="leaves its work state open; write work-state"):
        load_rules([write_rules(tmp_path), pack], cache=tmp_path / "cache")


@pytest.mark.parametrize(
    ("kind", "state"),
    [("look", "    work-state: any\n"), ("look", "    work-state: locked-out\n"), ("ask", "")],
)
def test_a_state_that_is_said_or_not_needed_passes(kind: str, state: str, tmp_path: Path) -> None:
    files = {"pack.yaml": MANIFEST, "tests/quick.yaml": a_test(kind, state)}
    assert not [line for line in with_pack(tmp_path, files) if "[packs]" in line]


def test_a_pack_may_name_what_is_shipped(tmp_path: Path) -> None:
    rules = (
        "format: 1\nprocedures:\n  - id: north-first\n    when: {finding: {superheat: high}}\n"
        "    then: {look-first: [capacitor-look]}\n    reason: Cans fail here.\n"
        "    source: from memory\n"
    )
    assert with_pack(tmp_path, {"pack.yaml": MANIFEST, "procedures/north.yaml": rules}) == []


@pytest.mark.parametrize(
    ("files", "messages"),
    [
        (
            {"hazards.yaml": ADDED},
            [
                "north/hazards.yaml:1:1: this folder of rules has no pack.yaml; "
                "add pack.yaml with format: 1 and the pack's name [packs]"
            ],
        ),
        (
            {"pack.yaml": MANIFEST, "hazards.yaml": ADDED.replace("swans", "gas-smell")},
            [
                "north/hazards.yaml:3:9: the hazard gas-smell is already defined in "
                "rules/hazards.yaml, line 9; a pack may add, never replace [unique-ids]"
            ],
        ),
        (
            {"pack.yaml": MANIFEST, "retired.yaml": "format: 1\nretired: [stored-charge, old]\n"},
            [
                f"north/retired.yaml:2:11: the pack retires stored-charge, which is shipped; "
                f"{ADD_ONLY}",
                "rules/hazards.yaml:3:9: the id stored-charge is retired; choose a new id "
                "[unique-ids]",
            ],
        ),
        (
            {
                "pack.yaml": MANIFEST,
                "retired.yaml": "format: 1\naliases: [{from: {superheat: high}, to: {superheat: "
                "low}}]\n",
            },
            [f"north/retired.yaml:2:19: the pack renames superheat, which is shipped; {ADD_ONLY}"],
        ),
        (
            {
                "pack.yaml": MANIFEST,
                "equipment.yaml": "format: 1\nimplies: [{when: {circuits: one}, then: {metering: "
                "txv}}]\n",
            },
            [f"north/equipment.yaml:2:42: the pack sets metering, which is shipped; {ADD_ONLY}"],
        ),
        (
            {
                "pack.yaml": MANIFEST,
                "words.yaml": "format: 1\nwords: {sound: sound, own-id: Own id}\n",
            },
            [f"north/words.yaml:2:9: the pack says otherwise sound, which is shipped; {ADD_ONLY}"],
        ),
    ],
)
def test_a_pack_that_does_more_than_add_is_refused(
    tmp_path: Path, files: dict[str, str], messages: list[str]
) -> None:
    assert with_pack(tmp_path, files) == messages
    with pytest.raises(RulesInvalid):
        load_rules([tmp_path / "rules", tmp_path / "north"], cache=tmp_path / "cache")


def test_the_shipped_rules_are_no_pack(tmp_path: Path) -> None:
    folder = write_files(write_rules(tmp_path), {"pack.yaml": MANIFEST})
    assert said(folder) == ["rules/pack.yaml:1:1: the shipped rules are no pack; delete it [packs]"]


def test_complaints_that_list_faults_as_before_are_read(tmp_path: Path) -> None:
    """A site's older folder, and the earlier rules that a check compares with, stay readable."""
    old = (
        "format: 1\ncomplaints:\n  - {id: hums, says: It hums, faults: [low-charge], "
        "also: fan-capacitor-weak}\n"
    )
    files = {"pack.yaml": MANIFEST, "complaints.yaml": old}
    shipped, pack = write_rules(tmp_path), write_files(tmp_path / "north", files)
    assert said(shipped, pack) == []
    hums = load_rules([shipped, pack], cache=tmp_path / "cache").complaints["hums"]
    assert hums.brought_by == {"low-charge": "almost-always", "fan-capacitor-weak": "seldom"}
    (pack / "complaints.yaml").write_text(old.replace("also: fan", "also: van"), "utf-8")
    assert "no fault is called van-capacitor-weak; did you mean" in said(shipped, pack)[0]
