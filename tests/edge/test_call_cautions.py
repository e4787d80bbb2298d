"""A call's own cautions come before the first question, wherever the call is taken."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]
CAUTIOUS = sorted(c.id for c in load_shipped().complaints.values() if c.hazards_first)


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("complaint", CAUTIOUS)
def test_a_visit_shows_them_before_it_asks_anything_more(
    complaint: str, command: Call, typed: Callable[..., None], shipped: Knowledge
) -> None:
    """Regression: authors filled in hazards-first, and nothing read it."""
    typed("RTU-3", complaint)
    out = flat(command("diagnose")[1])
    call = shipped.complaints[complaint]
    asked = out.index("Who is asking?")
    for name in call.hazards_first:
        assert shipped.hazards[name].what_to_do in out[:asked]
    assert f"First looks: {call.looks}" in out[:asked]


@pytest.mark.parametrize("complaint", CAUTIOUS)
def test_scripts_have_them_among_the_cautions(
    complaint: str, command: Call, case_file: Callable[[dict[str, Any]], str], shipped: Knowledge
) -> None:
    path = case_file({"complaint": complaint})
    plain = json.loads(command("assess", path, "--json")[1])
    first = [row["id"] for row in plain["cautions"] if row.get("stands")]
    assert set(shipped.complaints[complaint].hazards_first) <= set(first)


def test_a_scripted_visit_has_them_too(
    command: Call, case_file: Callable[[dict[str, Any]], str]
) -> None:
    path = case_file({"complaint": "failed-after-storm"})
    plain = json.loads(command("diagnose", "--answers", path, "--json")[1])
    assert plain["cautions"][0]["id"] == "wet-electrical"
    assert plain["cautions"][0]["before"] is None


def test_the_apprentice_reads_them_with_the_call(
    command: Call, typed: Callable[..., None], shipped: Knowledge
) -> None:
    typed("q")
    out = flat(command("practise", "church-field")[1])
    said = shipped.hazards["gas-odour"].what_to_do
    assert said in out[: out.index("stop hands it over")]


def test_a_kept_visit_shows_them_again(
    command: Call, typed: Callable[..., None], shipped: Knowledge
) -> None:
    typed("RTU-3", "failed-after-storm", "")
    command("diagnose")
    typed("y", "")
    out = flat(command("diagnose")[1])
    assert shipped.hazards["wet-electrical"].what_to_do in out
