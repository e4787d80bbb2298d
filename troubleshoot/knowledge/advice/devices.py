"""The devices of the trade that protect people, property or the unit, as patterns.

All patterns are for the plain form of `wording.clauses`: small letters, no hyphens, "round" for
"around", "ground" for "earth".
"""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice.wording import one_of

SWITCHES: Final = one_of(
    "safety",
    "safeties",
    "limits?",
    "rollouts?",
    "rollout (?:switch(?:es)?|limits?)",
    "limit switch(?:es)?",
    "(?:pressure|proving|draft|airflow|air|sail|vacuum|vent|spill) switch(?:es)?",
    "(?:high|low) pressure controls?",
    "(?:pressure|limit) ?stats?",
    "cutouts?",
    "cutoffs?",
    "interlocks?",
    "(?:door|panel|blower|access|pan|overflow|condensate|drain) switch(?:es)?",
    "float(?: switch(?:es)?)?",
    "(?:freeze|frost) (?:switch(?:es)?|protection|stat)",
    "overloads?",
    "(?:thermal|motor|internal|winding) protectors?",
    "protect(?:or|ion) (?:module|relay)s?",
    "protectors?",
    "phase (?:monitor|relay)s?",
    "emergency (?:stop|shutoff)s?",
    "fuse ?links?",
    "thermal (?:link|fuse)s?",
    "limit string",
)
"""What opens a circuit by itself when something is wrong."""

WATCHERS: Final = one_of(
    "(?:smoke|duct|fire|heat|leak|gas|refrigerant|flame|monoxide|co) "
    "(?:detector|sensor|head|alarm|monitor|rod)s?",
    "detectors?",
    "alarms?",
    "smoke heads?",
    "sniffers?(?: heads?)?",
    "flame (?:sensing|proving|signal|safeguard)",
    "fire (?:panel|relay)s?",
    "leak (?:response|mitigation)",
)
"""What watches flame, smoke, gas or refrigerant."""

BREAKERS: Final = one_of("fuses?", "breakers?", "mocp", "gfcis?", "ground fault \\S+")
"""What protects wires, and people from their own receptacles."""

LOCKS: Final = one_of(
    "locks?", "lockouts?", "padlocks?", "tags?", "hasps?", "disconnect (?:lock|interlock|door)s?"
)

GROUNDS: Final = one_of(
    "grounds?",
    "ground (?:wire|lug|pin|prong|strap|lead|conductor)s?",
    "bond(?:ing)?(?: (?:wire|jumper|strap))?",
)

VALVES: Final = one_of("gas (?:valve|regulator|cock)s?", "cocks?", "(?:manual|shutoff) valves?")
RELIEFS: Final = one_of(
    "relief(?: (?:valve|port|vent|device))?s?",
    "rupture dis[ck]s?",
    "fusible plugs?",
)

GUARDS: Final = one_of(
    "guards?",
    "(?:belt|fan|shaft|sheave) guards?",
    "(?:fan )?grilles?",
    "guard ?rails?",
    "harness(?:es)?",
    "lanyards?",
    "anchors?",
    "fall protection",
    "hatch(?:es)?",
)

WHERE_WIRED: Final = f"(?:{SWITCHES}|{WATCHERS}|{BREAKERS}|{LOCKS}|gas valves?)"
"""What an electrical way round goes round. A lock-out here is what a board or relay does."""

ALL: Final = (
    f"(?:{SWITCHES}|{WATCHERS}|{BREAKERS}|{LOCKS}|{GROUNDS}|{VALVES}|{RELIEFS}|{GUARDS}|"
    "contactors?)"
)

OTHER_PARTS: Final = one_of(
    "capacitors?",
    "cans?",
    "motors?",
    "compressors?",
    "thermostats?",
    "boards?",
    "transformers?",
    "coils?",
    "belts?",
    "meters?",
    "relays?",
    "jumpers?",
    "windings?",
    "panels?",
    "sensors?",
    "actuators?",
    "bulbs?",
    "filters?",
    "economizers?",
    "elements?",
    "igniters?",
    "units?",
    "circuits?",
    "ladders?",
    "skylights?",
)
"""Parts that "it" may as well stand for; whichever was named last counts."""
