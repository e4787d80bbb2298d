"""Words that say what a thing is or how it looks: the wires are red, that screw is hard to reach.

Every word has to be one of a part, of a look, or a little one. What moves, is on or off, open or
shut, hot, wet, loose, torn or burnt is none of them, nor is what somebody wears or has done. All of
this is common practice, no source.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.outside.numbers import whole_number
from troubleshoot.safety.hearing.vocabulary import stem, stems
from troubleshoot.safety.hearing.words import raw_words

_PARTS: Final = stems(
    "unit machine motor blower wheel fan blade blades shaft belt pulley coil fins fin filter "
    "filters board wire wires wiring lead leads terminal terminals screw screws bolt bolts nut "
    "hinge hinges bracket brackets clip label sticker nameplate plate number diagram drawing can "
    "capacitor contacts contact contactor transformer relay fuse pipe tube hose drain pan trap "
    "curb roof membrane gasket paint handle knob cover meter gauge gauges display scale "
    "thermostat jumper pins pin timer controller sensor damper actuator linkage burner burners "
    "orifice igniter compressor condenser evaporator economizer hood louver grille duct colors "
    "color stuff thing part parts model serial brand truck phone store hall office customer "
    "tenant owner"
)
_LOOKS: Final = stems(
    "red blue black white green yellow orange brown gray grey purple pink clear dark bright shiny "
    "painted new newer old older aged brand original dusty dirty rusty rusted corroded greasy "
    "oily bent pitted worn scratched faded stained clean cheap nice big small long short thick "
    "thin round oval flat dual single double hard easy stiff tight solid heavy light ugly weird "
    "odd different same reach read see match look looks looking seem seems made years year "
    "degrees amp cold sunny enough"
)
_LITTLE: Final = stems(
    "a an the this that these those is are was were be been it its my our his of to at by with "
    "for and but do does not no none have has had there here some all both each every one two "
    "three four five six seven eight nine ten twenty very quite pretty rather really so too "
    "little bit kind sort than as age like hold holds special nothing in"
)


def tells_of_looks(said: str) -> bool:
    """Whether a line says what something is or how it looks, and nothing else."""
    words = {stem(word) for word in raw_words(said) if whole_number(word) is None}
    return bool(words & _LOOKS) and words <= _PARTS | _LOOKS | _LITTLE
