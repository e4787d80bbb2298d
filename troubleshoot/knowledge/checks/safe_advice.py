"""Advice that offers a way round safety.

What: a text tells somebody to defeat a safety device (jumper, bypass, wire round, tape or hold
closed, plug, take out of the circuit, leave off, oversize, set past its limit), to reset a tripped
safety and go, to leave out a lock, a proof or a discharge, to work on live or turning parts, or
live and alone, to short a capacitor with a tool, to let refrigerant into the air or into a leak, to
take a burner's air, to work where one falls, or to bring a flame where it can explode; or it makes
light of a danger, or fills up with any refrigerant.
A text that forbids it ("never jumper a limit") is fine, and so is one that reports it ("somebody
jumpered it", "a jumper found on the limit"). Words are matched, not meaning: what is only hinted
at, or said over several sentences, is not seen.
Why: this can kill, and letting refrigerant go is against the law (40 CFR Part 82).
Fix: say what to do instead: find out why it tripped, discharge it through a resistor, recover.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import CHANGED_FOR, DEFEATS, PUT_FOR, WEAKENED
from troubleshoot.knowledge.advice.excuses import is_excused
from troubleshoot.knowledge.advice.made_light import MADE_LIGHT_OF
from troubleshoot.knowledge.advice.makeshifts import MAKESHIFTS
from troubleshoot.knowledge.advice.mood import advises, allowed_after_all
from troubleshoot.knowledge.advice.practices import PRACTICES
from troubleshoot.knowledge.advice.purposes import PURPOSES
from troubleshoot.knowledge.advice.reckless import RECKLESS
from troubleshoot.knowledge.advice.short_cuts import SHORT_CUTS
from troubleshoot.knowledge.advice.stand_ins import STAND_INS
from troubleshoot.knowledge.advice.wording import clauses
from troubleshoot.knowledge.checks.clean_texts import texts
from troubleshoot.knowledge.nodes import LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safe-advice"

_PRACTICES: Final = (
    *(*PRACTICES, *SHORT_CUTS, *RECKLESS),
    *(*MAKESHIFTS, *STAND_INS, *PURPOSES, *MADE_LIGHT_OF),
)

_PRONOUNS: Final = ("it", "them", "its", "the")
_PARTS: Final = re.compile(
    rf"\b(?:{devices.ALL}|{devices.OTHER_PARTS})(?= |$)(?! (?:it|them|the|this|that|each|every)\b)"
)
_NAMED: Final = re.compile(rf"\b(?:{devices.ALL}|it|them|its|together|reset)\b")
"""Without one of these in it no clause can be about a device."""


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every text that advises what must not be done."""
    for path, text, node in texts(base):
        yield from problem_with(path, text, node)


def problem_with(path: str, text: str, node: LocatedValue) -> Iterator[Problem]:
    """Yield a problem for all that one text of a file advises and must not."""
    for what, instead in bad_advice(text):
        yield Problem(path, node.line, node.column, f"the text advises {what}", instead, ID)


def bad_advice(text: str) -> Iterator[tuple[str, str]]:
    """Yield (what is advised, what to say instead), once for every clause that advises it."""
    said = ""
    for clause in allowed_after_all(clauses(text)):
        found = _advice_of(clause, said)
        if found is not None:
            yield found
        said = f"{said} {clause}".strip()


def _advice_of(clause: str, said: str) -> tuple[str, str] | None:
    ways = (*_PRACTICES, *DEFEATS) if _NAMED.search(clause) else _PRACTICES
    for way in ways:
        for match in way.pattern.finditer(clause):
            at = match.start()
            if not meant(match, clause, said) or not advises(clause, at):
                continue
            if not is_excused(way.what, clause, at):
                return way.what, way.instead
    return WEAKENED if _larger_put_in(clause) else None


def _larger_put_in(clause: str) -> bool:
    """Whether a fuse or breaker is to be changed for one of more amperes."""
    pairs = [(match, float(match[1]), float(match[2])) for match in PUT_FOR.finditer(clause)]
    pairs += [(match, float(match[2]), float(match[1])) for match in CHANGED_FOR.finditer(clause)]
    return any(
        put_in > taken_out and advises(clause, match.start()) for match, put_in, taken_out in pairs
    )


def meant(match: re.Match[str], clause: str, said: str) -> bool:
    """Whether a pronoun stands for such a device: the part named last before it, put in its place.

    What is followed by its own object is a verb and names nothing ("tag it").
    """
    if match.groupdict().get("it") not in _PRONOUNS:
        return True
    before = f"{said} {clause[: match.start('it')]}"
    named = [part.group() for part in _PARTS.finditer(before)]
    if not named:
        return False
    read = f"{clause[: match.start('it')]}{named[-1]}{clause[match.end('it') :]}"
    again = match.re.search(read, match.start())
    return again is not None and again["it"] not in _PRONOUNS
