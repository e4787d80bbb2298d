"""Plain sentences of a mechanic at looks with hands in and at safety steps; none tells of a danger.

Written before what hears them was changed: FOUND and DONE were looked at while it was, those APART
only counted. The test, what is typed there, what is meant.
"""

from __future__ import annotations

# fmt: off
FOUND: tuple[tuple[str, str, str], ...] = (
    ("air-filters", "solid gray on the return side, air barely gets by", "loaded"),
    ("air-filters", "one row is bowed in, media pulled out of the frame", "collapsed"),
    ("air-filters", "two inch in a one inch rack, air goes around", "wrong-type"),
    ("evaporator-coil-face", "you can read a paper through it, fins straight", "clean"),
    ("evaporator-coil-face", "fins combed over flat by a hose", "fins-bent"),
    ("blower-belt", "ribs have cracks every inch", "cracked"),
    ("blower-belt", "nice and tight, no cracks, lines up", "good"),
    ("blower-wheel", "clean as a whistle, set screw tight", "clean"),
    ("contactor-contacts", "nice and silver, flat faces", "clean"),
    ("capacitor-appearance", "top is domed like a dinner roll", "bulged"),
    ("wiring-burn-marks", "all nice colors, nothing cooked", "clean"),
    ("drain-pan", "half inch of scum in it, outlet plugged", "standing-water"),
    ("flame-rod", "little bit of white powder on the tip", "coated"),
    ("burner-orifices", "spider web in number three", "blocked"),
    ("txv-bulb-mounting", "clamped at four o'clock, insulation tape is gone", "uninsulated"),
    ("condenser-fan-hand-spin", "gritty and stops after half a turn", "drags"),
    ("control-fuse", "three amp purple one, element is whole", "good"),
    ("board-code", "three blinks and a pause", "code-shown"),
    ("condenser-coil-face", "grass clippings all over the bottom foot", "dirty"),
    ("ice-on-coil", "suction line is white back to the shell", "iced"),
)
FOUND_APART: tuple[tuple[str, str, str], ...] = (
    ("air-filters", "these are nice and white, new set", "clean"),
    ("air-filters", "pleats are damp along the bottom row", "wet"),
    ("evaporator-coil-face", "lint mat on the lower third", "dirty"),
    ("evaporator-coil-face", "white with frost on the left side only", "iced"),
    ("blower-belt", "shiny sides, squeals when it pulls in", "slipping"),
    ("blower-belt", "snapped, lying in the bottom", "broken"),
    ("blower-wheel", "quarter inch of crud on every vane", "dirty"),
    ("contactor-contacts", "points are black and rough on the middle pole", "pitted"),
    ("capacitor-appearance", "flat top, dry, no rust", "normal"),
    ("wiring-burn-marks", "lug on L2 is brown and brittle", "scorched"),
    ("drain-pan", "slimy green but it runs out", "drains"),
    ("control-wiring-look", "nicked on the edge of the knockout, copper shows", "rubbed"),
    ("flame-rod", "shiny, porcelain ok, lead tight", "clean"),
    ("heat-exchanger-look", "light surface rust, no holes that i can find", "rust"),
    ("condenser-fan-hand-spin", "spins easy and coasts", "free"),
    ("contactor-movement", "pushes in and snaps back fine", "free"),
    ("board-code", "green light blinking slow like it should", "normal"),
    ("thermostat-settings", "set to cool at 70, room says 78", "correct"),
    ("condenser-coil-face", "washed last spring, still see through it", "clean"),
    ("ice-on-coil", "bone dry, no frost anywhere", "none"),
)
"""The test, what is typed there, and what is meant by it."""
DONE: tuple[tuple[str, str], ...] = (
    ("tell-occupants", "told the store manager and the kitchen, they're fine"),
    ("lockout", "my lock and tag are on the switch, key in my pocket"),
    ("lockout", "locked it out"),
    ("verified-dead", "dead on all legs, 0.1 v"),
    ("panels-off", "took the blower panel off, set it flat"),
    ("panels-on", "buttoned up, all the screws back in"),
    ("tools-clear", "hands out, tools in the bag, clear"),
    ("lock-off", "lock is off, switch is on"),
    ("restart-and-watch", "comes right up, everything turning"),
    ("gauges-on", "hooked up, hoses purged"),
    ("gauges-off", "gauges off, caps back on tight"),
    ("gas-cock-shut", "cock is shut"),
    ("gas-cock-open", "opened it up slow"),
    ("tell-fire-panel", "panel is on test, talked to the monitoring company"),
    ("stop-by-controls", "everything quit, fan coasted down"),
)
DONE_APART: tuple[tuple[str, str], ...] = (
    ("tell-occupants", "talked to the front desk, good to go"),
    ("lockout", "switch pulled, locked, tagged"),
    ("verified-dead", "zero on all three to each other and to ground"),
    ("tester-proof", "meter works, reads 120 at the receptacle"),
    ("panels-off", "panels are off and laid down"),
    ("panels-on", "both panels back on and screwed down"),
    ("tools-clear", "nothing left in there, all clear"),
    ("lock-off", "took my lock off and threw the switch on"),
    ("restart-and-watch", "blower started, condenser too"),
    ("gauges-on", "gauges hooked on both ports"),
    ("combustible-gas-sweep", "nothing on the sniffer, all joints"),
    ("gas-cock-shut", "turned it crosswise, shut"),
    ("manometer-on", "manometer hooked to the outlet tap"),
    ("capacitor-discharge", "bled it, reads 1 volt"),
    ("stop-by-controls", "it's all stopped"),
)
"""The step, and what is typed there."""
