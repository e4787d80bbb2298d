"""A unit keeps its panels on while pressures are read; hoses behind one go on dead."""

from __future__ import annotations

from collections.abc import Mapping

from tests.bench.visits import TOLD, Call, Held
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.steps import GAUGES_ON, OPENS, PANELS_OFF, PANELS_OFF_ENERGISED

UNIT: Mapping[str, object] = {
    "line-volts-class": "208-to-240-volt",
    "supply-phase": "three",
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 1,
    "condenser-fans": 1,
    "heat": "gas",
}
LOW_CHARGE: Mapping[str, str] = {
    "supply-air-temperature": "66 F",
    "mixed-air-temperature": "77 F",
    "suction-pressure": "82 psig",
    "head-pressure": "300 psig",
    "suction-line-temperature": "52 F",
    "liquid-line-temperature": "93 F",
}
ASKED = "fact service-ports"


class UpToTheReading(Held):
    """A visit to low charge up to its suction pressure."""

    def __init__(self, reasoner: Reasoner, ports: str | None) -> None:
        self._told = {} if ports is None else {"service-ports": ports}
        super().__init__(reasoner, Call("low charge", "weak-cooling", UNIT, LOW_CHARGE))

    def reply(self, prompt: Prompt) -> Reply | None:
        reply = super().reply(prompt)
        if self.said[-1] == ASKED:
            return self._told.get("service-ports", "")
        return None if self.said[-1].startswith("suction-pressure") else reply


def up_to_the_reading(ports: str | None) -> list[str]:
    visit = UpToTheReading(reasoner_of(load_shipped()), ports)
    visit.drive()
    assert visit.said[-1].startswith("suction-pressure")
    return visit.said


def test_no_panel_is_opened_for_ports_that_are_outside() -> None:
    said = up_to_the_reading("outside")
    assert not {f"[{step}]" for step in OPENS} & {*said}
    assert f"[{GAUGES_ON}]" in said


def test_it_is_asked_once_and_before_the_panel_comes_off() -> None:
    for ports in ("inside", None):
        said = up_to_the_reading(ports)
        assert f"[{PANELS_OFF_ENERGISED}]" not in said
        assert said.count(ASKED) == 1
        assert said.index(ASKED) < said.index(f"[{PANELS_OFF}]") < said.index(f"[{GAUGES_ON}]")


def test_it_is_not_asked_where_no_gauges_go_on() -> None:
    assert "service-ports" not in TOLD
    visit = Held(reasoner_of(load_shipped()), Call("wire", "no-cooling", UNIT, {
        "condenser-fan-turning": "nothing-runs", "operating-sequence": "no-call-arrives",
        "cooling-call": "absent", "thermostat-cable-ohms": "open",
    }))  # fmt: skip
    visit.drive()
    assert ASKED not in visit.said
