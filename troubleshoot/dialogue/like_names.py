"""Whether a unit that was named is one over which a STOP stands, though it is named otherwise.

How much is asked goes by how alike the names are: a name that may be of the same unit has to be
typed once more to go on, one that may be mistyped is denied by n, and one like none is only told of
what stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.talk import Talk, words_or_back
from troubleshoot.visit.kept.stopped import Standing
from troubleshoot.visit.kept.unit_names import likeness, may_be_same, same_unit

_MAY_BE_MISTYPED: Final = 0.6
"""Of the letters and digits of two names: RTU-7 is so near to RTU-8."""
_NO_NAME: Final = "a unit without a name"
_ONE_OF_THEM: Final = "Is this one of them? Its number, or "


def which_of_like_name(
    listener: Listener, standing: Sequence[Standing], unit: str
) -> Talk[Standing | None]:
    """The one that is meant, the likest first; none where it is another unit.

    Raises Back, Leave, DangerCalled.
    """
    likest = sorted(standing, key=lambda each: _rank(each, unit))
    say = listener.voice.say
    like = [each for each in likest if _may_be(each, unit)]
    if not (like or any(_may_be_mistyped(each, unit) for each in likest)):
        others = ", ".join(dict.fromkeys(f"{each.unit} ({each.reason})" for each in likest))
        say(f"A STOP stands over {others}: none is named like {unit}.")
        return None
    for name in dict.fromkeys(each.unit for each in like):
        say(f"A STOP stands over {name}, which may be {unit}.", strong=True)
    say("A STOP stands over:")
    names = tuple(f"{each.unit or _NO_NAME}: {each.reason}" for each in likest)
    denied = f"{unit} once more if it is another" if like else "n"
    which = Choose(f"{_ONE_OF_THEM}{denied}", names, repeated=True)
    while True:
        typed = (yield from words_or_back(which)).lower()
        for number, each in enumerate(likest, start=1):
            if typed == str(number) or same_unit(each.unit, typed):
                return each
        if (like and same_unit(unit, typed)) or (not like and typed in ("n", "no")):
            return None
        listener.not_understood(typed, f"Its number, its name, or {denied}.")


def _rank(standing: Standing, unit: str) -> tuple[bool, float]:
    return not _may_be(standing, unit), -likeness(standing.unit, unit)


def _may_be(standing: Standing, unit: str) -> bool:
    """Whether it may be this unit, by the names of both."""
    return bool(standing.unit and unit) and may_be_same(standing.unit, unit)


def _may_be_mistyped(standing: Standing, unit: str) -> bool:
    """Whether nothing tells them apart but a slip of the finger, or that one has no name."""
    is_near = likeness(standing.unit, unit) >= _MAY_BE_MISTYPED
    return not (standing.unit and unit) or is_near
