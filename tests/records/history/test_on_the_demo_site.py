"""What drifts on the demo site is caught, and on sound units nothing is."""

from __future__ import annotations

import json
import shlex
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest

pytest.importorskip("scipy")

from tests.bench.false_alarms import raised_anew, read_on
from tests.bench.fleet import plates
from tests.bench.make_demo_site import FOLDER, drifting, made
from tests.cli.test_readme import left_of, shown_in_readme
from tests.visit.kept.samples import stopped_visit, write_journal
from troubleshoot.cli import clock

Call = Callable[..., tuple[int, str, str]]
ALARMS = {
    "compressor_capacitor": "Capacitor loses 2 % a year",
    "charge": "Subcooling is 3 F down",
    "rod": "Flame current is 30 % down",
    "coil_blocked": "Condensing over outdoor air is 5 F up",
}
SOUND = ("Lower 1", "Lower 2", "Upper 1")


@pytest.fixture
def site(command: Call, tmp_path: Path) -> Call:
    """The command line on those units of the demo site that drift, and on some that do not."""
    wanted = (*drifting(made()), *SOUND)
    for name, code in (("units", "import"), ("readings", "readings")):
        head, *rows = (FOLDER / f"{name}.csv").read_text("utf-8").splitlines()
        few = [row for row in rows if row.startswith(tuple(f"{unit}," for unit in wanted))]
        (tmp_path / f"{name}.csv").write_text("\n".join((head, *few)), "utf-8")
        assert command("units", code, str(tmp_path / f"{name}.csv"))[0] == 0
    return command


def test_each_drift_of_the_site_is_caught_and_its_sound_units_are_silent(site: Call) -> None:
    for unit, drift in drifting(made()).items():
        code, out, _ = site("history", unit)
        assert code == 0
        assert ALARMS[drift.knob] in " ".join(out.split()), unit
        assert "Nothing drifts" not in out
    for unit in SOUND:
        assert site("history", unit)[1].startswith("Nothing drifts that the rules watch.")


def test_the_numbers_of_one_test_are_shown_with_their_weather(site: Call) -> None:
    unit = next(unit for unit, drift in drifting(made()).items() if drift.knob == "rod")
    code, out, _ = site("history", unit.lower(), "micro", "amps")
    assert code == 0
    assert out.startswith("Flame current\n")
    assert out.count("F outdoors") == 3
    assert "(95 %, 3 readings)" in out and "the end of its sound band" in " ".join(out.split())


def test_history_is_told_to_scripts(site: Call) -> None:
    unit = next(unit for unit, drift in drifting(made()).items() if drift.knob == "charge")
    plain = json.loads(site("history", unit, "subcooling", "--json")[1])
    (of,) = (each for each in plain["series"] if each["quantity"] == "subcooling")
    assert [alarm["id"] for alarm in of["alarms"]] == ["subcooling-down"]
    assert len(of["readings"]) == 6 and of["trend"]["low"] < of["trend"]["high"] < 0
    assert of["readings"][0]["expected"]["low"] < of["readings"][0]["value"]


def test_the_history_in_the_readme_is_todays(site: Call) -> None:
    shown = shown_in_readme("On the demo\nsite:").split("$ troubleshoot history ")[1:]
    assert len(shown) == 2
    for each in shown:
        head, *lines = each.splitlines()
        code, out, _ = site("history", *shlex.split(head))
        assert code == 0
        assert left_of(out.splitlines(), lines) == [], out


def test_the_backlog_in_the_readme_is_todays(site: Call, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: datetime(2026, 11, 30, tzinfo=UTC))
    head, *lines = shown_in_readme("Of the demo site:").splitlines()
    code, out, _ = site(*head.removeprefix("$ troubleshoot ").split())
    assert code == 0 and len(lines) > 8
    assert left_of(out.splitlines(), lines) == [], out


def test_history_is_a_page_with_each_line_drawn(site: Call, tmp_path: Path) -> None:
    file = tmp_path / "history.html"
    assert site("history", "Lower 1", "--html", str(file))[0] == 0
    text = file.read_text("utf-8")
    assert text.count("<svg") == text.count("</svg>") > 10
    assert "Flame current: 2024-" in text and "Nothing drifts that the rules watch." in text


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("RTU-99",), "no reading of a unit RTU-99 is kept"),
        (("Lower 1", "heat", "pump"), "nothing read there is called heat pump; there is: "),
    ],
)
def test_what_has_no_history_is_said(site: Call, words: tuple[str, ...], said: str) -> None:
    code, out, err = site("history", *words)
    assert (code, out) == (2, "") and said in err


def test_a_standing_stop_comes_before_the_numbers(command: Call, tmp_path: Path) -> None:
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    name = next(event["name"] for event in stopped_visit() if event["event"] == "start")
    assert command("history", name)[1].startswith(f"STOP over {name}")


def test_a_sound_fleet_is_silent() -> None:
    """A sample of the bench: under one alarm in 200 unit-visits; here none in so many."""
    for number, plate in enumerate(plates(15, "sound")):
        assert [*raised_anew(read_on(plate, f"sound {number}"))] == []
