"""The opposite of a repair, one elsewhere, one that did not hold, a part that does not belong."""

from __future__ import annotations

import pytest

from tests.safety.stops.repairs_told import NO_REPAIR, REPAIRS, rows
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.no_repair import why_no_repair
from troubleshoot.safety.stops.reopening import NotAResult, in_words

SMOKE, GAS, CO = "smoke-or-heat-now", "gas-odour", "carbon-monoxide-evacuate"
AGAIN, OPEN = "That says that it came again", "That leaves it open or undone"
UNDONE, ELSEWHERE = "That says that it was not done", "That is of another unit or part"
WRONG, NO_PART = "That is no part or way that belongs there", "That tells of no repair"


@pytest.mark.parametrize(("hazard", "typed"), rows(NO_REPAIR))
def test_what_repairs_nothing_is_no_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    """Regression: a bigger breaker and a loosened union lifted a STOP for the whole job."""
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), rows(REPAIRS))
def test_a_repair_stays_one(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize(("hazard", "typed"), rows(NO_REPAIR))
def test_a_phone_types_the_same(hazard: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        in_words(shipped, typed.replace("'", "\u2019"), shipped.hazards[hazard])


@pytest.mark.parametrize(
    ("hazard", "said", "why"),
    [
        (SMOKE, "replaced the contactor, it burnt again", AGAIN),
        (GAS, "replaced the union, the smell returned", AGAIN),
        (GAS, "replaced the valve and left the pipe open", OPEN),
        (SMOKE, "wire cut out, nothing in its place", OPEN),
        (GAS, "tightened the union, hasn't happened yet", UNDONE),
        (GAS, "i was told to write tightened the union", UNDONE),
        (GAS, "tightened the wrong union", ELSEWHERE),
        (SMOKE, "replaced the contactor next door", ELSEWHERE),
        (SMOKE, "replaced the breaker with a bigger one", WRONG),
        (SMOKE, "replaced it by a 60 amp breaker where the 40 was", WRONG),
        (GAS, "union replaced with a garden hose", WRONG),
        (CO, "welded the crack", WRONG),
        (SMOKE, "switched it off", NO_PART),
        (GAS, "turned the knob", NO_PART),
        (GAS, "leak came back, union replaced, it leaked again", AGAIN),
        (GAS, "left open, it leaked again", AGAIN),
    ],
)
def test_each_is_told_what_is_wrong_with_it(
    hazard: str, said: str, why: str, shipped: Knowledge
) -> None:
    """Of what was told last, where that is not the same as what was told before."""
    assert why_no_repair(said, shipped.hazards[hazard]).startswith(why)


@pytest.mark.parametrize(
    "said",
    [
        "leak came back, union replaced", "left open by somebody, capped and tagged",
        "60 amp breaker found, replaced by the 40 amp for 8 gauge",
        "it was the neighbour's tank, shut",
        "tightened the wrong union first, then tightened the right one",
        "tightened the union, and the unit next door as well",
        "leaked again, union replaced, next door too",
    ],
)  # fmt: skip
def test_what_is_put_right_afterwards_counts(said: str, shipped: Knowledge) -> None:
    """In the order in which it is told: a repair that did not hold is mended by the next."""
    assert why_no_repair(said, shipped.hazards[GAS]) == ""


@pytest.mark.parametrize("was", ["60", "40"])
def test_a_part_of_no_more_amps_than_the_one_before_belongs_there(
    was: str, shipped: Knowledge
) -> None:
    said = f"replaced by a 40 amp breaker where the {was} was"
    assert why_no_repair(said, shipped.hazards[SMOKE]) == ""


@pytest.mark.parametrize(
    "hazard", ["blade-cracked", "gas-trace", "somebody-hurt", "heat-will-not-stop"]
)
def test_a_repair_is_asked_for_only_where_the_whole_job_waits_for_a_part(
    hazard: str, shipped: Knowledge
) -> None:
    """Made safe or left off, the rest may go on; whoever was hurt has no part."""
    assert why_no_repair("switched it off", shipped.hazards[hazard]) == ""
    assert why_no_repair("told the tenant", shipped.hazards[hazard]) == ""


def test_people_and_weather_have_no_part_to_repair(shipped: Knowledge) -> None:
    assert why_no_repair("waited, came back again", shipped.hazards["lightning"]) == ""
