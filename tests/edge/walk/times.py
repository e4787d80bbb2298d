"""What time does to a visit: the clock of an officer.

Half an hour without a word from the unit, beyond what the task itself takes, another day, and a
clock that went back void what others could have changed meanwhile; the look at the roof is good
for an hour. What is waited for is over only once its minutes are.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from troubleshoot.knowledge.model import Knowledge

HALF_AN_HOUR, AN_HOUR = 30.0, 60.0


@dataclass
class Times:
    """When things happened. `heard`: when somebody last said something of the unit."""

    heard: datetime | None = None
    roof_seen: datetime | None = None
    locked_at: datetime | None = None
    cock_shut_at: datetime | None = None

    def silent(self, now: datetime, minutes: float) -> bool:
        """Whether nobody has been heard of for too long, beside so many minutes of work."""
        if self.heard is None:
            return False
        away = (now - self.heard).total_seconds() / 60
        return away < 0 or away - minutes >= HALF_AN_HOUR or now.date() != self.heard.date()

    def roof_is_old(self, now: datetime) -> bool:
        """Whether the look at the roof, if there was one, is too old to stand on."""
        if self.roof_seen is None:
            return False
        age = (now - self.roof_seen).total_seconds() / 60
        return age < 0 or age > AN_HOUR

    def watch(self, event: dict[str, Any], now: datetime) -> None:
        """A step or test was answered."""
        if event.get("step", event.get("test")) in ("roof-conditions", "edge-protection"):
            self.roof_seen = now
        if event.get("step") == "lockout":
            self.locked_at = now
        if event.get("step") in ("gas-cock-shut", "gas-cock-look") and "shut" in event["outcomes"]:
            self.cock_shut_at = now

    def too_soon(self, event: dict[str, Any], now: datetime, knowledge: Knowledge) -> str:
        """Electronics bleed, and unburnt gas goes, by waiting: in words only once it is over."""
        since, happened, over = {
            "drive-discharge": (self.locked_at, "the lock", ["discharged"]),
            "purge-wait": (self.cock_shut_at, "the cock was shut", ["waited"]),
        }.get(event.get("step", ""), (None, "", None))
        if over is None or event["outcomes"] != over or event.get("text"):
            return ""
        wait = knowledge.tests[event["step"]].wait_minutes
        minutes = (now - since).total_seconds() / 60 if since else -1.0
        return "" if minutes >= wait else f"{event['step']} {minutes:.0f} min after {happened}"
