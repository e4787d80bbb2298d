"""Nobody does live work at 480 V alone: what is not proposed to a person without a second one."""

from __future__ import annotations

from troubleshoot.knowledge.model import Hazard, Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.steps import SECOND_PERSON
from troubleshoot.safety.work_state import UnitAtWork


def alone(conclusions: Conclusions) -> Hazard | None:
    """The hazard of whoever is alone; None where nobody has said so."""
    if not nobody_comes(conclusions):
        return None
    return next(
        (f.hazard for f in conclusions.hazards if f.found and _speaks_of_it(f.hazard)), None
    )


def wants_company(test: Test, at: Place | None, unit: UnitAtWork) -> bool:
    """Whether a test needs a second person: at 480 V, or where nobody has read the volts.

    Whoever chooses such a test is led to the step that asks for the second person, as before.
    """
    return needs_of(test, spoken(at), unit).second_person


def nobody_comes(conclusions: Conclusions) -> tuple[str, ...]:
    """The step for a second person, where it was last answered that nobody comes; else nothing."""
    said = [reading.seen for reading in conclusions.readings if reading.test == SECOND_PERSON]
    alone = bool(said) and STEPS[SECOND_PERSON].sound not in said[-1]
    return (SECOND_PERSON,) if alone else ()


def _speaks_of_it(hazard: Hazard) -> bool:
    return any(finding.test == SECOND_PERSON for finding in hazard.findings)
