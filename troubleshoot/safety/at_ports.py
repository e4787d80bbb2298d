"""What is read at the service ports, where these are outside the cabinet: no panel is opened.

Gauges, and a probe on the pipe beside a port, then go on from outside. What is told of refrigerant,
of what is hot and of what turns is told as ever.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.safety.work_state import UnitAtWork

AT_PORTS: Final[Need] = "at-ports"
"""What a rule file calls what is read with gauges, or a probe on the pipe beside a port, alone."""
LIVE_WORK: Final = "live-work"


def as_read_on(test: Test, unit: UnitAtWork) -> Test:
    """The test as this unit has it read: running with every panel on, where its ports allow it."""
    if not unit.ports_outside or AT_PORTS not in test.needs_state:
        return test
    hazards = tuple(hazard for hazard in test.hazards if hazard != LIVE_WORK)
    return replace(test, work_state="running", exposes="none", hazards=hazards)
