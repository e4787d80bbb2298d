"""An order is no report: lock, stop, prove it. Whether a word that confirms says that it was done.

A report in -ed (locked, stopped) is told from the order by its ending alone, so that no beginning
of it will do. Where both are one word (shut, clear, open) that word is the report that the screen
asks for; with a thing behind it (shut it) it may be either, and is asked about.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.text import plain_words

_ENDING: Final = "ed"
_POINTING: Final = frozenset({"it", "them", "that", "this"})
_BESIDE: Final = frozenset({"done", "now", "please", "yes", "and", "on", "off", "out"}) | _POINTING
_NAMES: Final[Mapping[str, frozenset[str]]] = MappingProxyType(
    {"locked": frozenset({"tag", "loto"})}
)
"""How the trade names what a report tells of: loto is on every list, whoever has done it."""


def is_reported(answer: str) -> bool:
    """Whether a word says by its ending that something was done."""
    return answer.endswith(_ENDING)


def orders(report: str) -> frozenset[str]:
    """The words that order what a report in -ed says was done: lock, prove, stop."""
    if not is_reported(report):
        return frozenset()
    bare = report.removesuffix(_ENDING)
    doubled = len(bare) > 1 and bare[-1] == bare[-2]
    return frozenset({bare, f"{bare}e"} | ({bare[:-1]} if doubled else set()))


def is_order(typed: str, report: str) -> bool:
    """Whether the word of a step is typed as an order to do it, or only named.

    Lock, please lock it, lock on, tag on, loto, shut it.
    """
    said = plain_words(typed.replace(",", " ")).split()
    verbs = {word for word in said if word == report or word not in _BESIDE}
    if verbs == {report}:
        return not is_reported(report) and not _POINTING.isdisjoint(said)
    return bool(verbs) and verbs <= orders(report) | _NAMES.get(report, frozenset())
