"""Short cuts: a need denied, hands into what still turns, what is broken run on, one more try."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice.defeats import UNGUARDED, WAY_ROUND, defeats_of
from troubleshoot.knowledge.advice.practices import LIVE, RESET, SHORTED, UNPROVED
from troubleshoot.knowledge.advice.wording import deeds, gap

RUN_ON: Final = (
    "a unit run on with what makes it deadly",
    "say: shut it off and tag it until it is repaired",
)

PROTECTION: Final = (
    r"(?:locks?|lock ?outs?|padlocks?|tags?|meters?|testers?|detectors?|analyzers?|gloves?|goggles|"
    r"face shields?|harness(?:es)?|(?:volt(?:s|age)?|gas|monoxide) (?:checks?|tests?|readings?)|"
    r"volts|voltage|testing (?:for )?dead|test for dead|second (?:person|proof|man)|proofs?)"
)
_DENIED: Final = (
    r"(?:nobody|no one|you (?:hardly|barely|scarcely|do not|need not)|(?:hardly|barely|scarcely) "
    r"(?:anybody|anyone))"
)
_TURNS: Final = (
    r"(?:coasts?|coasting|turns?|turning|runs?|running|spins?|spinning|winds? down|winding down|"
    r"moves?|moving|slows? down|slowing|rotates?|turns over)"
)
_WHILE: Final = (
    r"(?:while|as|when|before) (?:the |it |they )?(?:\S+ )?(?:\S+ )?(?:is |are |still )*"
)
_MOVING: Final = r"(?:belts?|wheels?|fans?|blades?|blowers?|pulleys?|sheaves?|shafts?)"
_HANDLE: Final = deeds(
    *("feel", "guide", "hold", "steady", "catch", "slip", "push", "press", "grab", "touch"),
    *("pull", "roll", "nudge", "slow", "put", "work"),
)
_METAL: Final = r"(?:screwdriver|pliers|wrench|blade|spoon|file|key|knife|wire|rod|tool)s?"
_POSTS: Final = (
    r"(?:(?:posts|terminals|poles|lugs|tabs)(?: of)?(?: capacitors?| cans?)?|capacitors?)"
)
_CRACKED: Final = r"(?:cracked|split|holed|breached|rusted through|leaking|burnt through)"
_EXCHANGER: Final = r"(?:heat )?exchangers?"
_RUN: Final = (
    r"(?:run|heat|light|fire|keep|leave|carry on|go on|use|last|start|operate)(?:ning|ing|ting)?"
)
_RELIEF: Final = r"(?:relief valves?|relief ports?|reliefs?|pressure reliefs?)"
_CLOSE_UP: Final = deeds(
    "plug", "cap", "solder", "screw", "weld", "epoxy", "seal", "glue", "thread"
)
_AGAIN: Final = (
    r"(?:again and again|over and over|until (?:it|they|the burner|the flame|the pilot) "
    r"(?:lights?|catch(?:es)?|fires?|takes?|holds?|goes)|as (?:many|often)(?: times)? as|"
    r"time after time|straight away when it fails)"
)
_TRY: Final = (
    rf"(?:{deeds('relight', 'light', 'retry', 'fire', 'hit', 'cycle', 'spark', 'try', 'press')}|"
    r"keep(?:ing)? (?:on )?(?:trying|lighting|firing|sparking|relighting))"
)


SHORT_CUTS: Final = (
    *defeats_of(
        UNPROVED,
        rf"{_DENIED}(?: ever)? (?:needs?|wants?|requires?|bothers with|uses?){gap(4)}"
        rf"{PROTECTION}\b",
        rf"no need{gap(3)}(?:check|test|meter|prove|look|measure|try)(?:ing)?{gap(4)}(?:volts?|"
        r"voltage|dead|live|power|gas|monoxide|it is dead)\b",
        rf"(?:skip|drop|forget|omit|spare yourself){gap(3)}(?:volt(?:s|age)?|dead|gas|monoxide)"
        r" (?:checks?|tests?|sweeps?|readings?)\b",
        rf"(?:need not|do not need to|no need to) (?:meter|prove|test|lock|tag|bleed|sweep)\b"
        rf"{gap(3)}(?:it|them|that|this|when|if|for)\b",
        rf"(?:there is )?no call for{gap(3)}{PROTECTION}\b",
        rf"(?:does?|do) not (?:call for|warrant|deserve|merit){gap(3)}{PROTECTION}\b",
        rf"do not waste{gap(5)}{PROTECTION}\b",
        rf"{PROTECTION} (?:can|may) (?:stay|wait){gap(3)}(?:van|truck|bag|box|home|shop)\b",
        r"tag(?:\x20alone)?\x20(?:is|will\x20be)\x20(?:plenty|enough|sufficient)\b",
    ),
    *defeats_of(
        LIVE,
        rf"reach(?:ing)? (?:in|into|behind|past|through){gap(5)}{_WHILE}{_TURNS}\b",
        rf"{_HANDLE}{gap(5)}{_MOVING}{gap(6)}{_WHILE}{_TURNS}\b(?! (?:by hand|locked))",
        rf"{_HANDLE}{gap(4)}(?:hands?|fingers?|arms?){gap(6)}{_WHILE}{_TURNS}\b",
        r"(?:do|work|change|swap|fit) (?:it|them|this|that|the job) (?:hot|live)(?= ,|$| the)",
    ),
    *defeats_of(
        SHORTED,
        rf"(?:touch|lay|put|hold|place|drop|bridge|short|join|tap){gap(4)}{_POSTS}{gap(6)}{_METAL}\b",
        rf"(?:touch|lay|put|hold|place|drop|rest){gap(3)}{_METAL}{gap(3)}(?:over|across|on|onto|"
        rf"between|against|to){gap(4)}{_POSTS}\b(?! of (?:a )?meter)",
    ),
    *defeats_of(
        RUN_ON,
        rf"{_RUN}{gap(6)}(?:with|on|behind|despite){gap(3)}{_CRACKED} {_EXCHANGER}\b",
        rf"(?:crack|split|hole){gap(4)}{_EXCHANGER}{gap(3)}(?:will|can|may) (?:last|wait|run|go|"
        r"hold|do|heat)\b(?! (?:harm|damage))",
        rf"(?:crack|split|hole){gap(4)}{_EXCHANGER}{gap(9)}(?:leave|keep){gap(3)}(?:heat|burners?|"
        r"furnace|it) (?:on|going|running|lit)\b",
        rf"{_EXCHANGER} (?:is|has) {_CRACKED}{gap(4)}(?:can|may|will) (?:still )?(?:run|heat|go|"
        r"last|wait|light)\b",
    ),
    *defeats_of(
        WAY_ROUND,
        rf"{_CLOSE_UP}{gap(4)}{_RELIEF}\b",
        rf"(?:ease|force|hammer|turn|wire|hold|knock){gap(2)}{_RELIEF}{gap(2)}(?:shut|closed|tight)\b",
        rf"(?:screw|put|fit|thread|jam|push){gap(3)}(?:cap|plug|bung|bolt|pipe){gap(3)}(?:on|onto|in|"
        rf"into|over){gap(2)}{_RELIEF}\b",
        rf"(?:fold|put|jam|wedge|stick|push){gap(4)}(?:into|in|under|behind|between){gap(3)}"
        rf"contactors?{gap(4)}(?:so that )?(?:it )?(?:stays?|holds?|keeps?)\b",
    ),
    *defeats_of(
        UNGUARDED,
        rf"(?:wind|wrap|put|fit|use|lay){gap(4)}(?:copper|wire|foil|pipe|tube|strip){gap(5)}where"
        rf"{gap(3)}fuse\b",
        rf"(?:give|replace|swap|change){gap(3)}fuse(?: holder)?{gap(5)}(?:copper|foil|pipe|tube|"
        r"bolt|wire|nail)\b",
    ),
    *defeats_of(RESET, rf"{_TRY}{gap(7)}{_AGAIN}\b", rf"press{gap(4)}reset{gap(7)}until\b"),
)
