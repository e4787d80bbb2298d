"""How a part is told to have been before it was put right: opened it, so it stood shut.

A cause that stood the other way round is no cause of such a repair.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from typing import Final

from troubleshoot.knowledge.model import Fault
from troubleshoot.outside.text import without_apostrophes

_OPPOSITE: Final = {"open": "closed", "closed": "open", "loose": "tight", "tight": "loose"}
_STATES: Final = (
    ("open", re.compile(r"\bopen\b")),
    ("closed", re.compile(r"\b(?:closed|shut|welded)\b(?! (?:it|the|that|up|down|off)\b)")),
    ("loose", re.compile(r"\b(?:loose|slack|slipping)\b")),
    ("tight", re.compile(r"\b(?:over|too )tight\b")),
)
_DEEDS: Final = (
    ("closed", re.compile(r"\bopened\b")),
    ("open", re.compile(r"\b(?:closed|shut) (?:it|the|that|up|down|off)\b")),
    ("loose", re.compile(r"\btightened\b")),
    ("tight", re.compile(r"\bloosened\b")),
)
"""What is done to a thing tells how it stood before."""
_LEFT_SO: Final = re.compile(r"\bshut\b|\bswitched off\b|\bset (?:to|up)\b")
_MADE_NEW: Final = re.compile(r"\b(?:new|replaced|changed|swapped|renewed|installed|fitted)\b")
_DENIED: Final = re.compile(r"\b(?:cannot|cant|didnt|doesnt|never|not|wont|wouldnt) (open|close)\b")


def is_opposite(fault: Fault, said: str) -> bool:
    """Whether a cause is that a thing stood the other way round than words tell of it."""
    own, told = _own(fault), _told(said)
    return bool(own) and own <= {_OPPOSITE[state] for state in told}


def was_only_set(fault: Fault, said: str) -> bool:
    """Whether a cause is how a thing was left, and words tell of a new one: it mends no such thing.

    A brand new gas cock was not the one that stood shut.
    """
    return bool(_LEFT_SO.search(fault.name) and _MADE_NEW.search(without_apostrophes(said.lower())))


def _own(fault: Fault) -> frozenset[str]:
    return frozenset().union(*map(_states, (fault.name, *fault.words)))


def _told(said: str) -> frozenset[str]:
    """How it stood, of what was done to it as well; nothing where that is both ways."""
    plain = " ".join(without_apostrophes(said.lower()).split())
    done = {state for state, deed in _DEEDS if deed.search(plain)}
    told = _states(plain) or done
    return frozenset() if {_OPPOSITE[state] for state in told} & told else frozenset(told)


def _states(said: str) -> frozenset[str]:
    plain = without_apostrophes(said.lower())
    denied = {"closed" if verb == "open" else "open" for verb in _DENIED.findall(plain)}
    bare = _DENIED.sub(" ", plain)
    return frozenset(denied | {state for state, words in _STATES if words.search(bare)})


def likeliest(
    faults: Iterable[Fault], said: str, *, named: Sequence[str], heard: Collection[str]
) -> tuple[Fault, ...]:
    """Causes that stood as told first; of those what is said in whole, then what a visit names.

    `named`: the visit's causes, the likeliest first. `heard`: those of which a whole phrase is
    said. Empty where all stood the other way round.
    """

    told = _told(said)

    def far(fault: Fault) -> tuple[bool, bool, bool, int]:
        at = named.index(fault.id) if fault.id in named else len(named)
        stood_so = not told.isdisjoint(_own(fault))
        return is_opposite(fault, said), not stood_so, fault.id not in heard, at

    found = sorted(faults, key=far)
    return () if all(is_opposite(fault, said) for fault in found) else tuple(found)
