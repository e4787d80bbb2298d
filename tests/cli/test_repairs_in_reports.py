"""The report of a repaired visit holds every repair that was said, and what proves it."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from tests.cli.lines import Lines, held
from tests.dialogue.mended import at_the_open_unit, mended
from tests.visit.kept.samples import write_journal
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.events import (
    Answered,
    Event,
    Repaired,
    RoundBegun,
    RoundGoneOn,
    SearchBegun,
    Started,
    VisitEnded,
)
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.events.on_round import FindingAt
from troubleshoot.visit.events.replaying import replay
from troubleshoot.visit.telling.whole_visit import case_at_call

Call = Callable[..., tuple[int, str, str]]
FAULT = "condenser-fan-capacitor-weak"
READ = ("5.1 uF", "starts three times, full speed", "1.8 A")
NOW = datetime.fromisoformat("2026-11-26T10:15:00+00:00")
START = Started("RTU-7", "no-cooling", time=NOW.isoformat())


@pytest.fixture
def report(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, command: Call
) -> Callable[..., tuple[dict[str, Any], str]]:
    """Say a repair, with what is typed at its proofs; its row of the object, and the report."""

    def said(*typed: str, after: tuple[Event, ...] = ()) -> tuple[dict[str, Any], str]:
        monkeypatch.setattr(clock, "now", lambda: NOW)
        book = at_the_open_unit(shipped, START, test="condenser-fan-amps")
        held(shipped, Lines(*typed), lambda voice: mended(book, voice, shipped.faults[FAULT]))
        events = [*book.events, *(replace(event, time=NOW.isoformat()) for event in after)]
        write_journal(tmp_path / "data" / "visits", "2026-11-26-1", [*map(record_of, events)])
        code, out, err = command("report", "2026-11-26-1")
        assert code == 0, err
        (row,) = json.loads(command("report", "2026-11-26-1", "--json")[1])["repairs"]
        return row, out

    return said


def proofs(shipped: Knowledge) -> int:
    return len(shipped.faults[FAULT].proof)


def test_a_repair_is_told_with_its_time_words_and_readings(
    report: Callable[..., Any], shipped: Knowledge
) -> None:
    """Regression: neither the repair nor what proved it stood in the report."""
    row, out = report(*READ, "no, it runs")
    assert (row["fault"], row["said_at"][:16], row["complaint_still_there"]) == (
        FAULT, "2026-11-26T10:15", "no, it runs",
    )  # fmt: skip
    assert [each["read"] for each in row["proofs"]] == [*READ]
    assert row["proved"] is True
    section = out.partition("## Repairs said, and their proof")[2].partition("##")[0]
    assert '"5.1 uF"' in section and "said on 2026-11-26 10:15" in section
    assert "no, it runs" in section and "proved by what was read" in section


@pytest.mark.parametrize("typed", ["", "x", "whatever you say", "5.1 uF", "cant yet, locked out"])
def test_without_a_reading_it_is_not_proved(
    typed: str, report: Callable[..., Any], shipped: Knowledge
) -> None:
    asked = [2 if typed else 1] * proofs(shipped)  # what is no reading is asked for once more
    asked[0] = 1 if typed == READ[0] else asked[0]
    row, out = report(*[typed] * sum(asked), "n")
    assert row["proved"] is False and "; not proved" in out
    if not typed:
        assert "not taken" in out


def test_one_proof_that_is_lacking_leaves_it_unproved(report: Callable[..., Any]) -> None:
    """Regression: one reading proved a repair of three proofs."""
    row, out = report(*READ[:2], "dunno", "", "n")
    assert [proof["proved"] for proof in row["proofs"]] == [True, True, False]
    assert row["proved"] is False
    assert '"dunno" (not proved)' in out and "proved by what was read" not in out


def test_what_was_read_after_it_is_judged_by_the_rules(
    report: Callable[..., Any], shipped: Knowledge
) -> None:
    findings = [p.finding for p in shipped.faults[FAULT].proof if p.finding is not None]
    first, *others = findings
    bad = next(o.id for o in shipped.tests[first.test].outcomes if o.id not in first.outcomes)
    for outcome, sound in ((first.outcomes[0], True), (bad, False)):
        after = (
            Answered(first.test, outcomes=(outcome,)),
            *(Answered(each.test, outcomes=(each.outcomes[0],)) for each in others),
        )
        row, out = report(*[""] * proofs(shipped), "n", after=after)
        assert [each["sound"] for each in row["read_after"]][:1] == [sound]
        name = shipped.tests[first.test].name
        assert row["proved"] is sound and f"read after it, {name}" in out


def ending_in(out: str) -> str:
    return out.partition("Ending: ")[2].partition("\n")[0].strip()


@pytest.mark.parametrize(("last", "proved"), [("1.8 A", True), ("dunno", False), ("2.9 A", False)])
def test_the_ending_of_a_repaired_visit_is_the_repair(
    last: str, proved: bool, report: Callable[..., Any], shipped: Knowledge
) -> None:
    """Regression: a repair that was proved ended in "Not settled", at half its probability."""
    row, out = report(
        *READ[:2], last, *[""] * (last == "dunno"), "n", after=(VisitEnded("closed"),)
    )
    name = shipped.faults[FAULT].name
    assert row["probability_when_said"] > 0
    assert ending_in(out).startswith(f"Repaired: {name} (")
    assert ending_in(out).endswith("; proved by what was read." if proved else "; not proved.")
    opened = out.partition("## Open items")[2].partition("##")[0]
    assert ("The repair is not proved, " in opened) != proved


def test_a_visit_that_goes_on_after_a_repair_says_both(report: Callable[..., Any]) -> None:
    _, out = report(*READ, "n")
    assert ending_in(out).startswith("The visit was left before it was finished. Repaired: ")


def test_a_repair_on_a_round_is_told_as_it_stood_in_its_search(shipped: Knowledge) -> None:
    """Regression: a card named over 99 % on the screen stood in the report with 41 %."""
    contacts = ("contactor-contacts", "contactor 1")
    found: list[Event] = [
        Started("Library, unit 12", "routine-inspection", routine=True),
        RoundBegun("spring"),
        Answered(contacts[0], outcomes=("pitted",), at=(contacts[1],)),
        SearchBegun((FindingAt(*contacts),)),
        Answered("contactor-pole-drop", text="0.05, 0.8, 0.05 V", at=("contactor 1",)),
    ]
    state = replay(shipped, found)
    reasoner = Reasoner(shipped)
    named = reasoner.conclude(state.case).causes[0]
    rest = [Repaired(named.fault.id), RoundGoneOn()]
    called = reasoner.conclude(case_at_call(replay(shipped, [*found, *rest])))
    assert called.causes[0].fault.id == named.fault.id == "contactor-contacts-pitted"
    assert called.causes[0].probability == named.probability
