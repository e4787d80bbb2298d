"""Deeds at a part that a danger cannot have come from: a thermostat, where CO was read.

Each kind of danger has the parts that it comes from and some that it never does. What names none
of either may be a remedy; what names one of the first is one, whatever else was done beside it.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.steps import GAS_SWEEP, ROOM_AIR
from troubleshoot.safety.stops.by_its_orders import shown_by_a_test
from troubleshoot.safety.stops.no_remedy_of_gas import AT_IT, why_no_remedy_of_gas


@frozen
class _Parts:
    """Of a kind of danger: the parts it comes from, those it never does, and what is told then."""

    of_it: re.Pattern[str]
    never: re.Pattern[str]
    why: str


_NEVER: Final = (
    r"filters?|(?:thermo|t-)?stats?|belts?|batter(?:y|ies)|bearings?|pulleys?|sheaves?|bulbs?|"
    r"(?:evaporator|condenser|cooling|indoor|outdoor) coils?"
)
_ENCLOSED: Final = (
    r"box(?:es)?|panels?|disconnects?|switch(?:es)?|enclosures?|cabinets?|doors?|covers?|conduits?|"
    r"breakers?|fuses?|lugs?|terminals?|wir(?:es?|ing)|cables?|conductors?|feeders?|harness(?:es)?|"
    r"contactors?|relays?|transformers?|boards?|capacitors?|connect(?:or|ion)s?|plugs?|splices?|"
    r"motors?|compressors?|drives?|vfds?|heaters?|elements?|electric\w*|controls?"
)
_OF_CO: Final = _Parts(
    re.compile(
        r"\b(?:burners?|(?:heat )?exch\w*|hx|cells?|tubes?|flues?|vents?|venting|stacks?|chimneys?|"
        r"induc\w+|draft\w*|gas|propane|orifices?|manifolds?|regulators?|valves?|pilots?|flames?|"
        r"louver\w*|combustion|intakes?|exhausts?|gaskets?|seals?|sealed|cracks?|cracked|soot\w*|"
        r"blockages?|nests?|boilers?|furnaces?|(?:water|space|unit|tube) heaters?|generators?|"
        r"engines?|trucks?|vehicles?|cars?|forklifts?|lifts?|grills?|stoves?|ovens?|fireplaces?|"
        r"charcoal|garages?|docks?|returns?|ducts?|dampers?|economi[sz]ers?|pressure switch)\b"
    ),
    re.compile(
        rf"\b(?:{_NEVER}|blowers?|fans?|motors?|capacitors?|contactors?|fuses?|boards?|"
        r"transformers?|drains?)\b"
    ),
    "That names no part that makes carbon monoxide or lets it in. Give the part, such as burner, "
    "exchanger or flue, and what was done to it, or q.",
)
_BURNT: Final = _Parts(
    re.compile(
        rf"\b(?:{_ENCLOSED}|belts?|bearings?|pulleys?|sheaves?|blowers?|fans?|induc\w+|strips?|"
        r"sequencers?|igniters?|burners?|flames?|gas|valves?|exch\w*|insulation|liners?|leaves|"
        r"nests?|rags?|debris|dust|lint|soot|roof\w*|(?:contactor|relay) coils?)\b"
        r"|(?<!no )\b(?:burn(?:t|ed)|smoked|melted|scorched|charred|shorted|arced|overheated|"
        r"singed)\b"
        r"(?! (?:smells?|odou?rs?)\b)"
    ),
    re.compile(rf"\b(?:{_NEVER}|drains?|traps?|pans?)\b"),
    "That names no part that burns or carries current. Give the part that smoked and what was done "
    "to it, or q.",
)
_WET: Final = _Parts(
    re.compile(
        rf"\b(?:{_ENCLOSED}|gaskets?|seal(?:s|ed|ant)?|hubs?|knock-?outs?|fittings?|glands?|"
        r"roof\w*|flashings?|curbs?|hatch(?:es)?|gutters?|leaks?|drains?|pans?|traps?|pipes?|"
        r"hoses?)\b"
    ),
    re.compile(rf"\b(?:{_NEVER}|blowers?|fans?|wheels?)\b"),
    "That names no part that water got into or came through. Give the box, seal or wires, and what "
    "was done to them, or q.",
)
_AT_WORK: Final = re.compile(
    r"\b(?:with |while )?(?:the |all |both )?(?:burners?|heat|gas|furnace|flame|inducer|unit)"
    r"(?: \w+)? (?:on|lit|firing|running|fired|burning|going)\b"
)
"""How a number was read, which is no deed: with the burner on."""


def why_at_no_part(said: str, hazard: Hazard) -> str:
    """Why a deed, in small letters, is at no part that the danger came from; empty where it may."""
    if hazard.all_clear == GAS_SWEEP:
        return why_no_remedy_of_gas(said)
    parts = _parts_of(hazard)
    if parts is None:
        return ""
    deed = _AT_WORK.sub(" ", said)
    if parts.of_it.search(deed):
        return ""
    return parts.why if parts.never.search(deed) or AT_IT.search(deed) else ""


def _parts_of(hazard: Hazard) -> _Parts | None:
    """The parts of a danger by what shows it gone and its remedy; None where it has none."""
    if hazard.all_clear == ROOM_AIR:
        return _OF_CO
    if not hazard.stays_off:
        return None
    if shown_by_a_test(hazard):
        return _WET
    return _OF_CO if hazard.exchanger else _BURNT
