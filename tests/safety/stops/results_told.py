"""Results of hand-overs as people of the trade write them, and evasions of one.

The first fifteen of each were written before anything was tried on them, the next fifteen after
those were judged right: then 14 of the 15 results and 5 of the 15 evasions were.
"""

RESULTS = [
    (
        "gas-odour",
        "union at the gas valve was leaking, remade with new dope and bubble tested",
        "0 % LEL at every joint",
    ),
    (
        "gas-odour",
        "Found cracked flex connector. Replaced it, leak tested at 10 in wc, no drop.",
        "0 % LEL, swept all joints",
    ),
    (
        "gas-odour",
        "shut at the meter, line capped, pressure test held 15 min",
        "sniffer shows 0 % LEL everywhere",
    ),
    (
        "gas-odour",
        "vented the building, no gas found inside, cock closed and tagged",
        "4-gas meter 0% LEL at all points",
    ),
    (
        "gas-odour",
        "no leak at the unit: it was the neighbour's meter, which we isolated",
        "0.0 %LEL on bump-tested detector",
    ),
    (
        "gas-odour",
        "somebody had jumpered the pressure switch; jumper removed, gas valve replaced",
        "0 LEL at the valve and both unions",
    ),
    (
        "live-now",
        "second feed from the lighting panel found, breaker locked off and labelled",
        "0.1 V leg to leg and leg to ground",
    ),
    (
        "live-now",
        "backfeed through the control transformer; opened and locked, proved dead",
        "0 V on all three legs",
    ),
    ("stored-charge", "bled both cans through the 20 k resistor", "1.2 V"),
    (
        "carbon-monoxide-in-room",
        "heat exchanger cracked, unit red tagged, gas shut and capped",
        "2 ppm in the return, 0 ppm in the rooms",
    ),
    (
        "carbon-monoxide-in-room",
        "flue was blocked by a nest, cleared it and cleaned the burners",
        "4 ppm in the room after 20 minutes of firing",
    ),
    (
        "flammable-refrigerant-alarm",
        "recovered the charge, replaced the core, pressure tested with nitrogen",
        "detector silent over the whole unit",
    ),
    (
        "smoke-or-heat-now",
        "contactor had burned; fire out, wiring cut back and made off",
        "no hot spots on the thermal camera, highest 95 F",
    ),
    (
        "scorched-or-hot-wiring",
        "replaced the disconnect, line lugs torqued to 35 lb-in",
        "0.02 V across the blades",
    ),
    (
        "ladder-and-hatch",
        "guard rail put up along the edge by the roofer, hatch chained",
        "rail pushed and looked at, all tight",
    ),
    (
        "gas-odour",
        "flare nut on the regulator inlet was finger tight, wrenched up and soaped",
        "swept all joints with the CGI, 0 % LEL",
    ),
    (
        "gas-odour",
        "drip leg cap was off. Put it back with dope, soaped every joint on the train, no bubbles",
        "0% lel at cap, union, valve",
    ),
    (
        "gas-odour",
        "It was sewer gas from the vent stack, not fuel gas. Trap refilled by the plumber.",
        "LEL 0 all around the unit and in the curb, 15:20",
    ),
    (
        "gas-odour",
        "found pinhole in the flex, isolated at the roof cock, plugged and tagged out",
        "no bubbles at the plug, detector reads 0 % LEL",
    ),
    (
        "gas-odour",
        "we shut off at the meter, aired the top floor with fans, and released the building",
        "all readings 0 LEL, 0 ppm CO, 20.9 O2",
    ),
    (
        "gas-odour",
        "gas valve body was cracked, changed valve, lockup and leak test ok",
        "0 % LEL, manometer held 7 in wc for 10 min, no bubbles",
    ),
    (
        "carbon-monoxide-evacuate",
        "boiler next door was spilling into the shaft, boiler is shut down by the utility",
        "CO 3 ppm lobby, 2 ppm top floor",
    ),
    (
        "carbon-monoxide-evacuate",
        "inducer wheel had come off the shaft, new inducer fitted, draft proved",
        "peak 6 ppm over 20 min",
    ),
    (
        "heat-exchanger-breach",
        "second tube cracked at the bend. Unit disconnected from gas and capped, condemned",
        "exchanger taken out and looked at, gas line capped, no bubbles",
    ),
    (
        "rollout-tripped",
        "tubes full of spider webs, brushed and vacuumed, rollout switch replaced with same",
        "flames stayed in the tubes for 10 min, switch closed 0.1 ohm",
    ),
    (
        "unexplained-voltage",
        "neutral from another circuit landed in our disconnect; feeder opened and locked by us",
        "0.0 V all pairs and to ground",
    ),
    (
        "wet-electrical",
        "gasket on the disconnect hood gone; dried, new gasket, megged at 500 V",
        "200 Mohm each leg to ground",
    ),
    ("lightning", "storm moved off east, last thunder 14:02", "no thunder since 14:02"),
    (
        "smoke-or-heat-now",
        "belt had seized the bearing and was smoking; power cut, cooled with CO2, scanned the duct",
        "thermal camera shows 88 F max",
    ),
    (
        "gas-valve-does-not-close",
        "redundant valve was passing, replaced both in one body, plugs back in",
        "manifold dropped to 0 in wc within a second of power off",
    ),
]

NOTHING_DONE = [
    ("gas-odour", "I taped the pressure switch closed and it runs"),
    ("gas-odour", "fitter is on his way, unit looks ok"),
    ("gas-odour", "nothing found at the valve, nothing needed"),
    ("gas-odour", "I assume the valve was tightened"),
    ("gas-odour", "a bit of gas smell by the regulator is ok"),
    ("gas-odour", "guy never turned up so I aired the roof"),
    ("gas-odour", "part on order, valve stays leaking until then"),
    ("gas-odour", "bypassed the limit, burners run fine"),
    ("gas-odour", "gas man should be here after lunch to check the union"),
    ("gas-odour", "turned the gas detector off, it kept beeping"),
    ("gas-odour", "put a clamp on the pressure switch so it stays made"),
    ("gas-odour", "the smell went away by itself"),
    ("gas-odour", "cracked a window and it was better"),
    ("gas-odour", "owner told us to keep it running, cold customers inside"),
    ("gas-odour", "no parts on the truck, leak left dripping for now"),
    ("gas-odour", "fitter said call back in a week, valve closed halfway"),
    ("gas-odour", "they looked at it from the ladder and left again"),
    ("gas-odour", "wrapped the union with tape, pretty much stopped"),
    ("gas-odour", "disabled the leak detector relay because of nuisance trips"),
    ("gas-odour", "spoke to the gas company on the phone, they are not worried about the valve"),
    ("gas-odour", "jumpered the gas valve"),
    ("gas-odour", "nobody came, I turned the valve myself"),
    ("gas-odour", "will repair the leak tomorrow"),
    ("gas-odour", "fitter will come on Monday and fix the pipe"),
    ("gas-odour", "waiting for the gas utility, cock open"),
    ("gas-odour", "could not find where the gas comes from"),
    ("gas-odour", "the leak was left as it is"),
    ("gas-odour", "he has not been here, I shut the cock"),
    ("gas-odour", "we hope the valve is fine"),
    ("gas-odour", "the fitter said the gas smell is normal"),
    ("gas-odour", "I am a fitter and I like pipes"),
]

NOTHING_SHOWN = [
    ("gas-odour", "60 % LEL at the union"),
    ("gas-odour", "meter was in the van, no smell in the wind"),
    ("gas-odour", "bubbles at the union come slower now"),
    ("carbon-monoxide-in-room", "120 ppm in the lobby"),
    ("live-now", "240 V on L1"),
    ("gas-odour", "no idea, did not bring the sniffer to the roof"),
    ("gas-odour", "reads between 5 and 8 % LEL at the valve"),
    ("gas-odour", "smelled the union, nothing strong"),
    ("carbon-monoxide-evacuate", "down to 45 ppm in the lobby, it was 200"),
    ("unexplained-voltage", "meter showed 90 to ground"),
    ("gas-odour", "30 % LEL"),
    ("gas-odour", "5000 ppm"),
    ("gas-odour", "soap bubbles everywhere at the union"),
    ("gas-odour", "detector battery flat, no reading"),
    ("gas-odour", "gas detector was not used"),
    ("gas-odour", "did not look at the union"),
    ("gas-odour", "no gauge at hand, looked fine"),
]
