"""What is read at the service ports, with every panel on: no panel is opened live for it.

Where these are outside the cabinet, gauges and a probe on the pipe beside a port go on from there.
Where they are behind a panel, or nobody knows, gauges go on dead and probes with them, hoses and
wires are led out, and the panel goes back on before the unit runs (29 CFR 1910.333(a)(1), from
memory). What is told of refrigerant, of what is hot and of what turns is told as ever.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.safety.work_state import UnitAtWork

AT_PORTS: Final[Need] = "at-ports"
"""What a rule file calls what is read with gauges, or a probe on the pipe beside a port, alone."""
GAUGES_ON: Final[Need] = "gauges-on"
LIVE_WORK: Final = "live-work"


def as_read_on(test: Test, unit: UnitAtWork) -> Test:
    """The test as this unit has it read: running, every panel on, what it is read with led out.

    A probe behind a panel goes on under the one lock-out that gauges want there.
    """
    if AT_PORTS not in test.needs_state:
        return test
    inside = () if unit.ports_outside else (GAUGES_ON,)
    return replace(
        test,
        work_state="running",
        exposes="none",
        hazards=tuple(hazard for hazard in test.hazards if hazard != LIVE_WORK),
        needs_state=tuple(dict.fromkeys((*test.needs_state, *inside))),
    )
