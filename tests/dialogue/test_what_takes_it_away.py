"""Of each danger that stands over a repair it is said what takes that one away, nothing else."""

from __future__ import annotations

from tests.cli.lines import book_of
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.staying_off import StayingOff
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Closing, Repaired, Started

UNIT = {"supply-phase": "three", "compressor-phase": "three", "heat": "none"}


def test_no_winding_of_a_fan_clears_a_terminal_of_the_compressor(shipped: Knowledge) -> None:
    """Regression: whatever came next was said to take every danger away."""
    decider = Decider(shipped)
    book = book_of(
        shipped,
        [
            Started(complaint="trips-breaker-or-fuse", unit=UNIT),
            Answered("breaker-and-disconnect", outcomes=("tripped",)),
            Answered("compressor-insulation", text="3 kohm"),
            Repaired("compressor-winding-grounded"),
            Closing(),
        ],
    )
    conclusions = conclude_visit(decider.reasoner, book.state)
    decision = decider.decide(book.state, conclusions)
    assert decision.aim is not None and decision.aim[0] != "compressor-insulation"
    voice = Voice()
    StayingOff(book, voice).tell(decision, conclusions)
    said = str(voice.heard())
    own = shipped.tests["compressor-insulation"].name
    assert f"compressor terminal venting. Before any proof: {own}. Read afresh" in said
