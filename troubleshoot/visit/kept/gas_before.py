"""How earlier visits have left the gas train of a unit, until a later one has seen to it.

Others may have turned a cock since it was shut, so what is carried over is that it is not known to
be open, with the plugs on which no gas has stood since they were out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.outside.text import begun
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import spoken
from troubleshoot.safety.steps import COCK_LOOK, GAS_OPEN, PLUG_TEST
from troubleshoot.safety.work_state import untested_plugs
from troubleshoot.visit.deciding.left_off import STAYS_SHUT
from troubleshoot.visit.state import VisitState


@frozen
class GasBefore:
    """What is told of the cock, empty where it is known to be open; `plugs`: of each tap's plug."""

    cock: str = ""
    plugs: Mapping[str, str] = field(default_factory=dict)

    @property
    def lines(self) -> tuple[str, ...]:
        """What to tell whoever names the unit next, the cock first."""
        return tuple(line for line in (self.cock, *self.plugs.values()) if line)


def after_visit(before: GasBefore, visit: str, state: VisitState, ended: str) -> GasBefore:
    """How the gas train stands after one more visit. What stays so is told as it was left first."""
    sound = {
        (asked.test, asked.place if asked.test == PLUG_TEST else None)
        for asked in state.asked
        if asked.valid and not asked.nobody and asked.outcome == CONFIRMED.get(asked.test)
    }
    plugs = {tap: told for tap, told in before.plugs.items() if (PLUG_TEST, tap) not in sound}
    for tap in sorted(state.work.plugs_untested - plugs.keys()):
        (said,) = untested_plugs([tap])
        plugs[tap] = f"{begun(said)} (visit {visit}). {STAYS_SHUT}"
    cock = before.cock
    if state.work.gas == "shut" or (not cock and (plugs or state.work.gas != "on")):
        how = "shut" if state.work.gas == "shut" else "not known to be open"
        day = f" on {ended[:10]}" if ended else ""
        cock = f"The gas cock was left {how}{day} by {spoken(state.profiles)} (visit {visit})."
    elif {(COCK_LOOK, None), (GAS_OPEN, None)} & sound and not plugs and state.work.gas == "on":
        cock = ""
    return GasBefore(cock, plugs)
