"""The opposite of a repair, one elsewhere, one that did not hold, a part that does not belong."""

from __future__ import annotations

import pytest

from tests.safety.stops.repairs_told import NO_REPAIR, REPAIRS, rows
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops import no_repair
from troubleshoot.safety.stops.no_repair import why_no_repair
from troubleshoot.safety.stops.reopening import NotAResult, in_words

SMOKE, GAS, CO = "smoke-or-heat-now", "gas-odour", "carbon-monoxide-evacuate"


@pytest.mark.parametrize(("hazard", "typed"), rows(NO_REPAIR))
def test_what_repairs_nothing_is_no_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    """Regression: a bigger breaker and a loosened union lifted a STOP for the whole job."""
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), rows(REPAIRS))
def test_a_repair_stays_one(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize(
    ("hazard", "said", "why"),
    [
        (SMOKE, "replaced the contactor, it burnt again", no_repair.CAME_AGAIN),
        (GAS, "replaced the union, the smell returned", no_repair.CAME_AGAIN),
        (GAS, "replaced the valve and left the pipe open", no_repair.LEFT_OPEN),
        (SMOKE, "wire cut out, nothing in its place", no_repair.LEFT_OPEN),
        (GAS, "tightened the union, hasn't happened yet", no_repair.NOT_DONE),
        (GAS, "i was told to write tightened the union", no_repair.NOT_DONE),
        (GAS, "tightened the wrong union", no_repair.OF_ANOTHER),
        (SMOKE, "replaced the contactor next door", no_repair.OF_ANOTHER),
        (SMOKE, "replaced the breaker with a bigger one", no_repair.WRONG_PART),
        (SMOKE, "replaced it by a 60 amp breaker where the 40 was", no_repair.WRONG_PART),
        (GAS, "union replaced with a garden hose", no_repair.WRONG_PART),
        (CO, "welded the crack", no_repair.WRONG_PART),
        (SMOKE, "switched it off", no_repair.NO_REPAIR),
        (GAS, "turned the knob", no_repair.NO_REPAIR),
    ],
)
def test_each_is_told_what_is_wrong_with_it(
    hazard: str, said: str, why: str, shipped: Knowledge
) -> None:
    assert why_no_repair(said, shipped.hazards[hazard]) == why


@pytest.mark.parametrize(
    "said",
    [
        "leak came back, union replaced", "left open by somebody, capped and tagged",
        "60 amp breaker found, replaced by the 40 amp for 8 gauge",
        "it was the neighbour's tank, shut",
        "tightened the wrong union first, then tightened the right one",
    ],
)  # fmt: skip
def test_what_is_put_right_afterwards_counts(said: str, shipped: Knowledge) -> None:
    """In the order in which it is told: a repair that did not hold is mended by the next."""
    assert why_no_repair(said, shipped.hazards[GAS]) == ""


def test_people_and_weather_have_no_part_to_repair(shipped: Knowledge) -> None:
    assert why_no_repair("waited, came back again", shipped.hazards["lightning"]) == ""
