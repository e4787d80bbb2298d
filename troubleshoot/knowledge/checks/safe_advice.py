"""Advice that offers a way round safety.

What: a text tells somebody to bypass, jumper or defeat a safety device, to short a capacitor with
a tool, to let refrigerant into the air, or to reset a tripped safety and go. A text that forbids
it ("never jumper a limit") is fine, and so is one that reports it ("somebody jumpered it").
Why: this can kill, and letting refrigerant go is against the law (40 CFR Part 82).
Mend: say what to do instead: find out why it tripped, bleed through a resistor, recover.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.checks.clean_texts import texts
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safe-advice"

_DEVICES: Final = (
    r"safet(?:y|ies)",
    r"limits?(?: switch(?:es)?)?",
    r"roll-?outs?",
    r"pressure switch(?:es)?",
    r"cut-?outs?",
    r"interlocks?",
    r"door switch(?:es)?",
    r"float switch(?:es)?",
    r"smoke detectors?",
    r"flame (?:sensors?|rods?|sensing)",
    r"overloads?",
    r"protectors?",
    r"protection modules?",
    r"fuses?",
    r"gas valves?",
    r"lock-?outs?",
)
_DEVICE: Final = "(?:" + "|".join(_DEVICES) + ")"
_NEAR: Final = r"(?:\W+\w+){0,5}?\W+"
_ADVICE: Final = (
    (
        re.compile(
            r"(?<!internal )(?<!\bgas )(?<!\ba )(?<!\bany )(?<!\bthe )(?<!\bno )(?<!\bor )"
            r"\b(?:bypass|jumper|jump|bridge|defeat|override|disable|tape down|hold in|wire around)"
            rf"(?:ing)?(?: out| around| across)?{_NEAR}{_DEVICE}\b",
            re.IGNORECASE,
        ),
        "a way round a safety device",
        "say how to find out why it acted",
    ),
    (
        re.compile(
            rf"\b(?:short|shorting|discharge|discharging|bleed){_NEAR}capacitors?"
            rf"{_NEAR}(?:screwdriver|pliers|wrench|blade|wire)\b|"
            rf"\bscrewdriver{_NEAR}capacitors?\b",
            re.IGNORECASE,
        ),
        "a capacitor shorted with a tool",
        "say: bleed it through a resistor and meter it",
    ),
    (
        re.compile(
            rf"\b(?:vent|venting|dump|release|blow off|bleed off|let out){_NEAR}"
            r"(?:refrigerant|charge)\b(?! port)|"
            rf"\b(?:refrigerant|charge){_NEAR}(?:to|into) the (?:air|atmosphere)\b",
            re.IGNORECASE,
        ),
        "refrigerant let into the air",
        "say: recover it",
    ),
    (
        re.compile(
            r"\b(?:reset|resetting)\b[^.;]*\b(?:and go|and leave|and run|until it holds|again and "
            r"again|repeatedly|as often as)\b",
            re.IGNORECASE,
        ),
        "a tripped safety reset without finding out why",
        "say: find the cause before one reset",
    ),
)
_FORBIDDING: Final = (
    "never",
    "do not",
    "don't",
    "must not",
    "may not",
    "shall not",
    "cannot",
    "nobody",
    "no one",
    "forbidden",
    "illegal",
    "instead of",
    "rather than",
)
_CONDEMNING: Final = re.compile(
    r"\b(?:forbidden|illegal|against the law|not allowed|is never|are never|kills?)\b",
    re.IGNORECASE,
)
_DENYING: Final = ("not", "no", "nor", "without")
_FORBIDS: Final = re.compile(rf"\b(?:{'|'.join((*_FORBIDDING, *_DENYING))})\b", re.IGNORECASE)
_CLAUSE: Final = re.compile(r"(?<=[.;:!?])\s+")


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every text that advises what must not be done."""
    for path, text, node in texts(base):
        for what, instead in bad_advice(text):
            yield Problem(path, node.line, node.column, f"the text advises {what}", instead, ID)


def bad_advice(text: str) -> Iterator[tuple[str, str]]:
    """Yield (what is advised, what to say instead) for every clause that does not forbid it."""
    for clause in _CLAUSE.split(text):
        for pattern, what, instead in _ADVICE:
            match = pattern.search(clause)
            if match is not None and not _is_forbidden(clause, match):
                yield what, instead


def _is_forbidden(clause: str, match: re.Match[str]) -> bool:
    """Whether the clause forbids what it names; a mere "not" must stand close before it."""
    if _CONDEMNING.search(clause, match.end()):
        return True
    words = list(_FORBIDS.finditer(clause, 0, match.end()))
    if any(word.group().lower() in _FORBIDDING for word in words):
        return True
    between = clause[words[-1].end() : match.start()] if words else ""
    return bool(words) and "," not in between and len(between.split()) <= 4
