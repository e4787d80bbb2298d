"""Reading scenario files: everything wrong is told, with its place."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.loading import (
    ScenarioError,
    checked_scenario,
    load_scenarios,
    read_scenario,
)
from troubleshoot.practice.starting import starting_scenario

GOOD = starting_scenario("tea-rooms.yaml")


def problems_of(knowledge: Knowledge, text: str) -> list[str]:
    with pytest.raises(ScenarioError) as caught:
        read_scenario(knowledge, text, "case.yaml")
    return [str(problem) for problem in caught.value.problems]


def test_the_scenario_to_start_from_is_sound(shipped: Knowledge) -> None:
    scenario = read_scenario(shipped, GOOD)
    assert scenario.id == "tea-rooms"
    assert list(consistency_problems(reasoner_of(shipped), scenario)) == []


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("complaint: weak-airflow", "complaint: weak-airflo", "weak-airflow"),
        ("subsystem: filters-coil-duct", "subsystem: filters-coil", "filters-coil-duct"),
        ("test: air-filters", "test: air-filtres", "air-filters"),
        ("outcome: loaded", "outcome: laden", "loaded"),
        ("text: 104 psig", "text: 104 furlong", "furlong"),
        ("fault: filters-loaded", "fault: filters-laden", "filters-loaded"),
        ("metering: txv", "metering: tvx", "TXV"),
        ("difficulty: 1", "difficulty: 9", "from 1 to 3"),
        ("quantity: superheat", "quantity: superheats", "superheat"),
        ("text: 0.2 in wc", "text: 0.2 acre", "acre"),
        ("teaches:", "teeches:", "teaches"),
    ],
)
def test_a_mistake_is_told_at_its_place(shipped: Knowledge, old: str, new: str, says: str) -> None:
    line = GOOD[: GOOD.index(old)].count("\n") + 1
    problems = problems_of(shipped, GOOD.replace(old, new, 1))
    assert any(problem.startswith(f"case.yaml:{line}:") for problem in problems), problems
    assert any(says in problem for problem in problems), problems
    places = [problem.partition(": ")[0] for problem in problems]
    assert len(places) == len(set(places)), problems


@pytest.mark.parametrize(
    ("old", "new", "line_of", "says"),
    [
        ("text: 0.9 in wc", "text: 0.9 in wc, outcome: normal", "text: 0.9 in wc",
         "called normal, the rules call it high; fix the number or the word"),
        ("value: 9.6 F", "value: 7.6 F", "value: 7.6 F",
         "superheat comes to 9.6, not 7.6 F; fix the readings or this value"),
        ("value: 9.6 F", "value: 9.6 psig", "value: 9.6 psig", "write a number and its unit"),
        ("quantity: superheat, ", "quantity: superheat, at: circuit 7, ", "at: circuit 7",
         'this unit has no "circuit 7" for that; say "circuit 1"'),
        ("fault: filters-loaded", "fault: leak-sensor-false-trip", "fault: leak-sensor-false-trip",
         "this unit cannot have leak-sensor-false-trip; name another, or say under unit what it"),
        ("fault: filters-loaded", "fault: low-charge-from-leak, at: circuit 3", "at: circuit 3",
         'this unit has no "circuit 3" for that; say "circuit 1"'),
        ("  repair:", "  stop: gas-odour\n  repair:", "stop: gas-odour",
         "nothing here calls up the STOP gas-odour; list the finding that does, or leave it out"),
        ("text: 0.2 in wc", "text: 0.9 in wc}\n    - {test: supply-air-temperature, text: 58 F",
         "    - {test: filter-pressure-drop, text: 0.9",
         "filter-pressure-drop still reads high; write what it reads once put right"),
        ("text: 43.0 F", "text: 30.0 F", "  - {test: air-filters",
         "suction line below evaporating (suction-line-temperature 30.0 F, "
         "refrigerant R-410A, suction-pressure 104 psig); fix the readings"),
    ],
)  # fmt: skip
def test_what_does_not_hold_together_is_told_with_its_line(
    shipped: Knowledge, tmp_path: Path, old: str, new: str, line_of: str, says: str
) -> None:
    assert old in GOOD
    text = GOOD.replace(old, new, 1)
    line = text[: text.index(line_of)].count("\n") + 1
    file = tmp_path / "tea-rooms.yaml"
    file.write_text(text, "utf-8")
    with pytest.raises(ScenarioError) as caught:
        checked_scenario(reasoner_of(shipped), file)
    problems = [str(problem) for problem in caught.value.problems]
    assert [p for p in problems if p.startswith(f"{file}:{line}:") and says in p], problems


@pytest.mark.parametrize("key", ["title", "call", "says", "repair", "proof", "teaches"])
def test_bad_advice_is_told_with_its_line(shipped: Knowledge, tmp_path: Path, key: str) -> None:
    """Regression: scenarios, which apprentices learn from, were not scanned as the rules are."""
    bad = f"{key}: Jumper the limit and let it run."
    planted = re.sub(rf"\b{key}: .*?(?=[}}\n])", bad, GOOD, count=1)
    line = planted[: planted.index("Jumper")].count("\n") + 1
    file = tmp_path / "tea-rooms.yaml"
    file.write_text(planted, "utf-8")
    with pytest.raises(ScenarioError) as caught:
        checked_scenario(reasoner_of(shipped), file)
    problems = [str(problem) for problem in caught.value.problems]
    says = "the text advises a way round a safety device"
    assert [p for p in problems if p.startswith(f"{file}:{line}:") and says in p], problems


def test_a_file_must_be_called_as_its_scenario(shipped: Knowledge, tmp_path: Path) -> None:
    folder = tmp_path / "faulty"
    folder.mkdir()
    (folder / "other.yaml").write_text(GOOD, "utf-8")
    with pytest.raises(ScenarioError, match=r"name it tea-rooms\.yaml"):
        load_scenarios(shipped, tmp_path)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(at=st.integers(0, len(GOOD)), junk=st.text(":{}[]'\"-\n #&*!ab1", min_size=1, max_size=3))
def test_no_garbled_file_does_anything_but_load_or_be_refused(
    shipped: Knowledge, at: int, junk: str
) -> None:
    text = GOOD[:at] + junk + GOOD[at:]
    try:
        scenario = read_scenario(shipped, text)
    except ScenarioError as error:
        assert error.problems
        assert all(problem.instead for problem in error.problems)
    else:
        assert scenario.listed
