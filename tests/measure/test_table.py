"""The lines that `rules measure` prints: whole tables, and figures that hold together."""

from __future__ import annotations

from dataclasses import replace

from tests.measure.test_simulated import told_apart
from troubleshoot.knowledge.model import CardSignature, Knowledge, TypicalUnit
from troubleshoot.measure.table import measure
from troubleshoot.measure.trust import trust_lines


def printed(visits: int = 6, subsets: int = 3) -> list[str]:
    """The lines on a base of two faults, a unit of which is measured and one is not."""
    about = {"metering": "txv"}
    units = {
        "small": TypicalUnit("small", "a small unit", "measuring", about),
        "other": TypicalUnit("other", "another unit", "practice", about),
    }
    return list(measure(replace(told_apart(), typical_units=units), visits, subsets, 1))


def rows(lines: list[str]) -> dict[str, list[str]]:
    """What stands behind the name of each row."""
    cells = ([cell.strip() for cell in line.split("|")[1:-1]] for line in lines if line[:1] == "|")
    return {name: rest for name, *rest in cells if set(name) != {"-"}}


def test_every_row_is_as_wide_as_its_head() -> None:
    found = rows(printed())
    assert {len(rest) for name, rest in found.items() if "visits" in name} == {2}
    policies = ["engine", "wrong calls spared, one test ahead", "most bits, whatever the minutes",
                "one list, by bits per minute at the start"]  # fmt: skip
    assert [name for name, rest in found.items() if len(rest) == 5][1:] == policies


def test_only_a_unit_that_serves_measuring_is_measured() -> None:
    heads = [line for line in printed() if line.startswith("#")]
    assert heads == ["### a small unit", "### Who has looked at the cards"]


def test_every_draft_is_listed_under_its_reason(shipped: Knowledge) -> None:
    lines = list(trust_lines(shipped))
    drafts = {each.id: each.because for each in shipped.faults.values() if each.status == "draft"}
    listed = {}
    for line in lines:
        reason, _, names = line.removeprefix("- draft, ").rpartition("): ")
        listed |= {name: reason.rpartition(" (")[0] for name in names.split(", ") if reason}
    assert listed == drafts and f"draft {len(drafts)}" in lines[2]
    signed = CardSignature("S.T.", "2026-11-29", "abc")
    name = next(iter(shipped.faults))
    changed = replace(shipped.faults[name], status="signed", signed=signed)
    faults = {**shipped.faults, name: changed}
    told = replace(shipped, faults=faults, changed_since_signed=frozenset({name}))
    assert f"- changed since it was signed: {name}" in list(trust_lines(told))


def test_the_three_kinds_of_wrong_calls_add_up() -> None:
    found = rows(printed(visits=20))
    kinds = ("of which named", "a shortlist, the fault second or third",
             "a shortlist without the fault")  # fmt: skip
    for column in (0, 1):
        shares = [float(found[name][column].rstrip("%")) for name in kinds]
        assert abs(sum(shares) - float(found["first call wrong"][column].rstrip("%"))) <= 2


def test_the_share_lost_is_printed_beside_the_ratio() -> None:
    mean, most, together, ratio, _ = rows(printed())["engine"]
    assert all(0 <= float(share.rstrip("%")) <= 100 for share in (mean, most, together))
    assert float(most.rstrip("%")) >= float(mean.rstrip("%")) and float(ratio) >= 1


def test_without_subsets_no_optimum_is_told() -> None:
    assert "engine" not in rows(printed(subsets=0))
