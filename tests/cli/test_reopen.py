"""A stopped visit is reopened only with the hand-over's result, and with its finding first."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from datetime import timedelta
from itertools import count

import pytest

from troubleshoot.cli import clock

Call = Callable[..., tuple[int, str, str]]
ALL_OF_IT = [
    "",
    "2",
    "1",
    "y",
    "0 % LEL",
    "y",
    "NOW",
]


def listed(command: Call) -> list[str]:
    """The words of the latest visit in the list; what stands over units comes before it."""
    lines = command("visits")[1].splitlines()
    return next(line.split() for line in lines if line.startswith("20"))


@pytest.fixture
def typed(command: Call, monkeypatch: pytest.MonkeyPatch) -> Callable[..., tuple[int, str, str]]:
    """Calls the command line with lines on its standard input, a minute after the last time.

    NOW is this minute.
    """

    runs = count(1)
    begun = clock.now()

    def call(words: list[str], lines: list[str]) -> tuple[int, str, str]:
        moment = begun + timedelta(minutes=next(runs))
        monkeypatch.setattr(clock, "now", lambda: moment)
        now = f"{moment:%Y-%m-%d %H:%M}"
        text = "".join(f"{now if line == 'NOW' else line}\n" for line in lines)
        monkeypatch.setattr("sys.stdin", io.StringIO(text))
        return command(*words)

    return call


@pytest.fixture
def visit(typed: Callable[..., tuple[int, str, str]], command: Call) -> str:
    """A visit that a gas smell stopped, handed over; its name."""
    code, out, _ = typed(
        [],
        [
            "Quarry Street clinic, unit 2",
            "gas-smell",
            *[""] * 10,
            "over",
            "",
            "the gas utility, just now",
        ],
    )
    assert code == 0 and "troubleshoot reopen" in out
    return listed(command)[0]


def test_the_list_says_what_is_stopped_and_how_it_goes_on(visit: str, command: Call) -> None:
    out = command("visits")[1]
    assert out.splitlines()[0] == (
        f"STOP over Quarry Street clinic, unit 2, visit {visit}: gas odor."
    )
    assert listed(command)[1] == "stopped"
    assert "goes on by: troubleshoot reopen VISIT" in out


@pytest.mark.parametrize("missing", range(4))
def test_without_any_part_of_the_result_it_stays_closed(
    missing: int, visit: str, typed: Callable[..., tuple[int, str, str]], command: Call
) -> None:
    for lines in (ALL_OF_IT[:missing], [*ALL_OF_IT[:missing], ""]):
        code, out, _ = typed(["reopen", visit], lines)
        assert code == 4 and "The visit stays closed" in " ".join(out.split())
    assert listed(command)[1] == "stopped"


def test_with_all_of_it_the_all_clear_comes_first_and_both_stay_in_the_report(
    visit: str, typed: Callable[..., tuple[int, str, str]], command: Call
) -> None:
    code, out, _ = typed(["reopen", visit], [*ALL_OF_IT, "cleared", "q"])
    after = out.partition("Reopened.")[2]
    first = next(line for line in after.splitlines() if line.startswith(("Test:", "Step:")))
    assert code == 4 and first.startswith("Test: All-clear after a stop")
    assert listed(command)[1] == "reopened"
    account = json.loads(command("report", visit, "--json")[1])
    (stop,) = account["stops"]
    assert (stop["id"], stop["reopened"], stop["told"]) == (
        "gas-odour",
        True,
        "the gas utility, just now",
    )
    assert stop["made_safe"]["by"] == "gas-utility" and stop["made_safe"]["done"].startswith(
        "The joint that leaked was made"
    )
    report = command("report", visit)[1]
    assert "STOP, gas odor; handed over, told: the gas utility" in report
    assert "made safe by the gas utility" in report and report.count("; reopened") == 1


def test_an_all_clear_that_is_not_given_stops_it_again(
    visit: str, typed: Callable[..., tuple[int, str, str]], command: Call
) -> None:
    _, out, _ = typed(
        ["reopen", visit], [*ALL_OF_IT, "not cleared", "over", "the gas utility, just now"]
    )
    assert out.count("DANGER - STOP") == 1 and "Write on the tag" in out
    stops = json.loads(command("report", visit, "--json")[1])["stops"]
    assert [stop["reopened"] for stop in stops] == [True, False]
    assert json.loads(command("report", visit, "--json")[1])["ending"] == "stopped"


def test_a_stop_for_the_whole_job_is_not_lifted_by_those_who_met_it(
    typed: Callable[..., tuple[int, str, str]],
) -> None:
    lines = ["unit 3", "gas-smell", *[""] * 10, "again", *ALL_OF_IT, "cleared", "q"]
    _, out, _ = typed([], lines)
    assert "No further test is offered" in out and "Who made it safe?" not in out
    assert "Test: All-clear after a stop" not in out


def test_what_is_not_stopped_is_not_reopened(
    typed: Callable[..., tuple[int, str, str]], command: Call
) -> None:
    typed([], ["unit 4", "no-cooling", *[""] * 12, "q"])
    name = listed(command)[0]
    code, _, err = command("reopen", name)
    assert code == 2 and "still open" in err and err.count("\n") == 1
    code, _, err = command("reopen", "no-such-visit")
    assert code == 2 and "there is no visit no-such-visit" in err
