"""By which words a deed is no result: what could not be done, and what is done another day.

Each names a part and a deed, so that nothing else speaks against it. The sentences are made up:
common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words

CANNOT, TO_COME = "not put right", "still to come"


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("union was tightened, cannot reach the elbow behind it", CANNOT),
        ("tightened the union but was unable to stop the leak", CANNOT),
        ("new gas valve fitted tomorrow", TO_COME), ("gas valve changed next week", TO_COME),
        ("gas valve replaced by friday", TO_COME),
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
