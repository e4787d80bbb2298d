"""What a danger says is off is not called on the way out, however little was read of it."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from tests.visit.deciding.test_left_off import UNIT, closed
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Finding, Hazard, Knowledge, Trigger
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.steps import LOCK_OFF, RESTART
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started, replay

ONE_CIRCUIT: dict[str, Any] = {**UNIT, "circuits": 1, "condenser-fans": 1}
IS_OFF = re.compile(
    r"\boff now\b|(?<!cool)\b[Cc]all off\b|[Cc]ompressor off|cooling off|stays? off"
    r"|not (?:called|started)|locked out and tagged|keep it locked|leave it open|does not run"
    r"|nobody closes|off again"
)
"""What a caution says of a unit or a motor that is not to run."""
STAYS_ON = {
    "head-near-its-switch": "the compressor goes off only if the head climbs",
    "frozen-coil": "ice melts with the blower on; no part of it is hurt by the next call alone",
}


def found_alone() -> list[Hazard]:
    return [h for h in load_shipped().hazards.values() if h.findings]


@pytest.mark.parametrize("hazard", found_alone(), ids=lambda hazard: hazard.id)
def test_a_danger_that_says_off_says_what_stays_off(hazard: Hazard) -> None:
    """Regression: a compressor that was not to be called again was called on the way out."""
    says_off = IS_OFF.search(hazard.what_to_do) is not None
    assert not says_off or hazard.keeps_off is not None or hazard.id in STAYS_ON


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def ways_to_be_found() -> list[tuple[str, Trigger]]:
    """Each way in which findings that halt no visit call up a danger that keeps a motor off."""
    known = load_shipped()
    halting = {
        (finding.test, outcome)
        for hazard in known.hazards.values()
        if hazard.stop is not None and hazard.stop.scope != "this-step"
        for finding in hazard.findings
        for outcome in finding.outcomes
    }
    return [
        (hazard.id, trigger)
        for hazard in known.hazards.values()
        if hazard.keeps_off in ("unit", "circuit")
        if hazard.stop is None or hazard.stop.scope == "this-step"
        for trigger in hazard.triggers
        if trigger.findings and not _of_a_step(known, trigger.findings)
        if not any((f.test, f.outcomes[0]) in halting for f in trigger.findings)
    ]


def _of_a_step(known: Knowledge, findings: tuple[Finding, ...]) -> bool:
    return any(known.tests[finding.test].kind == "step" for finding in findings)


@pytest.mark.parametrize(("name", "trigger"), ways_to_be_found())
def test_the_way_out_calls_nothing_that_a_danger_keeps_off(
    name: str, trigger: Trigger, decider: Decider, shipped: Knowledge
) -> None:
    """Of a unit with one circuit whoever closes up at once locks it, and neither calls nor says
    that it is back as it was."""
    facts = {fact: words[0] for fact, words in trigger.equipment.items()}
    facts |= {
        fact: words[0]
        for finding in trigger.findings
        for fact, words in shipped.tests[finding.test].exists_when.items()
    }
    unit = {**ONE_CIRCUIT, **facts}
    events: list[Event] = [Started(complaint="weak-cooling", unit=unit)]
    layout = replay(shipped, events).unit.layout
    for finding in trigger.findings:
        place = spoken(layout.places(shipped.tests[finding.test].per)[0])
        events.append(Answered(finding.test, place, (finding.outcomes[0],)))
    state, done = closed(decider, events)
    off = left_off(conclude_visit(decider.reasoner, state))
    assert name in [fired.hazard.id for fired in off.unit]
    assert state.work.power == "locked-out" and not {LOCK_OFF, RESTART} & {*done}


@pytest.mark.parametrize(
    "rest",
    [
        {},
        {"capacitance-out-of-circuit": "2.1 uF", "condenser-fan-spin": "turns freely"},
    ],
    ids=["nothing more", "a can of unknown rating"],
)
def test_whoever_is_done_behind_a_dead_fan_leaves_it_off_and_tagged(
    rest: dict[str, str], shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: done twice behind the fan's answer ended with: the unit is back as it was."""
    unit = {**ONE_CIRCUIT, "line-volts-class": "208-to-240-volt", "condenser-fan-phase": "single"}
    shows: dict[str, str | list[str]] = {"condenser-fan-turning": "stopped", **rest}
    last = "condenser-fan-turning" if not rest else "capacitance-out-of-circuit"
    player = Player(shipped, shows, settled=["done"] * 3, then={last: ["done; done"]})
    start = {"complaint": "weak-cooling", "unit": unit, "profiles": ["electrical", "refrigerant"]}
    play(shipped, tmp_path, player, start)
    closing = " ".join(player.text.split()).partition("put the unit back and close")[2]
    assert "Write on the tag:" in closing and "The unit stays off and locked" in closing
    assert "Call for the unit" not in closing and "back as it was" not in closing
