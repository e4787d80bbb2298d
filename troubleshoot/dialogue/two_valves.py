"""The gas valve at a step of the gas cock: which is meant, the cock or the burner's own, is asked.

The valve that the burner's control opens, and its switch, hold back no gas from who works on them.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.by_word import NearlyAnAnswer
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import COCK_LOOK, GAS_OPEN, GAS_SHUT

_OF_THE_COCK: Final = (COCK_LOOK, GAS_OPEN, GAS_SHUT)
_VALVE: Final = re.compile(
    r"(?:the )?(?:gas )?valve(?:'?s| is)? (?:turned |switched )?(?:closed|off|on|open(?:ed)?|shut)"
    r"(?: off)?[ .!]*",
    re.IGNORECASE,
)


def not_either_valve(test: Test, typed: str) -> None:
    """Raise NearlyAnAnswer where a step of the cock is answered by the gas valve."""
    if test.id in _OF_THE_COCK and _VALVE.fullmatch(" ".join(typed.split())):
        cock = f"cock {test.spoken(CONFIRMED[test.id])}"
        raise NearlyAnAnswer(
            "The cock in the pipe, by hand, or the burner's own gas valve? Only the cock counts "
            f'here: type "{cock}" when it is so.'
        )
