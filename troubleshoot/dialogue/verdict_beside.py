"""A reading beside what somebody makes of it: cap is shot, reads 2. The number is the reading."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.in_part import names_of
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.readings.measuring import read_text

_VERDICT: Final = (
    r"(?P<thing>(?:[a-z]+ ){0,4}?)(?:is |its |it's |was )?(?:all |completely |pretty |totally )?"
    r"(?:shot|bad|junk|toast|failed|weak|no good)"
)
_NUMBER: Final = r"(?P<number>\.?\d[^,;]*?)"
_READS: Final = r"(?:it )?(?:(?:only )?(?:reads|reading|read|shows|showing|measures) )?(?:only )?"
_FORMS: Final = (
    re.compile(rf"{_VERDICT}[\s,;:]+{_READS}{_NUMBER}", re.IGNORECASE),
    re.compile(rf"{_READS}{_NUMBER}[,;:]\s*{_VERDICT}", re.IGNORECASE),
)


def number_beside_verdict(knowledge: Knowledge, test: Test, typed: str) -> str:
    """The number of such a reading; empty where it is none.

    What is made of anything but the thing that is read is none: a meter that is bad reads nothing.
    What shows that a danger has gone is typed as it is read.
    """
    if any(hazard.all_clear == test.id for hazard in knowledge.hazards.values()):
        return ""
    for form in _FORMS:
        found = form.fullmatch(typed.strip().rstrip(" .!"))
        if found is None:
            continue
        if not {*lexicon_of(knowledge).words(found["thing"])} <= names_of(knowledge, test):
            continue
        try:
            read_text(test, found["number"], knowledge)
        except NotUnderstood:
            continue
        return str(found["number"])
    return ""
