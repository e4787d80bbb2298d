"""What the five grade words mean in numbers, and how common a fault is.

The words and bands are the model's own (anchors agreed once, common practice, no source). Printing
the range beside the word follows Wintle et al. 2019, who found it doubles agreement.
"""

from __future__ import annotations

from collections.abc import Mapping

from troubleshoot.knowledge.spoken import spoken as spoken_word
from troubleshoot.knowledge.vocabulary import BANDS, Grade, HowCommon

HOW_COMMON: Mapping[HowCommon, float] = {
    "very-common": 10.0,
    "common": 5.0,
    "uncommon": 2.0,
    "rare": 1.0,
    "very-rare": 0.3,
}
HEALTHY_SHARE = 0.90
"""What the healthy outcome of a test gets in the background row."""

PRIOR_OUTSIDE = 0.07
PRIOR_NOTHING_WRONG_ON_COMPLAINT = 0.10
PRIOR_NOTHING_WRONG_ON_ROUND = 0.50
PRIOR_NOTHING_WRONG_IN_SEARCH = 1e-6
"""Next to none: what a round has found stands, and whether it was a slip reading again shows."""


def band(grade: Grade) -> str:
    """How often a grade means, as shown to people."""
    low, high = (round(100 * share) for share in BANDS[grade])
    if low == 0:
        return f"under {high} %"
    return f"over {low} %" if high == 100 else f"{low}-{high} %"


def spoken(grade: Grade) -> str:
    """The word with its band, as shown to people."""
    return f"{spoken_word(grade)} ({band(grade)})"
