"""A gauge reading that is typed as no gauge shows it is said back as it is taken."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.telling.as_read import read_otherwise


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("1/2", '"1/2" is read as 0.5 psig.'), ("1/2 psig", '"1/2 psig" is read as 0.5 psig.'),
        ("128 lb", '"128 lb" is read as 128 psig.'), ("128lbs", '"128lbs" is read as 128 psig.'),
        ("128 pounds", '"128 pounds" is read as 128 psig.'),
        ("128#", '"128#" is read as 128 psig.'),
        ("\u00bd", '"\u00bd" is read as 0.5 psig.'),
        ("128", None), ("128 psig", None), ("128.5 psi", None), ("8.8 bar", None), ("low", None),
    ],
)  # fmt: skip
def test_a_fraction_or_a_weight_is_said_back(
    typed: str, told: str | None, shipped: Knowledge
) -> None:
    """Regression: half a psi was taken in silence, and so was a weight."""
    assert read_otherwise(shipped, shipped.tests["suction-pressure"], typed) == told


def test_a_fraction_is_how_a_manometer_is_read(shipped: Knowledge) -> None:
    assert read_otherwise(shipped, shipped.tests["gas-manifold-pressure"], "3 1/2 in wc") is None
