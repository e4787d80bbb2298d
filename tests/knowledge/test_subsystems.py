"""One vocabulary for the parts of a unit: where faults lie, what tests are of, what bans name."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import FILES, LOW_CHARGE, REFRIGERANT, said, write_files
from troubleshoot.knowledge.checks import check_rules
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.upgrading import AREAS_BEFORE

SUBSYSTEMS = """\
format: 1
subsystems:
  - id: refrigerant
    about: the charge
    areas: superheat

  - id: capacitors
    about: the cans
"""
FINER = FILES[REFRIGERANT].replace("area: refrigerant", "area: superheat")
PACK = "format: 1\nname: The north site\n"
OLD_TESTS = """\
format: 1
area: indoor-air
tests:
  - id: swans-in-duct
    name: Swans in the duct
    kind: look
    work-state: any
    outcomes: [{id: none-there}, {id: nest-there}]
    healthy: none-there
    source: from memory
"""
OLD_HAZARDS = """\
format: 1
hazards:
  - id: swans
    signal: CAUTION
    when: [{work-state: running}]
    what-to-do: Swans nest in this duct; keep away.
    forbids: [{areas: [indoor-air, refrigerant]}]
    source: from memory
"""


def rules(folder: Path, *changes: tuple[str, str, str], **more: str) -> Path:
    files = {**FILES, "subsystems.yaml": SUBSYSTEMS, REFRIGERANT: FINER, **more}
    for name, old, new in changes:
        assert files[name].count(old) == 1
        files[name] = files[name].replace(old, new)
    return write_files(folder / "rules", files)


def test_every_shipped_word_is_listed_and_every_card_and_test_has_one(shipped: Knowledge) -> None:
    listed = shipped.subsystems
    assert {fault.subsystem for fault in shipped.faults.values()} <= set(listed)
    for test in shipped.tests.values():
        assert test.area in (test.subsystem, *listed[test.subsystem].areas), test.id


def test_a_test_of_a_finer_area_belongs_to_its_subsystem(tmp_path: Path) -> None:
    folder = rules(tmp_path)
    assert said(folder) == []
    tests = load_rules(folder, cache=tmp_path / "cache").tests
    assert (tests["superheat"].area, tests["superheat"].subsystem) == ("superheat", "refrigerant")
    assert tests["capacitor-look"].subsystem == "capacitors"


def test_where_nothing_is_listed_an_area_is_its_own_subsystem(tmp_path: Path) -> None:
    folder = write_files(tmp_path / "rules", {**FILES, REFRIGERANT: FINER})
    assert said(folder) == []
    test = load_rules(folder, cache=tmp_path / "cache").tests["superheat"]
    assert (test.area, test.subsystem) == ("superheat", "superheat")


@pytest.mark.parametrize(
    ("change", "wanted"),
    [
        (
            (REFRIGERANT, "area: superheat", "area: superheats"),
            [
                "rules/subsystems.yaml:5:5: no test is of superheat; take it out",
                f"rules/{REFRIGERANT}:2:1: subsystems.yaml does not list superheats; "
                "did you mean superheat",
            ],
        ),
        (
            (REFRIGERANT, "area: superheat", "area: refrigerant"),
            ["rules/subsystems.yaml:5:5: no test is of superheat; take it out"],
        ),
        (
            ("subsystems.yaml", "areas: superheat", "areas: [superheat, capacitors]"),
            ["rules/subsystems.yaml:5:24: capacitors is listed already; leave it in one place"],
        ),
        (
            ("subsystems.yaml", "about: the cans", "about: the cans\n\n  - {id: moat, about: wet}"),
            ["rules/subsystems.yaml:10:6: no card and no test is of moat; take it out"],
        ),
        (
            (LOW_CHARGE, "subsystem: refrigerant", "subsystem: superheat"),
            [
                f"rules/{LOW_CHARGE}:4:1: subsystems.yaml does not list superheat; "
                "write one of: capacitors, refrigerant",
                f"rules/{LOW_CHARGE}:4:1: the subsystem superheat stands in the folder "
                "refrigerant; move it to superheat/",
            ],
        ),
    ],
)
def test_a_word_that_is_not_listed_is_found_where_it_stands(
    tmp_path: Path, change: tuple[str, str, str], wanted: list[str]
) -> None:
    found = said(rules(tmp_path, change))
    assert sorted(line.rpartition(" [")[0] for line in found) == sorted(wanted)


def test_a_sites_own_words_load_and_are_asked_to_be_listed(tmp_path: Path) -> None:
    own = OLD_TESTS.replace("indoor-air", "swannery")
    north = write_files(tmp_path / "north", {"pack.yaml": PACK, "tests/swans.yaml": own})
    shipped = rules(tmp_path)
    found = load_rules([shipped, north], cache=tmp_path / "cache")
    assert found.tests["swans-in-duct"].subsystem == "swannery"
    other = ("idle", "nobody says")
    told = [line for line in said(shipped, north) if not any(word in line for word in other)]
    assert [line.split(";")[0] for line in told] == [
        "north/tests/swans.yaml:2:1: subsystems.yaml does not list swannery"
    ]
    levels = {each.check: each.level for each in check_rules([shipped, north])}
    assert levels["declared-subsystems"] == "notice"
    listing = "format: 1\nsubsystems: [{id: swannery, about: birds}]\n"
    write_files(north, {"subsystems.yaml": listing})
    assert not [line for line in said(shipped, north) if "subsystems" in line]


def test_a_word_of_earlier_rules_loads_and_is_brought_to_todays(tmp_path: Path) -> None:
    files = {"pack.yaml": PACK, "tests/swans.yaml": OLD_TESTS, "hazards.yaml": OLD_HAZARDS}
    north = write_files(tmp_path / "north", files)
    found = load_rules([rules(tmp_path), north], cache=tmp_path / "cache")
    assert found.tests["swans-in-duct"].area == "filters-coil-duct"
    (ban,) = found.hazards["swans"].forbids
    assert ban.areas == ("filters-coil-duct", "refrigerant")
    assert "area: filters-coil-duct\n" in format_file(OLD_TESTS, kind="tests")
    formatted = format_file(OLD_HAZARDS, kind="hazards")
    assert "areas: [filters-coil-duct, refrigerant]" in formatted


def test_what_old_words_became_is_a_word_of_today(shipped: Knowledge) -> None:
    areas = {word for each in shipped.subsystems.values() for word in (each.id, *each.areas)}
    assert set(AREAS_BEFORE.values()) <= areas
    assert areas.isdisjoint(AREAS_BEFORE)
