"""The note for the people in the building: a danger comes first, and nothing bad is called good."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.occupants import occupants_note

Call = Callable[..., tuple[int, str, str]]


def account(**more: object) -> dict[str, Any]:
    return {"ending": "nothing-wrong", "cautions": [], "causes": [], "effects": [],
            "repairs": [], "unexplained": [], **more}  # fmt: skip


def test_a_standing_stop_comes_before_anything_else(command: Call, tmp_path: Path) -> None:
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    code, out, _ = command("report", "2026-11-25-1", "--occupants")
    assert code == 0
    assert 0 < out.index("**") < out.index("## What was found")
    assert "Nothing wrong" not in out


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({}, "Nothing wrong was found."),
        ({"unexplained": [{"test": "subcooling"}]}, "Something that was read stands out"),
        ({"cautions": [{"stands": True, "says": ["DANGER: gas"]}]}, "besides what stands above"),
        ({"ending": "stopped"}, "stays off until it has been made safe"),
        ({"ending": "left"}, "The work is not finished yet."),
        ({"ending": "shortlist"}, "The cause is not known for sure yet"),
        ({"ending": "outside"}, "The cause is not known for sure yet"),
        (
            {"repairs": [{"name": "Belt worn", "proved": False}]},
            "Repaired: Belt worn, and that is not proved yet.",
        ),
    ],
)
def test_each_ending_has_its_plain_words(
    shipped: Knowledge, more: dict[str, Any], said: str
) -> None:
    note = occupants_note(shipped, account(**more), {"title": "Visit"})
    assert said in note
    assert note.count("Nothing wrong") == (said in ("Nothing wrong was found.",)) + (
        "besides" in said
    )


def test_a_known_cause_says_who_repairs_it(shipped: Knowledge) -> None:
    fault = next(iter(shipped.faults.values()))
    named = account(ending="named", causes=[{"id": fault.id, "at": None, "probability": 0.97}])
    note = occupants_note(shipped, named, {"left_off": ("Heating was left off.",)})
    assert fault.name in note and "It is repaired by: " in note
    assert "## What stays off" in note
