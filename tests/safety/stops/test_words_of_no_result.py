"""By which words a deed is no result, and a reading shows nothing: not done, not yet, another gas.

Each names a part and a deed, so that nothing else speaks against it. The sentences are made up:
common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words
from troubleshoot.safety.stops.shown import as_read

CANNOT, TO_COME, TOLD = "not put right", "still to come", "what was found or told"
ANOTHER_GAS, ELSEWHERE = "of another gas than the danger", "another time or place"


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("union was tightened, cannot reach the elbow behind it", CANNOT),
        ("tightened the union but was unable to stop the leak", CANNOT),
        ("new gas valve fitted tomorrow", TO_COME), ("gas valve changed next week", TO_COME),
        ("gas valve replaced by friday", TO_COME), ("put up a sign at the unit", TOLD),
        ("fan cleared the smell and it left", "nothing about where it came from"),
    ],
)  # fmt: skip
def test_what_was_not_done_or_not_yet_is_no_result(
    typed: str, why: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match=why):
        in_words(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize(
    "typed", ["union tightened, elbow behind it replaced", "new gas valve fitted"]
)
def test_what_was_done_is_one(typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards["gas-odour"]) == typed


def test_a_fuse_of_the_wrong_size_that_is_out_again_is_no_defeat(shipped: Knowledge) -> None:
    """NEC 240.4, from memory: a protection is no larger than its conductors carry."""
    hazard, out = shipped.hazards["scorched-or-hot-wiring"], "oversized fuse removed, lugs remade"
    assert in_words(shipped, out, hazard) == out
    with pytest.raises(NotAResult):
        in_words(shipped, "oversized fuse fitted, lugs remade", hazard)


@pytest.mark.parametrize(
    ("hazard", "typed", "why"),
    [
        ("carbon-monoxide-in-room", "0 ppm refrigerant", ANOTHER_GAS),
        ("carbon-monoxide-in-room", "0 ppm CO2", ANOTHER_GAS),
        ("gas-odour", "0 % oxygen", ANOTHER_GAS),
        ("gas-odour", "0 % LEL yesterday", ELSEWHERE),
        ("gas-odour", "0 % LEL two days ago", ELSEWHERE),
        ("carbon-monoxide-in-room", "2 ppm or so", "about so much"),
        ("live-now", "0 V or so", "about so much"),
    ],
)
def test_another_gas_another_day_and_about_so_much_show_nothing(
    hazard: str, typed: str, why: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match=why):
        as_read(shipped, typed, shipped.hazards[hazard])
