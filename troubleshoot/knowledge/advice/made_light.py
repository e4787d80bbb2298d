"""Dangers made light of: it will last the winter, nobody locks out for that, only an ounce."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.advice.defeats import defeats_of
from troubleshoot.knowledge.advice.practices import FLAME, LET_GO, LIVE, SHORTED, UNPROVED
from troubleshoot.knowledge.advice.reckless import FALL
from troubleshoot.knowledge.advice.short_cuts import PROTECTION, RUN_ON
from troubleshoot.knowledge.advice.wording import deeds, gap

MIXED: Final = (
    "a refrigerant other than the plate's",
    "say: the one on the data plate, weighed in",
)
MADE_LIGHT: Final = ("that a danger is none", "say what is done about it, and by whom")

_MOVING: Final = r"(?:spinning|turning|running|moving|coasting|rotating|whirling|revolving|slowing)"
_PARTS: Final = (
    r"(?:belts?|fans?|fan blades?|blades?|blowers?|wheels?|sheaves?|pulleys?|shafts?|couplings?|"
    r"bearings?|props?|rotors?)"
)
_BODY: Final = (
    r"(?:fingers?|fingertips?|thumbs?|hands?|palms?|knuckles?|arms?|elbows?|knees?|gloves?|"
    r"gloved \w+|boots?|foot|shoes?)"
)
_GOES: Final = (
    r"(?:spins?|runs?|turns?|moves?|rotates?|coasts?|goes round|winds down|is (?:on|up to speed)|"
    rf"is (?:still )?{_MOVING}|slows? down|comes to rest)"
)
_WHILE: Final = rf"(?:while|as|when|with|before|until) (?:it|they|the {_PARTS}|that) (?:still )?"
_LAYS: Final = deeds(
    *("put", "lay", "hold", "rest", "press", "run", "touch", "stick", "use", "let", "drag"),
    *("ride", "place"),
)
_THING: Final = (
    r"(?:rags?|sticks?|boards?|rods?|gloves?|screwdrivers?|brooms?|broomsticks?|two by fours?|wood|"
    r"pliers|wrench(?:es)?|handles?|pieces?|blocks?|bars?|towels?|shoes?|boots?|cloths?|brush(?:es)?)"
)
_PUSHES: Final = deeds(
    *("stuff", "stick", "put", "push", "poke", "press", "hold", "jam", "throw", "wedge", "drop"),
    *("lay", "thrust", "ram", "shove", "lean", "drag", "feed", "slide"),
)
_STOPPED: Final = r"(?:stops?|slows?|brakes?|halts?|comes? to)"
_INTO: Final = r"(?:in|into|on|onto|against|at|to|between|through|under|along|over)"
_FLAME: Final = r"(?:lighters?|match(?:es)?|candles?|tapers?|matchsticks?|(?:burning|lit) \w+)"
_HUNT: Final = deeds(
    *("sniff", "search", "look", "hunt", "find", "check", "test", "go over", "trace", "probe"),
    *("sweep", "chase", "try", "scan", "follow", "walk", "pass", "wave", "run", "hold", "flick"),
    *("strike", "bring", "use", "light", "play", "move"),
)
_CHARGE: Final = (
    r"(?:hoses?|gauges?|manifolds?|cylinders?|jugs?|bottles?|charge|refrigerants?|freon|"
    r"(?:low|high) side|(?:service|access|liquid|suction) ports?|receivers?|r ?\d{2,3}\w?)"
)
_OFF: Final = deeds(
    *("burp", "puff", "spit", "crack", "open", "vent", "bleed", "dump", "empty", "blow", "purge"),
    *("release", "let", "drain", "spill", "clear", "snort", "blow off", "hiss"),
)
_SKY: Final = (
    r"(?:(?:to|into|at|over|toward) (?:the )?(?:sky|open air|air|wind|breeze|atmosphere|clouds|"
    r"parapet))"
)
_CAUGHT: Final = r"(?!.*\b(?:nitrogen|recover\w*|drain hose|condensate|natural gas|propane|dust)\b)"
_WHATEVER: Final = (
    r"(?:whatever|whichever|any (?:old )?(?=\w+ (?:is|that|will|you|in|from|does))|what (?:ever )?"
    r"(?=is|you|we))"
)
_STOCK: Final = r"(?:blends?|refrigerants?|freon|cylinders?|jugs?|drop ins?)"
_AT_HAND: Final = r"(?:van|truck|on (?:hand|the shelf)|you have|lying (?:around|round)|left over)"
_AS_THE_PLATE: Final = r"(?!.*\b(?:plate|label|nameplate|names|maker|recover\w*|form)\b)"
_BREACH: Final = (
    r"(?:hairlines?|cracks?|cracked|splits?|holes?|pinholes?|holed|rusted through|breach\w*)"
)
_LASTS: Final = (
    r"(?:(?:will|can|may|should|might|does|is) (?:\w+ )?(?:last|wait|hold|run|make it|"
    r"see (?:the|another|them)|get (?:them|you|us) (?:through|by)|stay (?!off)|be left|fine|good|"
    r"ok|all right|nothing|harmless|no harm|normal|no (?:problem|worry|danger|reason|hurry|matter)|"
    r"hurts? nobody)|gets? (?:them|you|us|it) through|never hurt|hurts? nobody)"
)
_IS_NONE: Final = (
    r"(?:(?:is|are|counts? as|passes? (?:as|for)) (?:\w+ ){0,2}?(?:normal|usual|fine|ok|okay|"
    r"harmless|nothing|expected|ordinary|common|all right|typical|acceptable|"
    r"no (?:worry|problem|danger|concern|reason|cause))|"
    r"happens? (?:on|to|in|with) (?:every|any|all|most))"
    r"(?= (?:,|in|for|on|with|at|and|here|so|to|when|after|before|during|unit|old)\b|$| ,)"
)
_NOT_SO: Final = (
    r"(?!.*\b(?:not|never|no longer|hardly|below|under|less|zero|0|unless|only when|flue|stack|"
    r"vent|air free)\b)"
)
_DENIES: Final = r"(?:nobody|no one|no mechanic|no pro|no technician|we never|(?<!\S\x20)who)"
_PROVES: Final = (
    r"(?:locks?(?: ?out)?|lock ?outs?|tags?(?: out)?|tests? (?:for )?dead|proves? dead|gloves? up|"
    r"ties? off|wears? (?:gloves|a harness|goggles)|meters?|checks? (?:for )?(?:volts|dead))"
)
_TRIFLE: Final = (
    r"(?:for|on|over|to (?:change|swap|do|fit|look|read))(?: just)? (?:an?|that|this|such|two|five|"
    r"ten|one|little|small|filters?|belts?)\b"
)
_NOT_TO_STOP_IT: Final = (
    r"(?!.*\b(?:lock|tag|read|watch|listen|count)\w*\b)"
    r"(?<!will\x20not\x20stop\x20,\x20)"
)
_SWITCH_OFF: Final = (
    r"(?:flip|flick|throw|pull|kill|cut|hit|knock|snap|trip|turn off|switch off|shut off)"
)
_FAR: Final = (
    r"(?:(?:over|in|across|beyond) the (?:next|other|river|hills?|valley|lake|county|\w+ county)|"
    r"far|distant|miles|(?:\w+ )?away|over there|on the horizon|behind|passing|grumbl\w+|low)"
)
_TIME_LEFT: Final = (
    r"(?:before (?:you|we) (?:go|come|climb|get|leave)|(?:an?|half an|another|one|two|some|"
    r"plenty of|enough|good) (?:hours?|time|minutes?|while|work)|\d+ minutes|"
    r"time (?:left|enough|to (?:finish|fit|change|swap|button|do))|"
    r"(?:finish|carry on|keep (?:on|going|working)|go on|stay|work on|get (?:it|the \w+) done))"
)


MADE_LIGHT_OF: Final = (
    *defeats_of(
        LIVE,
        rf"{_BODY}{gap(2)}{_INTO}{gap(3)}{_PARTS}{gap(6)}{_WHILE}{_GOES}\b"
        r"(?!.*\b(?:lost|costs?|loses?|gone|danger\w*)\b)",
        rf"{_LAYS}{gap(3)}{_BODY}{gap(3)}{_INTO}{gap(2)}{_MOVING} {_PARTS}\b",
        rf"{_PUSHES}{gap(3)}{_THING}{gap(2)}{_INTO}{gap(2)}{_MOVING} {_PARTS}\b",
        rf"(?:squeeze|pinch|flex|pluck|tug|tap|pat)(?:ing)?{gap(3)}{_PARTS}{gap(5)}{_WHILE}{_GOES}\b",
        rf"{_PUSHES}{gap(3)}{_THING}{gap(2)}{_INTO}{gap(2)}{_PARTS}{gap(4)}"
        rf"(?:to|and|so it|until it) {_STOPPED}\b(?! turning in)",
    ),
    *defeats_of(
        FLAME,
        rf"{_HUNT}{gap(6)}(?:with|by|using){gap(2)}{_FLAME}{gap(3)}(?:for|to find|where|until|"
        rf"and|,){gap(4)}(?:leaks?|gas|flares?|flickers?|smells?|hiss\w*)\b",
        rf"{_HUNT}{gap(3)}{_FLAME}{gap(3)}(?:along|round|over|past|by|near|at|under|across){gap(5)}"
        r"(?:valves?|unions?|joints?|burner box|pipes?|manifold|regulators?|cocks?|gas \w+)\b",
    ),
    *defeats_of(
        LET_GO,
        rf"{_OFF}{_CAUGHT}{gap(4)}{_CHARGE}{gap(4)}{_SKY}\b",
        rf"{_CHARGE}{_CAUGHT}{gap(8)}it is (?:only|just|hardly) (?:an?|one|two|few|some|couple)"
        rf"{gap(2)}(?:ounces?|pounds?|puffs?|whiffs?|breath)\b(?! (?:short|low|over|high|off|more|"
        r"less|under))",
    ),
    *defeats_of(
        MIXED,
        rf"(?:fill|top|charge|gas|add|put|use|mix|blend|pour|finish){_AS_THE_PLATE}{gap(5)}"
        rf"{_WHATEVER}{gap(5)}{_STOCK}\b",
        rf"(?:fill|top|charge|gas)(?: \w+)?{_AS_THE_PLATE}{gap(4)}{_WHATEVER}{gap(5)}{_AT_HAND}\b",
        rf"any{_AS_THE_PLATE}{gap(2)}(?:refrigerant|blend|freon|drop in){gap(5)}(?:(?:will|would) "
        r"(?:do|work|serve)|tops|fills|does)\b(?! (?:harm|damage))",
        rf"(?:mix|blend|top){_AS_THE_PLATE}{gap(4)}r ?\d+\w?{gap(3)}(?:with|into|and|on){gap(2)}"
        r"r ?\d+\w?\b",
    ),
    *defeats_of(
        RUN_ON,
        rf"exchangers?{gap(2)}(?:has|have|is|with|shows?|got){gap(4)}{_BREACH}{gap(6)}{_LASTS}\b",
        rf"{_BREACH}{gap(3)}(?:in|on|of|at){gap(4)}exchangers?{gap(6)}{_LASTS}\b",
    ),
    *defeats_of(
        MADE_LIGHT,
        rf"(?:co|monoxide|carbon monoxide){_NOT_SO}{gap(8)}{_IS_NONE}",
        rf"(?:smell of gas|gas smell|gas odor|odor of gas|whiff of gas|raw gas|flame rollout|"
        rf"rolling flames?|swollen (?:capacitor|can)|bulged can|arcing|tingle|bare live \w+|"
        rf"delayed ignition|bang at light off){_NOT_SO}{gap(6)}{_IS_NONE}",
    ),
    *defeats_of(
        SHORTED,
        rf"(?:wipe|stroke|brush|rub|touch|tap|cross|kiss|swipe|flick|drag|scratch){gap(4)}"
        rf"(?:capacitors?|cans?)(?: (?:terminals?|posts?|tabs?|spades?|tops?))?{gap(3)}(?:with|by|"
        rf"using){gap(5)}(?:screwdriver|pliers|wrench|wire(?! brush)|spoon|knife|file|key)\b"
        r"(?!.*\b(?:metered|discharged|zero|dead)\b)",
    ),
    *defeats_of(
        UNPROVED,
        rf"{_DENIES} {_PROVES} {_TRIFLE}",
        rf"(?:not|never|rarely|seldom) bothers? (?:with|about|to){gap(3)}{PROTECTION}\b",
        rf"(?:leave|keep){gap(2)}{PROTECTION} (?:at home|in the (?:truck|van|box|shop|bag))\b",
        rf"{PROTECTION} (?:is|are) (?:only |just )?for{gap(1)}(?:electricians|beginners|rookies|"
        r"apprentices|inspectors|the (?:office|inspector|book)|show|cowards|big jobs|long jobs)\b",
        rf"{_NOT_TO_STOP_IT}(?:just|simply|only|merely)(?: (?:have|has|need|needs) to)? "
        rf"{_SWITCH_OFF}{gap(2)}(?:disconnect|switch|breaker|handle)(?: (?:and|then|,)|$)",
    ),
    *defeats_of(
        FALL,
        rf"(?:thunder|lightning|storm)(?!.*\b(?:no|not|never|get off|leave|pack|off the roof|"
        rf"(?<!before\x20you\x20)(?:come|climb) down)\b){gap(3)}{_FAR}{gap(6)}{_TIME_LEFT}\b",
    ),
)
