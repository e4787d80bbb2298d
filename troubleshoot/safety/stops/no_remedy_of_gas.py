"""Deeds that are no remedy where gas escaped: at a part that holds none, at nothing named, a wait.

Whoever shuts, tightens or replaces it says what: the next to come has to find it again.
"""

from __future__ import annotations

import re
from typing import Final

_HOLDS_GAS: Final = re.compile(
    r"\b(?:gas|lines?|pipes?|piping|tub(?:e|es|ing)|unions?|joints?|threads?|(?:fitt|coupl)ings?|"
    r"fl(?:ares?|ex(?:es)?|anges?)|valves?|cocks?|shut-?offs?|regulators?|diaphragms?|gaskets?|"
    r"seals?|burners?|orifices?|manifolds?|pilots?|plugs?|caps?|capped|elbows?|tees?|nipples?|"
    r"taps?|hoses?|connect(?:or|ion)s?|tanks?|cylinders?|bottles?|meters?|mains?|drip legs?|"
    r"vents?|flues?|exchangers?|traps?|leaks?|limits?|switch(?:es)?|detectors?|sensors?|igniters?|"
    r"flames?|relays?)\b"
)
_HOLDS_NONE: Final = re.compile(
    r"\b(?:filters?|(?:thermo)?stats?|belts?|batter(?:y|ies)|capacitors?|contactors?|fuses?|bulbs?|"
    r"coils?|blowers?|fans?|motors?|boards?|transformers?|bearings?|drains?|panels?|doors?)\b"
)
AT_IT: Final = re.compile(
    r"\b(?:shut|clos|tighten|replac|fix|repair|mend|seal|chang|swapp?|remade|torqu|clean|isolat)"
    r"(?:e?d|ing)? (?:it|them|that|this|one|everything)\b|\bremade (?:it|them)\b"
)
"""A deed at a part that is not named."""
_ONLY_WAITED: Final = re.compile(r"\b(?:waited|waiting|sat|stood by|let it|gave it|left it)\b")
_DONE: Final = re.compile(
    r"\b(?!waited)(?!wanted)[a-z]{3,}(?:ed|aced)\b|\b(?:shut|cut|put|took|remade|new|bled)\b"
)

AT_NO_PART: Final = (
    "That names no part that gas comes through. Give the part and what was done to it, or q."
)
BY_WAITING: Final = (
    "Gas that went by waiting comes again. Give what was done where it came from, or q."
)


def why_no_remedy_of_gas(said: str) -> str:
    """Why a deed, in small letters, is no remedy of escaped gas; empty where it may be one."""
    if _ONLY_WAITED.search(said) and not _DONE.search(said):
        return BY_WAITING
    if _HOLDS_GAS.search(said):
        return ""
    return AT_NO_PART if _HOLDS_NONE.search(said) or AT_IT.search(said) else ""
