"""The numbers of one test at one place over the visits to a unit, and which can be compared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.quantities.expected import BOUND_TO_WEATHER, IN_PROPORTION
from troubleshoot.quantities.span import Span
from troubleshoot.quantities.trend import Point
from troubleshoot.reasoning.unit.places import Place

DAYS_A_YEAR: Final = 365.25
TEMPERATURE: Final = "F"
"""The unit of a temperature itself, which is the day's as much as the unit's."""
OF_THE_DAY: Final = frozenset({"target-superheat"})
"""What the weather alone decides, in whatever unit."""


@frozen
class Read:
    """One number of a past visit, in its quantity's unit.

    `u`: its standard uncertainty by the meter; `rated`: the plate values that alarms compare it
    with, by name; `expected`: what a sound unit would have shown in
    that weather; `low`, `high`: the sound band by which it was judged, open where None; `outdoor`:
    the air outdoors in F; `outcome`: what it was judged to be, in words. `after_repair`: read after
    one on its own visit; `before_repair`: something was put right since that the test shows;
    `before_change`: a part by which it is judged is another by now.
    """

    visit: str
    day: date
    value: float
    u: float
    expected: Span | None = None
    low: float | None = None
    high: float | None = None
    outdoor: float | None = None
    outcome: str = ""
    rated: Mapping[str, float] = field(default_factory=dict)
    after_repair: bool = False
    before_repair: bool = False
    before_change: bool = False

    @property
    def is_of_before(self) -> bool:
        """Whether it was read on a part that is there no longer."""
        return self.before_repair or self.before_change


@frozen
class Series:
    """What one test has read at one place, the earliest first. `unit`: of its quantity."""

    test: Test
    at: Place | None
    quantity: str
    unit: str
    reads: tuple[Read, ...]

    @property
    def is_bound_to_weather(self) -> bool:
        """Whether only what the weather leaves unexplained can be compared."""
        return self.quantity in BOUND_TO_WEATHER

    @property
    def is_weather(self) -> bool:
        """Whether it tells of the day alone: no trend is made of it."""
        return self.unit == TEMPERATURE or self.quantity in OF_THE_DAY

    @property
    def comparable(self) -> tuple[Read, ...]:
        """The numbers that can be compared: of those bound to weather where it was known.

        None from before a repair, or a part was changed: a new part begins a new line.
        """
        if self.is_weather:
            return ()
        since = (read for read in self.reads if not read.is_of_before)
        if not self.is_bound_to_weather:
            return tuple(since)
        return tuple(read for read in since if read.expected is not None)

    @property
    def in_proportion(self) -> bool:
        """Whether it changes in proportion, so that its trend is of a share of what is expected."""
        return self.quantity in IN_PROPORTION

    def levelled(self, read: Read) -> float:
        """A number as it compares with those of other weather: over what was to be expected then.

        In its own unit; for one that changes in proportion as a share of what was to be expected.
        """
        if not self.is_bound_to_weather or read.expected is None:
            return read.value
        middle = (read.expected.low + read.expected.high) / 2.0
        return read.value / middle if self.in_proportion else read.value - middle

    def levelled_error(self, read: Read) -> float:
        """The standard uncertainty of a levelled number, by the meter alone."""
        if not self.in_proportion or read.expected is None:
            return read.u
        return read.u / ((read.expected.low + read.expected.high) / 2.0)

    @property
    def points(self) -> tuple[Point, ...]:
        """The numbers that can be compared, over the years since the first of them."""
        first = self.comparable[0].day if self.comparable else None
        return tuple(
            Point((read.day - first).days / DAYS_A_YEAR, self.levelled(read))
            for read in self.comparable
            if first is not None
        )
