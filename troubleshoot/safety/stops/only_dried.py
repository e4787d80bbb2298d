"""Water that was dried and nothing else: it comes in again, and nobody knows what it left inside.

Where the orders want a test, drying counts once it is told what was tested or made tight.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.stops.by_its_orders import shown_by_a_test

_DRIED: Final = re.compile(
    r"\b(?:dri(?:ed|es)|drying|dry|air(?:ed)? out|blew|blown|heat(?:ed)?|hair dryer|warmed|baked|"
    r"moisture)\b"
)
_MORE: Final = re.compile(
    r"\b(?:replac\w+|new|renew\w*|seal\w*|gaskets?|drained|(?:re)?fitted|re-?wired|re-?terminated|"
    r"changed|swapped|exchanged|fixed|repair\w*|flashed|tighten\w*|caulk\w*|cut (?:out|back)|"
    r"megg\w*|megohm\w*|mohms?|insulation|tested|proved|volts?|[0-9] ?v)\b"
)


def is_only_dried(said: str, hazard: Hazard) -> bool:
    """Whether a deed, in small letters, is drying alone where the orders want a test."""
    if not shown_by_a_test(hazard) or not _DRIED.search(said):
        return False
    return not _MORE.search(said)
