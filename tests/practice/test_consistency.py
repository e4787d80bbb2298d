"""The checker of scenarios: one wrong number is found, whichever it is."""

from __future__ import annotations

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.loading import read_scenario, scenario_paths


def problems(shipped: Knowledge, name: str, old: str, new: str) -> list[str]:
    text = scenario_paths()[name].read_text("utf-8")
    assert old in text
    scenario = read_scenario(shipped, text.replace(old, new, 1))
    return [str(problem) for problem in consistency_problems(reasoner_of(shipped), scenario)]


LEAK, HUM, CAN = "quarry-road", "alderbrook", "mill-lane"


@pytest.mark.parametrize(
    ("name", "old", "new", "says"),
    [
        # R-410A, 128 psig: 44.1 F at the dew line (ANSI/ASHRAE 34 fluid, tables of the checks).
        (HUM, "at: circuit 1, text: 128 psig", "at: circuit 1, text: 138 psig", "superheat"),
        (HUM, "at: circuit 1, text: 394 psig", "at: circuit 1, text: 350 psig", "condensing"),
        (LEAK, "value: 37.4 F", "value: 27.4 F", "superheat"),
        (LEAK, "text: 108.0 F", "text: 112.0 F", "liquid line above condensing"),
        (LEAK, "text: 108.0 F", "text: 85.0 F", "below the outdoor air"),
        (LEAK, "text: 63 psig", "text: 263 psig", "is not below head"),
        (LEAK, "text: 73.5 F", "text: 120 F", "warmer than any air"),
        (LEAK, "text: 73.5 F", "text: 20 F", "below evaporating"),
        (LEAK, "text: 207 F", "text: 100 F", "is not above condensing"),
        (LEAK, "text: 20.2/20.0/20.1 A", "text: 29.0/29.0/29.0 A",
         "compressor-amps 29.0 A, compressor-rla 29.9 A, refrigerant R-22"),
        (LEAK, "text: 20.2/20.0/20.1 A", "text: 45/45/45 A", "amps fit no load"),
        (LEAK, "supply-air-temperature, text: 59.5 F", "supply-air-temperature, text: 85 F",
         "warmer than"),
        (LEAK, "return-wet-bulb, text: 65 F", "return-wet-bulb, text: 79 F", "above dry bulb"),
        (HUM, "text: 52/52/0 A", "text: 95/95/0 A", "when stalled"),
        (HUM, "text: 479/481/480 V", "text: 208/209/208 V", "on no supply of the data plate"),
        (HUM, "text: 2.31/2.33/2.30 ohm", "text: OL/2.33/2.30 ohm", "opens two pairs"),
        (HUM, "text: 0.10/0.10/0.10 V", "text: 0.9/0.1/0.1 V", "contactor-pole-drop still reads"),
        (CAN, "text: 44.3 uF", "text: 90 uF",
         "more than is rated (capacitance 90.0 uF, capacitor-rated 45.0 uF)"),
        (CAN, "test: condenser-fan-amps, text: 1.7 A", "test: condenser-fan-amps, text: 14 A",
         "over six times"),
        ("castle-street", "text: 95.6 F", "text: 99.0 F", "lies outside"),
        ("tannery-walk", "drier-out-temperature, at: circuit 1, text: 47.0 F",
         "drier-out-temperature, at: circuit 1, text: 57.0 F", "others make it 38.0"),
        ("northgate", "text: 44.1 s", "text: 54.1 s", "gas-flow"),
        ("rose-yard", "stop: carbon-monoxide-evacuate", "stop: lightning",
         "calls up the STOP lightning"),
        ("rose-yard", "outcome: high, text: 38 ppm", "outcome: high, text: 3 ppm",
         "the rules call it normal"),
        (HUM, "fault: contactor-pole-burnt-away", "fault: fixed-orifice-wrong-or-worn",
         "this unit cannot have fixed-orifice-wrong-or-worn"),
        ("northgate", "supply-phase: three", "supply-phase: single",
         "supply-phase single does not go with blower-motor"),
        (LEAK, "subsystem: refrigerant", "subsystem: gas", "no true fault lies in gas"),
    ],
)  # fmt: skip
def test_one_wrong_number_is_found(
    shipped: Knowledge, name: str, old: str, new: str, says: str
) -> None:
    found = problems(shipped, name, old, new)
    assert any(says in problem for problem in found), found


def test_a_value_that_nothing_gives_is_told(shipped: Knowledge) -> None:
    found = problems(shipped, LEAK, "quantity: target-superheat", "quantity: drier-in-temperature")
    assert any("drier-in-temperature does not follow" in problem for problem in found), found
