"""The words that several kinds of entries share, and what equipment has to be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Grade = Literal["almost-always", "often", "sometimes", "seldom", "never"]
TestKind = Literal["question", "look", "input", "measurement", "computed", "step"]
Choose = Literal["one", "several"]
Exposure = Literal["none", "control", "line"]
Signal = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
StopScope = Literal["whole-job", "until-made-safe", "this-step"]
HowCommon = Literal["very-common", "common", "uncommon", "rare", "very-rare"]
WorkStateName = Literal["any", "running", "running-open", "energised-open", "locked-out"]


@dataclass(frozen=True)
class Signature:
    """Somebody answers for what a person no longer sees. `drops`: hazards, needs or keys."""

    drops: tuple[str, ...]
    by: str
    on: str
    why: str


FactsNeeded = Mapping[str, tuple[str, ...]]
"""Equipment facts that must hold: fact -> the words any one of which will do."""
