"""A plug of the gas train is turned locked out, with the cock shut and the air swept: a terminal.

Out: call off, locked out, panel off, proved dead, cock shut, swept, manometer on, cock open, swept,
power back, and only then the call. Back: the same the other way, with the plug in.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, careful, task

GAS = {"What heat": "gas", "Natural gas or": "natural-gas", "Which line": "208-to-240-volt"}
OUT = (
    "Stop the unit by its controls", "Switch off, lock, tag", "Take the panels off",
    "Test for dead", "Prove the meter", "Discharge and meter", "Test for dead", "Prove the meter",
    "Shut the gas cock", "Combustible-gas sweep", "Put the manometer on a tap",
    "Open the gas cock again", "Combustible-gas sweep", "Take your own lock off",
    "Call for the unit",
)  # fmt: skip
BACK = (
    "Stop the unit by its controls", "Switch off, lock, tag", "Test for dead", "Shut the gas cock",
    "Combustible-gas sweep", "Take the manometer off", "Open the gas cock again",
    "Combustible-gas sweep", "Put the panels and guards on", "Take your own lock off",
    "Call for the unit",
)  # fmt: skip


def walked(person: Person, wanted: str) -> list[str]:
    """What was asked on the way to `wanted`, each once for as long as it stood."""
    asked: list[str] = []
    for _ in range(120):
        now = task(person)
        if not asked or asked[-1] != now:
            asked.append(now)
        if wanted in now or wanted in person.last:
            return asked
        known = (typed for words, typed in GAS.items() if words in person.last)
        person.types(next(known, careful(person)))
    raise AssertionError(person.said[-3000:])


def in_order(asked: list[str], wanted: tuple[str, ...]) -> bool:
    rest = iter(asked)
    return all(any(step in now for now in rest) for step in wanted)


@pytest.mark.parametrize(
    ("test", "name", "reading"),
    [
        ("gas-manifold-pressure", "Manifold pressure at high fire", "3.5 inwc"),
        ("gas-inlet-pressure-all-firing", "Gas inlet pressure, everything burning", "7 inwc"),
        ("gas-valve-shut-off", "Does the gas valve close", "closes"),
    ],
)
def test_the_cock_is_shut_and_the_air_swept_before_a_plug_comes_out_and_goes_back(
    test: str, name: str, reading: str, tmp_path: Path
) -> None:
    """Regression: the burner was called, and the hose went on with the gas on and nothing swept."""
    with begin(tmp_path, Clock(tmp_path), words="no-heat") as person:
        person.types(f"do {test}")
        out = walked(person, f"Test: {name}")
        assert in_order(out, OUT), out
        first = next(n for n, now in enumerate(out) if "Put the manometer on" in now)
        assert not any("Call for the unit" in now for now in out[:first])
        person.types(reading, "done")
        back = walked(person, "The visit is closed")
        assert in_order(back, BACK), back


def test_the_fuel_is_asked_before_the_manifold_is_read(tmp_path: Path) -> None:
    """5.2 in wc on natural gas was kept unjudged with the burner lit: nobody asked the fuel."""
    with begin(tmp_path, Clock(tmp_path), words="no-heat") as person:
        person.types("do gas-manifold-pressure")
        asked = walked(person, "Test: Manifold pressure")
        assert "Natural gas or propane?" in person.said, asked
        assert "- STOP" in person.types("5.2 in wc")


def test_a_fuel_that_nobody_knows_counts_as_the_worse(tmp_path: Path) -> None:
    with begin(tmp_path, Clock(tmp_path), words="no-heat") as person:
        person.types("do gas-manifold-pressure")
        for _ in range(120):
            if "Test: Manifold pressure" in task(person):
                break
            fuel = "Natural gas or" in person.last
            known = (typed for words, typed in GAS.items() if words in person.last and not fuel)
            person.types(next(known, careful(person)))
        assert "- STOP" in person.types("5.2 in wc")
