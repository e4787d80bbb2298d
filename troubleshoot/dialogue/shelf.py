"""Where visits are kept, as a visit sees it: handed in by whoever has files, or none."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Protocol

from troubleshoot.dialogue.book import VisitBook

if TYPE_CHECKING:
    from troubleshoot.knowledge.model import Knowledge
    from troubleshoot.visit.kept.left_before import LeftBefore
    from troubleshoot.visit.kept.on_record import Recorded
    from troubleshoot.visit.kept.stopped import Standing
    from troubleshoot.visit.state import VisitState


class Shelf(Protocol):
    """The kept visits of one folder, or of whatever else keeps them."""

    @property
    def knowledge(self) -> Knowledge:
        """The rules under which they go on."""

    def waiting(self) -> Sequence[str]:
        """The visits that are not closed, the latest first."""

    def state_of(self, visit: str) -> VisitState:
        """What a visit that waits has come to."""

    def go_on(self, visit: str) -> VisitBook:
        """The book of a kept visit, held for this program alone."""

    def new(self) -> VisitBook:
        """The book of a new visit."""

    def standing(self, but: str = "") -> Iterable[Standing]:
        """What stops a unit or may do so, the latest visit first; `but` names one left out."""

    def elsewhere(self, unit: str, but: str = "") -> Sequence[str]:
        """The visits to a unit that are open in another window; `but` names one left out."""

    def met_meanwhile(self, unit: str, but: str) -> Sequence[Standing]:
        """What has come to stop a unit since it was last asked what stands; `but` as above."""

    def not_read(self) -> Sequence[str]:
        """A sentence for each thing that lies among the visits and is not read as one."""

    def left_before(self, unit: str, but: str = "") -> LeftBefore:
        """What earlier visits left off on a unit; `but` names one left out."""

    def on_record(self, unit: str) -> Recorded:
        """What the register knows of a unit; nothing where it is not in it, or has no name."""

    def read_before(self, unit: str, test: str, at: str | None, but: str) -> str:
        """The last numbers of a test at a place of a unit, in words; `but` as above."""
