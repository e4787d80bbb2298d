"""Where too little air or cold comes the filters come first, after what the law needs alone.

Eight prompts are the bound, and what the law needs takes all of them. A mechanic looks at what runs
before on weak cooling; where the filters are sound their own lock costs such a visit 22 minutes.
On ice what tells is gone once the unit is stopped, and on calls that a code may explain a lock
loses it: there the filters wait.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, careful, events_of, task

FILTERS = "Test: Filters"
CALLS = ("weak air", "not cooling enough", "warm in here")
PLATE = "208/1/60, gas, R-410A, no smoke detector"
BY_LAW = (
    "Step: Tell the people inside",
    "Step: Roof, go or no go",
    "Test: Walk round the unit first",
    "Step: Stop the unit by its controls",
    "Step: Switch off, lock, tag and try",
    FILTERS,
)


def to_the_filters(person: Person, call: str) -> tuple[int, list[str]]:
    """How many prompts were answered before the filters, and the steps and tests among them."""
    person.types("RTU-7", call, ALL)
    answered, tasks = 3, [task(person)]
    while FILTERS not in task(person) and answered < 30:
        asked = " ".join(person.last.split())
        person.types(PLATE if "Is a duct smoke" in asked else careful(person))
        answered += 1
        tasks.append(task(person))
    return answered, [each.partition(" (")[0] for each in tasks if each]


@pytest.mark.parametrize("call", CALLS)
def test_eight_prompts_where_the_plate_is_told_with_the_call(call: str, tmp_path: Path) -> None:
    with Person(tmp_path, clock=Clock(tmp_path)) as person:
        answered, tasks = to_the_filters(person, f"{call}, {PLATE}")
    assert answered == 8 and tasks == list(BY_LAW)


@pytest.mark.parametrize("call", CALLS)
def test_one_more_where_it_is_asked(call: str, tmp_path: Path) -> None:
    with Person(tmp_path, clock=Clock(tmp_path)) as person:
        answered, tasks = to_the_filters(person, call)
        assert "A few facts" not in person.said
    assert answered == 9 and tasks == list(BY_LAW)


def test_where_nobody_knows_the_refrigerant_it_is_swept_for(tmp_path: Path) -> None:
    with Person(tmp_path, clock=Clock(tmp_path)) as person:
        _, tasks = to_the_filters(person, "weak air, no smoke detector")
    assert "Step: Sweep for flammable refrigerant" in tasks


def test_behind_an_open_panel_it_is_dead_work(tmp_path: Path) -> None:
    with Person(tmp_path, clock=Clock(tmp_path)) as person:
        to_the_filters(person, f"weak air, {PLATE}")
        person.types("do wiring-burn-marks")
        while "Step: Take the panels off" not in task(person):
            person.types(careful(person))
        person.types("off", "do filters")
        tasks = []
        while FILTERS not in task(person) and len(tasks) < 30:
            tasks.append(task(person))
            person.types(careful(person))
    assert any("Test for dead" in each for each in tasks)
    assert any("meter every capacitor" in each for each in tasks)


def test_facts_beside_the_callers_words_are_kept_and_no_words_of_theirs(tmp_path: Path) -> None:
    with Person(tmp_path, clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("RTU-7", "weak air, R-410A; no smoke detector").split())
        assert "Taken: refrigerant: R-410A; duct smoke detector: not fitted." in said
        assert "Taken as: Hardly any air comes out." in said
        assert "caller say?" in person.types("u")
    assert '"words": "weak air"' in events_of(tmp_path)
