"""Which caution is read first: by gravity, then by kind, then by the place in its file."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import pytest

from tests.knowledge.small_rules import FILES, said, write_files, write_rules
from troubleshoot.knowledge.base import read_base
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.load import load_rules, shipped_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.splitting import kinds_of, split_by_kind

IN_ONE_FILE = Path(__file__).with_name("hazards_in_one_file.txt")
"""The hazards as they stood when all were one file, whose order decided."""

MOVED = {
    "carbon-monoxide-evacuate": "people go out before anybody sees to burners and doors",
    "caught-in-machine": "it is read with whoever is held; it stood behind whoever is hurt",
    "insulation-test-near-electronics": "it is read with the electrics, before refrigerant",
    "motor-on-bad-supply": "it burns within minutes, so it is read before the breakers",
    "belt-smoke-in-duct": "it is read with the belts; it stood last but one, behind the roof",
    "low-pressure-switch-open": "it is read with the circuit; it stood last, behind the roof",
}
"""What does not stand where it stood among those as grave, and why."""

KINDS = """\
format: 1
kinds:
  - id: gas
    about: gas in the air

  - id: charge
    about: what stays charged
"""
PACK = "format: 1\nname: The north site\n"


def hazards(kind: str, *names: str) -> str:
    lines = ["format: 1", *([f"kind: {kind}"] if kind else []), "hazards:"]
    for name in names:
        lines += [
            f"  - id: {name}",
            "    signal: WARNING",
            "    when: [{work-state: running}]",
            f"    what-to-do: Keep away from the {name}.",
            "    source: from memory",
        ]
    return "\n".join(lines) + "\n"


def by_kind(folder: Path, **more: str) -> Path:
    """The small base with its hazards in files by kind."""
    whole = FILES["hazards.yaml"]
    kinds = {"gas-smell": "gas", "stored-charge": "charge", "lockout-and-verify-dead": "charge"}
    parts = {f"hazards/{kind}.yaml": text for kind, text in split_by_kind(whole, kinds).items()}
    others = {name: text for name, text in FILES.items() if name != "hazards.yaml"}
    files = {**others, **parts, "order-of-cautions.yaml": KINDS, **more}
    return write_files(folder / "rules", files)


def stands_as_it_stood(shipped: Knowledge, apart_from: Iterable[str]) -> bool:
    """Whether hazards as grave stand in the order of the one file, some of them left out."""
    stood = IN_ONE_FILE.read_text("utf-8").split()
    left = [name for name in stood if name in shipped.hazards and name not in apart_from]
    before = gravest_first(shipped.hazards[name] for name in left)
    now = gravest_first(h for h in shipped.hazards.values() if h.id in left)
    return now == before


def test_among_equals_every_caution_stands_where_it_stood_in_one_file(shipped: Knowledge) -> None:
    assert stands_as_it_stood(shipped, MOVED)


@pytest.mark.parametrize("name", MOVED)
def test_no_excuse_outlives_its_reason(shipped: Knowledge, name: str) -> None:
    others = [moved for moved in MOVED if moved != name]
    assert not stands_as_it_stood(shipped, others), f"{name} stands where it stood: strike it"


def test_every_shipped_hazard_has_one_place_by_kind_and_file(shipped: Knowledge) -> None:
    files = [file for file in read_base([shipped_folder()]).files if file.kind == "hazards"]
    in_files = {file.data["kind"]: file.data["hazards"] for file in files}
    assert len(in_files) == len(files)
    ordered = [hazard["id"] for kind in shipped.hazard_kinds for hazard in in_files[kind]]
    assert list(shipped.hazards) == ordered


def test_kinds_decide_and_not_the_names_of_files(tmp_path: Path) -> None:
    folder = by_kind(tmp_path)
    assert said(folder) == []
    found = load_rules(folder, cache=tmp_path / "cache").hazards
    assert list(found) == ["gas-smell", "stored-charge", "lockout-and-verify-dead"]


def test_a_base_of_one_file_keeps_its_order(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    assert said(folder) == []
    found = load_rules(folder, cache=tmp_path / "cache").hazards
    assert list(found) == ["stored-charge", "gas-smell", "lockout-and-verify-dead"]


def test_a_sites_hazards_follow_those_of_their_kind_and_the_rest_come_last(tmp_path: Path) -> None:
    files = {
        "pack.yaml": PACK,
        "hazards.yaml": hazards("", "swans"),
        "hazards/gas.yaml": hazards("gas", "biogas"),
        "hazards/boats.yaml": hazards("boats", "barge"),
        "order-of-cautions.yaml": "format: 1\nkinds: [{id: boats, about: the river below}]\n",
    }
    north, shipped = write_files(tmp_path / "north", files), by_kind(tmp_path)
    assert said(shipped, north) == [
        "north/hazards.yaml:1:1: this file does not say what kind its hazards are of; "
        "add kind: one of gas, charge, boats [hazard-kinds]"
    ]
    found = load_rules([shipped, north], cache=tmp_path / "cache").hazards
    assert list(found) == [
        "gas-smell", "biogas", "stored-charge", "lockout-and-verify-dead", "barge", "swans",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("files", "wanted"),
    [
        (
            {"hazards.yaml": hazards("", "swans")},
            "rules/hazards.yaml:1:1: this file does not say what kind its hazards are of; "
            "add kind: one of gas, charge [hazard-kinds]",
        ),
        (
            {"hazards/more-gas.yaml": hazards("gas", "swans")},
            "rules/hazards/more-gas.yaml:2:1: hazards of the kind gas stand in "
            "hazards/more-gas.yaml; name the file hazards/gas.yaml [hazard-kinds]",
        ),
        (
            {"hazards/gases.yaml": hazards("gases", "swans")},
            "rules/hazards/gases.yaml:2:1: order-of-cautions.yaml has no kind gases; "
            "did you mean gas [hazard-kinds]",
        ),
        (
            {"order-of-cautions.yaml": KINDS + "\n  - id: boats\n    about: the river below\n"},
            "rules/order-of-cautions.yaml:9:5: there is no hazard of the kind boats; "
            "take the kind out [hazard-kinds]",
        ),
    ],
)
def test_what_has_no_place_is_found_where_it_stands(
    tmp_path: Path, files: dict[str, str], wanted: str
) -> None:
    assert said(by_kind(tmp_path, **files)) == [wanted]


def test_a_whole_file_is_split_only_where_every_kind_is_known(shipped: Knowledge) -> None:
    kinds = kinds_of(shipped)
    assert set(kinds) == set(shipped.hazards)
    known = hazards("", "gas-odour", "lightning", "gas-train-work")
    parts = split_by_kind("# Ours.\n" + known, kinds)
    assert list(parts) == ["gas", "weather-and-crew"]
    assert parts["gas"].splitlines()[:3] == ["# Ours.", "format: 1", "kind: gas"]
    assert [line for line in parts["gas"].splitlines() if "- id:" in line] == [
        "  - id: gas-odour",
        "  - id: gas-train-work",
    ]
    assert "# Ours." not in parts["weather-and-crew"]
    assert split_by_kind(hazards("", "gas-odour", "swans"), kinds) == {}
    assert split_by_kind(hazards("gas", "gas-odour"), kinds) == {}
