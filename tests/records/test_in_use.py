"""Which instruments a visit is read with: proved ones by their own accuracy, or by the worse."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from tests.visit.kept.samples import write_journal
from troubleshoot.reasoning.readings.meters import Listed
from troubleshoot.records.register.in_use import in_use, is_proved
from troubleshoot.records.register.instruments import Instruments, OnHand

Call = Callable[..., tuple[int, str, str]]
Typed = Callable[..., None]
TODAY = date(2026, 5, 12)


@pytest.mark.parametrize(
    ("proved", "due", "holds"),
    [
        ("", "", False),
        ("", "2027-01-01", False),
        ("2025-05-12", "", True),
        ("2025-05-10", "", False),
        ("2026-05-01", "2026-05-12", True),
        ("2026-05-01", "2026-05-11", False),
        ("2023-01-01", "2028-01-01", True),
    ],
)
def test_a_proof_holds_until_its_day_or_for_a_year(proved: str, due: str, holds: bool) -> None:
    assert is_proved(OnHand("x", "thermometer", "1 F", proved, due), TODAY) == holds


def test_one_out_of_its_proof_is_no_better_than_its_kind_and_is_told_once() -> None:
    kept = (
        OnHand("blue clamp", "clamp-ammeter", "1 % + 2 counts", "2026-05-01"),
        OnHand("old clamp", "clamp-ammeter", "1 % + 9 counts", "2024-05-01"),
        OnHand("probe", "clamp-probe", "0.1 % + 2 \u00b0F"),
        OnHand("gauge", "manometer"),
    )
    found = in_use(Instruments(kept, ("broken.yaml: bad",)), TODAY)
    assert found.instruments == (
        Listed("blue clamp", "clamp-ammeter", 1.0, 2.0),
        Listed("old clamp", "clamp-ammeter", 2.0, 9.0),
        Listed("probe", "clamp-probe", 0.1, 0.0, 2.0),
    )
    assert found.says == (
        "broken.yaml: bad",
        "Readings are judged by the accuracy of the listed instruments: "
        "blue clamp, old clamp, probe.",
        "old clamp is out of its proof (last proved 2024-05-01): it counts as no better than its "
        "kind.",
        "probe is out of its proof (no proof on record): it counts as no better than its kind.",
    )
    assert in_use(Instruments(()), TODAY).says == ()


@pytest.fixture
def gauge(command: Call, tmp_path: Path) -> Callable[[str], None]:
    def listed(accuracy: str) -> None:
        file = tmp_path / "instruments.csv"
        proved = date.today().isoformat()
        text = f"name,kind,accuracy,proved\nnew gauge,manometer,{accuracy},{proved}\n"
        file.write_text(text, "utf-8")
        assert command("units", "instruments", str(file))[0] == 0

    return listed


def test_a_visit_says_with_what_it_judges_and_keeps_to_it(
    command: Call, typed: Typed, gauge: Callable[[str], None], tmp_path: Path
) -> None:
    gauge("0.5 % + 0.002 in wc")
    typed("RTU-5", "weak airflow", *[""] * 3, "q")
    out = command()[1]
    assert "judged by the accuracy of the listed instruments: new gauge." in " ".join(out.split())
    (path,) = (tmp_path / "data" / "visits").glob("*.journal")
    assert '"kind": "manometer"' in path.read_text("utf-8").replace('\\"', '"')
    visit = path.stem
    before = command("report", visit, "--json")[1]
    gauge("9 % + 0.5 in wc")
    assert command("report", visit, "--json")[1] == before


def test_the_report_names_the_instrument_of_each_number(command: Call, tmp_path: Path) -> None:
    listed = {"name": "new gauge", "kind": "manometer", "percent": 0.5, "fixed": 0.002}
    events = [
        {"event": "instruments", "instruments": [listed]},
        {"event": "start", "name": "RTU-5", "complaint": "weak-airflow",
         "unit": {"maximum-external-static": "0.6 in wc"}, "profiles": ["technician"]},
        {"event": "answer", "test": "external-static", "at": None, "text": "0.610 in wc"},
        {"event": "end", "ending": "closed"},
    ]  # fmt: skip
    write_journal(tmp_path / "data" / "visits", "2026-05-12-1", events)
    plain = json.loads(command("report", "2026-05-12-1", "--json")[1])
    (row,) = (row for row in plain["asked"] if row["test"] == "external-static")
    assert row["instrument"] == "new gauge"
    assert "0.610 in wc, by new gauge" in command("report", "2026-05-12-1")[1]
    events[0] = {"event": "instruments", "instruments": [{**listed, "kind": "hammer"}]}
    write_journal(tmp_path / "data" / "visits", "2026-05-12-2", events)
    said = command("report", "2026-05-12-2")[1]
    assert "is no instrument of a kind that is known" in said.replace("\\", "")


def test_a_visit_that_is_left_at_once_is_none_though_instruments_are_listed(
    command: Call, typed: Typed, gauge: Callable[[str], None]
) -> None:
    """Regression: it stayed open, and the next start asked whether to go on with it."""
    gauge("0.5 % + 0.002 in wc")
    typed("RTU-5", "q")
    command()
    assert command("visits")[1].startswith("No visit is kept yet.")
