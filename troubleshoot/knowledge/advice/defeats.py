"""Ways to defeat a safety device: verbs of the trade beside the devices they are done to.

Patterns are for the plain form of `wording.clauses`. DEVICE and the like may also be a pronoun;
then whatever was named last before it has to be such a device.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.wording import compiled, deeds, gap

WAY_ROUND: Final = ("a way round a safety device", "say how to find out why it acted")
WEAKENED: Final = (
    "a protection set or sized past its limit",
    "say which size or setting the plate asks for",
)
UNGUARDED: Final = (
    "a lock, ground or guard left off",
    "say when it goes back on",
)


@frozen
class Defeat:
    """One pattern. The match's group `it`, where there is one, is the device or a pronoun."""

    what: str
    instead: str
    pattern: re.Pattern[str]


def defeats_of(what: tuple[str, str], *patterns: str) -> tuple[Defeat, ...]:
    """A row of patterns that all defeat the same thing. `what`: the defeat, what to say instead."""
    return tuple(Defeat(*what, compiled(pattern)) for pattern in patterns)


def _it(device: str) -> str:
    return rf"(?P<it>{device}|it|them)\b"


_WIRED: Final = _it(devices.WHERE_WIRED)
_SWITCH: Final = _it(
    f"(?:{devices.SWITCHES}|{devices.WATCHERS}|{devices.BREAKERS}|contactors?|reset(?: button)?)"
)
_ROUND: Final = deeds("wire", "work", "go", "get", "run", "link", "loop", "patch", "tap")
_BYPASS: Final = "|".join(
    (
        deeds(
            *("jumper", "jump", "bypass", "bridge", "defeat", "override", "disable", "shunt"),
            *("strap", "silence", "mute", "fool", "trick", "cheat", "eliminate", "deactivate"),
            *("circumvent", "sidestep", "neutralize", "nullify", "ignore", "disregard", "rig"),
            *("unplug", "knock out", "hot wire", "short out", "short across", "short past"),
        ),
        rf"{_ROUND} (?:the wires? |a wires? |it )?(?:round|past|across|out)",
        rf"{deeds('turn', 'switch', 'shut')} off(?= .{{0,20}}(?:detector|alarm|monitor|smoke))",
    )
)
_FORCE: Final = deeds(
    *("hold", "tape", "tie", "wedge", "prop", "jam", "stick", "pin", "clamp", "glue", "zip tie"),
    *("block", "fasten", "strap", "force", "peg", "weld", "screw", "stuff", "shim", "solder"),
    *("press", "push"),
)
_TWIST: Final = deeds("twist", "splice", "nut", "join", "tie", "marry")
_JOIN: Final = f"(?:{_TWIST}|{deeds('connect', 'touch', 'clip', 'put')})"
_FEED: Final = deeds("run", "feed", "wire", "land", "connect", "send", "apply", "put", "power")
_PUSH: Final = deeds(
    *("shove", "stick", "wedge", "jam", "push", "put", "force", "slide"),
    "stuff",
)
_TAKE: Final = deeds(
    *("take", "pull", "remove", "cut", "disconnect", "unhook", "unplug", "snip", "wire", "leave"),
    *("get", "drop", "jumper"),
)
_CUT: Final = deeds("cut", "snap", "break", "bend", "grind", "saw", "lift", "remove", "pull")
_COVER: Final = deeds("cover", "bag", "tape over", "tape up", "wrap", "cap")
_DISCARD: Final = deeds("remove", "discard", "throw out", "take down", "scrap")
_CHANGE: Final = deeds("swap", "change", "exchange", "replace", "upgrade")
_MOVE: Final = deeds("move", "bend", "shift", "relocate")
_SHUT: Final = r"(?:closed|shut|in|down|made|back|on|up|depressed|pressed)"
_FIT: Final = deeds(
    *("use", "put", "fit", "place", "clip", "run", "lay", "install", "add", "connect", "land"),
    *("leave", "try", "stick", "make", "wrap", "fold", "slip", "insert", "set", "throw", "with"),
)
_BYPASS_WIRE: Final = (
    r"(?:jumpers?|bypass|bridge|clip lead|paper ?clip|alligator(?: clip)?|shunt|link|foil|penny|"
    r"coin|bolt|nail|magnet|wire nut|piece of (?:wire|pipe|tube|copper)|bit of wire|"
    r"length of wire|loop of wire|(?<!meter\x20)(?<!test\x20)lead(?= (?:across|over|between))|slug|"
    r"dummy|wrapper|(?:copper )?(?:tube|tubing)|wire)"
)
_RUN_ON: Final = (
    r"(?:run|light|start|go|carry on|keep|close up|forget|walk|call it|"
    r"leave (?:it|them) (?:off|out|so|that|there|un\w+|dis\w+)|"
    r"fire|try|drive|restart|you (?:are|will)|it (?:runs|works|will)|"
    r"(?:\S+ ){0,3}(?:can|will|may) (?:run|light|fire|start|cool|heat|go)|see (?:if|whether))"
)
DEFEATED: Final = (
    r"(?:jumpered|jumped|bypassed|bridged|taped|wedged|tied|defeated|disabled|overridden|silenced|"
    r"shorted|strapped|unplugged|disconnected|unhooked|wired out|held (?:in|closed)|out of the way)"
)
_CAN: Final = r"(?:can|may|could|should|might|must|is to|are to|has to|have to|needs to)"
_LEAVABLE: Final = (
    f"(?:{devices.SWITCHES}|{devices.WATCHERS}|{devices.LOCKS}|{devices.GROUNDS}|{devices.GUARDS})"
)
_STILL: Final = f"(?:{devices.LOCKS}|{devices.GROUNDS}|{devices.GUARDS})"
_HIGHER: Final = (
    r"(?<!no\x20)(?<!not\x20)"
    r"(?:up|past|above|over|beyond|higher|out of the way|all the way|to (?:the )?maximum|wide open)"
)
_TURN: Final = deeds(
    *("turn", "set", "crank", "raise", "wind", "screw", "dial", "adjust", "move", "bump", "push"),
    "open",
)
_SETTABLE: Final = f"(?:{devices.SWITCHES}|{devices.RELIEFS}|{devices.BREAKERS}|trip|setting)"
_BIG: Final = (
    r"(?:bigger|larger|heavier|oversized?|higher|stronger|slow(?:er)?|next size(?: up)?|size up|"
    r"double|twice the size of)"
)


DEFEATS: Final = (
    *defeats_of(
        WAY_ROUND,
        rf"(?:{_BYPASS}){gap(5)}{_WIRED}",
        rf"wir(?:e|ing){gap(4)}{_WIRED} (?:\S+ )?out\b",
        rf"{_PUSH}{gap(3)}(?:sticks?|screwdrivers?|cards?|"
        rf"wood|handle|shims?|wedge|twig|paper|block|matchstick|toothpick|peg){gap(2)}"
        rf"(?:behind|under|beneath|in|into|against|through|between)"
        rf"{gap(6)}(?:{devices.SWITCHES}|contactors?|armatures?|relays?)\b",
        rf"{_FIT}{gap(3)}(?:wires?|leads?|ends){gap(2)}of{gap(3)}"
        rf"{_WIRED}{gap(2)}(?:under|on|to) (?:one|the same)\b",
        rf"{_FORCE}{gap(4)}{_SWITCH}{gap(3)}{_SHUT}\b",
        rf"{_FORCE} (?:\S+ )?(?:closed|shut|in|down){gap(6)}{_SWITCH}",
        rf"(?:hold|tie|prop|wedge|jam|block|force){gap(4)}{_it(devices.VALVES)}{gap(2)}open\b",
        rf"{_FIT}{gap(4)}{_BYPASS_WIRE}{gap(4)}(?:on|across|over|round|about|at|in|into|"
        rf"instead of|for|to|between|past|under|behind|through|of){gap(4)}{_WIRED}",
        rf"{_it(devices.WHERE_WIRED)} ,?{gap(4)}(?:use|put|fit|clip|run|add|install){gap(3)}"
        rf"(?:jumpers?|bypass|clip lead|paper ?clip|shunt)\b",
        rf"{_JOIN}{gap(4)}"
        rf"(?:wires?|leads?|ends){gap(4)}(?:(?:at|of|from|to|on){gap(3)}{_WIRED}"
        rf"{gap(3)})?together\b",
        rf"{_JOIN}{gap(4)}"
        rf"(?:wires?|leads?|ends){gap(2)}together{gap(3)}{_WIRED}",
        rf"{_TWIST} (?P<it>{devices.WHERE_WIRED}|its|the)"
        rf"(?! thermostat){gap(2)}(?:wires?|leads?|ends){gap(2)}together\b",
        rf"{_TAKE}{gap(5)}{_WIRED} (?:\S+ )?out of (?:the )?"
        r"(?:circuit|string|loop|line|chain|way|play|picture)\b",
        rf"(?:{_TAKE}|lift{gap(2)}"
        rf"(?:wires?|leads?)){gap(7)}{_SWITCH}(?: \S+){{0,3}}? (?:and|to|so|then|,){gap(2)}"
        rf"{_RUN_ON}\b",
        rf"{_CHANGE}{gap(4)}{_WIRED}{gap(2)}(?:with|by|for){gap(3)}"
        rf"{_BYPASS_WIRE}\b",
        rf"(?:an?|the|one) (?:\S+ )?(?:jumper|bypass|bridge|paper ?clip|penny|coin|nail|bolt|slug)"
        rf"{gap(2)}(?:on|across|over|round|in|under|behind){gap(4)}{_WIRED}"
        rf"{gap(4)}(?:will|gets|keeps|does (?:it|the)|is (?:fine|safe|"
        rf"enough)|saves|cures)\b",
        rf"{_WIRED}{gap(2)}{_CAN} (?:stay|remain|be left|run){gap(2)}{DEFEATED}\b",
        rf"(?:finger|thumb|knee|hand|foot|body|elbow)s? (?:\S+ )?(?:on|against){gap(3)}{_SWITCH}"
        rf"{gap(2)}(?:while|so|and|as|to)\b",
        rf"(?:turn|switch|shut)(?:ing|ting)?{gap(3)}{_it(devices.WATCHERS)} off\b",
        rf"(?:run|operate|heat|cool|manage|go|do|live|light|fire)(?: \S+){{0,4}}? without{gap(3)}"
        rf"(?P<it>{devices.SWITCHES}|{devices.WATCHERS}|{devices.LOCKS})",
        rf"{_MOVE}{gap(3)}(?:rollouts?|limits?)(?: switch)?{gap(2)}"
        rf"(?:away|farther|further|back|out of)\b",
        rf"(?:run|start|leave|light|try|operate|keep|have|get){gap(4)}{_WIRED}{gap(2)}"
        rf"{DEFEATED}\b",
        rf"(?:run|start|leave|light|operate|keep|get|go|see|carry|heat|cool|manage|work|do){gap(6)}"
        rf"with{gap(3)}{_WIRED}{gap(2)}{DEFEATED}\b",
        rf"{_WIRED}{gap(2)}{_CAN}{gap(2)}be{gap(2)}{DEFEATED}\b",
        rf"(?:pinch|kink|clamp|plug|suck){gap(5)}(?:hoses?|tubes?|tubing|it)(?: \S+){{0,8}}? "
        rf"{devices.SWITCHES}{gap(2)}(?:made|closed|shut|in)\b",
        rf"{_TWIST}{gap(4)}(?:wires?|leads?|ends|tails){gap(2)}"
        rf"(?:at|of|from|off|to){gap(2)}{_WIRED}",
        rf"{_FEED}{gap(6)}"
        rf"(?:straight|direct(?:ly)?) (?:to|at|on|off|from){gap(2)}"
        rf"(?:gas valve|contactor|compressor|motor|burner|inducer|line)\b",
        rf"(?:put|thread|screw|fit|install|run|drive){gap(3)}(?:plug|cap){gap(2)}(?:in|on|into|over)"
        rf"{gap(3)}(?P<it>{devices.RELIEFS}|its)\b",
        r"(?:plug|cap|block|seal|screw down|tighten down|stop up|gag|close off|solder)"
        rf"(?:ging|ping|ing)?(?: (?:up|off|down|shut))?{gap(3)}{_it(devices.RELIEFS)}",
        rf"(?:back|wind|screw|turn)(?:ing)?{gap(2)}{_it(devices.RELIEFS)}{gap(3)}(?:off|out|in|down)\b",
        rf"{_TAKE}{gap(3)}(?:batter(?:y|ies)|fuse)(?: out)? (?:of|from){gap(3)}"
        rf"{_it(devices.WATCHERS)}",
        rf"{_COVER}{gap(4)}{_it(devices.WATCHERS)}",
        rf"(?:put|pull|slip|tie|hang|stretch|drape|tape){gap(3)}(?:bags?|tape|socks?|caps?|gloves?|"
        rf"rags?|cloth|covers?|film|cups?){gap(2)}(?:over|on|onto|round|across){gap(3)}"
        rf"{_it(devices.WATCHERS)}",
        rf"{_DISCARD}{gap(3)}(?P<it>{devices.WATCHERS}|"
        rf"interlocks?|safeties)(?! (?:\S+ ){{0,6}}(?:clean|new|replac|test|meter|read))",
    ),
    *defeats_of(
        WEAKENED,
        rf"(?:{_FIT}|(?:go|step|move|change|swap|upgrade|upsize|jump)(?: \S+)?){gap(4)}{_BIG}"
        rf"{gap(3)}{_it(devices.BREAKERS)}",
        rf"{_BIG}{gap(2)}{devices.BREAKERS}{gap(2)}(?:will|cures?|solves?|stops?|fixes|holds)\b",
        rf"{_FIT}{gap(4)}{devices.BREAKERS}{gap(2)}(?:of the )?(?:next |one )?size (?:up|larger|"
        rf"bigger)\b",
        rf"{_FIT}{gap(4)}(?:higher|hotter|bigger|stiffer){gap(3)}(?P<it>{devices.SWITCHES})",
        rf"oversiz(?:e|ing){gap(3)}{_it(devices.BREAKERS)}",
        rf"(?:wrap|pack|shim|line)(?:ping|ing|ming)?{gap(3)}{_it(devices.BREAKERS)}{gap(2)}"
        rf"(?:in|with){gap(2)}(?:foil|copper|wire)\b",
        rf"{_TURN}{gap(5)}{_SETTABLE}{gap(2)}{_HIGHER}\b",
        rf"{_TURN}{gap(4)}{_SETTABLE}(?! (?:to|at) (?:the )?(?:data )?plate\b)"
        rf"{gap(6)}(?:no longer|stops?|does not|do not|never|will not|"
        rf"quits?){gap(2)}trip\w*",
        rf"(?:turn|crank|wind|dial|screw) (?:up|out|down){gap(3)}{_SETTABLE}\b",
        rf"{deeds('raise', 'increase')}{gap(4)}(?:setting|trip|cutout|dial|limit){gap(5)}"
        rf"(?:so|to keep|until|past|above|over|stop)\b",
        rf"{_TURN}{gap(4)}(?:gas|manifold|pressure|regulator|burners?|input|fire){gap(3)}"
        r"(?:past|over|above|beyond)(?: \S+){0,2}? (?:plate|rating|limit|label|stop)\b",
    ),
    *defeats_of(
        UNGUARDED,
        rf"(?:use|take|run){gap(3)}ground{gap(2)}(?:as|for){gap(2)}neutral\b",
        rf"(?:leav|keep)(?:e|ing)?{gap(3)}{_it(_STILL)}{gap(2)}"
        r"(?:off|undone|unhooked|loose|in the (?:bag|truck|van)|for later|on the ground)\b",
        rf"(?:leav|keep)(?:e|ing)?{gap(3)}(?P<it>{_LEAVABLE}){gap(2)}"
        r"(?:unhooked|disconnected|unplugged|undone|off)\b",
        rf"(?:leave|leaving|keep) (?:off|out|out of){gap(3)}{_it(_LEAVABLE)}",
        rf"{_CUT}{gap(3)}"
        rf"{_it(devices.GROUNDS)}{gap(4)}(?:off|to|so|and){gap(3)}(?:\S+)",
        rf"{_TAKE}{gap(3)}{_it(devices.GUARDS)}{gap(3)}"
        rf"(?:while|with){gap(3)}(?:runs?|running|turns?|turning|spins?|on)\b",
        rf"(?:run|start|operate){gap(4)}(?:with|without){gap(3)}(?P<it>{devices.GUARDS})"
        rf"(?: \S+)? off\b",
        rf"(?:run|start|operate){gap(3)}without{gap(2)}(?P<it>{devices.GUARDS})",
    ),
)

_SIZE: Final = r"(\d+(?:\.\d+)?) amp\b"
_FEW: Final = r"(?: \S+){0,5}?"
PUT_FOR: Final = compiled(
    rf"(?:{_FIT}|go|step|try|buy|take|an?){_FEW} {_SIZE}(?: \S+){{0,4}}? (?:in place of|"
    rf"instead of|for|where|to replace|replacing|not){_FEW} (\d+(?:\.\d+)?)\b"
)
"""A size put in the place of another: (put in, taken out)."""

CHANGED_FOR: Final = compiled(
    rf"{_CHANGE}{_FEW} {_SIZE}{_FEW} (?:for|with|by|to){_FEW} "
    r"(\d+(?:\.\d+)?)\b"
)
"""A size changed for another: (taken out, put in)."""
