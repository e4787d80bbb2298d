"""Who may do what: the profiles a person works under, and to whom a step is handed over.

Knowledge is never hidden. A test or step beyond the profile is still named, with the person it has
to be handed over to.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import choice
from troubleshoot.safety.steps import Step

PROFILES: Final = (
    "apprentice",
    "supervised",
    "technician",
    "electrical",
    "refrigerant",
    "gas",
    "combustion",
    "fire-alarm",
)
"""The words a profile is given in; `supervised` goes with `apprentice`."""

APPRENTICE: Final = "apprentice"
"""Who learns: takes no hand-over back, and lifts no STOP that was handed over."""

TECHNICIAN: Final = "technician"
"""Who somebody is that says nothing more: qualified for the trade, licensed for no part of it."""

FULLY_QUALIFIED: Final = frozenset(PROFILES) - {"apprentice", "supervised"}
"""What scripts work under when they name no profile."""

_SPOKEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "apprentice": "an apprentice",
        "supervised": "whoever supervises them",
        "technician": "a technician",
        "electrical": "a qualified electrical person",
        "licensed-electrician": "a licensed electrician",
        "refrigerant": "a person certified for refrigerant",
        "gas": "a qualified gas person",
        "combustion": "a person qualified in combustion, with an analyzer",
        "fire-alarm": "a licensed fire-alarm person",
        "building-controls": "the people who look after the building's controls",
        "utility": "the utility",
        "owner": "the building's owner",
    }
)
_ORDER: Final = tuple(_SPOKEN)
_NOT_ALONE: Final = frozenset({"electrical", "refrigerant", "gas", "combustion", "fire-alarm"})
_LEAST_LETTERS: Final = 4
"""Of the beginning of a profile's word."""
_LIVE: Final = frozenset({"running-open", "energised-open"})
_CIRCUIT: Final = frozenset({"gauges-on", "charge-recovered"})


def profiles_named(typed: str) -> tuple[str, ...]:
    """The profiles that somebody names by number, by their own words or by a beginning of one.

    Empty where any word is none of them, or could be two: nobody is qualified by a guess.
    """
    meant = [_profiles_meant(word) for word in _words(typed)]
    if any(len(each) != 1 for each in meant):
        return ()
    return tuple(dict.fromkeys(each[0] for each in meant))


def are_profiles(typed: str) -> bool:
    """Whether nothing is typed but numbers and whole words of the list: gas, and no fire."""
    said = _words(typed)
    return bool(said) and all(w in PROFILES or choice(w, len(PROFILES)) for w in said)


def _words(typed: str) -> list[str]:
    return typed.lower().replace("fire alarm", "fire-alarm").replace(",", " ").split()


def _profiles_meant(word: str) -> tuple[str, ...]:
    number = choice(word, len(PROFILES))
    if number is not None:
        return (PROFILES[number - 1],)
    if word in PROFILES:
        return (word,)
    return tuple(p for p in PROFILES if len(word) >= _LEAST_LETTERS and p.startswith(word))


def required(test: Test) -> frozenset[str]:
    """The profiles a test asks for, with those that follow from what it exposes or opens.

    29 CFR 1910.333 leaves live parts to qualified persons; a rule file that forgets to say so does
    not open them to others.
    """
    needed = set(test.who)
    if test.work_state in _LIVE or test.exposes != "none":
        needed.add("electrical")
    if not _CIRCUIT.isdisjoint(test.needs_state):
        needed.add("refrigerant")
    return frozenset(needed)


def hand_over(test: Test, profiles: Iterable[str]) -> str | None:
    """To whom a test or a step's test must be handed over, as a phrase, or None if to nobody."""
    held = set(profiles)
    needed = required(test)
    if "apprentice" in held and "supervised" not in held and needed & _NOT_ALONE:
        return "hand over to the supervising technician"
    missing = needed - _counting_as(held)
    return f"hand over to {spoken(missing)}" if missing else None


def hand_over_on_the_way(
    steps: Iterable[Step], tests: Mapping[str, Test], profiles: Iterable[str]
) -> str | None:
    """The first hand-over among the steps, as a phrase, or None when the way is open."""
    held = frozenset(profiles)
    for step in steps:
        phrase = hand_over(tests[step.id], held)
        if phrase is not None:
            return phrase
    return None


def spoken(profiles: Iterable[str]) -> str:
    """Profiles as words, in a fixed order: "a qualified gas person and the utility"."""
    return " and ".join(_SPOKEN[profile] for profile in sorted(profiles, key=_ORDER.index))


def _counting_as(held: set[str]) -> set[str]:
    """Every qualified person is a technician too, as is a supervised apprentice."""
    counting = held | {"apprentice"}
    if counting - {"apprentice"}:
        counting.add("technician")
    return counting
