"""Deeds that say by their purpose or their stand-in that a device is to act no more.

So it never opens, until the trips quit, in place of the fuse, straight from the transformer: what
is done it with may be anything, and so the thing is not asked for here.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import WAY_ROUND, WEAKENED, defeats_of
from troubleshoot.knowledge.advice.wording import deeds, gap

_SOME_SWITCH: Final = (
    r"(?:(?:high|low|head|suction|draft|vent|pan|roll|trip|safety|smoke|freeze) (?:\w+ )?"
    r"switch(?:es)?)"
)
_DEVICE: Final = f"(?:{devices.SWITCHES}|{devices.WATCHERS}|{_SOME_SWITCH})"
_PROTECTS: Final = f"(?:{_DEVICE}|{devices.BREAKERS})"
_HANDLES: Final = deeds(
    *("sling", "put", "lay", "tie", "tape", "wrap", "stuff", "wedge", "stick", "loop", "hang"),
    *("clip", "clamp", "run", "set", "slip", "slide", "fix", "fasten", "press", "push", "pull"),
    *("bend", "twist", "turn", "screw", "wind", "back", "drill", "glue", "drop", "wire", "jam"),
    *("hook", "fit", "pack", "plug", "pinch", "tweak", "file", "use", "throw", "string", "lash"),
    *("dab", "squirt", "smear", "paint", "spread", "hold", "block", "trim", "shove", "work", "do"),
)
_ACT: Final = (
    r"(?:opens?|trips?|acts?|cuts? (?:out|off|in)|lets? go|shuts? (?:off|down|it)|pops?|"
    r"drops? (?:out|off)|breaks? the circuit|kicks? (?:out|off)|goes? off|bothers?|nags?|"
    r"interrupts?|locks? out|knows?|sees?|senses?|notices?)"
)
_NO_MORE: Final = (
    r"(?:never|can not|will not|does not|do not|no longer|can never|will never|could not|hardly)"
)
_QUITS: Final = r"(?:quits?|stops?|ceases?|ends?|gives? up|goes away|go away|no more|are gone)"
_TO_NO_END: Final = (
    rf"(?:(?:so|until|till|and|then)(?: that)? (?:it|they|that|this|the \w+) (?:\w+ )?{_NO_MORE} "
    rf"{_ACT}|"
    rf"(?:so|until|till)(?: that)?{gap(3)}(?:trips|tripping|nagging|cutting out|opening|dropping "
    rf"out|alarms?|beeping|lockouts?|nuisance){gap(2)}{_QUITS}|"
    rf"(?:so|until|till)(?: that)?{gap(3)}{_QUITS} (?:trips|tripping|nagging|cutting|"
    r"complaining|opening|dropping|beeping|blowing)|"
    r"(?:so|until|till)(?: that)? (?:it|they|that) (?:always|stays?|remains?) (?:\w+ )?(?:made|"
    r"closed|shut|quiet|happy|satisfied))\b"
)
_STEAD: Final = (
    r"(?:in (?:the )?(?:place|stead|lieu) of|instead of|in for|to stand in for|as an?)"
    r"(?! (?:over|under|on|at|behind|through|to|by|in|from)\b)"
)
_ODD_METAL: Final = (
    r"(?:paper ?clips?|staples?|coins?|penn(?:y|ies)|dimes?|quarters?(?! (?:turn|inch))|nails?|"
    r"bolts?|slugs?|washers?|hairpins?|foil|gum wrapper|wires?|tub(?:e|es|ing)|pipes?|copper|"
    r"strips?|solder|braid|brass|brazing rod|drill bits?|hex keys?)"
)
_ODD_THING: Final = (
    rf"(?:{_ODD_METAL}|screws?|keys?|strands?|straps?|jumpers?|links?|rods?|clips?|resistors?|"
    r"dumm(?:y|ies)|blanks?|plugs?|loops?|leads?)"
)
_SLOTS: Final = r"(?:clips?|holders?|fuse ?holders?|blocks?|cutouts?|pull ?outs?|sockets?)"
_SUITS: Final = (
    r"(?:fits?|goes|drops?|slides?|snaps?|clips?|does (?:it|the (?:job|trick))|works?|serves?|"
    r"is (?:fine|good|enough|perfect)|will do|(?:will )?carr(?:y|ies)|holds?)"
)
_SOURCE: Final = (
    r"(?:transformers?|24 v(?:olts?|ac)?|24vac|24|r|hot (?:side|leg|lead|wire|terminal)|line|"
    r"secondary|battery|disconnect|terminal r)"
)
_FED: Final = (
    r"(?:gas valves?|valves?|inducers?|igniters?|burners?|heater contactors?|heaters?|"
    r"heat relays?|sequencers?)"
)
_STRAIGHT: Final = r"(?:straight|direct(?:ly)?|right)"
_AWAY: Final = (
    r"(?:walk away|go (?:home|away|to lunch)|lunch|leave (?:it|them) (?:there|on|in|like|so|be)|"
    r"overnight|weekend|all day|for the (?:day|night)|until (?:morning|monday|tomorrow|the part)|"
    r"drive (?:home|off|away)|get (?:lunch|coffee|the part))"
)
_MENDS: Final = (
    r"(?!.*\b(?:clean\w*|wash\w*|new|replac\w*|right size|same (?:rating|size|degrees|class)|"
    r"plate|maker|locked out|rated|spare|listed|meter|read)\b)"
)
_REASON: Final = (
    r"(?:(?:it|they|that thing) (?:only|just|always|does nothing|is only|is just|do nothing)|"
    r"false (?:trips?|alarms?)|nuisance|nags?|is not needed|are not needed|nobody (?:needs|wants|"
    r"looks|checks|will)|until (?:we|you|the job|monday|spring|next)|for (?:the season|good)|"
    r"and (?:run|leave|forget|go|throw|toss|carry on|bin)|(?:sets?|set) (?:it|them) off|cries wolf|"
    r"for the (?:summer|winter|night|week\w*|day|shift|month)|so (?:it|the|that|nobody))"
)
_TAKES_DOWN: Final = deeds(
    *("pull", "unscrew", "unplug", "take", "drop", "remove", "twist", "pop", "lift", "disconnect"),
)
_PLACED_BACK: Final = (
    r"(?!.*\b(?:clean\w*|refit\w*|replac\w*|new|test\w*|inspect\w*|(?:put|plug|clip) (?:it|them) "
    r"(?:back|in)|back (?:in|on|up)|records?|locked out|power (?:goes|returns|comes))\b)"
)


PURPOSES: Final = (
    *defeats_of(
        WAY_ROUND,
        rf"{_HANDLES}{_MENDS}{gap(8)}{_DEVICE}{gap(5)}{_TO_NO_END}",
        rf"{_HANDLES}{_MENDS}{gap(4)}{_ODD_THING}{gap(3)}{_STEAD}{gap(4)}{_PROTECTS}",
        rf"{_ODD_THING}{_MENDS} {_STEAD}{gap(3)}{_PROTECTS} (?:\w+ ){{0,3}}?"
        r"(?:will|works?|does|gets|keeps|saves|is (?:fine|ok|enough|all right))\b",
        rf"(?:fuses?|breakers?|cartridges?)\b{_MENDS}{gap(10)}{_ODD_METAL} {_SUITS}{gap(4)}"
        rf"{_SLOTS}\b",
        rf"(?:an?|the|some|one|any){_MENDS}{gap(4)}{_ODD_METAL} {_SUITS}{gap(3)}(?:fuse|cartridge) "
        rf"{_SLOTS}\b",
        rf"(?:{_HANDLES}{gap(4)}{_ODD_METAL}|{_ODD_METAL} (?:laid|put|set|clipped|pushed|pressed|"
        rf"wound|wrapped|stuck|jammed|slid)){_MENDS}{gap(2)}where{gap(3)}{_PROTECTS} (?:used|was|"
        r"were|sat|goes|go|belongs?|should|plugs?|fits?|came)\b",
        rf"(?:keep|leave|have|run)(?:ing)?{_MENDS}{gap(4)}{_DEVICE}{gap(2)}(?:pushed|pressed|held|"
        rf"taped|tied|stuck|jammed|wedged|pulled) (?:in|down|closed|shut|back|over)\b",
        rf"give{gap(3)}{_FED}{gap(4)}(?:from|off|out of){gap(4)}{_SOURCE}\b",
        rf"{deeds('feed', 'power', 'run', 'wire', 'drive', 'supply', 'energize', 'fire', 'open')}"
        rf"{gap(3)}{_FED}{gap(4)}{_STRAIGHT}{gap(1)}(?:from|off|to|with|out of|across){gap(3)}"
        rf"{_SOURCE}\b",
        rf"(?:touch|hold|put|run|bring|take|clip|lead|give){gap(3)}{_SOURCE}{gap(3)}{_STRAIGHT} "
        rf"(?:to|on|onto|at|across|into){gap(2)}{_FED}\b",
        rf"(?:run|put|clip|lay|leave|twist|lead|land){gap(3)}(?:wire|lead|jumper|clip|strap){gap(2)}"
        rf"(?:from )?r (?:to|and|with) [wyg]\d?\b{gap(12)}{_AWAY}\b",
        rf"{_TAKES_DOWN}{_PLACED_BACK}{gap(4)}(?:{devices.WATCHERS}){gap(6)}{_REASON}\b",
    ),
    *defeats_of(
        WEAKENED,
        r"(?:turn|crank|wind|run|screw|back|ease|tweak|dial|adjust|move|set)(?:ing)?"
        rf"{gap(2)}(?:screws?|dials?|knobs?|springs?|adjusters?|pots?|settings?|cams?|sliders?)"
        rf"{gap(2)}(?:on|of|at|in){gap(3)}(?:{_PROTECTS}){gap(4)}{_TO_NO_END}",
    ),
)
