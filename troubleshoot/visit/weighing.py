"""Refrigerant weighed into a circuit or out of it, as it was told."""

from __future__ import annotations

from typing import Final

from troubleshoot.frozen import frozen

ADDED: Final = "added"
RECOVERED: Final = "recovered"


@frozen
class Weighing:
    """One weighing of refrigerant. `way`: added or recovered; `circuit`: as "circuit 1".

    `weight`: as typed; empty where it was not told. `cylinder`: which it came from or went into;
    `before`, `after`, `tare`: its weights as typed, with what was in it, and empty.
    """

    way: str
    circuit: str
    weight: str = ""
    cylinder: str = ""
    before: str = ""
    after: str = ""
    tare: str = ""
