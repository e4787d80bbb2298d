"""A reading that shows a danger gone is a number in its own unit, and where and when it was read.

As at the sweep itself, a sound number counts only where every word beside it is known to take
nothing away from it, and every other number is known to be of something else. So what nobody has
thought of is asked for again, and not taken.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.other_numbers import without_other_numbers
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR

PLAIN: Final = frozenset(
    {"ac", "and", "are", "at", "bled", "dc", "get", "getting", "got", "have", "i", "in", "is", "it"}
    | {"its", "me", "meter", "metered", "now", "of", "on", "read", "reading", "reads", "says"}
    | {"show", "showing", "shows", "tested", "the", "there", "they", "three", "to"}
)
"""Words that take nothing away from a number on a meter, whatever it is of."""
_HOW: Final = frozenset(
    raw_words(
        "a again all along also an analyser analyzer around average avg both by cgi checked "
        "clear detector display displayed each every everywhere final first for from full fully "
        "gauge he held highest holding inside instrument insulation last level manometer max "
        "maximum measured megged megger metering monitor our over overall peak readings round scan "
        "scanned showed shown slow slowly sniffer steady sweep sweeping swept taken tester the "
        "these this through total traverse twice two up value was we were whole with within"
    )
)
_WHEN: Final = frozenset(
    raw_words(
        "after afternoon afterwards again am before bump bumped closing cooled cycle cycling "
        "day evening fired firing fix fixed heated hour inch inches just later light lighting "
        "lit min minute morning next noon oclock once opened opening operation pm proved purge "
        "purging ran recheck rechecked remade repair repaired replaced replacement restart "
        "restarting retest retested running second since start started starting startup then "
        "third tightened today tonight trial up warm warmed when while work zeroed"
    )
)
_WHO: Final = frozenset(
    raw_words(
        "certified combustion company contractor crew department dept electrician fire fitter "
        "gas inspector licensed person plumber refrigerant service tech technician utility"
    )
)
_WHERE: Final = frozenset(
    raw_words(
        "above accumulator across actuator air apartment area attic back base basement bathroom "
        "bay bed behind bell below bend beside blades block blower board body boiler bonding "
        "bonnet boss bottle bottom box bracket break breaker building burner bus bushing "
        "cabinet cap capacitor capped ceiling cell center chamber chassis check church circuit "
        "classroom closed cock coil collector compartment compressor condenser conductor "
        "conduit connection connector contactor control core corner corridor cover crawlspace "
        "cross curb cylinder damper dead deck diaphragm diffuser dining disconnect dock "
        "dormitory downstairs drain drier drip dry duct ductwork earth economizer edge elbow "
        "electrical enclosure end equipment evaporator exchanger exterior fan feed feeder "
        "filter fitting flange flare flex floor flue frame from front furnace fuse garage gas "
        "gasket gate gauge grille ground gym hall hallway hatch header heat heater high hood "
        "hose hot hub igniter indoor inducer inlet interior joint kitchen lab ladder left leg "
        "lid line living load lobby locker loop louver low lug machine mail manifold mechanical "
        "metal middle motor near neutral new nipple nozzle nursery nut off office one open "
        "orifice outdoor outlet packing pad pair pan panel parapet path penetration penthouse "
        "perimeter phase pilot pipe pipework piping pit plate plenum plug point pole port "
        "pressure pump raceway rack rail rear receiver reducer register regulator reheat relay "
        "relief restaurant restroom return right rod roof room rtu run saddle sales same school "
        "schrader seam section service shaft shelf shell shop shut shutoff side skylight "
        "solenoid space spot spud stack stairs stairwell start stem store strainer stub suite "
        "supply surface surroundings switch swivel tagged tank tap tee tenant terminal "
        "thermowell thread tight top train transformer tube tunnel under underside union unit "
        "upstairs v vac valve vent vestibule volts wall ward warehouse wc winding wire"
    )
)
_BESIDE: Final = PLAIN | _HOW | _WHEN | _WHO | _WHERE
_OWN_GAS: Final[Mapping[str, str]] = MappingProxyType(
    {
        GAS_SWEEP: r"methane|ch4|natural gas|propane|lp gas|combustibles?|combustible gas|fuel gas",
        ROOM_AIR: r"co|carbon monoxide|monoxide",
        REFRIGERANT_SWEEP: r"refrigerant|freon|r ?-?[0-9]{2,4}[a-z]?|a2l",
    }
)
"""The gas of each sweep of the air, as people name it."""
_OTHER_GAS: Final = re.compile(
    r" *(?:and )?(?:[0-9.]+ ?(?:ppm|%|percent)? ?(?:co2?|o2|oxygen|h2s|rh|humidity)"
    r"|(?:co2?|o2|oxygen|h2s) (?:is |at |reads )?[0-9.]+ ?(?:ppm|%|percent)?) *\.?"
)
"""A clause of its own for what else a four-gas meter shows."""
_COUNTED: Final = re.compile(
    r"(?:\b(?:about|around|some) )?\b[0-9]+(?:\.[0-9]+)?[ -]?(?:h|hours?|hrs?|min|mins|minutes?|s|"
    r"secs?|seconds?|times|joints?|unions?|fittings?|points?|places?|spots?|legs?|poles?|pairs?|"
    r"phases?|ft|feet|gas|inch(?:es)?|in\.? ?wc|in|psig?|v|volts?|kv|deg\w*|sides?|ends?|"
    r"burners?)\b(?! (?:the|an?|one|my|his|our|all|every|some|that|this)\b)|\b[lt][123]\b"
)
"""What is counted or read off a clock, a rule or a gauge beside the number."""
_PHRASES: Final = re.compile(
    r"\bno (?:bubbles?|drop|leaks?|gas|pressure loss)(?: (?:at all|anywhere|seen|found))?\b"
    r"|\bgas co\b|\b(?:alarm|sensor|detector)(?: (?:is|was))? (?:quiet|silent|armed)\b"
    r"|\bbump(?:ed)?[ -]tested\b|\bin (?:fresh|clean) air\b|\bwith the probe\b"
)
"""What people say beside a number, and only so: no bubbles, but not: no reading."""
_DIGITS: Final = re.compile(r"[0-9][0-9.,/]*")
_POINTS: Final = frozenset(" ,.;:-'()")

NO_WORD: Final = "No look and no word shows this."


def why_not_plain(typed: str, spans: Iterable[tuple[int, int]], sweep: str, example: str) -> str:
    """Why what stands beside the numbers of a reading may take them back; empty where it cannot.

    `spans`: where the numbers stand, with their units. `sweep`: the all-clear that reads them.
    `example`: the units in which it is read, spoken.
    """
    rest = _blanked(as_said(typed), (*spans, *_other_gases(as_said(typed))))
    rest = _without_own_gas(without_other_numbers(rest), sweep)
    rest = _COUNTED.sub(" ", _PHRASES.sub(" ", rest))
    if (number := _DIGITS.search(rest)) is not None:
        return f"{number[0]} may be of anything: type it with its unit, {example}."
    odd = any(not (c.isascii() and c.isalnum()) and c not in _POINTS for c in rest)
    if odd or not all(map(_is_plain, raw_words(rest))):
        return (
            "I cannot tell what the other words say of the number. Type the one on the instrument "
            f"with its unit ({example}), alone or with where it was read."
        )
    return ""


def names_its_gas(typed: str, sweep: str) -> bool:
    """Whether it is said of which gas a number is, and it is the danger's own."""
    own = _OWN_GAS.get(sweep)
    return own is None or re.search(rf"\b(?:{own})\b", as_said(typed)) is not None


def _is_plain(word: str) -> bool:
    return word in _BESIDE or word.removesuffix("s") in _BESIDE


def _blanked(said: str, spans: Iterable[tuple[int, int]]) -> str:
    for start, end in spans:
        said = f"{said[:start]}{' ' * (end - start)}{said[end:]}"
    return said


def _other_gases(said: str) -> Iterator[tuple[int, int]]:
    """Where a clause of its own tells of another gas."""
    return (each.span() for each in re.finditer(r"[^,;]+", said) if _OTHER_GAS.fullmatch(each[0]))


def _without_own_gas(said: str, sweep: str) -> str:
    own = _OWN_GAS.get(sweep)
    return said if own is None else re.sub(rf"\b(?:{own})\b", " ", said)
