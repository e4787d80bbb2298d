"""Grades beside counts: the mean of a Dirichlet distribution, and no word in haste."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from scipy.stats import dirichlet

from tests.visit.kept.samples import write_journal
from troubleshoot.knowledge.model import Complaint, Evidence, Knowledge
from troubleshoot.measure.closed.counting import (
    AS_MANY,
    Counted,
    calls_counted,
    causes_counted,
    findings_counted,
    with_visits,
    word_for,
)
from troubleshoot.measure.closed.ended import EndedIn, closed_visits
from troubleshoot.reasoning.evidence.outcome_chances import Signs
from troubleshoot.reasoning.evidence.weighing import row_alone

COIL, CALL = "contactor-coil-open", "no-cooling"
OHMS, PULL_IN = "contactor-coil-ohms", "contactor-pull-in"


def held(
    folder: Path,
    number: int,
    seen: dict[str, str],
    *,
    fault: str = COIL,
    call: str = CALL,
    cured: bool = True,
    ending: str = "closed",
    routine: bool = False,
    after: dict[str, str] | None = None,
) -> Path:
    """A visit on which this was seen, its last repair made, and it was closed."""

    def answers(said: dict[str, str]) -> list[dict[str, Any]]:
        return [
            {"event": "answer", "test": test, "at": None, "outcomes": [outcome]}
            for test, outcome in said.items()
        ]

    start = {"event": "start", "name": f"RTU-{number}", "complaint": call, "routine": routine,
             "profiles": ["technician", "electrical"],
             "unit": {"heat": "electric", "circuits": 1, "supply-phase": "single"}}  # fmt: skip
    repaired = [{"event": "repaired", "fault": fault}, {"event": "repaired", "fault": fault,
                "words": "n"}, {"event": "closing", "cured": cured}]  # fmt: skip
    events = [start, *answers(seen), *repaired, *answers(after or {})]
    if ending:
        events.append({"event": "end", "ending": ending})
    return write_journal(folder, f"2026-11-{1 + number % 28:02}-{number}", events)


def ended_in(knowledge: Knowledge, folder: Path) -> list[EndedIn]:
    return [each.ended for each in closed_visits(knowledge, folder) if each.ended is not None]


def of_finding(counted: Sequence[Counted], test: str, outcome: str) -> Counted:
    (found,) = (
        each
        for each in counted
        if isinstance(each.about, Evidence)
        and each.about.findings[0].test == test
        and outcome in each.about.findings[0].outcomes
    )
    return found


def test_a_grade_is_shrunk_as_scipy_has_the_mean_of_the_dirichlet(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Outside check: the mean of scipy.stats.dirichlet over all outcomes, those named summed."""
    for number in range(9):
        held(tmp_path, number, {OHMS: "open" if number < 3 else "normal"})
    every = ended_in(shipped, tmp_path)
    assert len(every) == 9
    row = row_alone(every[0].hypotheses, every[0].truth, OHMS)
    assert not isinstance(row, Signs)
    counts = {"open": 3, "normal": 6}
    mean = dirichlet([AS_MANY * row[o] + counts.get(o, 0) for o in row]).mean()
    found = of_finding([*findings_counted(shipped, every)], OHMS, "open")
    named = found.about.findings[0].outcomes if isinstance(found.about, Evidence) else ()
    expected = sum(share for o, share in zip(row, mean, strict=True) if o in named)
    assert found.together == pytest.approx(expected)
    assert (found.visits, found.showed) == (9, 3)
    assert (found.grade, found.becomes) == ("almost-always", "often")


def test_by_hand() -> None:
    """0.14 as twenty visits is 2.8; with 4 of 12 that is 6.8 of 32."""
    assert with_visits(0.14, 4, 12) == pytest.approx(6.8 / 32)
    assert word_for(6.8 / 32) == "sometimes"
    assert [word_for(chance) for chance in (0.0, 0.03, 0.6, 0.95, 1.0)] == [
        "never", "seldom", "often", "almost-always", "almost-always",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("opens", "normals"),
    [(0, 4), (9, 1), (9, 0)],
    ids=["too few visits", "one against", "as the card says"],
)
def test_no_word_in_haste(shipped: Knowledge, tmp_path: Path, opens: int, normals: int) -> None:
    for number in range(opens + normals):
        held(tmp_path, number, {OHMS: "open" if number < opens else "normal"})
    found = of_finding([*findings_counted(shipped, ended_in(shipped, tmp_path))], OHMS, "open")
    assert found.becomes == found.grade


def test_only_what_was_read_before_the_repair_of_a_call_that_went_counts(
    shipped: Knowledge, tmp_path: Path
) -> None:
    seen = {OHMS: "open"}
    held(tmp_path, 1, seen, after={PULL_IN: "pulls-in"})
    held(tmp_path, 2, seen, cured=False)
    held(tmp_path, 3, seen, ending="")
    held(tmp_path, 4, seen, routine=True, call="routine-inspection")
    held(tmp_path, 5, seen).write_bytes(b"no journal")
    every = list(closed_visits(shipped, tmp_path))
    assert [each.ending for each in every] == [
        "unreadable", "on a round", "not closed", "without a cause", "in a cause",
    ]  # fmt: skip
    (ended,) = (each.ended for each in every if each.ended is not None)
    assert ended.seen == {OHMS: ("open",)} and "2026-11-06-5" in every[0].problem


def test_the_calls_of_a_cause_and_the_causes_of_a_call(shipped: Knowledge, tmp_path: Path) -> None:
    for number in range(12):
        held(tmp_path, number, {OHMS: "open"}, call="weak-cooling" if number < 11 else CALL)
    every = ended_in(shipped, tmp_path)
    calls = {
        each.about.id: each
        for each in calls_counted(shipped, every)
        if isinstance(each.about, Complaint)
    }
    assert (calls[CALL].showed, calls[CALL].visits) == (1, 12)
    assert calls[CALL].together < calls[CALL].said
    first, second = causes_counted(every)
    assert (first.call.id, first.ended, first.visits) == ("weak-cooling", 11, 11)
    assert first.together == pytest.approx((AS_MANY * first.said + 11) / (AS_MANY + 11))
    assert second.call.id == CALL
