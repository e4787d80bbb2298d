"""Makeshifts in everyday words: slipped under, fed straight, stuffed shut, made light of."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import UNGUARDED, WAY_ROUND, WEAKENED, defeats_of
from troubleshoot.knowledge.advice.practices import FLAME, LET_GO, LIVE, RESET, UNPROVED
from troubleshoot.knowledge.advice.reckless import FALL
from troubleshoot.knowledge.advice.short_cuts import RUN_ON
from troubleshoot.knowledge.advice.wording import gap

_DEVICE: Final = f"(?:{devices.SWITCHES}|{devices.WATCHERS})"
_PULLED_IN: Final = r"(?:contactors?|armatures?|relays?|plungers?)"
_HOLDER: Final = (
    r"(?:magnets?|tapes?|(?:zip|wire|cable) ties?|straps?|clips?|clamps?|wedges?|weights?|bricks?|"
    r"strings?|rubber bands?|springs?|sticks?|coins?|cards?)"
)
_THIN: Final = (
    r"(?:matchsticks?|match(?:es)?|cardboard|cards?|paper|foil|coins?|straws?|twigs?|toothpicks?|"
    r"shims?|magnets?|plastic|bags?|film|rags?|cloth|cups?|lids?|tapes?)"
)
_LAY: Final = (
    r"(?:slip|slid|slide|tuck|fold|lay|poke|push|put|stick|stretch|press|pull|hang|wrap|tape)"
)
_METAL: Final = r"(?:copper|wires?|foil|metal|braid|strands?|solder|nails?|penn(?:y|ies)|coins?)"
_TURNING: Final = r"(?:turning|running|spinning|moving|going round|coasting)"
_TURNS: Final = (
    r"(?:belts?|sheaves?|shafts?|bearings?|wheels?|blades?|pulleys?|couplings?|blowers?|fans?)"
)
_AT_IT: Final = (
    r"(?:brush|oil|dress|soap|wipe|touch|feel|tighten|clean|grease|adjust|push|rub|spray|"
    r"straighten)"
)
_TIMES: Final = (
    r"(?:few|couple of|several|many|two|three|four|five|six|ten|\d+)(?: (?:or|to) \S+)?"
    r"(?: more)? times"
)
_TO_SEE_TO_IT: Final = r"(?!.*\b(?:clean|test|check|replac|inspect|renew|new|meter|see)\w*)"


MAKESHIFTS: Final = (
    *defeats_of(
        WAY_ROUND,
        rf"{_LAY}{gap(3)}{_THIN}{gap(2)}(?:behind|under|beneath|in|into|against|through|between|"
        rf"over|across|round){gap(4)}{_DEVICE}\b",
        rf"(?:solder|lay|run|twist|wrap|clip|wind|stick|fit|jam){gap(4)}{_METAL}{gap(3)}"
        rf"(?:across|over|round|in|into|through|instead of){gap(4)}fuses?\b",
        rf"(?:let|have){gap(2)}{_HOLDER} (?:hold|keep|press|do){gap(2)}(?P<it>{_DEVICE}|it|them)\b",
        rf"(?:feed|send|give|put|run|apply|jump){gap(3)}(?:volts?|power){gap(4)}"
        rf"(?:straight|direct(?:ly)?|right) (?:to|at|on|into){gap(2)}valves?\b",
        rf"(?:feed|give|power){gap(2)}valves?{gap(2)}(?:volts?|power){gap(3)}(?:straight|"
        rf"direct(?:ly)?|right) (?:off|from|out of)\b",
        rf"(?:wire|tie|tape|pinch|solder|jam|screw|strap|clamp){gap(5)}(?:contacts?|poles?|points?)"
        rf"{gap(2)}(?:shut|closed|made|together)\b",
        rf"(?:move|land|put|run|clip|connect|tie){gap(3)}(?:sensors?|rods?)(?: (?:lead|wire))?"
        rf"{gap(1)}(?:to|on|at) (?:ground|chassis|cabinet)\b"
        r"(?=.*\b(?:proves?|always|holds?|runs?)\b)",
        rf"(?:take|pull|remove|lift|tie|hang){gap(2)}{_DEVICE}{gap(1)}(?:out of|out from|away from|"
        rf"clear of){gap(3)}(?:pan|drain|duct|door|panel|vent|way)\b{_TO_SEE_TO_IT}",
        rf"(?:tape|paint|cover|black)(?: (?:over|out))?{gap(2)}(?:lockout|warning|fault|alarm|"
        rf"trouble)(?: \w+)? (?:lights?|lamps?|leds?)\b",
        rf"(?:run|start|operate|keep){gap(4)}test (?:pins?|mode|button){gap(3)}(?:until|till|all|"
        r"through)\b",
    ),
    *defeats_of(
        LIVE,
        rf"(?:bend|push|press|ride|hold|lever|pry|block|wedge|tie|force){gap(3)}{_PULLED_IN}"
        rf"{gap(4)}(?:by hand|with{gap(3)}(?:screwdriver|stick|handle|tie|finger|thumb|pen|"
        r"pliers))\b",
        rf"with{gap(2)}{_TURNS} {_TURNING}{gap(3)}{_AT_IT}{gap(2)}{_TURNS}\b",
        rf"{_AT_IT}{gap(2)}{_TURNS}{gap(2)}(?:while|as|when) (?:it|they|{_TURNS}) "
        rf"(?:is |are )?(?:turns?|runs?|spins?|moves?|coasts?|{_TURNING})\b",
        rf"(?:reach|put|feel|work|lean){gap(4)}{_TURNING} {_TURNS}\b",
        r"is (?:protection|care|safety|insulation) enough\b(?=.*\b(?:\d{3}|volts?|live|hot)\b)",
        rf"(?:capacitors?|volts?|voltage|current|charge){gap(6)}(?:can not|will not|does not|"
        r"never) (?:hurt|bite|harm|kill|shock) (?:you|anybody|anyone|nobody)\b",
    ),
    *defeats_of(
        RESET,
        rf"(?:push|press|hit|punch|try|cycle|flip){gap(2)}(?:reset|button|breaker|disconnect)"
        rf"{gap(2)}{_TIMES}\b",
    ),
    *defeats_of(
        UNGUARDED,
        r"tags?\x20(?:alone\x20)?(?:will\x20do|is\x20(?:enough|plenty|sufficient)|suffices)\b",
        rf"leav(?:e|ing){gap(2)}keys?{gap(1)}(?:in|on|with|at){gap(2)}(?:locks?|padlocks?|hasps?|"
        r"customer|tenant|janitor|switch|disconnect)\b",
    ),
    *defeats_of(
        UNPROVED,
        rf"(?:skip(?:ping)?|leave out|omit|forget|save yourself|do without){gap(3)}(?:second|last|"
        r"final|meter|dead|gas|leak|bump)(?: \w+)? (?:checks?|proofs?|sweeps?)\b",
    ),
    *defeats_of(
        LET_GO,
        rf"(?:vent|dump|blow|bleed|release|let){gap(5)}(?:pounds?|ounces?|rest|charge|freon|"
        rf"refrigerant){gap(3)}(?:into|to|in|on)(?: the)? (?:open )?(?:wind|air|sky|breeze|roof)\b",
    ),
    *defeats_of(
        FLAME,
        rf"(?:warm|heat|boil|cook){gap(3)}(?:accumulator|receiver|compressor|shell|crankcase|sump|"
        rf"suction line){gap(3)}(?:with|by|using|over){gap(2)}(?:torch|flame|burner)\b",
        rf"(?:bring|fill|raise|push|take|test|charge|run|blow|put|pump|pressur\w+){gap(8)}"
        rf"(?:with|by|from|off){gap(2)}(?:oxygen|acetylene)\b",
    ),
    *defeats_of(
        RUN_ON,
        rf"(?:stuff|plug|fill|patch|weld|braze|seal|caulk|cement|tape|close|paint)(?:ing)?{gap(5)}"
        rf"(?:cracks?|splits?|holes?){gap(4)}exchangers?\b",
    ),
    *defeats_of(
        WEAKENED,
        rf"(?:drill|ream|bore|enlarge){gap(3)}orifices?{gap(3)}(?:up|out|bigger|larger|for more)\b",
        rf"(?:set|turn|raise|run|crank|put){gap(2)}(?:manifold|gas pressure|regulator){gap(4)}"
        rf"(?:so|for|until){gap(4)}(?:stronger|hotter|more heat|bigger|harder|louder)\b",
    ),
    *defeats_of(
        FALL,
        rf"(?:lean|reach|hang|step|climb|sit){gap(3)}(?:over|past|out|on|onto|across){gap(2)}"
        rf"(?:parapets?|edges?|skylights?|gutters?|eaves?|guard ?rails?)\b",
    ),
)
