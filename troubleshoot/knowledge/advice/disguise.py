"""Words of a defeat that were pulled apart, doubled or spelt with figures, as they are meant.

Only what then is one of these words is put right: Jum-per, J.u.m.p.e.r, jummper, jump3r. None of
them is another word with a letter doubled, as tape would be tapping.
"""

from __future__ import annotations

import re
from typing import Final

_WORDS: Final = frozenset(
    """alarm bypass bypassing breaker bridge bridging capacitor circumvent cutout deactivate defeat
    defeating detector disable disabling disconnect fuse ground interlock jumper jumpering jumpers
    limit lockout override overriding padlock relief rollout safety shunt shunting silence strap
    switch unplug unplugging wedge wedging""".split()  # noqa: SIM905
)
_APART: Final = re.compile(r"(?<![\w.-])[^\W\d_]+(?:[-.\u2010\u2011][^\W\d_]+)+(?![\w-])")
_ODD: Final = re.compile(r"\b(?=[0-9]*[^\W\d_])[^\W_]{4,}")
_MARKS: Final = re.compile(r"[-.\u2010\u2011]")
_AGAIN: Final = re.compile(r"(.)\1+")
_FIGURES: Final = str.maketrans("013457", "oleast")
_ONCE: Final = {_AGAIN.sub(r"\1", word): word for word in sorted(_WORDS)}


def undisguised(text: str) -> str:
    """The text with such words written as they are meant."""
    return _ODD.sub(_plainly, _APART.sub(_together, text))


def _together(found: re.Match[str]) -> str:
    joined = _MARKS.sub("", found[0])
    return joined if joined.casefold() in _WORDS else found[0]


def _plainly(found: re.Match[str]) -> str:
    word = found[0].casefold()
    if word in _WORDS:
        return found[0]
    read = word.translate(_FIGURES)
    return _ONCE.get(_AGAIN.sub(r"\1", read), found[0])
