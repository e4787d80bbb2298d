"""Words that tell of something that happens or has just happened, whatever it is.

Where hands are in a unit, or it is read live, what happens beside the work may have taken away what
the work stands on, in words that no list holds. How a thing is, looks or was made is no happening.
All of it is common practice, no source: how English is spoken.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.safety.hearing.words import raw_words

_PAST: Final = frozenset(
    """began bit blew broke came caught dove drove dropped fell fired flew gave got grabbed
    hit knelt let lit lost pulled put ran rang sank sent shook slid slipped spun stepped stood
    struck swung threw took tore tripped went woke wound""".split()  # noqa: SIM905
)
"""What has happened, where it is not told of how a thing is."""
_NO_VERBS: Final = frozenset(
    """bed bleed energized feed fixed hundred indeed limited locked marked matched need needed
    operated proved rated seed shed sized speed supposed tagged used wired""".split()  # noqa: SIM905
)
"""Words on -ed that tell of no happening."""
_NO_DOINGS: Final = frozenset(
    """bearing bearings casing ceiling coming coating cooling during dripping drawing drifting
    evening fading fitting fittings flaking flashing giving hanging heating having housing
    leaking leaning lining looking making missing morning mounting nothing opening peeling
    piping railing reading ring rusting setting showing something anything everything spring
    string tubing vibrating watching wearing winding wiring working""".split()  # noqa: SIM905
)
"""Words on -ing that tell how a thing is, or name one."""
_IS: Final = frozenset(
    "am are be been being im is its look looks seem seems was were".split()  # noqa: SIM905
)
"""Before a word on -ed these tell how a thing is."""
_BETWEEN: Final = frozenset(
    "all also been being just now not quite really still very".split()  # noqa: SIM905
)
"""What may stand between the two."""
_PEOPLE: Final = frozenset(
    """anybody boy boys cleaner contractor crew electrician guard guy guys he inspector kid kids
    lady man men painter people person plumber she somebody someone stranger tech technician tenant
    they visitor woman worker workers""".split()  # noqa: SIM905
)
_THERE: Final = frozenset(
    "around behind beside climbing hatch inside ladder near next roof under".split()  # noqa: SIM905
)
"""Somebody of these people who is so near is a happening in itself."""


def happens(told: str) -> bool:
    """Whether what is told is a happening, or somebody who is there."""
    said = raw_words(told)
    if not _PEOPLE.isdisjoint(said) and not _THERE.isdisjoint(said):
        return True
    return any(_is_one(word, said[:at]) for at, word in enumerate(said))


def _is_one(word: str, before: list[str]) -> bool:
    """Whether a verb tells of one: closed, is falling; not is closed, a painted pipe."""
    led = [w for w in before if w not in _BETWEEN][-1:]
    is_told_as_state = bool(led) and led[0] in _IS
    if word.endswith("ing") and word not in _NO_DOINGS:
        return is_told_as_state
    is_past = word in _PAST or (word.endswith("ed") and len(word) > 4 and word not in _NO_VERBS)
    return is_past and bool(before) and not is_told_as_state
