"""One line of the table: when it holds of a test, and what the test must then have."""

from __future__ import annotations

import re
from dataclasses import field
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded

PRACTICE: Final = "common practice, no source"
OPENS: Final = (
    r"(?:loosen|undo|unscrew|slacken|crack|open|remove|break|pull|ease|back off|unthread|"
    r"take(?! (?:an? |the )?(?:photo|picture|look|note|reading|step|name))|"
    r"unbolt|unlatch|unhook|strip|lift|swing|prise|pry|pop|slide|drop)\b"
)
"""What people do to a cover, a plug or a nut that comes off."""


@frozen
class Implication:
    """When all of the second block hold of a test, it must have all of the third.

    `instrument` is looked for in the instrument, `words` also in the name and in what the steps
    tell one to do; one of the two or one of `meters` is enough. Of `areas`, `states`, `exposes` and
    `needs` any one will do. `fact`: the test exists on such units only. `on_units`: the caution may
    hang on this fact of the unit. `steps`: also asked of safety steps.
    """

    of: str
    why: str
    source: str

    instrument: re.Pattern[str] | None = None
    words: re.Pattern[str] | None = None
    meters: tuple[str, ...] = ()
    areas: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    exposes: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    fact: tuple[str, str] | None = None
    steps: bool = False

    hazards: tuple[str, ...] = ()
    needs_state: tuple[str, ...] = ()
    one_need_of: tuple[str, ...] = ()
    work_states: tuple[str, ...] = ()
    who: tuple[str, ...] = ()
    on_units: FactsNeeded = field(default_factory=dict)


def words(*patterns: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(patterns)})", re.IGNORECASE)
