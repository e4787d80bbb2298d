"""The vocabulary of dangers: words that mean the same, that tell nothing, and that deny.

All are given as people spell them and kept by their stems.
"""

from __future__ import annotations

from typing import Final

PERSON: Final = "somebody"
CANNOT: Final = "cannot"
LONG_AGO: Final = "long-ago"
LATELY: Final = "lately"


def _groups(table: dict[str, str]) -> dict[str, str]:
    return {word: name for name, words in table.items() for word in words.split()}


ALIKE: Final = _groups(
    {
        PERSON: "someone anybody anyone mate buddy partner helper coworker "
        "colleague guy man woman boy he hes she shes they them him her apprentice kid lad friend "
        "worker roofer janitor dude bro bloke chap fella tech technician mechanic boss guys "
        "grandma grandpa husband wife "
        "amigo companero compadre hermano alguien",
        "everybody": "everyone people tenant tenants customers staff occupants kids children "
        "students pupils patients guests shoppers cashiers teachers workers clerks employees "
        "girls ladies",
        "not": "isnt arent wasnt werent dont doesnt didnt havent hasnt hadnt aint wouldnt",
        CANNOT: "cant couldnt wont",
        "collapsed": "fainted unconscious unresponsive",
        "shock": "shocked shocks zapped zap jolt jolted",
        "tingle": "tingles tingling",
        "flame": "flame",
        "fire": "flames ablaze alight blaze blazing fuego incendio",
        "smoke": "smoky smokin smoulder smouldering smolder smoldering humo",
        "arcing": "arc arcs arced",
        "burning": "burn burns burnin quemando",
        "burnt": "burned scorched charred",
        "explosion": "exploded explode explodes exploding",
        "lightning": "lightening",
        "through": "thru",
        "going": "gonna",
        "caught": "stuck trapped tangled jammed snagged grabbed wedged wrapped sucked",
        "swollen": "swelling swelled swells swell bulging bulged bulges",
        "glowing": "glows glowed",
        "smell": "stink stinks reek reeks whiff odour odor stench huele olor",
        "headache": "headaches",
        "dizzy": "faint woozy lightheaded giddy",
        "wasp": "wasps hornet hornets bee bees yellowjacket yellowjackets",
        "throat": "tongue lips airway",
        "lock": "padlock padlocks locks",
        "sleeve": "pants trousers trouser pant shirt jacket cuff scarf hoodie coat apron hair "
        "ponytail lanyard necktie clothes",
        "water": "rainwater",
        "cleaner": "cleaners degreaser brightener descaler bleach biocide lye caustic solvent",
        "hanging": "dangling dangles",
        "contractor": "company companys crew crews contractors electrician electricians plumber",
        "mine": "ours",
        "sick": "nausea nauseous vomit vomited vomiting puke puked puking barfing ill",
        "bleeding": "blood bleeds",
        "cut": "sliced slashed gashed chopped severed",
        "disconnect": "switch box breaker conduit",
        "soaked": "soaking flooded drenched dripping sopping wet",
        "running": "pouring gushing streaming",
        "leak": "leek spraying blowing escaping spurting venting spewing rushing fuga",
        "refrigerant": "freon r454b 454b r410a 410a r407c 407c r134a 134a r32 r22",
        LATELY: "yesterday",
        "bang": "boom kaboom whoomp whoomph whump womp whomp",
        "sounding": "beeping screaming ringing blaring screamed wailing shrieking",
        "cracked": "split",
        "exchanger": "exch hx",
        "flue": "stack",
        "thermostat": "stat tstat",
        "broke": "broken snapped burst breaks shattered",
        "fell": "fallen slid slipped sliding slipping tipped collapsing",
        "storm": "thunderstorm storms",
        "slippery": "slick icy",
        "soft": "spongy sagging",
        "hand": "arm finger thumb wrist ankle toe knee elbow shoulder palm forearm knuckle",
        "eye": "eyes",
        "tripped": "popped kicked",
        "lit": "fired ignited",
        "laying": "lying",
        "froze": "frozen",
        "nearly": "almost",
        "crane": "jib manlift telehandler forklift outrigger derrick",
        "wind": "gust",
    }
)
"""How people say it -> the word that stands for all of them; in Spanish too, as roofers do."""

DROPPED: Final = "dropped"
_WHO_DROPPED: Final = "coworker mate buddy partner helper he guy man woman she apprentice worker"
"""Who drops collapses; what they drop, or who drops something, is another matter."""
_WHO_IS_DOWN: Final = "guy guys buddy partner helper mate somebody someone worker apprentice tech"
"""Said straight before "down", nothing beside it: guy down. He came down, is down the hall."""

_GASES_THAT_COOL: Final = (
    "454b 410a 32 discharge flash freon r22 r32 r410a r454b refrigerant suction"
)
"""Straight before "gas" they say that it is no fuel."""
_CALLED_BY_NUMBER: Final = "22 407 410 454"
"""Behind "of" they say which refrigerant it is: a shot of 410."""
_DOES: Final = "also be clearly feel hear just see smell still tell"
"""Behind these "can" is no capacitor: i can hear it hissing."""

TOGETHER: Final = {
    ("caught", "fire"): "fire",
    ("water", "heater"): "water-heater",
    ("water", "heaters"): "water-heater",
    ("is", "down"): "is-down",
    ("man", "down"): "man-down",
    **{(who, "down"): "man-down" for who in ("hes", "shes")},
    **{(who, "down"): "man-down" for who in _WHO_IS_DOWN.split()},
    ("close", "by"): "near",
    ("coil", "cleaner"): "cleaner",
    **{(what, "lift"): "crane" for what in ("boom", "man", "scissor", "scissors")},
    **{(what, "truck"): "crane" for what in ("boom", "bucket", "crane")},
    ("cherry", "picker"): "crane",
    ("all", "over"): "everywhere",
    ("coming", "off"): "coming",
    ("coming", "out"): "coming",
    **{(how, "out"): how for how in ("flying", "shooting", "jumping", "billowing")},
    ("high", "limit"): "limit",
    ("jumper", "wire"): "jumper",
    ("jumped", "out"): "jumped",
    ("single", "phasing"): "single-phasing",
    ("standing", "in"): "standing-in",
    ("air", "free"): "flue",
    **{("line", part): f"line-{part}" for part in ("filter", "choke", "reactor", "conditioner")},
    ("control", "box"): "disconnect",
    ("hot", "gas"): "hot-gas",
    **{("gas", what): "gas-line" for what in ("line", "pipe", "pipes", "piping")},
    **{(whose, "gas"): "refrigerant" for whose in _GASES_THAT_COOL.split()},
    **{("r", number): "refrigerant" for number in ("22", "32", "410", "454")},
    **{("of", number): "refrigerant" for number in _CALLED_BY_NUMBER.split()},
    **{("yellow", many): "wasp" for many in ("jacket", "jackets")},
    **{("can", does): does for does in _DOES.split()},
    ("carbon", "monoxide"): "co",
    ("flue", "co"): "flue-co",
    **{("clip", on): "clip-on" for on in ("on", "ons")},
    **{("chest", how): "at-chest" for how in ("height", "high", "level")},
    ("not", "my"): "not-my",
    **{(not_so, "lit"): "unlit" for not_so in ("not", "never", "isnt", "wasnt", "didnt", "no")},
    ("can", "not"): CANNOT,
    ("will", "not"): CANNOT,
    ("could", "not"): CANNOT,
    ("no", "one"): "nobody",
    ("no", "call"): "no-call",
    ("sick", "of"): "fed-up",
    ("throwing", "up"): "sick",
    ("threw", "up"): "sick",
    ("passed", "out"): "collapsed",
    ("knocked", "out"): "collapsed",
    ("out", "cold"): "collapsed",
    **{(who, DROPPED): "collapsed" for who in _WHO_DROPPED.split()},
    ("electric", "shock"): "shock",
    **{(when, "ago"): LONG_AGO for when in ("long", "month", "months", "year", "years")},
    **{("last", when): LONG_AGO for when in ("summer", "winter", "spring", "fall", "year")},
    **{("last", when): LATELY for when in ("month", "night", "time", "visit", "week")},
    **{(when, "ago"): LATELY for when in ("day", "days", "week", "weeks")},
    ("other", "day"): LATELY,
    ("on", "fire"): "on-fire",
    ("got", "in"): "got-in",
    ("turned", "on"): "turned-on",
    ("turn", "off"): "shut-off",
    ("shut", "off"): "shut-off",
    ("going", "off"): "sounding",
    ("goes", "off"): "sounding",
    ("went", "off"): "sounding",
    **{(kind, "switch"): f"{kind}-switch" for kind in ("float", "pressure", "limit", "rollout")},
}
"""Words that say one thing together."""

LEAST_STEM: Final = 3


def stem(word: str) -> str:
    """A word without its ending, so that smelling is smell; hiss ends in none."""
    for ending in ("ing", "ed", "es", "" if word.endswith("ss") else "s"):
        if ending and word.endswith(ending) and len(word) - len(ending) >= LEAST_STEM:
            return word.removesuffix(ending)
    return word.removesuffix("e") if len(word) > LEAST_STEM else word


FIRE, ON_FIRE = stem("fire"), stem("on-fire")
"""What is on fire is heard whatever else is said of it."""


def _each(words: str) -> tuple[str, ...]:
    return tuple(words.split())


def stems(words: str) -> frozenset[str]:
    """The stems of words that are written in one string."""
    return frozenset(stem(word) for word in words.split())


BY_STEM: Final = {
    **{stem(w): stem(to) for w, to in ALIKE.items() if len(stem(w)) > LEAST_STEM},
    **{stem(to): stem(to) for to in ALIKE.values()},
}

THINGS: Final = stems(
    "unit can rtu wire wiring panel disconnect motor compressor contactor transformer board "
    "control capacitor insulation roof cabinet fan blower machine thing something building cable "
    "plug lug fuse heater meter tester lead probe clamp gauge relay starter terminal battery light "
    "lamp fitting fixture ballast socket outlet ceiling cord"
)
"""What can smoke and burn: said with it they change nothing."""

ALSO_DOING: Final = stems(
    "humming buzzing hot chattering clicking crackling rattling popping spitting shaking vibrating "
    "throwing shooting jumping billowing hissing sizzling glowing melting squealing tripping bad "
    "badly"
)
"""What a thing does that smokes or sparks besides: beside that they change nothing."""

MAKING_A_THING: Final = stems("fire on-fire smoke spark shock gas rollout")
"""Straight before a thing or one of these they name it: the fire panel, a spark igniter."""

NAMED_SO: Final = stems(
    "alarm detector head station door damper test igniter mount label valve line heat watch inlet "
    "manifold pressure supply"
)

NEUTRAL: Final = frozenset((PERSON, "everybody", "nobody", CANNOT, "stop"))
"""Beside a single word they change nothing: it will not stop burning."""

FILLING: Final = stems(
    "a an and at i in is it my of or the their there we im its theres am are was be been this"
)
"""Words that no phrase needs."""

LOOSE: Final = FILLING | stems(
    "on off from to up out over down here now just real really so very all some like bad badly "
    "crazy coming come came going got get getting has have had then still around round about "
    "everywhere near nearby inside below above downstairs back flying big strong loud lot please "
    "got-in "
    "think see hear heard saw did that with for me our his your help yes right "
    "electrical electric oh shit fuck god jesus holy crap damn hell "
    "un una el la los las de en hay se mi esta aqui muy por favor"
)
"""Words that may stand within a phrase and beside it."""

WHO: Final = stems(
    "he she they guy guys man woman boss super tenant helper apprentice worker tech partner buddy "
    "mate somebody someone company office monitoring"
)
"""Who does something, whatever it is."""

CHANGING: Final = stems("on off out over down help")
"""They are loose, but beside a single word they change what it says: gas off."""

SPARK: Final = stem("spark")
"""What an igniter does as well as a fault."""

DENYING: Final = stems("no not never none nobody without 0 zero nope sin")
OFTEN_DENIED: Final = stems("smoke fire spark gas soot leak burning smell")
"""What is denied in rows: no smoke, fire or gas smell."""

NOBODY: Final = stems("nobody")
"""It denies what follows (nobody smells gas), not what was said before (it fell, nobody here)."""

GONE: Final = DENYING | stems("gone stopped cleared anymore more found seen there")

HARD_TO_SPELL: Final = _each(
    "ambulance collapsed electric electrocuted emergency explode exploded exploding explosion "
    "lightening lightning monoxide rattlesnake thunder thunderstorm unconscious unresponsive"
)
"""Long words of danger in which two errors are seen through: litening, expload, elektrik."""

PERCEIVING: Final = stems("see smell hear feel find")
SUBJECTS: Final = stems(f"i it its there theres im {PERSON}")
