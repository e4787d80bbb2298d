"""A site's own folder of rules: its name, its version, and who answers for what it says."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written

if TYPE_CHECKING:
    from troubleshoot.knowledge.shapes import Text


@written("sign-off")
@frozen_open
class SignOff:
    """Somebody has gone over the rules of a folder as they were under `rules`, their hash."""

    by: Annotated[str, Text(longest=60), "who answers for them: a role, or initials"]
    on: Annotated[str, Text(longest=10), "the day, as 2026-11-29"]
    rules: Annotated[str, Text(longest=64), "the hash of what was gone over, by rules pack sign"]


@frozen_open
class Pack:
    """A site's folder in use. `digest`: the hash of what its files say; `version` may be empty."""

    name: str
    version: str
    digest: str
    signed: SignOff | None = None

    @property
    def is_as_signed(self) -> bool:
        """Whether its rules say what they said when they were signed."""
        return self.signed is not None and self.signed.rules == self.digest
