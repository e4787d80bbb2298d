"""What is taken up: counted together over the units, and the worse where nothing is known."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tests.visit.kept.samples import stopped_visit, write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.register.carry import FOR_480, FOR_FLAMMABLE, FOR_GAS, carry_lines
from troubleshoot.records.register.entry import Entry, told

Call = Callable[..., tuple[int, str, str]]
FIRST = {"capacitor-cans": "40/5 uF", "can-volts": "440 V", "belts": "A38",
         "filters": "2 of 20x25x2", "refrigerant": "R-454B", "heat": "gas", "fuse-class": "RK5",
         "nameplate-volts": "208/3/60"}  # fmt: skip
SECOND = {"capacitor-cans": "2 of 40/5 uF, 10 uF", "can-volts": "370 V",
          "filters": "4 of 20x25x2", "refrigerant": "R-410A", "heat": "electric",
          "blower-drive": "direct", "nameplate-volts": "208/3/60"}  # fmt: skip


def lines(knowledge: Knowledge, *cells: dict[str, str]) -> str:
    units = [told(knowledge, Entry(f"RTU-{n}"), each) for n, each in enumerate(cells, start=1)]
    return "\n".join(carry_lines(knowledge, units)).lower()


def test_what_several_units_need_is_counted_together(shipped: Knowledge) -> None:
    said = lines(shipped, FIRST, SECOND)
    assert "capacitor cans: 1 of 10 uf, 3 of 40/5 uf; at least 440 v" in said
    assert "belts: 1 of a38" in said and "filters: 6 of 20x25x2" in said
    assert "gauges, hoses and a recovery cylinder for: r-410a, r-454b" in said
    assert "fuses: class rk5 (1 unit)" in said
    assert "not on record" not in said


def test_what_only_some_units_want_is_taken_where_one_does(shipped: Knowledge) -> None:
    tame = lines(shipped, SECOND)
    for words in (FOR_FLAMMABLE, FOR_GAS, FOR_480):
        assert words.lower() not in tame
    both = lines(shipped, FIRST, SECOND)
    assert FOR_FLAMMABLE.lower() in both and FOR_GAS.lower() in both
    assert FOR_480.lower() not in both


def test_of_a_unit_of_which_nothing_is_known_the_worse_is_taken(shipped: Knowledge) -> None:
    said = lines(shipped, {})
    for words in (FOR_FLAMMABLE, FOR_GAS, FOR_480):
        assert words.lower() in said
    for what in ("capacitor cans", "filters", "refrigerant"):
        assert f"not on record, {what}: rtu-1" in said


def test_a_standing_stop_comes_before_the_list(command: Call, tmp_path: Path) -> None:
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    name = next(event["name"] for event in stopped_visit() if event["event"] == "start")
    (tmp_path / "units.csv").write_text(f'name\n"{name}"\n', "utf-8")
    command("units", "import", str(tmp_path / "units.csv"))
    code, out, _ = command("units", "carry", name)
    assert code == 0 and out.startswith(f"STOP over {name}")
    assert "To take up for" in out
    code, out, err = command("units", "carry", name, "RTU-99")
    assert (code, out) == (2, "") and "the register has no unit RTU-99" in err
