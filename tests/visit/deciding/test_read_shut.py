"""What shows with the panels on is read before one is opened live, and nothing is asked twice.

By a mechanic of 35 years: the superheat of a fixed orifice took three starts, since the wet bulb
was thought of once the panel was off; then it was asked for with its value on the screen.
"""

from __future__ import annotations

from typing import Final

import pytest

from tests.bench.visits import CALLS, Call, Held
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.safety.steps import GAUGES_ON, PANELS_OFF_ENERGISED, RESTART
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Answered, Event, Started, StepDone, replay

ORIFICE: Final = {**CALLS[0].unit, "refrigerant": "R-22", "metering": "fixed-orifice"}
READ: Final = {
    "suction-line-temperature": "66 F",
    "suction-pressure": "48 psig",
    "return-wet-bulb": "63 F",
    "outdoor-temperature": "88 F",
}
LOW_CHARGE: Final = {
    "return-air-temperature": "76 F",
    "supply-air-temperature": "67 F",
    "condenser-air-rise": "7 F",
    "head-pressure at circuit 1": "168 psig",
    "liquid-line-temperature at circuit 1": "89 F",
    **READ,
}
WET_BULB: Final = "return-wet-bulb"
MOST: Final = 60


def led(knowledge: Knowledge, *who: str, ports: str = "inside") -> list[str]:
    """The steps and tests on the way to a superheat that was chosen, each done and sound."""
    aim, unit = ("superheat", Place("circuit", 1)), {**ORIFICE, "service-ports": ports}
    events: list[Event] = [
        Started(complaint="weak-cooling", unit=unit, profiles=who or tuple(PROFILES)),
        Aimed(aim[0], spoken(aim[1]), chosen=True),
    ]
    decider, way = Decider(knowledge, reasoner_of(knowledge)), []
    while len(way) < MOST:
        decision = decider.decide(replay(knowledge, events))
        if decision.aim not in (aim, ("walk-round", None)):
            break
        assert decision.test is not None
        test, at = decision.test, spoken(decision.at)
        way.append(test.id)
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
        elif test.id in READ:
            events.append(Answered(test.id, at, text=READ[test.id]))
        else:
            events.append(Answered(test.id, at, test.healthy[:1]))
    return way


def test_a_superheat_takes_one_start(shipped: Knowledge) -> None:
    assert led(shipped).count(RESTART) == 1
    assert RESTART not in led(shipped, ports="outside")


@pytest.mark.parametrize("ports", ["inside", "outside"])
def test_no_panel_is_opened_live_for_a_superheat(ports: str, shipped: Knowledge) -> None:
    """Regression: gauges went on behind the open panel, with the unit running."""
    way = led(shipped, ports=ports)
    assert PANELS_OFF_ENERGISED not in way and GAUGES_ON in way


def test_who_may_put_no_gauges_on_is_led_to_none(shipped: Knowledge) -> None:
    """A probe beside a port that is outside is anybody's; behind a panel it goes on with them."""
    others = tuple(each for each in PROFILES if each != "refrigerant")
    way = led(shipped, *others, ports="outside")
    assert "suction-line-temperature" in way and GAUGES_ON not in way
    assert led(shipped, *others, ports="inside") == []


def test_what_has_been_computed_is_not_asked_for(shipped: Knowledge) -> None:
    """Regression: "Superheat at the compressor: type the reading", with 41.7 on the screen."""
    way = led(shipped)
    assert {*READ} <= {*way}
    assert "superheat" not in way


def test_low_charge_is_found_with_no_panel_opened_live_and_nothing_asked_twice() -> None:
    call = Call("low charge, fixed orifice", "weak-cooling", ORIFICE, LOW_CHARGE)
    visit = Held(reasoner_of(load_shipped()), call)
    visit.drive()
    assert [said.fault for said in visit.state.repairs] == ["low-charge-from-leak"]
    assert f"[{PANELS_OFF_ENERGISED}]" not in visit.said
    asked = [word for word in visit.said if word.endswith("circuit 1")]
    assert len(asked) == len({*asked})
