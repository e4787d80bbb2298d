"""Which of the numbers that people say shows a danger, and which counts another thing.

14 in wc is the most at an inlet of natural gas (ANSI Z21.47, from memory), 9 ppm the most of carbon
monoxide in a room (EPA, 8 hours), a tenth of the lower explosive limit where people leave (common
practice, from memory).
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.told_numbers import is_doubtful, quantities_of, shows

INLET, AT_THE_INLET = "gas-pressure-too-high", "gas-inlet-pressure"
BEHIND = (
    "air all and at but by firing here high idle idling in is low now of off on or out right "
    "running so steady that the to when whenever while with"
)


def at_the_inlet(shipped: Knowledge, said: str) -> bool:
    return shows(shipped, shipped.hazards[INLET], AT_THE_INLET, said)


@pytest.mark.parametrize("word", BEHIND.split())
def test_a_number_without_a_unit_may_go_on_so(word: str, shipped: Knowledge) -> None:
    assert at_the_inlet(shipped, f"20 {word} cats")


@pytest.mark.parametrize(
    "said",
    [
        "20", "20 in wc", "20 inches w.c.", "20 inches of water", "twenty", "20, cats", "1 psi",
        "50 mbar", "20 in the cabinet", "12 or 20", "20 ft of pipe, 20 in wc",
    ],
)  # fmt: skip
def test_so_much_is_a_danger_in_any_unit(said: str, shipped: Knowledge) -> None:
    assert at_the_inlet(shipped, said)


@pytest.mark.parametrize(
    "said",
    ["14", "14 in wc", "20 cats", "20 cats on it", "20 A", "20 ft", "20 %", "rtu-20", "0.1 psi",
     "minus 20", "minus 20.5 in wc", "12 or 20 cats"],
)  # fmt: skip
def test_less_and_what_counts_another_thing_is_none(said: str, shipped: Knowledge) -> None:
    assert not at_the_inlet(shipped, said)


@pytest.mark.parametrize(
    ("hazard", "quantity", "said", "is_shown"),
    [
        ("gas-odour", "gas-in-air", "10 %", True), ("gas-odour", "gas-in-air", "10", True),
        ("gas-odour", "gas-in-air", "9 %", False), ("gas-trace", "gas-in-air", "9 %", True),
        ("carbon-monoxide-in-room", "carbon-monoxide-sustained", "9 ppm", True),
        ("carbon-monoxide-in-room", "carbon-monoxide-sustained", "8 ppm", False),
        ("carbon-monoxide-in-room", "carbon-monoxide-in-supply", "9 ppm", True),
        ("carbon-monoxide-in-room", "carbon-monoxide-sustained", "9 in the kitchen", True),
        ("heat-exchanger-breach", "oxygen-shift", "200 ppm", False),
        (INLET, "suction-pressure", "20", False),
        ("compressor-pulls-a-vacuum", "suction-pressure", "20 inches of vacuum", True),
        ("compressor-pulls-a-vacuum", "suction-pressure", "20 in the line", False),
        ("heat-exchanger-breach", "oxygen-shift", "3 %", True),
    ],
)  # fmt: skip
def test_a_number_is_judged_by_the_test_that_reads_its_quantity(
    hazard: str, quantity: str, said: str, is_shown: bool, shipped: Knowledge
) -> None:
    assert shows(shipped, shipped.hazards[hazard], quantity, said) is is_shown


@pytest.mark.parametrize(
    ("hazard", "quantities"),
    [
        ("gas-odour", {"gas-in-air"}),
        ("carbon-monoxide-in-room", {"carbon-monoxide-sustained", "carbon-monoxide-in-supply"}),
        ("motor-on-bad-supply", {"line-volts", "compressor-amps", "volts-unbalance"}),
    ],
)
def test_a_danger_is_called_up_by_what_its_tests_read_first(
    hazard: str, quantities: set[str], shipped: Knowledge
) -> None:
    assert quantities_of(shipped, shipped.hazards[hazard]) == quantities


def test_what_was_or_should_be_is_doubtful() -> None:
    assert is_doubtful("It WAS 20 in wc") and not is_doubtful("it is 20 in wc")


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [("inlet gas pressure 20, regulator looks rusty", INLET), ("lel 25, burner box", "gas-odour")],
)
def test_a_comma_behind_a_number_is_none_of_its_figures(
    typed: str, hazard: str, shipped: Knowledge
) -> None:
    """Regression: it was taken for one, and the word behind it for what was counted."""
    assert [heard.id for heard in spoken_of(shipped, typed)] == [hazard]
