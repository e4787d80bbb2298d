"""Which words tell of a happening, and which of how a thing is, looks or was made.

How English is spoken: common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.happenings import happens


@pytest.mark.parametrize(
    "told",
    [
        "the belt broke", "the cover moved", "it rattled", "the wheel is turning",
        "a man behind the unit", "there is something fell", "it looks like it fell",
    ],
)  # fmt: skip
def test_what_has_happened_goes_on_or_is_near_is_a_happening(told: str) -> None:
    assert happens(told)


@pytest.mark.parametrize(
    "told",
    [
        "closed", "the cover is closed", "it is still closed", "it is now just closed",
        "it is not quite really closed", "the turning wheel", "a screw is missing",
        "the rated volts", "a thick red wire", "a weed grows in the pan", "the blower is blue",
        "a man", "behind the unit", "the bleed port is dry", "a hundred volts",
    ],
)  # fmt: skip
def test_how_a_thing_is_or_was_made_is_none(told: str) -> None:
    """A verb alone is an answer, and what looks like a verb may be none: bleed, hundred."""
    assert not happens(told)
