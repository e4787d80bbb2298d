"""Ways of choosing the next test of a subset: the engine's, and plainer ones to hold it against."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.choosing.stopping import VALUE_OF_RIGHT, pays


@frozen
class Look:
    """A test that is left, as the faults stand.

    `gain`: expected bits. `surer`: how much likelier the best call gets to be right, 0 to 1.
    `minutes`: with its change of work state. `number`: its place on the list made at the start.
    """

    test: int
    gain: float
    surer: float
    minutes: float
    number: int

    @property
    def rate(self) -> float:
        return self.gain / self.minutes

    @property
    def spared(self) -> float:
        """Minutes that the wrong calls spared are worth, beyond those that it takes."""
        return VALUE_OF_RIGHT * self.surer - self.minutes


@frozen
class Policy:
    """The test of most `merit` among those that are `worth` it at a least rate; else a stop."""

    worth: Callable[[Look, float], bool]
    merit: Callable[[Look], float]


def _pays(look: Look, least: float) -> bool:
    """As the engine has it."""
    return pays(look.gain, look.surer, look.minutes, least)


ENGINE: Final = Policy(_pays, lambda look: look.rate)
SPARING: Final = Policy(lambda look, _: look.spared > 0, lambda look: look.spared)
"""The value of information one test ahead: of these the only one sure never to lose by testing."""
PLAINER: Final[Mapping[str, Policy]] = {
    "wrong calls spared, one test ahead": SPARING,
    "most bits, whatever the minutes": Policy(_pays, lambda look: look.gain),
    "one list, by bits per minute at the start": Policy(_pays, lambda look: -look.number),
}
"""Held against the engine; those that do not say when to stop stop where it does."""
