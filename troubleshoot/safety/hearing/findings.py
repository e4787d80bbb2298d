"""Whether a line tells what a part is like, and nothing of what the work stands on: belt is glazed.

Each clause has to name what a part is like, or a part, and most of its words have to be known here.
One word of a lock, a switch, a meter, of power or gas, of somebody, or of what moves, lights up or
is back makes it no such line; so does whatever happened. A part that may carry volts or turn is
only told of by its looks. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety.hearing.happenings import happens
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.vocabulary import stem, stems
from troubleshoot.safety.hearing.words import raw_words

_PHRASES: Final = re.compile(
    r"\b(?:you can (?=see|read|feel)|(?:air|light) (?:(?:still|just|barely|hardly|only|easily) )?"
    r"(?:gets|goes|comes|shows|blows) (?:by|past|around|through)|"
    r"(?:(?:i|you) )?(?:can|cant|cannot) (?:barely |hardly |still )?see (?:any )?"
    r"(?:(?:day)?light )?through(?: (?:it|them))?|"
    r"(?:it )?(?:lines|lined) up|(?:snaps|springs) back|"
    r"spins (?:free|freely|easy|easily|fine|good|nice|smooth|smoothly)|"
    r"(?:drains|runs) (?:out|away|off)(?: (?:fine|free|freely|good|slow|slowly))?)\b"
)
"""What air, light, water or a part does that shows what it is like."""
_PLACED: Final = re.compile(
    r"\bon (?=(?:the|this|that|it|one|both|all|each|every|top|its|l[123]|number)\b)"
    r"|(?<=\bburnt )up\b|(?<=\bburned )up\b|(?<=\bswelled )up\b|(?<=\bpuffed )up\b"
    r"|\bback (?=(?:to|side|of|row|half|edge)\b)|(?<=\bthe )back\b"
    r"|\b(?:a )?(?:little )?bit (?=of\b)|\b(?:on )?[lt][123]\b"
    r"|\b(?:at|on) the curb(?: edge)?\b"
)
"""Little words that tell where on a thing it is, and are of no state there."""
_LINE: Final = re.compile(r"\b(?:suction|liquid|drain) lines?\b")

_LOOKS: Final = stems(
    "dirty dirt filthy grimy greasy gray grey black white brown green silver shiny dull plugged "
    "clogged packed loaded matted mat caked coated crusted fuzzy fuzz lint dust dusty hair fur "
    "cottonwood leaves clippings crud gunk slime slimy scum algae mud powder scale web spider "
    "nest bug ant cracked cratered torn frayed glazed worn pitted pits chewed gnawed nicked "
    "rubbed chafed burnt burned cooked scorched charred brittle rusty rust corroded corrosion "
    "bulged domed swollen swelled puffed oily oil iced frosted frosty damp wet water dry bent "
    "mashed smashed crushed collapsed bowed warped gritty rough smooth clean good fine ok okay "
    "normal nice even perfect new old original ragged flat faded sagging red blue purple yellow "
    "soot solid ol"
)
_POSITIONS: Final = stems(
    "straight stuck seized budge tight loose wobbly blocked empty full whole blown open shorted "
    "grounded split bare missing stretched slack oversized undersized gone jammed noisy"
)
"""What may tell of a contactor that is stuck in, or of a switch: of parts without volts only."""
_PARTS: Final = stems(
    "filter media pleat rack row slot coil fin face tube cup vane wheel belt rib pulley sheave "
    "bearing bearings hub blade rod porcelain orifice bulb strap tape insulation pan outlet drain "
    "trap element splice knockout point pole can linkage damper distributor screw cap exchanger "
    "seam weld bracket spring bushing hose piston strainer screen louver pipe tip burners fuse "
    "winding windings"
)
_CARRYING: Final = stems(
    "fan blower motor compressor condenser inducer wire terminal board relay contactor contacts "
    "transformer lug capacitor sensor unit shaft rotor"
)
"""Parts that may be live or turn."""
_OF_THE_WORK: Final = stems(
    "lock unlocked padlock tag tagged tagout hasp key disconnect isolator switch breaker handle "
    "power juice electric electricity current amps volts voltage energized energised live hot "
    "warm charge bled bleed bleeder resistor meter tester multimeter probe lead clip clamp jumper "
    "cord cover panel door lid hatch curb deck roof glove shield visor suit ppe mask sleeve gas "
    "cock valve regulator ladder edge rain drizzle wind storm thunder lightning snow sniffer "
    "detector flood puddle fire smoke flame glow lamp neon pilot light lit display led beep alarm "
    "siren generator genset inverter backup feed fed source ems bms automation controller remote "
    "radio phone call start run running ran turn spinning hum humming buzz click moves creeping "
    "rolling shakes hissing dripping on off back again up closed shut itself now yet gotten"
)
"""What the work stands on, what shows that it has gone, and how both change."""
_PEOPLE: Final = stems(
    "i im ive me my mine we our us he she they them him her his their you your nobody somebody "
    "someone anybody everybody helper partner watcher watch lookout spotter mate buddy apprentice "
    "guy man men woman kid boy tenant customer owner manager super janitor crew electrician "
    "plumber painter roofer contractor another other wrong different second third extra dead "
    "never forgot missed skipped without hand finger"
)
_LITTLE: Final = stems(
    "a an the this that these those is are was were be been it its of to at by with for as like "
    "than too very all both each every one two three four five six seven eight nine ten half "
    "quarter inch foot through across along around over most much little bit kind some no not "
    "none nothing any side bottom top middle left right lower upper front rear center return "
    "supply end here in there has have just only so barely still em"
)
_PARTED: Final = re.compile(
    r"[,.;:!?()]+(?:\s|$)|\s[-/]+\s|\b(?:and|but|because|so|then|though|while|with)\b"
)


def tells_a_finding(said: str) -> bool:
    """Whether a line tells how parts are found, and nothing of what the work stands on."""
    if hints(said):
        return False
    rest, shown = _PHRASES.subn(" ", without_apostrophes(said.lower()))
    rest = _PLACED.sub(" ", _LINE.sub("pipe", rest))
    parts = [words for part in _PARTED.split(rest) if (words := _told(part))]
    return bool(shown or parts) and not _happened(rest) and all(map(_is_of_a_part, parts))


def _told(part: str) -> list[str]:
    """The stems of a clause that tell something."""
    words = [stem(word) for word in raw_words(part) if whole_number(word) is None]
    return [word for word in words if word not in _LITTLE]


def _is_of_a_part(words: list[str]) -> bool:
    said = {*words}
    carries = not said.isdisjoint(_CARRYING)
    if said & (_OF_THE_WORK | _PEOPLE) or (carries and (said & _POSITIONS or not said & _LOOKS)):
        return False
    known = said & (_LOOKS | _PARTS | _POSITIONS)
    return bool(known) and len(said - known - _CARRYING) <= len(known)


def _happened(rest: str) -> bool:
    """Whether a clause tells of something that happened, and not what a part is like: plugged."""
    like = _LOOKS | _POSITIONS
    words = (w for w in rest.split())
    return happens(" ".join(w for w in words if stem(w.strip(",.;:!")) not in like))
