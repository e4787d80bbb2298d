"""A test that would put a person near danger without a word.

What: hands go inside a locked-out unit, or near live parts, and no hazard is named or triggered;
line voltage is within reach and no hazard about live work is; live parts are said to be exposed
although the unit is locked out; charge must be bled off although power is still on.
Why: the program shows a caution before the step only if the rules say so.
Mend: name the hazards in the test, or let a hazard be triggered by the work state; correct
`work-state`, `needs-state` or `exposes`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Test, Trigger
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safe-tests"

_LIVE_WORK: Final = "live-work"
_HANDS_IN: Final = ("locked-out", "energised-open", "running-open")


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every test whose dangers are not spoken of."""
    for test in base.knowledge.tests.values():
        shown = hazards_shown(base.knowledge, test)
        for key, what, instead in (*_unspoken(test, shown), *_contradictions(test)):
            yield base.problem(ID, ("test", test.id), (key,), f"{test.id} {what}", instead)


def hazards_shown(knowledge: Knowledge, test: Test) -> frozenset[str]:
    """The hazards that are shown before a test, whatever the unit and whatever was found."""
    triggered = (h.id for h in knowledge.hazards.values() if _by_test_alone(h, test))
    return frozenset((*test.hazards, *triggered))


def _by_test_alone(hazard: Hazard, test: Test) -> bool:
    return any(_trigger_holds(trigger, test) for trigger in hazard.triggers)


def _trigger_holds(trigger: Trigger, test: Test) -> bool:
    needs_more = trigger.findings or trigger.complaint or trigger.fault or trigger.profile
    if needs_more or trigger.equipment:
        return False
    return (
        trigger.test in (None, test.id)
        and trigger.work_state in (None, test.work_state)
        and trigger.exposes in (None, test.exposes)
    )


def _unspoken(test: Test, shown: frozenset[str]) -> Iterator[tuple[str, str, str]]:
    if test.work_state in _HANDS_IN and not shown:
        yield "hazards", "puts hands inside the unit without a caution", "name its hazards"
    if test.exposes == "line" and _LIVE_WORK not in shown:
        yield "hazards", "exposes line voltage without the caution about it", f"name {_LIVE_WORK}"


def _contradictions(test: Test) -> Iterator[tuple[str, str, str]]:
    if test.exposes != "none" and test.work_state == "locked-out":
        yield "exposes", "exposes live parts though locked out", "write exposes: none"
    if test.exposes == "line" and test.work_state in ("any", "running"):
        what = "exposes line voltage with the panels on"
        yield "work-state", what, "write energised-open or running-open"
    if "capacitors-discharged" in test.needs_state and test.work_state != "locked-out":
        what = "needs bled capacitors while power is on"
        yield "work-state", what, "write work-state: locked-out"
