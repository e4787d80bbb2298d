"""From one value to another: what a quantity may be."""

from __future__ import annotations

from troubleshoot.frozen import frozen


@frozen
class Span:
    """From `low` to `high`, both in the unit of the quantity."""

    low: float
    high: float

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high

    def __str__(self) -> str:
        return f"{self.low:g} to {self.high:g}"
