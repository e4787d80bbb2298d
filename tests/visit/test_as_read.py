"""A reading is told with the unit that it was typed in."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.telling.as_read import as_read


@pytest.mark.parametrize(
    ("typed", "told"), [("0 ppm", "0 ppm"), ("0", "0 % LEL"), ("3 % LEL", "3 % LEL")]
)
def test_a_sweep_that_finds_nothing_in_ppm_is_told_in_ppm(
    typed: str, told: str, shipped: Knowledge
) -> None:
    """Regression: it was told as "0 ppm % LEL"."""
    assert as_read(shipped, shipped.tests["combustible-gas-sweep"], typed) == told
