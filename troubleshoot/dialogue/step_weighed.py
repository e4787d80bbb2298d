"""The weight that is told with the word of a step: recovered, 9.2 lb into R-3."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.dialogue.by_word import NearlyAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.steps import Step
from troubleshoot.visit.hearing.weighed import NotWeighed, weighing_behind
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.weighings import STEPS_WEIGHED
from troubleshoot.visit.weighing import ADDED, RECOVERED

_BESIDE: Final = re.compile(
    r"(?P<word>[a-z' -]*?[a-z])(?:[\s,;:]+(?:and )?)"
    r"(?P<weight>(?:[0-9]|(?:before|after|tare) [0-9]).*?)(?P<rest>[,;]\D+)?",
    re.IGNORECASE,
)
_FIRST: Final = re.compile(
    r"(?P<weight>[0-9][0-9.]* ?(?:lbs?|#|pounds?|kg|kilos?)(?: [0-9.]+ ?(?:oz|ounces?))?)"
    r"[\s,;:]+(?P<word>[a-z' -]*[a-z])(?P<rest>)",
    re.IGNORECASE,
)
"""The weight before the word: 5 lb 10 oz charged."""
_OF_WEIGHTS: Final = re.compile(r"[0-9] ?(?:lbs?|#|pounds?|oz|ounces?|kg|kilos?|g|grams?)\b", re.I)
_NAME: Final = re.compile(r"\S*[0-9]\S*|\S+ \S*[0-9]\S*")
"""A cylinder as it is called at a step: R-3, yellow 2. What is more, or has no number, is no name
there: it may tell of a danger."""
_CYLINDERS: Final[Mapping[str, str]] = MappingProxyType({ADDED: "from", RECOVERED: "into"})


def weight_beside(
    knowledge: Knowledge, state: VisitState, step: Step, typed: str
) -> tuple[str, str | None]:
    """What was typed at a step without the weight that is told with its word; and the weight.

    As it stands, and None, where none is told. Raises NearlyAnAnswer for one that cannot be.
    """
    way = STEPS_WEIGHED.get(step.id)
    found = _BESIDE.fullmatch(typed.strip()) or _FIRST.fullmatch(typed.strip())
    if way is None or found is None or not _OF_WEIGHTS.search(found["weight"]):
        return typed, None
    try:
        told = weighing_behind(
            knowledge, state.unit.layout, way, found["weight"], circuit=step.place or ""
        )
    except NotWeighed as error:
        as_told = f"{found['word']}, 9.2 lb {_CYLINDERS[way]} cylinder R-3"
        raise NearlyAnAnswer(f"{error}. Type the word and the weight, as: {as_told}") from None
    is_name = not told.cylinder or _NAME.fullmatch(told.cylinder) is not None
    if not is_name or spoken_of(knowledge, f"{found['weight']}{found['rest'] or ''}"):
        return typed, None  # more than a name, and heard as whatever else it tells
    return f"{found['word']}{found['rest'] or ''}", found["weight"]
