"""Words that stand in many texts and name no outcome by themselves: off, out, what, in a minute."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from troubleshoot.reasoning.matching.stems import stem

_IDLE: Final = frozenset(
    """a about after again an and are as at back be been before being by can could did do does down
    for from get got had has have he here how i if in into is it just me minute minutes moment more
    my now of off on or our out over read reading second seconds she so some than that the them
    then there they this those to until up us was we went were what when where which who why with
    you your""".split()  # noqa: SIM905
)


def names_nothing(words: Iterable[str], names: Iterable[str] = ()) -> bool:
    """Whether no word says what was found. `names`: the stems of what is looked at itself."""
    known = {*names}
    return all(word in _IDLE or stem(word) in known for word in words)
