"""A circuit is called empty where next to nothing is in it, and then nobody calls for cooling.

By a mechanic: at 168 over 48 psig "circuit empty" was told as what had happened, and on the way
out the unit was called for cooling. One of the two was wrong. A head over the saturation of the
outdoor air has liquid behind it, as a vapor condenses only to what is colder; that an empty circuit
pulls down under 10 psig is common practice, no source.
"""

from __future__ import annotations

from typing import Final

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import LOCKOUT, RESTART
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Closing, Event, Repaired, Started, StepDone, replay

UNIT: Final = {
    "heat": "electric",
    "refrigerant": "R-22",
    "metering": "fixed-orifice",
    "line-volts-class": "208-to-240-volt",
    "duct-smoke-detector": "not-fitted",
    "circuits": 1,
}
EMPTY: Final = "circuit-empty"
STAYS_OFF: Final = "empty-circuit-stays-off"
WEAK: Final = {
    "return-air-temperature": "76 F",
    "supply-air-temperature": "67 F",
    "outdoor-temperature": "88 F",
    "condenser-air-rise": "7 F",
}
SHORT_OF_CHARGE: Final = {
    **WEAK,
    "suction-line-temperature": "66 F",
    "liquid-line-temperature": "89 F",
    "suction-pressure": "48 psig",
    "head-pressure": "168 psig",
}
BY_LOOKS: Final = {"first-minute": "suction-plunges", "compressor-amps": "low"}
"""What names it with no pressure read."""


def events_of(knowledge: Knowledge, read: dict[str, str]) -> list[Event]:
    events: list[Event] = [Started(complaint="weak-cooling", unit=UNIT)]
    for name, what in read.items():
        test = knowledge.tests[name]
        at = f"{test.per} 1" if test.per else None
        is_number = what[:1].isdigit()
        text, outcomes = (what, ()) if is_number else (None, (what,))
        events.append(Answered(name, at, outcomes, text))
    return events


def concluded(knowledge: Knowledge, events: list[Event]) -> Conclusions:
    return conclude_visit(reasoner_of(knowledge), replay(knowledge, events))


def happened(found: Conclusions) -> set[str]:
    return {effect.fault.id for effect in found.effects}


@pytest.mark.parametrize("without", [(), ("suction-pressure",), ("head-pressure",)])
def test_a_circuit_that_is_short_of_charge_is_not_empty(
    without: tuple[str, ...], shipped: Knowledge
) -> None:
    read = {test: text for test, text in SHORT_OF_CHARGE.items() if test not in without}
    found = concluded(shipped, events_of(shipped, read))
    assert found.causes[0].fault.id == "low-charge-from-leak"
    assert EMPTY not in happened(found)


@pytest.mark.parametrize("suction", ["0 psig", "4 psig"])
def test_next_to_nothing_running_names_it_and_keeps_it_off(
    suction: str, shipped: Knowledge
) -> None:
    read = {**WEAK, "suction-pressure": suction, "head-pressure": "40 psig"}
    found = concluded(shipped, events_of(shipped, read))
    assert EMPTY in happened(found)
    assert STAYS_OFF in [fired.hazard.id for fired in left_off(found).unit]


def test_what_is_named_empty_is_called_for_by_nobody(shipped: Knowledge) -> None:
    """Named by looks alone too: neither for one more reading, nor on the way out."""
    events = events_of(shipped, {**WEAK, **BY_LOOKS})
    assert EMPTY in happened(concluded(shipped, events))
    decider, done = Decider(shipped, reasoner_of(shipped)), []
    events.append(Closing(chosen=True))
    while (step := decider.decide(replay(shipped, events)).step) is not None:
        done.append(step.id)
        events.append(StepDone.of(step, (CONFIRMED[step.id],)))
        assert len(done) < 60, done
    assert LOCKOUT in done and RESTART not in done


def test_once_it_is_repaired_it_runs_for_its_proof(shipped: Knowledge) -> None:
    events = [*events_of(shipped, {**WEAK, **BY_LOOKS}), Repaired("low-charge-from-leak")]
    assert not left_off(concluded(shipped, events)).all
