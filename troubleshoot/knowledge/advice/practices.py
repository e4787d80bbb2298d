"""Advice that is bad without any device: charge let go, live work, proofs left out, flames."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import UNGUARDED, WAY_ROUND, defeats_of
from troubleshoot.knowledge.advice.wording import deeds, gap

LET_GO: Final = ("refrigerant let into the air", "say: recover it")
SHORTED: Final = (
    "a capacitor shorted with a tool",
    "say: discharge it through a resistor and meter it",
)
RESET: Final = (
    "a tripped safety reset without finding out why",
    "say: find the cause before one reset",
)
UNPROVED: Final = ("a proof or protection left out", "say that it is done, and when")
LIVE: Final = ("hands on live or turning parts", "say: lock out and prove it dead, or read it only")
FLAME: Final = ("a flame, gas or pressure where it can explode", "say how it is done safely")


_GAS: Final = r"(?:refrigerants?|charge|r ?\d{2,3}\w?)"
_TOOL: Final = r"(?:screwdriver|pliers|wrench|blade|wire|jumper|file|tool|key|spoon)"
_CAN: Final = r"(?:capacitors?|cans?|terminals of \S+)"
_EMPTY: Final = deeds("short", "discharge", "bleed", "drain", "empty", "spark", "zap")
_CYCLE: Final = deeds("kill", "cycle", "cut", "drop")
_GONE: Final = r"(?:out|go|off|blow|escape|hiss|away|down|bleed|vent|spill|fly)"
_PROOF: Final = (
    r"(?:prov(?:e|ing)|proofs?|lock(?:ing)?(?: out| it)?|lockout|locked|tag(?:ging)?|"
    r"test(?:ing)?(?: for| it)? dead|verify(?:ing)?|bleed(?:ing)?|discharg(?:e|ing)|purg(?:e|ing)|"
    r"sweep(?:ing)?|gloves?|goggles|gear|harness|tie off|tying off|tied off|recover(?:ing|y)?|"
    r"ground(?:ing)?|second (?:proof|test|person)|monoxide|co reading|isolat(?:e|ing)|"
    r"meter(?:ing)? (?:the|each|every|it)|"
    r"shut(?:ting)?(?: off)?(?: the)?(?: gas)? (?:cock|gas|power)|kill(?:ing)? the power|"
    r"leak test(?:ing)?|meter first|detectors?|guards?|relief|regulators?|nitrogen|evacuat\w+)"
)
_NEEDLESS: Final = (
    r"(?:no need|needless|not (?:necessary|needed|worth)|need not|(?:do|does|will) not "
    r"(?:need|have|bother|waste time)|not bother|never (?:mind|bother)|no point|no sense|no reason|"
    r"skip(?:ping)?|save yourself|forget|omit(?:ting)?|dispense with|unnecessary|"
    r"waste of time|can leave out|may leave out|go without|do without|get by without|"
    r"get away without)"
)
_HANDS: Final = deeds(
    *("work", "change", "swap", "replace", "tighten", "torque", "fit", "pull", "land", "splice"),
    *("lift", "clean", "do", "wire", "repair", "reverse", "roll", "move", "connect", "disconnect"),
    *("unhook", "remove", "install"),
)
_THAT: Final = r"(?:it|them|the|an?|that|this|those|these|each|every|any|both|one|two|three)"
_LIVE: Final = (
    r"(?:(?:live|hot|energized)(?= (?:,|and|but|so|then|if|when|while|is|to|because|for)\b|$)|"
    r"under power|under load|while it is (?:live|hot|on|energized)|"
    r"with (?:the )?(?:power|unit|disconnect|switch|breaker) (?:still )?(?:on|closed|in)\b)"
)


_OPEN: Final = (
    r"(?:covers?|panels?|doors?|lid)(?: \S+){0,2}? (?:off|open|out|away|removed)|"
    r"(?:open(?:ed)?|behind (?:the |an? )?(?:open )?) ?(?:panels?|covers?|doors?)"
)
_POWER_ON: Final = (
    r"(?:with|while|leave|leaving|keep|keeping|and)(?: the| its)? (?:power|unit|current|juice|"
    r"disconnect|switch|breaker|call)(?: is| still)* (?:on|in|closed|live|up|running)"
)
_TOUCH: Final = (
    deeds("touch", "feel", "grab", "pull", "push", "press", "wiggle", "tug", "move", "poke", "lift")
    + r"(?: on| at| out| off)?"
)
_INNER: Final = (
    r"(?:terminals?|lugs?|leads?|wires?|wiring|contacts?|contactors?|bus ?bars?|conductors?|"
    r"connections?|connectors?|capacitors?|relays?|board|fuses?|blades?|spades?|tabs?)"
)
_SKIN: Final = r"(?:hands?|fingers?|fingertips?|thumbs?|knuckles?|tongues?|palms?)"
_BARE: Final = rf"(?:{_SKIN}|arms?|screwdrivers?|pliers|wrench(?:es)?|screw driver|knife)"
_OPEN_FLAME: Final = (
    r"(?:match(?:es)?|lighters?|candles?|open flames?|naked flames?|tapers?|"
    r"burning \S+|lit \S+)"
)
_JOINT: Final = (
    r"(?:unions?|joints?|fittings?|flares?|connections?|valves?|pipes?|lines?|leaks?|gas|"
    r"burners?|orifices?|manifolds?|pilots?|tubes?|cocks?|taps?)"
)


PRACTICES: Final = (
    *defeats_of(
        SHORTED,
        rf"{_EMPTY}{gap(5)}{_CAN}{gap(6)}{_TOOL}\b",
        rf"{_EMPTY}{gap(5)}{_TOOL}{gap(4)}{_CAN}\b",
        rf"(?:screwdriver|pliers|wrench){gap(3)}(?:across|over|between|to){gap(5)}{_CAN}\b",
    ),
    *defeats_of(
        LET_GO,
        rf"(?:vent(?:ing)?|dump(?:ing)?|releas(?:e|ing)|blow(?:ing)? (?:off|out|down)|"
        rf"bleed(?:ing)? (?:off|out|down)|let(?:ting)? (?:out|go|off|down|away|go of)|"
        rf"purg(?:e|ing)|crack(?:ing)? (?:off|out)){gap(4)}{_GAS}\b(?! port)",
        rf"let(?:ting)?{gap(6)}{_GAS}{gap(2)}{_GONE}\b",
        rf"(?:let|send|blow|open|put|run)(?:ting|ing|ning)?{gap(3)}(?:{_GAS}|hoses?|valves?|"
        rf"cylinders?|manifold){gap(4)}(?:to|into)(?: the)? (?:open )?(?:air|"
        r"atmosphere|sky|wind)\b",
        rf"(?:a little|some|a bit|a few ounces|a pound)(?: of)?(?: the)? {_GAS} (?:\S+ )?"
        rf"(?:out|off|away|go)\b(?!.*(?:cylinder|recover))",
        rf"(?:take|get|knock) (?:\S+ )?{_GAS} off\b(?!.*(?:cylinder|recover))",
        rf"(?:blow|bleed|dump|vent){gap(2)}{_GAS}{gap(2)}(?:off|out|down|away)\b",
        rf"(?:crack|open|loosen|cut|undo|break|pull|unscrew|depress){gap(4)}"
        rf"(?:valve|port|line|hose|core|flare|fitting|cap|pipe|tube)s?{gap(3)}(?:and|until|so|to|,)"
        rf"{gap(3)}(?:let|hiss\w*|empt\w+|gone|blow\w*|nothing (?:more )?comes|bleed\w*|walk away|"
        rf"drain\w*|run out)\b"
        rf"(?!{gap(3)}nitrogen)",
    ),
    *defeats_of(
        RESET,
        rf"reset(?:ting)?{gap(5)}(?:and|then|,){gap(2)}(?:go|let|leave|run|carry on|walk|start|"
        rf"light|keep|drive|move on|close up|be done|see (?:if|whether)|call it|try again)\b",
        r"reset(?:ting)?(?: \S+){0,6}? (?:until (?:it|they) \w+|again and again|over and over|"
        r"repeatedly|as often as|as many|(?:every|each) (?:day|morning|time|trip|visit|week)|daily|"
        r"in the morning|once a (?:day|week)|whenever|a few times|several times|to see)\b",
        rf"{_CYCLE}{gap(3)}power{gap(6)}let it (?:try|run|light|fire|start|go)\b",
        r"keep(?:ing)?(?: on)? (?:\S+ )?resetting\b",
        rf"(?:clear|press){gap(3)}(?:lockouts?|reset|fault){gap(3)}(?:and|until)"
        rf"{gap(2)}(?:let|leave|run|go|it \w+)\b",
    ),
    *defeats_of(
        UNPROVED,
        rf"{_NEEDLESS}{gap(5)}{_PROOF}\b",
        rf"{_PROOF}{gap(4)}(?:is|are) (?:a waste of time|unnecessary|not (?:necessary|needed)|"
        rf"needless|only for|optional)\b",
        rf"(?:do|start|work|open|reach|go|run|pull|change|replace|take|climb|swap|test|braze)"
        rf"{gap(5)}without (?:first )?(?:a )?{_PROOF}\b",
        rf"pen(?: tester)?{gap(3)}(?:is (?:enough|proof)|will do|proves(?! nothing)|"
        rf"(?:shows|tells you) (?:that )?it is (?:dead|safe))\b",
        rf"(?:trust|rely on|go by|take the word of){gap(3)}pen\b",
        rf"(?:needs?|wants?|requires?) no{gap(2)}{_PROOF}\b",
        r"(?:(?:assume|trust that) (?:\S+ ){0,3}|take it (?:as|for|to be|that it is) )"
        r"(?:dead|off)\b",
    ),
    *defeats_of(
        LIVE,
        rf"{_HANDS}(?: on)?(?! nothing) {_THAT}(?: \S+){{0,4}}? {_LIVE}",
        rf"work(?:ing)?(?: \S+)? {_LIVE}",
        rf"(?:reach|put|stick){gap(5)}(?:in|into|past|through|behind){gap(6)}while"
        rf"{gap(4)}(?:runs?|turns?|turning|running|spins?|spinning)\b",
        rf"(?:stop|slow|catch|grab|spin|start|push|help|nudge|turn)(?:ping|ning|ing)?{gap(4)}"
        rf"(?:wheel|fan|blade|belt|shaft|sheave)s?{gap(3)}(?:with|by){gap(2)}(?:hand|glove|foot|"
        rf"stick|boot|palm|finger)\b{gap(3)}(?:while|when|as){gap(3)}(?:runs?|turns?|on|coasts?|"
        rf"energized|hums?|buzz\w*)\b",
        rf"hands?{gap(2)}(?:on|to|against){gap(2)}(?:wheel|fan|blade|belt|pulley)s?{gap(3)}(?:stop|"
        rf"slow|catch)\b",
        rf"leave{gap(3)}(?:disconnect|power|switch|breaker) (?:on|closed|in) (?:and|while|, )"
        rf"{gap(2)}(?:mind|work|change|swap|reach|pull|keep)\b",
        rf"{deeds('stop', 'slow', 'brake')}{gap(4)}(?:wheel|fan|blade|blower|pulley|belt)s?{gap(2)}"
        rf"(?:with|by){gap(2)}(?:hand|glove|foot|boot|stick|rag|finger)s?\b",
        rf"{_POWER_ON}\b{gap(8)}{_TOUCH}{gap(4)}{_INNER}\b(?! (?:with|by){gap(3)}(?:probes?|"
        rf"meter|clamp)\b)",
        rf"{_TOUCH}{gap(4)}{_INNER}{gap(4)}{_POWER_ON}\b",
        rf"(?:put|stick|reach|slide|get|run)(?:ting|king|ing)?{gap(2)}{_BARE}{gap(2)}(?:in|into|"
        rf"inside|behind|through|past|between|under){gap(5)}(?:{_OPEN}|{_INNER})\b",
        rf"(?:put|stick|reach|slide|get)(?:ting|king|ing)?{gap(2)}{_BARE}{gap(4)}(?:and|to|,)"
        rf"{gap(2)}{_TOUCH}{gap(3)}{_INNER}\b",
        rf"{_TOUCH}{gap(3)}{_INNER}{gap(6)}(?:with|by|using){gap(3)}{_BARE}\b",
        rf"(?:put|lay|rest|hold|place|press|touch|run|wet|lick)(?:ting|ing)?{gap(3)}{_SKIN}{gap(2)}"
        rf"(?:on|over|across|onto|to|against|between|along){gap(3)}{_INNER}\b",
        rf"(?:give|giving){gap(3)}(?:wheel|fan|blade|belt|shaft|pulley)s?{gap(2)}(?:push|spin|shove|"
        rf"turn|nudge|flick|kick|help){gap(5)}(?:while|when|as){gap(3)}(?:hums?|humming|runs?|on|"
        rf"energized|tries|buzz\w*)\b",
        rf"(?:push|press|hold){gap(2)}in{gap(3)}contactors?{gap(4)}(?:by hand|with|to (?:run|"
        rf"start|see))\b",
    ),
    *defeats_of(
        WAY_ROUND,
        r"leav(?:e|ing) (?:\S+ ){0,2}?jumpers? (?:\S+ )?(?:in|on|there)\b",
        r"(?:tape over|bag|blind)(?:ging|ing)? (?:\S+ )?sensors?\b",
    ),
    *defeats_of(
        UNGUARDED,
        rf"(?:step|stand|sit|lean|walk|climb|rest|put){gap(3)}(?:on|over|onto){gap(2)}"
        rf"skylights?\b",
        r"cheater (?:plug|cord|adapter)\b",
    ),
    *defeats_of(
        FLAME,
        rf"(?:re)?light(?:ing)?{gap(4)}(?:by hand|with (?:a |the )?(?:match|lighter|torch|"
        rf"paper|rag))\b",
        rf"(?:look|check|test|search|find|feel|hunt|sniff)(?:ing)?{gap(4)}(?:leaks?|gas){gap(4)}(?:with|"
        rf"by){gap(2)}(?:match|flame|lighter|candle|torch|burning \S+|lit \S+)\b",
        rf"(?:light|strike|hold|run|move|pass|take|bring|put|use|burn)(?:ing)?{gap(2)}"
        rf"{_OPEN_FLAME}{gap(3)}(?:at|by|near|to|along|over|under|round|beside|against|for|on)"
        rf"{gap(3)}{_JOINT}\b",
        rf"(?:match|lighter|candle|flame){gap(4)}(?:finds|shows|will find|along|over|under)"
        rf"{gap(4)}(?:leaks?|joints?|fittings?|unions?)\b",
        rf"(?:use|with|by|connect|try|fill|pump|put|charge|blow|pressuriz\w+){gap(4)}(?:oxygen|"
        rf"acetylene|shop air|compressed air|air compressor){gap(5)}(?:pressur\w+|leak|circuit|"
        rf"system|test|line|coil)\b",
        rf"(?:pressur\w+|leak test|test|blow|fill)(?:ing)?{gap(5)}(?:with|by){gap(2)}(?:oxygen|"
        rf"acetylene|shop air|compressed air)\b",
        rf"(?:heat|warm|boil){gap(2)}(?:cylinder|tank|bottle|drum|jug){gap(3)}(?:with|by|over)"
        rf"{gap(2)}(?:torch|flame|burner)\b",
        rf"(?:braze|solder|weld|unsweat|sweat|torch|heat|cut)(?:ing)?{gap(5)}(?:under pressure|"
        rf"with (?:the |its )?(?:charge|refrigerant|pressure) (?:still )?in|while (?:it is )?"
        rf"(?:charged|under pressure|full))\b",
        rf"(?:fill|filling){gap(4)}cylinder{gap(3)}(?:full|to the (?:top|brim)|past 80)\b",
        rf"(?:light|fire|start|try|relight){gap(4)}(?:although|even if|while|though|despite)"
        rf"{gap(4)}(?:smells?|odor|gas)\b",
        rf"(?:open|opening){gap(4)}{devices.VALVES}{gap(4)}(?:by hand|with pliers) (?:to|and)\b",
    ),
)
