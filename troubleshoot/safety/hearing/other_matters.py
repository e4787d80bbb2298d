"""What sounds like a danger and is said of another matter: the fire panel, a flue's own CO."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from troubleshoot.safety.hearing.manner_of_speaking import is_manner_of_speaking
from troubleshoot.safety.hearing.other_words import (
    AGAIN,
    BANGING,
    BRIDGED,
    COVERED,
    DESERTED,
    HISSING_ELSEWHERE,
    KEEPING,
    LASTING,
    LIGHTING,
    LIT,
    MADE_TO_BURN,
    NAMING,
    NEARLY,
    NOT_NAMING,
    OF_A_TERMINAL,
    OF_CONDUCTORS,
    OF_INSULATION,
    OF_MONEY,
    PASSING,
    SPREADING,
    TAKEN_OUT,
    TO_BE_DONE,
    WORN_OR_WRITTEN,
)
from troubleshoot.safety.hearing.vocabulary import (
    CANNOT,
    DENYING,
    LATELY,
    LOOSE,
    MAKING_A_THING,
    NAMED_SO,
    PERSON,
    THINGS,
    stem,
)
from troubleshoot.safety.hearing.words import Words, numbers

_HISS: Final = (stem("hissing"),)
_BURNING: Final = (stem("burning"),)
_ROLLOUT: Final = (stem("rollout"),)
_BARE_WIRE: Final = (stem("bare"), stem("wires"))
_WASP: Final = (stem("wasp"),)
_UP_IN: Final = (stem("up"), stem("in"))
_GET_DOWN: Final = (stem("get"), stem("down"))
_ARC_FLASH: Final = tuple(map(stem, ("arcing", "flash")))
_FALLING: Final = frozenset(map(stem, ("fell", "through")))
_GAS, _COMPRESSOR, _NEST = stem("gas"), stem("compressor"), stem("nest")
_LEAKING: Final = frozenset(map(stem, ("leak", "coming", "hissing")))
_FLAME, _COMING = stem("flame"), stem("coming")
_ONTO_SOMETHING: Final = frozenset(map(stem, ("me", "my", "us", "the", "roof", "wires", PERSON)))
_BANGS: Final = (("loud", "bang"), ("went", "bang"))
_AS_IT: Final = frozenset(("as", "at", "every", "from", "in", "on", "when", "whenever"))
_A_BURNER: Final = frozenset(
    map(stem, ("burner", "burners", "fires", "furnace", "heat", "ignites", "ignition", "lights"))
) | {"lit"}
_OF_AN_ARC: Final = frozenset(
    map(stem, ("breaker", "contactor", "disconnect", "out", "panel", "switch", "wires", "fuse"))
)
_STARTING = frozenset((stem("start"), stem("startup")))


def names_a_thing(said: Words, at: tuple[int, int]) -> bool:
    """Whether a single word is part of a name: the fire panel, a spark igniter."""
    start, end = at
    return said[start] in MAKING_A_THING and bool(set(said[end : end + 1]) & (THINGS | NAMED_SO))


def of_the_flue(said: Words, phrase: Words) -> bool:
    """Whether a number is one read in the flue, where a phrase speaks of the air people breathe."""
    flue = {"flu", "flue-co"}
    return bool(numbers(phrase)) and not flue & {*phrase} and bool(flue & {*said})


def is_of_another_matter(said: Words, phrase: Words, at: tuple[int, int]) -> bool:
    """Whether a phrase is said there of no danger at all.

    How an alarm is kept, what is a headache for its price, what bangs without a flame as it
    starts, a bang that is no arc's but a burner's, a board that does not respond, which conductor
    is the hot one, what burns as it should, rooms that cannot be got down in heat or burn up in it,
    a rollout that is jumpered, bare ends that are capped, what has passed, a manner of speaking.
    """
    if is_past(said, phrase) or _was_near(said, phrase, at) or _of_a_terminal(said, phrase):
        return True
    if is_manner_of_speaking(said, phrase, at):
        return True
    if phrase == _BARE_WIRE:
        return not COVERED.isdisjoint(said) and (TO_BE_DONE | DENYING).isdisjoint(said)
    if phrase == _ROLLOUT:
        return not BRIDGED.isdisjoint(said)
    if phrase[-2:] == _GET_DOWN:
        return said[at[0] : at[1]].count("it") > 0
    if phrase == (_FLAME, _COMING):
        return _comes_on(said[at[1] :])
    if phrase == _ARC_FLASH:
        return not WORN_OR_WRITTEN.isdisjoint(said[at[1] :])
    if phrase == _HISS:
        return not HISSING_ELSEWHERE.isdisjoint(said)
    if phrase in _BANGS:
        return _is_of_a_burner(said[at[1] :])
    if phrase == _BURNING:
        before = said[: at[0]]
        in_a_room = said[at[1] : at[1] + 2] == _UP_IN and THINGS.isdisjoint(before)
        return in_a_room or _burns_as_meant(before)
    if stem("headache") in phrase:
        return not OF_MONEY.isdisjoint(said)
    if phrase[0] == "bang" and phrase[-1] in _STARTING:
        return not BANGING.isdisjoint(said[: at[0]])
    if phrase[-1] == stem("alarm"):
        return _is_kept(said, at)
    if phrase[-1] == stem("responding"):
        return PERSON not in said and not THINGS.isdisjoint(said[: at[0]])
    if phrase[-1] == stem("ground") and not OF_INSULATION.isdisjoint(said):
        return True
    return phrase[0] == "hot" and names_a_conductor(said)


def lights_a_burner(said: tuple[Words, ...], clause: Words) -> bool:
    """Whether a spark is the igniter's: it sparks but won't light; no panel's, none that flies."""
    is_lit = not (DENYING | {CANNOT}).isdisjoint(clause)
    elsewhere = (SPREADING | THINGS) - (LIT if is_lit else LIT - {stem("light")})
    return elsewhere.isdisjoint(clause) and not LIGHTING.isdisjoint(w for c in said for w in c)


def _is_of_a_burner(behind: Words) -> bool:
    """Whether a bang is a burner's as it lights, and no arc: not as the lights went out."""
    as_it, *rest = behind or ("",)
    return as_it in _AS_IT and not _A_BURNER.isdisjoint(rest) and _OF_AN_ARC.isdisjoint(rest)


def _comes_on(behind: Words) -> bool:
    """Whether a flame comes on, and not out of anything: it comes on, then dies."""
    return behind[:1] == ("on",) and _ONTO_SOMETHING.isdisjoint(behind[1:2])


def is_past(said: Words, phrase: Words) -> bool:
    """Whether a thing of one moment is told of another day: cut my finger last month.

    A smell, an alarm, a crack or a live cabinet does not pass by itself, nor whoever was ill of it.
    """
    words = {*said}
    if LATELY not in words or not AGAIN.isdisjoint(words):
        return False
    return not PASSING.isdisjoint(phrase) and LASTING.isdisjoint(phrase)


def _was_near(said: Words, phrase: Words, at: tuple[int, int]) -> bool:
    """Whether somebody nearly fell: nets hear what might have happened."""
    is_fall = not _FALLING.isdisjoint(phrase) and NEARLY.isdisjoint(phrase)
    return is_fall and not NEARLY.isdisjoint(said[: at[0] + 1])


def _of_a_terminal(said: Words, phrase: Words) -> bool:
    """Whether the gas that blows out is that of a compressor's terminals; never a smell."""
    is_gas = phrase == (_GAS,) or (_GAS in phrase and not _LEAKING.isdisjoint(phrase))
    return is_gas and _COMPRESSOR in said and not OF_A_TERMINAL.isdisjoint(said)


def is_taken_out(phrase: Words, clause: Words, behind: tuple[Words, ...]) -> bool:
    """Whether a nest is told of that is out, or that nothing lives in.

    There was a nest in the flue cap, removed; an old nest, empty.
    """
    is_nest = _NEST in phrase or (phrase == _WASP and _NEST in clause)
    if not is_nest:
        return False
    is_out = any({*later} <= TAKEN_OUT | LOOSE for later in behind[:1])
    return is_out or any(map(_is_deserted, (clause, *behind[:1])))


def _is_deserted(clause: Words) -> bool:
    """Whether a nest is said there to be empty; not: it is not empty."""
    return any(b in DESERTED and a not in DENYING for a, b in pairwise(("", *clause)))


def _burns_as_meant(before: Words) -> bool:
    """Whether what burns is made to: the pilot light burns; not the box of the burner."""
    return not MADE_TO_BURN.isdisjoint(before) and (THINGS - LIT).isdisjoint(before)


def _is_kept(said: Words, at: tuple[int, int]) -> bool:
    before = [word for word in said[: at[0]] if word not in LOOSE][-1:]
    after = [word for word in said[at[1] :] if word not in LOOSE][:1]
    return not KEEPING.isdisjoint((*before, *after))


def names_a_conductor(said: Words) -> bool:
    """Whether it is told which wire is the hot one: the hot wire is L1, hot goes to black."""
    words = {*said}
    if "hot" not in words or OF_CONDUCTORS.isdisjoint(words) or NAMING.isdisjoint(words):
        return False
    return NOT_NAMING.isdisjoint(words) and not numbers(said)
