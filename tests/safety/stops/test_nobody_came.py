"""Where nobody came to whom a STOP was handed over, nobody has made it safe, however it is said.

Those whom it stopped have shut a cock then, at most; the next to open it lights what still escapes.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words

NOBODY_CAME = [
    "nobody came, valve shut",
    "nobody at all showed, valve shut",
    "nobody from the gas company came, valve shut",
    "nobody from the utility showed up, I shut the cock",
    "nobody at the gas company answered, cock shut",
    "no one in the office answered, cock shut",
    "none of the fitters came, cock shut",
    "neither of them came, valve shut",
    "no fitter came, cock shut",
    "no gas man ever came, shut the cock",
    "no-one of theirs has turned up, cock shut",
    "the gas company never came, valve shut",
]
SOMEBODY_CAME = [
    "nobody was hurt when the fitter came and shut the valve",
    "nobody in the building was hurt; the utility came and shut the cock",
    "nobody in the building came to harm, the utility shut the cock",
    "nobody at risk when the utility came and shut the cock",
    "no leak when the fitter came, union remade",
    "no gas left until the utility came and shut the main",
    "none of the joints showed a bubble, union remade",
    "no gas came through, union remade",
    "no bubbles showed at the new union, flex replaced",
    "the utility came and shut the main, no fitter was needed",
]


@pytest.mark.parametrize("typed", NOBODY_CAME)
def test_where_nobody_came_only_the_people_it_stopped_can_have_done_it(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: told of whom exactly nobody came, the next word made it a result of theirs."""
    with pytest.raises(NotAResult, match="nobody came for it"):
        in_words(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize("typed", SOMEBODY_CAME)
def test_that_nobody_was_hurt_or_nothing_came_is_told_beside_a_result(
    typed: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, typed, shipped.hazards["gas-odour"]) == typed
