"""Words for drawn scenarios: invented places, why a number misleads, why a test cannot be done."""

from __future__ import annotations

from typing import Final

PLACES: Final = (
    "the lending library at Fern Bank",
    "the swimming hall at Mill Race",
    "the tea rooms at Sun Lane",
    "the clinic at Almond Court",
    "the music school at Old Forge",
    "the seed store at Reed End",
    "the court house at Saddle Street",
    "the pottery at Ash Yard",
    "the nursery at Lime Walk",
    "the ticket office at Ferry Steps",
    "the chapel hall at Stone Bridge",
    "the bakery at Corn Hill",
)
"""Invented places for titles."""

LIES: Final = (
    "The probe sat in the sun and touched only paint.",
    "The meter's lead was broken inside its boot.",
    "It was read within five minutes of the start, before anything had settled.",
    "The hose was kinked and the gauge stuck.",
    "It was read with the panel off.",
)
"""Why a number misleads."""
MISNOTED: Final = "It was noted down from another unit's sheet."
"""Why a finding without a number misleads."""
NOT_TODAY: Final = (
    "the instrument for it is out on another roof",
    "the place cannot be reached today",
    "the owner does not want it done in opening hours",
)
"""Why a test cannot be done."""
