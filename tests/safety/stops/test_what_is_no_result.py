"""Devices defeated, makeshifts, nothing found, and readings of another gas or another time.

Regression: "gas fitter jumped the valve", "capped the leak with gum", "found nothing, left it",
"0 ppm CO", "0 % LEL before the repair" and a command were taken for the result of a gas STOP. Words
are matched: another turn of phrase may still pass, and the finding taken afresh decides.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult, in_words
from troubleshoot.safety.stops.shown import as_read

NOTHING_DONE = [
    "limit out of circuit now",
    "went over it with soap but came up empty",
    "smell gone when I got there, nothing to do",
    "stuffed a sock in the pipe",
    "flame sensor pulled so it would run",
    "jumpered the valve",
    "the gas fitter jumpered the valve",
    "gas fitter jumped the valve",
    "removed the limit",
    "pulled the flame sensor",
    "he could not find the leak and left",
    "found nothing, left it",
    "no fault found",
    "taped the leak with duct tape",
    "capped the leak with gum",
    "leak sealed with chewing gum",
    "plugged the pinhole with epoxy",
    "wrapped a rag around the union, tied with string",
    "unplugged the gas detector",
    "took out the pressure switch",
    "hot-wired the gas valve",
    "they bypassed the valve relay and left",
    "we put a jumper on the gas valve",
    "could not locate the smell, left site",
    "fitter saw no leak",
    "disconnected the alarm",
    "the rollout switch was removed",
    "siliconed the crack",
    "stopped the hole with a cork",
    "do thermostat-settings",
    "why not gas-valve-stuck",
    "leak stuffed with a rag",
    "looked at it, no leak found, left it alone",
    "silenced the alarm and reset it",
    "fitter got round the regulator with a hose clamp",
    "pressure switch taken out of the loop",
    "the union dripped, he bridged the low-gas switch and tightened the union",
    "put a strap across the rollout switch, resealed the union",
    "ran a lead from one terminal of the limit to the other; union replaced",
    "clipped a piece of wire over the limit, union tightened",
    "shorted across the pressure switch and replaced the union",
    "no leak found was a mistake",
    "no fault found, it was an error",
]

DONE = [
    "tightened the flare, 7 in wc held 15 min",
    "removed the gas valve and sent for a new one, line capped and tagged",
    "pulled burner assembly, replaced gasket, retested",
    "fitter found regulator diaphragm torn, changed it",
    "line purged outdoors, relit by the utility",
    "replaced the union on the inlet, soaped, no bubbles",
    "removed the old gas valve, new one fitted, soaped",
    "removed the failed limit and fitted a new one",
    "pulled the flame sensor, cleaned it and put it back",
    "could not find it at the valve, found it at the drip leg, remade with dope",
    "no leak found at the unit, cock shut and tagged, utility isolated the meter",
    "found the union sealed with putty, cut it out and put in a new union",
    "somebody had jumpered the limit; jumper removed, limit replaced",
    "pulled a rag out of the flue, burners cleaned",
    "disconnected the flex and capped the line",
    "tightened the union with two wrenches",
    "pipe joint doped and taped, union remade",
    "sealed the threads with gas rated dope, retested",
    "regulator vent was blocked, cleared the screen, lockup held",
    "shut at the meter, line capped",
    "replaced the duct smoke detector, tested with the panel",
    "removed the blockage from the pressure switch hose",
    "gas company found a leak on their side and repaired it",
    "cut off gas, locked the cock, tagged it",
    "valve was stuck open, replaced the valve and proved it closes",
    "found nothing at the unit: it was the neighbour's grill, shut and moved",
    "flue joint had come apart, put back and screwed",
    "old tape on the flex taken off, flex replaced",
    "no fuel gas: it was sewer gas, trap refilled",
    "found the limit bridged, bridge removed, limit replaced",
    "put a strap around the pipe, union remade",
    "bonding strap fitted across the flange, union remade",
    "no leak found on ours, it was a neighbour's tank, shut",
]

NO_REMEDY = [
    ("gas-odour", "smeared soap on the leaking joint"),
    ("gas-odour", "wrapped ptfe over the outside of the union"),
    ("gas-odour", "waited until smell was gone"),
    ("gas-odour", "said the cook's stove was the source"),
    ("gas-odour", "aired the curb and relit"),
    ("gas-odour", "replaced the leaking valve, not leak tested"),
    ("gas-odour", "replaced the valve but it hisses"),
    ("gas-odour", "clamped a rubber hose over the crack"),
    ("gas-odour", "swapped the gas detector for one that does not chirp"),
    ("gas-odour", "remade the union yesterday in my dream"),
    ("gas-odour", "replaced the union, undid it again"),
    ("gas-odour", "silicone over the joint"),
    ("gas-odour", "moved the sensor away"),
    ("gas-odour", "rubbed soap over the joint"),
    ("gas-odour", "taped ptfe round the outside of the elbow"),
    ("gas-odour", "let the gas clear by waiting"),
    ("gas-odour", "blamed the kitchen"),
    ("gas-odour", "opened the lid, aired it and lit it again"),
    ("gas-odour", "new valve in, no leak test"),
    ("gas-odour", "pushed a garden hose over the split pipe"),
    ("gas-odour", "changed the detector for a quieter one"),
    ("gas-odour", "tightened it in theory"),
    ("gas-odour", "put the old valve back in afterwards"),
    ("gas-odour", "turned the probe away from the joint"),
    ("live-now", "found no second feed, locked nothing"),
    ("live-now", "pulled the fuse and put it back"),
    ("live-now", "second feed locked, then unlocked again"),
    ("live-now", "the second feed was locked by nobody"),
    ("live-now", "second feed opened, no lock at hand"),
    ("live-now", "hung a note on the second feed"),
    ("live-now", "electrician found it live"),
    ("live-now", "electrician called about the feed"),
    ("live-now", "wiggled the lock until it went dead"),
    ("live-now", "I locked the door"),
    ("gas-odour", "union tightened but still bubbles"),
    ("gas-odour", "replaced union, leaks less"),
    ("gas-odour", "found leaking union"),
    ("gas-odour", "looked at union"),
    ("gas-odour", "opened windows and the smell went"),
    ("gas-odour", "somebody replaced something"),
    ("gas-odour", "painted the union"),
    ("live-now", "taped a sign to the breaker"),
    ("live-now", "asked the owner to keep off the feed"),
    ("live-now", "emailed the electrician about the feed"),
    ("gas-odour", "checked the union with soap"),
    ("live-now", "switched the breaker off and on again"),
    ("gas-odour", "turned the cock off and back on"),
    ("gas-odour", "gave the valve a kick"),
    ("live-now", "took a photo of the second feed"),
    ("live-now", "locked the hatch and the truck"),
    ("gas-odour", "union never tightened"),
    ("gas-odour", "waited an hour"),
    ("gas-odour", "wrapped it in soap"),
    ("gas-odour", "they shut it and went"),
    ("gas-odour", "tightened it later"),
    ("gas-odour", "replaced it yesterday"),
    ("gas-odour", "cleaned the filter"),
    ("gas-odour", "replaced the stat"),
    ("gas-odour", "sat in the truck for half an hour"),
    ("gas-odour", "fitted a new belt and cleaned the coil"),
]

REMEDIES = [
    ("gas-odour", "remade the union and soap tested it"),
    ("gas-odour", "replaced the flex connector, leak tested, no bubbles"),
    ("gas-odour", "shut the cock, capped and tagged the line"),
    ("gas-odour", "tightened the union, brushed soap on it, dry"),
    ("gas-odour", "moved the regulator vent away from the intake and replaced the diaphragm"),
    ("gas-odour", "replaced the sensor that had failed and repaired the leaking flare"),
    ("gas-odour", "cut out the cracked pipe, new piece fitted and pressure tested"),
    ("gas-odour", "valve replaced, proved tight with leak fluid"),
    ("live-now", "found a second feed, breaker locked off and a sign hung"),
    ("live-now", "electrician found the backfeed, opened and locked it"),
    ("live-now", "pulled the fuse of the second feed and locked the switch"),
    ("gas-odour", "opened the windows, union remade, smell gone"),
    ("gas-odour", "called the fitter, who replaced the union"),
    ("gas-odour", "found the union loose, tightened it"),
    ("ladder-and-hatch", "ladder put back up and tied off at the top"),
]

NOT_OF_THE_DANGER = [
    "0 ppm, cock closed",
    "0 ppm, no gas in the pipe",
    "0 ppm with the tank empty",
    "0 ppm, line depressurized",
    "looks tight",
    "sniffed, no smell",
    "0 ppm with a dead detector",
    "0 ppm, bump test failed",
    "0 ppm using a carbon monoxide meter",
    "0 ppm read 10 ft away",
    "zero ppm, I did not see it, they said",
    "0 ppm; hose kinked",
    "0 ppm, the valve was off",
    "0 ppm while the bottle was empty",
    "reads zero, calibration lapsed",
    "smells fine",
    "seems tight to me",
    "0 ppm from across the roof",
    "0 ppm, hose came off the probe",
    "0 ppm by a refrigerant detector",
    "0 ppm, no pressure in the line",
    "I could smell nothing",
    "0 ppm CO",
    "0 % LEL before the repair",
    "-1 % LEL",
    "about 0 % LEL",
    "do thermostat-settings",
    "~0 % LEL",
    "0 ppm carbon monoxide in the room",
    "0 ppm CO2 at the unit",
    "0 % LEL when we arrived",
    "0 % LEL before he fixed it",
    "0% LEL yesterday before the work",
    "roughly 0 % LEL at the union",
    "maybe 0 ppm",
    "-5 ppm",
    "0 ppm refrigerant",
    "0 ppm H2S",
    "19.8 % O2",
    "0 ppm of R-454B",
    "-0.5 % LEL after the repair",
    "0 % LEL on arrival",
    "probably 0 % LEL",
    "0 % LEL before the union was replaced",
    "0 ppm at home",
    "0 ppm yesterday, sensor off",
    "0 ppm sensor off",
    "0 ppm not bump tested",
    "0 ppm from memory",
    "0 ppm methane in the truck",
    "0 ppm with the cock shut",
    "0 ppm or so",
    "0 % LEL last week",
    "0 ppm on the other roof",
    "0 % LEL, detector not zeroed",
    "0 ppm give or take",
    "0 % LEL with the gas off",
    "0 ppm, uncalibrated sniffer",
    "0 % LEL two days ago",
    "0 % LEL at the next unit",
    "0 % LEL on the next roof",
    "0 % LEL at another unit",
    "0 % LEL on the neighbouring roof",
    "0 % LEL outside by the gate",
    "0 % LEL by his nose",
    "0 % LEL, meter was in the case",
    "0 % LEL, display flashing error",
    "0 % LEL before he opened the cock again",
    "snugged union by hand felt ok",
    "0 % propane at the kitchen",
    "0 % LEL in the hallway",
    "0 % LEL by the basement",
]

UNMETERED = [
    "no bubbles at any joint with leak fluid, gas on",
    "no bubbles at the new union",
    "swept all joints with the detector, nothing",
    "soaped every joint after the repair, no bubbles",
    "less than 1 in wc drop in 10 min, no bubbles",
    "detector reads 0 at the union",
    "manometer held 7 in wc",
    "zero LEL at the valve and both unions",
    "0 ppm",
    "0 ppm at every joint with the detector, gas on",
    "0 ppm, swept all joints within an inch",
    "0 ppm, line capped and cock closed",
    "0 ppm, sniffer bumped before and after",
    "0 ppm on the gas detector, bump tested",
]
"""Looks, words, and numbers that may be of anything: the sweep itself takes none of them."""

SHOWN = [
    "0 % LEL on the gas detector, bump tested",
    "0 % LEL, sniffer bumped before and after",
    "0 % LEL, line capped and cock closed",
    "0 % LEL, swept all joints within an inch",
    "0 % LEL at every joint with the detector, gas on",
    "0 % LEL at the union, bump tested",
    "0 % LEL at every joint after the repair",
    "0 % LEL",
    "0 % LEL, 0 ppm CO, 20.9 % O2",
    "about 20 minutes after the repair 0 % LEL",
    "gas company swept it, 0 % LEL",
    "gas co. read 0 % LEL at the meter",
    "0 % LEL before restart and after",
    "0.0 %LEL at cap, union, valve",
    "4-gas meter 0% LEL at all points",
    "0 % LEL before the burners were lit",
    "0 ppm methane",
    "0 % LEL at the gate valve and the union",
    "0 % LEL at the burner box and the union",
    "0 % LEL after he opened the cock again",
    "0 % LEL at the kitchen unit",
]


@pytest.mark.parametrize("typed", NOTHING_DONE)
def test_what_makes_nothing_safe_is_no_result(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize(("hazard", "typed"), NO_REMEDY)
def test_a_finding_a_call_or_what_was_taken_back_is_no_result(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: of the first seventeen each was taken for what made the place safe."""
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), REMEDIES)
def test_what_was_done_beside_a_finding_stays_a_result(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize("typed", DONE)
def test_what_was_put_right_stays_a_result(typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards["gas-odour"]) == typed


@pytest.mark.parametrize("typed", NOT_OF_THE_DANGER)
def test_what_is_of_another_gas_or_time_or_guessed_shows_nothing(
    typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize("typed", UNMETERED)
def test_what_the_sweep_itself_would_not_take_is_asked_for_again(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: a soap test and 0 ppm of nobody knows what reopened a STOP for gas."""
    with pytest.raises(NotAResult, match="with its unit"):
        as_read(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize("typed", SHOWN)
def test_what_was_read_of_the_danger_stays_shown(typed: str, shipped: Knowledge) -> None:
    assert as_read(shipped, typed, shipped.hazards["gas-odour"]) == typed


@pytest.mark.parametrize(
    ("hazard", "typed", "why"),
    [
        ("gas-odour", "0 ppm CO", "of another gas than the danger"),
        ("carbon-monoxide-in-room", "0 ppm methane", "of another gas than the danger"),
        ("flammable-refrigerant-alarm", "0 ppm CO", "of another gas than the danger"),
        ("gas-odour", "-1 % LEL", "no gas below zero"),
        ("carbon-monoxide-in-room", "about 2 ppm", "about so much"),
        ("live-now", "about 0 V", "about so much"),
        ("live-now", "0 V before the repair", "before it was made safe"),
        ("gas-odour", "do thermostat-settings", "like a command"),
        ("gas-odour", "0 ppm from memory", "no instrument that was on and proved"),
        ("gas-odour", "0 ppm with the cock shut", "With the gas shut nothing leaks"),
        ("gas-odour", "0 ppm in the truck", "another time or place"),
    ],
)
def test_why_it_shows_nothing_is_said(
    hazard: str, typed: str, why: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match=why):
        as_read(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(
    ("hazard", "typed"),
    [
        ("carbon-monoxide-in-room", "2 ppm in the room, gas shut off"),
        ("flammable-refrigerant-alarm", "0 ppm R-454B"),
        ("live-now", "-0.2 V"),
    ],
)
def test_the_gas_of_each_danger_and_volts_of_either_sign_are_its_own(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    assert as_read(shipped, typed, shipped.hazards[hazard]) == typed
