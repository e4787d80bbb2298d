"""What the five grade words mean in numbers, and how common a fault is.

The words and bands are the model's own (anchors agreed once, common practice, no source). Printing
the range beside the word follows Wintle et al. 2019, who found it doubles agreement.
"""

from __future__ import annotations

from collections.abc import Mapping

from troubleshoot.knowledge.model import Grade, HowCommon

PROBABILITY: Mapping[Grade, float] = {
    "never": 0.02,
    "seldom": 0.14,
    "sometimes": 0.41,
    "often": 0.73,
    "almost-always": 0.92,
}
BAND: Mapping[Grade, str] = {
    "never": "under 3 %",
    "seldom": "3-20 %",
    "sometimes": "20-60 %",
    "often": "60-90 %",
    "almost-always": "over 90 %",
}
HOW_COMMON: Mapping[HowCommon, float] = {
    "very-common": 10.0,
    "common": 5.0,
    "uncommon": 2.0,
    "rare": 1.0,
    "very-rare": 0.3,
}
HEALTHY_SHARE = 0.90
"""What the healthy outcome of a test gets in the background row."""
MOST_OF_A_ROW = 0.98
"""Grades on one test may add up to this; a row that would pass it is scaled."""

PRIOR_OUTSIDE = 0.07
PRIOR_NOTHING_WRONG_ON_COMPLAINT = 0.10
PRIOR_NOTHING_WRONG_ON_ROUND = 0.50


def spoken(grade: Grade) -> str:
    """The word with its band, as shown to people."""
    return f"{grade.replace('-', ' ')} ({BAND[grade]})"
