"""Whether a clause tells somebody to do what it names, or forbids or reports it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

_FORBIDDING: Final = re.compile(
    r" (?:never|(?:do|must|may|shall|should|can|will|would|dare) (?:ever )?not|nobody|no one|none|"
    r"not to|instead of|rather than|against|refuses? to|forbids?|prohibits?|"
    r"(?:unlawful|illegal|forbidden|dangerous|wrong|deadly|a crime|against the law) to|"
    r"no|nor|not|without)(?= )"
)
_WEAK: Final = frozenset({" no", " nor", " not", " without"})
_IDLE: Final = re.compile(
    r" (?:not|no) (?:only|matter|problem|harm|bad|wrong|worry|need|doubt|choice|time|spare|"
    r"sure|\w+ (?:but|except) to)\b| never mind| do not (?:worry|mind|wait|hesitate|be)\b"
    r"| (?:do not|never) (?:forget|fail|neglect|omit|hesitate) to\b"
)
"""Words that sound like a ban and are none."""

_LIFTED: Final = re.compile(
    r" (?:not|no longer|never|hardly) (?:\S+ )?(?:forbidden|illegal|unlawful|wrong|dangerous|"
    r"prohibited|a crime|against the law) to (?:\S+ )?$"
    r"| (?:nobody |no one |nothing |no (?:\S+ ){1,2})(?:forbids?|prohibits?) (?:\S+ ){0,3}$"
)
"""A ban that is said to be none: it is not forbidden to."""

_CONDEMNING: Final = re.compile(
    r"\b(?<!not )(?<!hardly )(?:forbidden|illegal|unlawful|prohibited|"
    r"against the (?:law|code|rules)|not allowed|not permitted|(?:is|are) never|"
    r"must never|kills|killed|(?:can|could|will|may) kill|"
    r"burns? (?:down|the (?:house|building|roof))|crime|proves? nothing|"
    r"is (?:no|not an?|not the) (?:repair|cure|answer|test|proof|way|fix))\b"
)
_PERSON: Final = (
    r"(?:somebody|someone|anybody|anyone|people|they|others|who(?:ever)?|he|she|"
    r"(?:tenant|owner|cook|helper|guest|mechanic|caller|janitor|man|men|roofer|installer)s?)"
)
_AUXILIARY: Final = (
    r"(?:has|had|have|be|been|is|are|was|were|did|may|might|could|would|will|to|often|sometimes|"
    r"once|ever|only|tried|tries|tempted|liked?|likes|wanted|wants|kept|keeps?|started|used)"
)
_REPORTING: Final = re.compile(
    rf"\b{_PERSON}(?: {_AUXILIARY})*$|"
    rf"\b{_PERSON} \w+(?:ed|ept)(?: \S+){{0,3}} by$|"
    rf"\b(?:did|does|has|had) (?:the |your |an? )?\w+(?: {_AUXILIARY})*$|"
    r"\b(?:tempted|caught|(?:look(?:ing)?|search) for|signs? of|trace of|evidence of|danger of|"
    r"risk of|result of|damage (?:by|from)|because of|after)(?: an?| the| any)?$"
)
_SENDING: Final = re.compile(r" (?:have|let|get|ask|tell|make|teach|show)(?: [^ ,]+){0,2} ?$")
"""Who is told, asked or allowed to do it does not report it."""

_EXCEPT: Final = re.compile(
    r"(?:never|(?:do|must|may|shall|should) not) (?P<deed>.+?) (?:unless|except (?:when|if|on))\b.*"
)
"""A ban with an exception, which behind a "then" is what is meant."""

_BREAK: Final = re.compile(r" (?:,|and|but|then|so|otherwise|yet) ")
_DEED: Final = (
    r"jumper|jump|bypass|bridge|tape|wedge|tie|hold|strap|defeat|disable|override|short|plug|cap|"
    r"block|remove|silence|unplug|wire|twist|pull|vent|dump|release|oversize|cut|leave|light|"
    r"reset|skip|force|prop|jam|fit|raise|work|\w+ing"
)
_DEEDS: Final = re.compile(
    rf"(?: (?:{_DEED}|,|or|nor|and|to|ever|try|even|be|simply|let|allow|anybody|anyone|somebody|"
    r"round|out|down|in|off|it|them))*(?: \S+){0,1}"
)
_ARTICLE: Final = (
    r"(?:an?|the|any|no|each|every|this|that|left|test|another|one|his|her|their|its|internal|"
    r"gas|bonding|same|of)"
)
_NOUNS: Final = frozenset(
    {"jumper", "jump", "wire", "bypass", "bridge", "tape", "plug", "cap", "strap", "wedge", "shunt",
     "vent", "block", "override", "short", "reset", "charge", "light", "work", "discharge"}
)  # fmt: skip
_AFTER_NOUN: Final = re.compile(
    r" (?:on|across|at|over|left|found|in|inside|was|is|are|were|from|between|to|that|still|has|"
    r"had|near|behind|hides?|of)\b"
)


def advises(clause: str, start: int) -> bool:
    """Whether what begins at `start` of a clause is advice, and not its opposite."""
    before = f" {clause[:start].rstrip()}"
    return not (
        _CONDEMNING.search(clause, start)
        or is_forbidden(clause, start)
        or _is_reported(before)
        or _is_admitted(clause, start, before)
        or _is_a_thing(clause, start, before)
    )


def allowed_after_all(clauses: Sequence[str]) -> Iterator[str]:
    """The clauses; of a ban with an exception that the next one goes on from, the deed alone."""
    for clause, behind in zip(clauses, [*clauses, ""][1:], strict=True):
        banned = _EXCEPT.fullmatch(clause) if behind.startswith("then ") else None
        yield clause if banned is None else banned["deed"]


def is_forbidden(clause: str, start: int) -> bool:
    """Whether a forbidding or denying word reaches as far as `start` of a clause.

    It reaches over a list of such deeds, and over a few words in which no new statement begins.
    """
    before = f" {clause[:start].rstrip()}"
    words = list(_FORBIDDING.finditer(f"{before} "))
    if not words or _IDLE.match(before, words[-1].start()) or _LIFTED.search(f"{before} "):
        return False
    between = before[words[-1].end() :]
    if _DEEDS.fullmatch(between):
        return True
    reach = 2 if words[-1].group() in _WEAK else 4
    return len(between.split()) <= reach and not _BREAK.search(f"{between} ")


def _is_reported(before: str) -> bool:
    """Whether the words before say that somebody else does it, or that it was found."""
    told = _REPORTING.search(before)
    return told is not None and _SENDING.search(before[: told.start()]) is None


def _is_admitted(clause: str, start: int, before: str) -> bool:
    """Whether those who speak tell what they did: "we bypassed the limit"."""
    done = re.match(r"\w+ed\b", clause[start:])
    return done is not None and re.search(r" (?:we|i)(?: have| had)?$", before) is not None


def _is_a_thing(clause: str, start: int, before: str) -> bool:
    """Whether the word is a noun: "a jumper across the limit" is found, not advised."""
    word, _, _ = clause[start:].partition(" ")
    if word not in _NOUNS:
        return False
    if re.search(rf" {_ARTICLE}$", before):
        return True
    near = re.search(rf" {_ARTICLE}(?: [^ ,]+){{1,2}}$", before)
    return near is not None and _AFTER_NOUN.match(clause, start + len(word)) is not None
