"""A cracked exchanger is replaced or its unit condemned; what is done beside the crack is nothing.

An attacker's deeds and more of their kind. That none is patched stands in the orders of the danger;
where carbon monoxide came from soot, cleaning is a remedy: common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.safety.stops.repairs_told import rows
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words

BREACH, CO = "heat-exchanger-breach", "carbon-monoxide-evacuate"

REFUSED = {
    BREACH: [
        "They didn't replace it, cracks are small",
        "repaired the exchanger",
        "new exchanger, cracked in shipping",
        "replaced the sight glass of the exchanger",
        "replaced the exchanger's gasket only",
        "cleaned the exchanger",
        "new exchanger fitted, but left the rollout switch wired across",
        "he never changed the exchanger",
        "exchanger was mended by the handyman",
        "fixed the crack in the heat exchanger",
        "exchanger replaced, the new one came with a dent and a split",
        "new door gasket on the exchanger",
        "replaced the exchanger mounting screws",
        "vacuumed the exchanger",
        "brushed the tubes of the exchanger",
        "replaced the exchanger, rollout jumped out",
        "new exchanger, limit switch is still wired across",
        "exchanger ordered, new burners fitted",
        "we didn't change the cell, it is only a hairline",
        "cleaned the tubes and vacuumed the soot",
        "new burner gaskets, exchanger as it was",
        "exchanger inspection cover replaced",
        "handyman sealed it up",
        "did not swap the exchanger, only tightened the screws",
        "mended the crack",
        "new limit switch fitted",
        "exchanger cracked, gas line capped and unit tagged",
    ],
    CO: ["repaired the exchanger", "exchanger was mended and the burner cleaned"],
}
TAKEN = {
    BREACH: [
        "the exchanger was replaced by the maker's man, no cracks now",
        "unit condemned and its gas line capped",
        "replaced all four cells and the gaskets",
        "new furnace section put in, rollout switches tested",
        "whole unit replaced with a new one",
        "cleaned the burners and replaced the heat exchanger",
        "exchanger cracked at the first bend, new exchanger and collector box gasket",
        "heat exchanger and burners replaced with new",
        "tubes 1 and 3 holed, all five tubes replaced",
        "old unit scrapped, new rooftop set",
        "exchanger changed out under warranty",
        "two cracked cells replaced with new cells and gaskets",
    ],
    CO: [
        "cleaned the sooted exchanger and the burners",
        "exchanger cracked, replaced it",
    ],
}


@pytest.mark.parametrize(("hazard", "typed"), rows(REFUSED))
def test_what_leaves_it_cracked_is_no_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])
    with pytest.raises(NotAResult):
        in_words(shipped, typed.replace("'", "\u2019"), shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), rows(TAKEN))
def test_a_new_one_or_none_is_a_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed
