"""Where visits are kept, as a visit sees it: handed in by whoever has files, or none."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from troubleshoot.dialogue.book import VisitBook

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclude import FiredHazard


@dataclass(frozen=True, slots=True)
class Stopped:
    """A visit over which a STOP stands. `over`: it was handed over, and waits for its result."""

    visit: str
    unit: str
    fired: FiredHazard
    over: bool
    tag: tuple[str, ...]


class Shelf(Protocol):
    """The kept visits of one folder, or of whatever else keeps them."""

    def latest_open(self) -> str | None:
        """The visit that was begun last and is not closed; None where there is none."""

    def go_on(self, visit: str) -> VisitBook:
        """The book of a kept visit, held for this program alone."""

    def new(self) -> VisitBook:
        """The book of a new visit."""

    def stopped(self, but: str = "") -> Iterable[Stopped]:
        """The visits over which a STOP stands, the latest first; `but` names one left out."""


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 7."""
    return bool(_plain(one)) and _plain(one) == _plain(other)


def _plain(name: str) -> str:
    return "".join(c for c in name.casefold() if c.isalnum())
