"""Words that say that what sounds like a danger is of another matter, or of another day.

All are given as people spell them and kept by their stems.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.safety.hearing.vocabulary import stems

BANGING: Final = stems(
    "blower compressor contactor damper door duct economizer fan hatch linkage louver motor pump"
)
"""What bangs as it starts without any flame."""

MADE_TO_BURN: Final = stems(
    "appliance appliances boiler burner burners flame oven pilot range stove water-heater"
)
"""What burns as it is meant to: other appliances burn, the pilot burns."""

LIT: Final = stems("heater light unit")
"""Things that may be named with it: the pilot light, the heater's burner."""

LASTING: Final = stems(
    "alarm co crack dizzy exchanger freon gas gas-line headache hot jumper leak live lock propane "
    "refrigerant rollout shock sick smell tingle"
)
"""What does not pass with the day on which it was met, whatever happened there."""

PASSING: Final = stems(
    "bleeding burnt burned cut fell flooded hit hurt injured overflowing slipped soaked"
)
"""What happens in a moment, and is over on another day."""

AGAIN: Final = stems("again keeps now since still today")
"""What was met lately and is told with one of these is there."""

HISSING_ELSEWHERE: Final = stems(
    "air damper door duct grille piston txv expansion metering nitrogen steam toilet "
    "can cap capacitor gas gas-line union refrigerant coil flare schrader braze bend suction "
    "discharge liquid hot-gas condenser evaporator drier a2l sensor detector "
    "terminal terminals pin pins fusite plug tank cylinder bottle drum jug"
)
"""Beside a hiss they say whose it is: it is no hiss that may be any gas."""

OF_A_TERMINAL: Final = stems("pin pins fusite terminal terminals")
"""Beside the compressor they say that the gas which blows there is refrigerant."""

OF_INSULATION: Final = stems("gohm gohms infinite infinity meg megohm megohms megs mohm mohms")
"""Behind what is read to ground they say that it was read, and the number says what it shows."""

NEARLY: Final = stems("nearly almost about near")
"""Before a fall they say that nobody fell."""

WORN_OR_WRITTEN: Final = stems(
    "boundary category clothing gear gloves helmet hood jacket label labels pants permit rated "
    "shield shirt sticker study suit training"
)
"""Behind an arc flash they say that it is what is worn or written against one."""

TAKEN_OUT: Final = stems(
    "removed cleared cleaned gone pulled knocked swept took taken out all now it i was them "
    "long-ago lately"
)
"""What a clause says that tells of nothing but a nest that is out."""

DESERTED: Final = stems("empty abandoned dead vacant deserted")
"""What is said of a nest in which nothing lives."""

BRIDGED: Final = stems("jumper jumpered jumped bypass bypassed bridged shunted strapped")
"""Beside a rollout they say that it was got round, and not that it has opened."""

COVERED: Final = stems("capped taped insulated covered nutted boxed sleeved shrunk")
"""Said of bare ends they say that nothing lies bare."""

TO_BE_DONE: Final = stems("need should must half")
"""Beside what would mend it they say that it is not mended yet."""

KEEPING: Final = stems(
    "changed replaced new fresh battery batteries tested test calibrated installed fitted mounted "
    "expired bought"
)
"""Straight beside an alarm it is told how that is kept, and not that it sounds."""

OF_MONEY: Final = stems(
    "price prices bill bills cost costs invoice quote money budget rent paperwork parking traffic"
)
"""What gives people a headache in a manner of speaking."""

OF_FIGURES: Final = stems(
    "sales deal order plan permit demand usage consumption pressure head amps temperature load"
)
"""What goes through the roof, or falls through, and hurts nobody by it."""

SURPRISED_AT: Final = stems("at by")
TO_LEARN: Final = stems("see find hear learn know notice read")
"""Behind "shocked to" they say that it is surprise."""

BETTERED: Final = stems("old last other original previous competition")
"""What something new smokes, being better."""

OF_CONDUCTORS: Final = stems(
    "l1 l2 l3 t1 t2 t3 black red blue white brown orange yellow green neutral"
)

NAMING: Final = stems("is are goes go lands landed runs connected connects called marked")

NOT_NAMING: Final = stems(
    "still glowing melted melting burning burnt smoke turned gone went charred live energized "
    "power volts dead reads shows"
)
"""The hot wire is L1, black: that names a conductor, and says nothing of what it feels like."""

LIGHTING: Final = stems(
    "igniter ignition ignites ignite lit unlit light lighting lights burner burners pilot flame "
    "gas inducer furnace strong weak"
)
"""Said anywhere beside a spark they say that it lights a burner: it sparks but won't light."""

SPREADING: Final = stems(
    "coming flying shooting jumping pouring shower everywhere out from smell leak hissing smoke "
    "throwing spitting"
)
"""Beside a spark these say that it is where it should not be, or may light what leaks."""

OF_OTHER_MATTERS: Final = KEEPING | OF_MONEY | OF_FIGURES | NAMING | TO_LEARN | DESERTED
"""None of these is a mistyped word of danger."""
