"""What stands in for what protects: any conductor, a stick, a cap, another flame, a lone man."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import WAY_ROUND, WEAKENED, defeats_of
from troubleshoot.knowledge.advice.practices import LET_GO
from troubleshoot.knowledge.advice.wording import gap

ALONE: Final = ("live work alone or by an apprentice alone", "say who stands by, and what for")

_DEVICE: Final = f"(?:{devices.SWITCHES}|{devices.WATCHERS})"
_PUT: Final = (
    r"(?:put|clip|clamp|lay|set|stick|slip|slide|jam|wedge|fit|fold|twist|press|push|run|lead|hang|"
    r"place|use|tape|slap|solder|wind|wrap|hold)"
)
_POLES: Final = r"(?:terminals?|sides?|poles?|spades?|tabs?|posts?|legs?|contacts?|lugs?|pins?)"
_METAL: Final = (
    r"(?:copper|tub(?:e|ing)|pipe|foil|nails?|coins?|penn(?:y|ies)|bolts?|rod|strip|wire|braid|"
    r"washers?|screws?|keys?|slugs?|springs?|metal|wrench|solder|paper ?clips?|staples?)"
)
_ODD_METAL: Final = (
    r"(?:hairpins?|staples?|nails?|coins?|penn(?:y|ies)|foil|keys?|washers?|slugs?|springs?|solder|"
    r"braid|paper ?clips?|copper)"
)
_CLIPS: Final = r"(?:fuse|cartridge|link) (?:clips?|holders?|blocks?)"
_CARRIES: Final = (
    r"(?:carr(?:y|ies)|gets?|keeps?|will|does|runs?|lets?|saves?|holds?|works?|until|till)"
)
_OWN_SWITCH: Final = (
    r"(?:interlocks?|(?:door|panel|blower|access)(?: door)? (?:switch(?:es)?|interlocks?))"
)
_WEDGE: Final = r"(?:wedge|prop|jam|block|hold|pin|tie|peg|stick|press|tape|strap|push)"
_LIGHT: Final = r"(?:lighters?|match(?:es)?|torch(?:es)?|candles?|flames?)"
_SENSOR: Final = r"(?:sensors?|rods?)"
_BELIEVES: Final = r"(?:sees?|always|proves?|reads?|believes?|thinks|signal)"
_LIVE: Final = (
    r"(?:(?:live|energized) \S+|[1-9]\d\d v(?:olts?)?\b|hot (?:volts?|legs?|lugs?|readings?|"
    r"checks?)|(?:read|meter|check|take) (?:\S+ )?(?:live|volts?|voltage))"
)
_LONE: Final = (
    r"(?:(?<!never\x20)(?<!not\x20)(?<!not\x20done\x20)(?<!never\x20done\x20)alone|"
    r"by (?:himself|herself|yourself|itself|themselves|myself)|"
    r"on (?:his|her|your|their|my) own|solo|single handed|unaccompanied)"
)
_LEARNER: Final = r"(?:apprentices?|trainees?|helpers?|learners?)"
_BESIDE: Final = r"(?!.*\b(?:second|another|beside|watch\w*|supervis\w*|stands? by|standby)\b)"
_TAKE: Final = (
    r"(?:send|let|have|go|take|do|read|meter|test|check|work|make|climb|leave|can|may|could)"
)


STAND_INS: Final = (
    *defeats_of(
        WAY_ROUND,
        rf"{_PUT}{gap(4)}from one (?:\S+ )?{_POLES}{gap(4)}{_DEVICE}{gap(2)}to (?:the )?other\b",
        rf"an?{gap(2)}\w+ from one (?:\S+ )?{_POLES}{gap(4)}{_DEVICE}{gap(2)}to (?:the )?other "
        r"(?:will|keeps|gets|does|holds)\b",
        rf"(?:{_PUT}|join|bridge){gap(4)}{_DEVICE}{gap(2)}{_POLES} with{gap(3)}{_ODD_METAL}\b",
        rf"{_PUT}{gap(3)}{_ODD_METAL}{gap(2)}(?:over|across|onto|between|round){gap(3)}{_DEVICE}\b",
        rf"{_PUT}{gap(4)}between (?:both|two|the|its) {_POLES}{gap(3)}{_DEVICE}\b",
        rf"(?:an?|the|one|some){gap(3)}{_METAL}{gap(3)}(?:in|into|across|on){gap(2)}{_CLIPS}{gap(3)}"
        rf"{_CARRIES}\b",
        rf"{_PUT}{gap(4)}{_METAL}{gap(3)}(?:in|into|across|on){gap(2)}{_CLIPS}\b",
        rf"{_METAL}{gap(4)}(?:press|push|put|lay|fit|jam) it (?:in|into|across){gap(2)}{_CLIPS}\b",
        rf"{_WEDGE}{gap(3)}{_OWN_SWITCH}(?: (?:in|down|shut|closed|back))? with{gap(2)}\w+ "
        r"(?:so|while|and|to)\b",
        rf"{_PUT}{gap(2)}(?:magnets?|clamps?|weights?|tapes?|clips?){gap(2)}(?:on|over|at|against|"
        rf"across){gap(2)}{_OWN_SWITCH}\b",
        rf"(?:put|thread|screw|fit|install|run|drive|turn|glue|push){gap(3)}(?:plug|cap|bung|"
        rf"stopper|bolt){gap(2)}(?:in|on|into|onto|over){gap(5)}{devices.RELIEFS}\b",
        rf"(?:an?|the|one){gap(2)}(?:cap|plug|bung) (?:on|in){gap(2)}{devices.RELIEFS}{gap(2)}"
        r"(?:ends|stops|cures|will|keeps)\b",
        rf"(?:bend|move|turn|aim|point|put|set|shift|hold|tie|strap|clamp|mount){gap(3)}{_SENSOR} "
        rf"(?:over )?(?:into|to|in|at|toward){gap(5)}(?:next|neighbor\w*|other|another|first|pilot|"
        r"adjacent)\b"
        rf"(?=.*\b{_BELIEVES}\b)",
        rf"(?:hold|put|bring|keep|play){gap(2)}{_LIGHT} (?:at|to|on|under|near|over|by|beside)"
        rf"{gap(3)}{_SENSOR}\b(?=.*\b{_BELIEVES}\b)",
        rf"(?:wire|put|run|connect|clip|solder|fit|land){gap(3)}(?:resistors?|diodes?|capacitors?)"
        rf"{gap(3)}(?:flame|sensors?|sense)\b(?=.*\b{_BELIEVES}\b)",
    ),
    *defeats_of(
        WEAKENED,
        rf"(?:set|turn|dial|run|wind|crank|put|move){gap(2)}overloads?\b(?=.*\b(?:whatever|"
        r"regardless|though|although|no matter|despite|as high as|as far as|highest|past|beyond|"
        r"(?<!not\x20to\x20the\x20)top (?:of|mark|end|stop)|"
        r"(?<!not\x20)above|(?<!no\x20)higher)\b)",
    ),
    *defeats_of(
        LET_GO,
        rf"(?:hold|press|push|depress|poke|bump|crack){gap(4)}(?:cores?|pins?|schraders?|stems?)"
        rf"{gap(9)}(?:until|till|and let|to let|to drop|so that){gap(6)}(?:hiss\w*|quits?|stops?|"
        r"zero|empty|nothing|drops?|gone|low)\b(?!.*\brecover)",
    ),
    *defeats_of(
        LET_GO,
        rf"(?:bleed|blow|let|dump){gap(4)}through{gap(2)}(?:cores?|schraders?|ports?|pins?)\b"
        r"(?!.*\b(?:recover|nitrogen))",
    ),
    *defeats_of(
        ALONE,
        rf"{_TAKE}\b(?=.*\b{_LIVE})(?=.*\b{_LONE}\b){_BESIDE}",
        rf"{_LEARNER} (?:can|may|could|will){gap(2)}(?:take|"
        rf"read|meter|do|check|test|work)\b(?=.*\b{_LIVE}|.* live\b){_BESIDE}"
        r"(?!.*\b(?:with|under)\b)",
        rf"{_LEARNER} {_LONE}{gap(3)}(?:take|read|meter|do|check|test|work)\b"
        rf"(?=.*\b{_LIVE}|.* live\b)",
        rf"(?:nobody|no one) (?:has|needs) to (?:stand by|watch|be there|come along)\b"
        rf"(?=.*\b{_LIVE})",
        rf"(?:one|a single|a lone) (?:man|person|technician|tech|mechanic|hand){gap(3)}(?:can|may|"
        rf"could|will|is (?:enough|plenty|fine))\b(?=.*\b{_LIVE}){_BESIDE}",
    ),
)
