"""What is read behind the open panel to prove a repair is read before anything closes it.

By a mechanic: the new capacitor was asked for after the panel was on and the fan had run.
"""

from __future__ import annotations

from tests.bench.visits import CALLS, Held
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.steps import PANELS_ON

FAN_CAPACITOR = next(call for call in CALLS if call.what == "fan capacitor")


def test_a_new_capacitor_is_read_before_the_panel_goes_on() -> None:
    """Though the fan, which was found standing, is seen to turn with the panel on."""
    visit = Held(reasoner_of(load_shipped()), FAN_CAPACITOR)
    visit.drive()
    mended = visit.said[visit.said.index("Settled") :]
    proof = mended.index("proof capacitance-out-of-circuit")
    assert proof < mended.index(f"[{PANELS_ON}]") < mended.index("proof condenser-fan-turning")
