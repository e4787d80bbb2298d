"""The complaints that come with the program: what the cards say a caller reports, they lead to."""

from __future__ import annotations

from typing import Any

import pytest

from tests.building import case, unit_of
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.reasoning.readings.answers import Answer

FEWEST_TESTS, MOST_TESTS = 3, 7
"""No heat is called for gas and for strips: no unit has all of its seven."""
FEWEST_COMPLAINTS = 2
HEAT_CALLS = (
    "no-heat",
    "weak-heat",
    "heat-short-cycles",
    "heat-will-not-stop",
    "no-heat-coldest-mornings",
)
OF_COOLING = ("condenser", "compressor-electrical", "compressor-mechanical", "refrigerant")


GAS_ALONE = ("inducer", "igniter", "flame", "vent", "burner")


@pytest.mark.parametrize("call", HEAT_CALLS)
def test_the_first_looks_of_no_heat_are_for_gas_and_for_strips(
    call: str, shipped: Knowledge
) -> None:
    """Regression: whoever had strips was told to look for the inducer."""
    looks = shipped.complaints[call].looks
    if any(part in looks for part in GAS_ALONE):
        of_all, _, of_gas = looks.partition("Gas:")
        assert not any(part in of_all for part in GAS_ALONE)
        assert "Electric:" in of_gas


def listing(knowledge: Knowledge, fault: Fault) -> list[str]:
    return [c.id for c in knowledge.complaints.values() if fault.id in (*c.faults, *c.also)]


def test_a_fault_that_an_example_names_is_listed_under_the_complaint_of_that_example(
    shipped: Knowledge,
) -> None:
    missing = [
        (fault.id, example.complaint)
        for fault in shipped.faults.values()
        for example in fault.examples
        if example.names_it and example.complaint is not None
        if example.complaint not in listing(shipped, fault)
    ]
    assert missing == []


def test_no_cause_hangs_on_a_single_complaint(shipped: Knowledge) -> None:
    """Common practice, no source: callers name one fault in several ways."""
    causes = [fault for fault in shipped.faults.values() if not fault.is_effect]
    lonely = [f.id for f in causes if len(listing(shipped, f)) < FEWEST_COMPLAINTS]
    assert lonely == []


def test_a_complaint_leads_with_a_handful_of_tests(shipped: Knowledge) -> None:
    """Common practice, no source: fewer tell nothing apart, more are the whole round."""
    counts = {c.id: len(c.first_tests) for c in shipped.complaints.values()}
    assert {c: n for c, n in counts.items() if not FEWEST_TESTS <= n <= MOST_TESTS} == {}


GAS_UNIT = {"heat": "gas", "fuel": "natural-gas"}


def smells_ranked(knowledge: Knowledge, *answers: Answer, **facts: Any) -> list[str]:
    """The leak and the harmless smell, the likelier first, on a call that says gas."""
    told = case(knowledge, *answers, unit=unit_of(knowledge, **facts), complaint="gas-smell")
    ranked = [cause.fault.id for cause in reasoner_of(knowledge).conclude(told).causes]
    return [name for name in ranked if name in {"gas-leak-at-unit", "odour-not-gas"}]


@pytest.mark.parametrize(
    "facts", [{}, GAS_UNIT, {"heat": "gas", "fuel": "propane", "refrigerant": "R-410A"}]
)
def test_on_the_word_gas_alone_the_leak_comes_before_the_harmless_smell(
    shipped: Knowledge, facts: dict[str, Any]
) -> None:
    assert smells_ranked(shipped, **facts)[0] == "gas-leak-at-unit"


@pytest.mark.parametrize("test", ["operating-sequence", "ignition-trials", "gas-valve-shut-off"])
def test_a_unit_that_runs_well_does_not_make_the_smell_harmless(
    shipped: Knowledge, test: str
) -> None:
    sound = Answer(test, shipped.tests[test].healthy[:1])
    assert smells_ranked(shipped, sound, **GAS_UNIT)[0] == "gas-leak-at-unit"


def test_a_sweep_that_found_nothing_makes_the_smell_harmless(shipped: Knowledge) -> None:
    swept = Answer("combustible-gas-sweep", ("none",))
    assert smells_ranked(shipped, swept, **GAS_UNIT)[0] == "odour-not-gas"


@pytest.mark.parametrize("complaint", HEAT_CALLS)
@pytest.mark.parametrize("heat", ["gas", "electric"])
def test_a_heat_call_leads_to_no_test_of_cooling(
    shipped: Knowledge, complaint: str, heat: str
) -> None:
    """Common practice, no source: the heat and the supply are read by tests of their own."""
    unit = unit_of(shipped, heat=heat, circuits="one")
    found = reasoner_of(shipped).conclude(case(shipped, unit=unit, complaint=complaint))
    best = found.candidates(frozenset(), lambda test, _: (test,), lambda *_: 0.0)[:40]
    assert len(best) == 40
    of_cooling = [c.test.id for c in best if c.test.area in OF_COOLING]
    assert of_cooling == []
    assert "cooling-call" not in [c.test.id for c in best]
