"""Every repair of the base is played to its proofs with sound readings, and none stays unproved.

What judges a proof is asked for where it can be read: no repair ends "not proved" for want of a
question that was never asked.
"""

from __future__ import annotations

import pytest

from tests.dialogue.proved_visit import ProvedVisit, unit_of
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge

NOT_ASKED = {
    "unknown-second-power-source": "Both sources locked and labeled and every point dead",
}
"""What is proved by a step that the way out has no need of."""
AREAS = tuple(dict.fromkeys(fault.subsystem for fault in load_shipped().faults.values()))


@pytest.mark.parametrize("area", AREAS)
def test_every_repair_is_proved_by_sound_readings(area: str, shipped: Knowledge) -> None:
    """Regression: superheat on a fixed orifice wanted a wet bulb that the open panel forbade, and
    nothing asked for it once the panel was on."""
    wanting = {}
    for fault in shipped.faults.values():
        typical = unit_of(shipped, fault) if fault.subsystem == area else None
        if typical is not None and fault.proof:
            visit = ProvedVisit(reasoner_of(shipped), typical, fault)
            visit.drive()
            wanting |= {(fault.id, text): why for text, why in visit.not_proved().items()}
    assert {fault: text for fault, text in wanting if NOT_ASKED.get(fault) != text} == {}, wanting


def test_what_judges_a_proof_is_asked_for_once_the_panel_is_on(shipped: Knowledge) -> None:
    fault = shipped.faults["low-charge-from-leak"]
    typical = shipped.typical_units["light-single-phase"]
    visit = ProvedVisit(reasoner_of(shipped), typical, fault)
    visit.drive()
    told = dict(visit.state.repairs[-1].proofs)
    assert visit.asked.count("Superheat in band") == 1 and told["Superheat in band"]
    assert "return-wet-bulb" in {answer.test for answer in visit.state.answers}
