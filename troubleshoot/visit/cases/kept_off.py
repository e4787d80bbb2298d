"""What is not advised on a file because it would run what a danger keeps off.

A visit leaves this to the guards of the work state: there a purge is waited out, a cock is shut and
opened again step by step. A file tells of no step, so its unit counts as it was left.
"""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.stops.standing import bans_of
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.deciding.left_off import left_off


def runs_what_is_kept_off(conclusions: Conclusions) -> Callable[[Test, Place | None], bool]:
    """Whether a test runs what a danger that stands keeps off.

    Of the unit and its circuits a hazard that says under `forbids` what is not done has said all,
    and one that stops nothing allows what its caution tells how to do; its heat stays off all the
    same. What ends a ban may be read.
    """
    layout = conclusions.case.unit.layout
    unit = unit_at_work(conclusions.case.unit)
    kept_off = left_off(conclusions).all
    is_of_heat = _calls_for_heat(conclusions)

    def runs(fired: FiredHazard, test: Test, at: Place | None) -> bool:
        bans = bans_of(fired.hazard)
        if any(finding.test == test.id for ban in bans for finding in ban.until):
            return False
        needs = needs_of(test, spoken(at), unit)
        if fired.hazard.keeps_off == "heat":
            return needs.gas == "on" or (is_of_heat and needs.energised)
        if bans or fired.hazard.stop is None or not needs.energised:
            return False
        is_its_own = layout.circuits_of(at) <= {*fired.circuits}
        return fired.hazard.keeps_off == "unit" or is_its_own

    return lambda test, at: any(runs(fired, test, at) for fired in kept_off)


def _calls_for_heat(conclusions: Conclusions) -> bool:
    """Whether such a call has a burner lit, so that any test with the power on may light it."""
    knowledge, unit = conclusions.hypotheses.knowledge, unit_at_work(conclusions.case.unit)
    complaint = knowledge.complaints.get(conclusions.case.complaint or "")
    first = () if complaint is None else complaint.first_tests
    return any(needs_of(knowledge.tests[test], None, unit).gas == "on" for test in first)
