"""Refrigerant as it is told: added 1 lb 4 oz to circuit 2 from C-7, before 28.4 lb, after 27.2 lb.

The same words serve at a prompt of a visit and behind `troubleshoot units refrigerant UNIT`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.unit.equipment import MOST_OF_A_KIND, Unit
from troubleshoot.reasoning.unit.places import Layout, PlaceNotUnderstood, parse_place
from troubleshoot.visit.weighing import ADDED, RECOVERED, Weighing
from troubleshoot.visit.weights import pounds_of, weight_read

AS_TOLD: Final = "added 1 lb 4 oz to circuit 1 from cylinder C-7"
_WAYS: Final = {
    **dict.fromkeys(("added", "charged", "weighed in", "put in"), ADDED),
    **dict.fromkeys(("recovered", "weighed out", "taken out", "removed"), RECOVERED),
}
_WAY: Final = re.compile(rf"({'|'.join(_WAYS)})\b[\s,:]*(.*)", re.IGNORECASE)
_NO_CYLINDER: Final = "".join(
    f"(?<!{word} )" for word in ("from", "into", "cylinder", "tank", "bottle", "drum")
)
_TO_CIRCUIT: Final = re.compile(
    r"[\s,;]*\b(?:(?:to|at|on|of|in|into|from|out of) (?=c(?:ircuit|kt|[1-9])))?"
    rf"((?:circuit|ckt)\s*#?\w+|{_NO_CYLINDER}c[1-9](?![\w-]))",
    re.IGNORECASE,
)
"""A circuit in full, or as c2 where no cylinder of that name is meant."""
_KEYS: Final = ("from", "into", "before", "after", "tare")
_FIELDS: Final = re.compile(rf"[\s,;]*(?:^|(?<=[\s,;]))(?={'|'.join(_KEYS)}\b)", re.IGNORECASE)
_CYLINDER: Final = re.compile(
    r"(?:(?:a|the|its) )?(?:recovery )?(?:cylinder|tank|bottle|drum)\s+", re.IGNORECASE
)


class NotWeighed(ValueError):
    """It tells of no weighing; the message says why, and what would do.

    `part`: the field of the weighing that cannot be; empty where it is none of them.
    """

    def __init__(self, problem: str, part: str = "") -> None:
        super().__init__(problem)
        self.part = part


def circuits_of(unit: Unit) -> Layout | None:
    """The places of a unit; None where nobody has told how many circuits it has."""
    return unit.layout if "circuits" in unit.facts else None


def weighing_told(knowledge: Knowledge, layout: Layout | None, words: str) -> Weighing:
    """The weighing that words tell of. Raises NotWeighed.

    `layout`: None where it is not known how many circuits there are.
    """
    found = _WAY.fullmatch(" ".join(words.split()))
    if found is None:
        raise NotWeighed(f"say added or recovered first, as: {AS_TOLD}")
    return weighing_behind(knowledge, layout, _WAYS[found[1].lower()], found[2])


def weighing_behind(
    knowledge: Knowledge, layout: Layout | None, way: str, words: str, circuit: str = ""
) -> Weighing:
    """The weighing that words tell of behind its way. Raises NotWeighed.

    `circuit`: where the question itself says it.
    """
    places = [match[1] for match in _TO_CIRCUIT.finditer(words)]
    if len(places) > 1:
        raise NotWeighed("it names two circuits; tell each by itself", "circuit")
    told = _fields(way, _TO_CIRCUIT.sub(" ", words))
    return weighing_of(knowledge, layout, way, {"circuit": "".join(places), **told}, circuit)


def weighing_of(
    knowledge: Knowledge,
    layout: Layout | None,
    way: str,
    told: Mapping[str, str],
    circuit: str = "",
) -> Weighing:
    """A weighing by what was told of each of its fields, empty for nothing. Raises NotWeighed."""
    cylinder = _named(told.get("cylinder", ""))
    weights = {part: told.get(part, "") for part in ("weight", "before", "after", "tare")}
    at = _circuit(layout, told.get("circuit", ""), circuit)
    weighing = Weighing(way, at, cylinder=cylinder, **weights)
    for part, typed in weights.items():
        if typed:
            _check(knowledge, typed, part)
    pounds = pounds_of(knowledge, weighing)
    if pounds is None:
        raise NotWeighed(f"it tells no weight; as: {AS_TOLD}", "weight")
    if pounds <= 0:
        change = "lighter" if way == ADDED else "heavier"
        raise NotWeighed(
            f"nothing was {way} by that; its cylinder is {change} afterwards", "weight"
        )
    return weighing


def _fields(way: str, words: str) -> dict[str, str]:
    """What is told of the weight and the cylinder, by its name. Raises NotWeighed."""
    found: dict[str, str] = {}
    for piece in _FIELDS.split(words):
        said = piece.strip(" ,;")
        word, _, rest = said.partition(" ")
        key = word.lower()
        if key not in _KEYS:
            key, rest = "weight", said
        if key in ("from", "into"):
            if (key == "from") != (way == ADDED):
                raise NotWeighed(
                    "what is added comes from a cylinder, and what is recovered goes into one"
                )
            key, rest = "cylinder", _named(rest)
        if not rest:
            if key == "weight":
                continue
            raise NotWeighed(f"{word} is told without what; as: {AS_TOLD}")
        if key in found:
            raise NotWeighed(f"{key} is told twice; tell each weighing by itself")
        found[key] = rest
    return found


def _named(typed: str) -> str:
    """A cylinder's name. Raises NotWeighed."""
    try:
        return one_line(_CYLINDER.sub("", typed, count=1), "its cylinder", MOST_NAME)
    except NotUsable as error:
        raise NotWeighed(str(error), "cylinder") from None


def _circuit(layout: Layout | None, told: str, asked: str) -> str:
    """The circuit in words. Raises NotWeighed."""
    if not told:
        return asked or _only(layout)
    known = layout or Layout((("circuit", MOST_OF_A_KIND),))
    try:
        named = str(parse_place(told, "circuit", known)[0])
    except PlaceNotUnderstood as error:
        raise NotWeighed(str(error), "circuit") from None
    if asked and named != asked:
        raise NotWeighed(f"this is asked of {asked}", "circuit")
    return named


def _only(layout: Layout | None) -> str:
    """The circuit where a unit has but one. Raises NotWeighed."""
    if layout is None:
        raise NotWeighed("say which circuit, as: circuit 1", "circuit")
    circuits = [str(place) for place in layout.places("circuit")]
    if len(circuits) == 1:
        return circuits[0]
    which = " or ".join(circuits)
    raise NotWeighed(f"say which: {which}" if which else "say which circuit", "circuit")


def _check(knowledge: Knowledge, typed: str, part: str) -> None:
    """Raises NotWeighed for what is no weight."""
    try:
        weight_read(knowledge, typed)
    except NotUnderstood as error:
        raise NotWeighed(f'"{typed}" {error.why}; {error.instead}', part) from None
