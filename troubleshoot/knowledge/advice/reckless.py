"""Reckless advice in everyday words: a device made useless, a leak fed, a fall, a flame in gas."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice.defeats import UNGUARDED, WAY_ROUND, WEAKENED, defeats_of
from troubleshoot.knowledge.advice.practices import FLAME, LET_GO, LIVE, RESET, UNPROVED
from troubleshoot.knowledge.advice.short_cuts import RUN_ON
from troubleshoot.knowledge.advice.wording import gap

LEAK_FED: Final = ("refrigerant put into a leak", "say: find the leak and mend it first")
NO_AIR: Final = ("a burner without its air or its flue", "say: keep air and flue open and clear")
FALL: Final = ("work where somebody falls or is struck", "say from where it is done safely")

_DEVICE: Final = r"(?:switch(?:es)?|limits?|cutouts?|rollouts?|controls?|safet(?:y|ies)|detectors?)"
_ENDS: Final = r"(?:leads|wires|ends|tails|terminals)"
_POWER_ON: Final = r"(?:with|while|when)(?:\x20\w+){0,5}\x20(?:on|live|energized|hot)\b"
_BIT: Final = r"(?:bit|little|faint(?:ly)?|some|trace)"


RECKLESS: Final = (
    *defeats_of(
        WAY_ROUND,
        rf"(?:make|join|clip|connect|twist|tie|marry)(?=.*\b(?:together|one|each other)\b)"
        rf"(?=.*\b{_DEVICE}\b){gap(5)}{_ENDS}\b",
        rf"(?:drill|ream|bore|widen|enlarge|open up){gap(5)}(?:ports?|taps?|holes?|fittings?)"
        rf"{gap(5)}{_DEVICE}\b",
        rf"(?:pinch|squeeze|crimp|kink|clamp|fold){gap(4)}(?:tubes?|hoses?|tubing|lines?){gap(6)}"
        rf"{_DEVICE}\b",
        rf"runs?{gap(2)}(?:fine|well|ok|all right){gap(2)}(?:with|without){gap(5)}{_DEVICE}\b",
        rf"{_DEVICE} can be (?:lived|done|managed) without\b",
        rf"(?:tape|wrap|stuff|plug){gap(4)}detectors? (?:tubes?|heads?|ports?|holes?|inlets?)\b",
    ),
    *defeats_of(
        WEAKENED,
        rf"(?:swap|replace|change){gap(3)}(?P<old>\d+)(?: (?:degrees?|f|c))? limit{gap(3)}"
        rf"(?:for|with|by){gap(3)}(?!(?P=old)\b)\d+\b",
        rf"(?:put|fit|use|set){gap(3)}(?P<new>\d+)(?: (?:degrees?|f|c))? limit{gap(3)}where"
        rf"{gap(3)}(?!(?P=new)\b)\d+\b",
        rf"(?:fit|put|use|install|try){gap(4)}\d+ amp fuses?{gap(2)}(?:if|when|where){gap(4)}"
        rf"\d+(?: amp)?{gap(3)}(?:keeps?|blows?|opens?|trips?)\b",
        rf"(?:keeps? (?:blowing|opening|tripping)|blows|trips){gap(4)}(?:go up|step up|move"
        rf" up|go to|use|fit|put){gap(4)}\d+\b",
        rf"(?:set|turn|screw|run|wind){gap(6)}{_DEVICE}{gap(4)}(?:top|end|highest|maximum|max)\b",
        rf"(?:turn|raise|set|screw|run){gap(4)}(?:gas|manifold) pressure{gap(3)}until{gap(6)}"
        r"(?:yellow|orange|lazy|roars?)\b",
    ),
    *defeats_of(
        RESET,
        rf"keep(?: on)? (?:pressing|pushing|hitting|holding){gap(4)}(?:reset|button){gap(6)}"
        r"until\b",
    ),
    *defeats_of(
        LIVE,
        rf"(?:reach|push|press|tighten|snug|torque|loosen|land|strip|splice){gap(8)}{_POWER_ON}",
        rf"(?:while|as){gap(4)}(?:turns|runs|spins|moves){gap(5)}(?:fingers?|hands?|thumbs?) "
        r"(?:on|in|at)\b",
        rf"(?:flick|touch|brush|tap){gap(4)}back of(?: (?:the|your))? hand{gap(6)}(?:live|hot|"
        r"power|dead)\b",
        rf"touch{gap(3)}wires?{gap(2)}(?:quickly|briefly|lightly|fast)\b",
        rf"megger{gap(4)}(?:someone|somebody|helper|partner){gap(3)}(?:hold|holding|holds)\b",
        rf"(?:let|have|get){gap(4)}hold{gap(4)}(?:leads?|probes?|clips?){gap(5)}megger\b",
    ),
    *defeats_of(
        UNPROVED,
        rf"(?:testing|proving|metering|bleeding|locking|sweeping|purging){gap(5)}is{gap(2)}(?:waste|"
        r"wasted|overkill|fuss|nonsense)\b",
        r"wait(?:ing)? is (?:only|just) for\b",
    ),
    *defeats_of(
        FLAME,
        rf"(?:light|relight|fire){gap(3)}(?:straight away|at once|right away|immediately)\b",
        rf"try{gap(3)}burners?{gap(3)}(?:straight away|at once|right away|immediately)\b",
        r"smell of gas is no reason\b",
        rf"(?:turn|open|light|try|go on|carry on){gap(9)}(?:if|though|when){gap(3)}"
        rf"smell(?:ed|s)?{gap(3)}{_BIT}\b",
        rf"(?:propane|butane){gap(3)}(?:drop in|refrigerant)\b",
        rf"replace{gap(3)}(?:r \d+\w*|refrigerant|charge|freon) (?:with|by){gap(2)}(?:propane|"
        r"butane)\b",
    ),
    *defeats_of(
        LEAK_FED,
        rf"top{gap(3)}(?:up|off){gap(6)}(?:come back|next (?:year|season|spring))\b",
        rf"add{gap(4)}(?:refrigerant|charge|pounds?|ounces?|freon){gap(3)}(?:every|each) (?:spring|"
        r"season|year|summer)\b",
    ),
    *defeats_of(
        LET_GO,
        rf"bleed{gap(3)}(?:charge|refrigerant){gap(2)}(?:to|onto|on|over|into){gap(2)}(?:roof|air|sky|"
        r"wind)\b",
        rf"(?:open|crack){gap(3)}(?:schrader|valve|port|core|hose|flare){gap(4)}let{gap(4)}(?:blow|out|"
        r"go|hiss|escape)\b",
    ),
    *defeats_of(
        RUN_ON,
        rf"(?:run|keep|leave|heat with){gap(3)}(?:cracked|split|holed){gap(2)}exchanger\b",
    ),
    *defeats_of(
        UNGUARDED,
        rf"(?:lift|cut|disconnect|unhook){gap(2)}ground(?: (?:wire|lead|conductor|strap))?"
        r"(?=$| (?:so|,|and|until|if))",
    ),
    *defeats_of(
        FALL,
        rf"(?:work|stay|sit|stand){gap(6)}edge{gap(5)}(?:kneel\w*|on your knees|careful)\b",
        rf"(?:stand|put|set){gap(5)}ladder{gap(2)}(?:on|onto)(?: top of)?{gap(2)}(?:unit|cabinet|"
        r"rtu|duct)\b",
        rf"(?:carry on|go on|keep (?:on|working)|work on){gap(4)}(?:thunder|lightning)\b",
        rf"(?:thunder|lightning){gap(5)}is no reason\b",
    ),
    *defeats_of(
        NO_AIR,
        rf"(?:block|stuff|close|cover|plug|tape|insulate){gap(6)}combustion air\b(?! (?:switch|"
        r"pressure|proving))",
        rf"(?:vent|run|lead|pipe|route){gap(3)}(?:flue|vent|exhaust)(?: pipe)? (?:into|in|to)"
        rf"{gap(2)}(?:return|duct|rooms?|attic|building)\b",
    ),
)
