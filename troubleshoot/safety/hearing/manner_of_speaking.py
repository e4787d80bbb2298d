"""What sounds like a danger in a manner of speaking: shocked to see it, a bill through the roof.

Each is known by what stands straight behind it, or by the thing of which it is said: whoever was
shocked at the panel, or fell while the price was talked of, is heard.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from troubleshoot.safety.hearing.other_words import (
    BETTERED,
    OF_FIGURES,
    OF_MONEY,
    SURPRISED_AT,
    TO_LEARN,
)
from troubleshoot.safety.hearing.vocabulary import PERSON, stem, stems
from troubleshoot.safety.hearing.words import Words

_SHOCK, _SICK, _SMOKE = stem("shock"), stem("sick"), stem("smoke")
_FALLING: Final = stems("fell went dropped")
"""A phrase that begins with the fall names nobody and nothing that falls."""
_VESSELS: Final = stems("bottle cylinder tank")
"""What is in these falls as well."""
_READ_AT: Final = stems("at in of on")
_NEAR: Final = 4
"""Words back from a vessel in which what is read there is named: the pressure in the nitrogen."""
_WHO_FALLS: Final = stems(f"i im me my we {PERSON} everybody")
_AND_TIRED_OF: Final = ("and", stem("tired"), "of")
_OURS: Final = stems("the its our any that")


def is_manner_of_speaking(said: Words, phrase: Words, at: tuple[int, int]) -> bool:
    """Whether a phrase is said there of no danger: of surprise, figures, anger or praise."""
    before, behind = said[: at[0]], said[at[1] :]
    if phrase[-1] == _SHOCK:
        return _is_surprise(behind)
    if phrase[-1] == _SICK:
        return behind[:3] == _AND_TIRED_OF
    if phrase[-1] == _SMOKE:
        return not (_OURS.isdisjoint(behind[:1]) or BETTERED.isdisjoint(behind[1:2]))
    if not _VESSELS.isdisjoint(phrase[-2:-1]):
        return _is_read_there(before)
    return phrase[0] in _FALLING and _is_of_figures(before)


def _is_surprise(behind: Words) -> bool:
    """Whether it is told what somebody was surprised at: to see it, how dirty, at the price."""
    if behind[:1] == ("to",):
        return not TO_LEARN.isdisjoint(behind[1:2])
    is_at = not SURPRISED_AT.isdisjoint(behind[:1])
    return behind[:1] == ("how",) or (is_at and not (OF_MONEY | {"how"}).isdisjoint(behind[1:]))


def _is_of_figures(before: Words) -> bool:
    """Whether what goes through the roof or the floor is a figure, and nobody's fall is told."""
    return not (OF_MONEY | OF_FIGURES).isdisjoint(before) and _WHO_FALLS.isdisjoint(before)


def _is_read_there(before: Words) -> bool:
    """Whether it is a figure that fell, and not the vessel: the pressure in the cylinder."""
    near = before[-_NEAR:]
    figures = OF_MONEY | OF_FIGURES
    return any(what in figures and at in _READ_AT for what, at in pairwise(near))
