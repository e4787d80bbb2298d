"""A plug that was not tested under gas: the tag of the cock that stays shut for it says so."""

from __future__ import annotations

from dataclasses import replace

from tests.safety.stops.test_tags import BLANK, crack, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.tags import gas_tag, tag_lines
from troubleshoot.visit.events import Event, replay
from troubleshoot.visit.state import VisitState

OUTLET = "The plug of the outlet tap has not been tested under gas."
INLET = "The plug of the inlet tap has not been tested under gas."


def untested(shipped: Knowledge, *events: Event, taps: tuple[str, ...]) -> VisitState:
    state = replay(shipped, events)
    return replace(state, work=replace(state.work, plugs_untested=frozenset(taps)))


def test_the_tag_of_the_cock_says_why_it_is_shut_and_who_alone_opens_it(
    shipped: Knowledge,
) -> None:
    plugs = untested(shipped, start(name="RTU-7"), taps=("outlet tap", "inlet tap"))
    assert gas_tag(plugs) == (
        "Do not open the gas cock of RTU-7.",
        INLET,
        OUTLET,
        "Only a qualified gas person may remove this tag, to test it.",
        BLANK,
    )
    nameless = gas_tag(untested(shipped, start(), taps=("outlet tap",)))
    assert nameless[:2] == ("Do not open the gas cock.", OUTLET)


def test_where_every_plug_was_tested_no_tag_hangs_on_the_cock(shipped: Knowledge) -> None:
    assert gas_tag(untested(shipped, start(name="RTU-7"), taps=())) == ()


def test_the_tag_of_a_stop_tells_of_the_plug_too(shipped: Knowledge) -> None:
    """Whoever clears the exchanger must not open the cock on a plug that may leak."""
    state = untested(shipped, start(), crack(), taps=("outlet tap",))
    conclusions = conclude_visit(Reasoner(shipped), state)
    (breach,) = (f for f in conclusions.hazards if f.hazard.id == "heat-exchanger-breach")
    lines = tag_lines(shipped, state, conclusions, breach)
    assert lines[lines.index("Gas cock: not known to be shut.") + 1] == OUTLET
