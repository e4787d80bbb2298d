"""Sentences in which people say that a state has gone, and others that only look like them.

Written without a look at what hears them: the first 72 and 70 before it was made, the next 44 by a
stranger, then 50 and 50, and 40 and 40, each before it was tried on them; TOLD_IN_PASSING are
mostly an attacker's. ASKED are those that it cannot tell, and asks about. By where each is typed:
`in` at a test with the hands inside, `cock` at one behind a shut gas cock, `manometer` at a step
behind it, `live` at one read live behind an open panel, `run` at one on a running burner, `out`
before the lock comes off.
"""

from __future__ import annotations

# fmt: off
GONE: dict[str, tuple[str, ...]] = {
    "in": (
        "the power just came back on", "we got power again", "juice is on",
        "it's hot again, helper flipped the disconnect", "my lock fell off",
        "lock's not on anymore", "took my lock off to lend it to bob",
        "i had to give my padlock to the plumber", "disconnect is closed again",
        "threw the disconnect to see if it starts", "turned the breaker on for a second",
        "i only switched it off, never put a lock on it",
        "actually the lock is on the wrong disconnect", "locked the wrong unit",
        "contactor just pulled in", "blower kicked on", "condenser fan started turning",
        "compressor is humming now", "reading 240 across the lugs", "still 118 V L2 to ground",
        "meter shows 208 between the legs now", "cap is still charged",
        "capacitor bit back, about 100 V on it", "i didn't discharge the cap",
        "forgot to bleed the capacitor", "skipped proving the meter", "my meter quit",
        "low battery sign on the meter", "meter leads are broken", "never tested it dead",
        "i just assumed it was dead", "found another disconnect behind the unit, still on",
        "there's a second breaker feeding this", "started to rain", "wind is picking up bad",
        "heat strips are getting power from another panel", "note breaker is back on",
        "note somebody needed my lock so i took it off", "display on the board lit up",
        "24 volts on the board now", "power is back on", "i put the power back on", "lock is off",
        "unlocked", "i removed my lock for lunch", "energized again",
        "i turned the disconnect on to test", "we need to run it, switching on",
        "the fan just started", "fan is running now", "the blower is turning",
        "208 V between L1 and L2", "cap still holding 90 V", "i skipped the discharge",
        "i did not really lock it", "actually i never locked it", "i forgot to prove the meter",
        "meter is dead, battery gone", "there is a second disconnect i missed", "panel is back on",
        "it is raining now", "lost my key", "note power is back on", "note lock is off",
        "note never locked out", "somebody switched it on", "my helper took the lock off",
        "meter broke", "danger power is back on", "electric is back",
        "somebody put the breaker back in", "unit is powered up", "lock got cut",
        "the padlock is in my pocket", "forgot the lock", "its not locked anymore",
        "disconnect handle is up", "bumped the contactor and it pulled in", "motor hums",
        "fan came on", "i read 240 L1 to ground", "there is voltage on T1", "lugs are hot",
        "capacitor has 60 volts on it", "cap wasnt discharged", "i didnt bleed it",
        "never proved the meter again", "meter fuse is blown", "tester wont turn on",
        "didn't do the second dead test", "i lied, did not test for dead", "missed the other feed",
        "there is a separate 120 circuit in here", "thunder", "it's pouring now", "roof is soaked",
        "door is back on", "note helper restored power", "breaker got turned back on by the super",
        "power came up", "my tag and lock are on the ground", "never hung a lock",
        "one blade of the disconnect is still closed", "compressor kicked in",
        "lights on the board came on", "cap gave me a jolt", "can still shows 45 V",
        "skipped the bleed", "i used a different meter that was not proved",
        "blower door is back on", "storm coming", "note my key is missing",
        "lock aint on it no more", "the lock is no longer on", "there ain't no lock on it",
        "no lock on this thing", "it ain't locked no more", "power isn't off no more",
    ),
    "cock": (
        "cock is open now", "opened the gas back up",
        "the gas valve handle is in line with the pipe", "building guy turned the gas on",
        "shutoff doesn't hold, gas still gets by", "didn't shut the gas off yet",
        "i shut the wrong cock", "gas on", "manual valve is open again", "i put the door back on",
        "gas cock is open", "gas cock is open again", "somebody opened the gas cock",
        "gas is back on", "cock handle is along the pipe", "i turned the gas on to check",
        "i never shut the gas", "cock leaks by", "power is back on",
        "the panel was on the whole time", "gas back on", "valve handle is parallel to the pipe",
        "cock won't shut all the way", "forgot to close the cock", "somebody cracked the gas open",
        "gas passes through the cock", "left the gas on", "super opened the gas valve",
        "i think the gas is on", "the cock is only half shut", "gas is still coming through",
        "i turned it back open to test",
    ),
    "live": (
        "my helper went to the truck", "i'm alone up here now", "took my gloves off",
        "face shield is in the van", "fire panel is back in service",
        "alarm company took the panel off test", "sleet coming down", "helper went home",
        "nobody is watching me", "glove has a hole", "no gloves on",
        "fire panel went back to normal", "fire company put it back in service",
        "gusts are bad now", "partner just left", "i am not wearing gloves",
    ),
    "run": (
        "it never lit", "the access panel blew off", "burner tried and did not light",
        "i held the limit closed and it lit", "burners lit with no inducer",
        "it lit by itself with no call", "i unhooked my harness", "roof is getting icy",
        "clicks, no flame, smells now", "inducer not running but burners lit",
        "it lit by itself with nobody calling", "it did not light", "flame went out",
        "no light off", "cover blew off", "harness is off", "it tried three times, no flame",
        "burner would not light",
    ),
    "out": (
        "power is on already", "left a wire off", "lock came off already", "breaker is already on",
        "unit is running already",
    ),
}
ASKED: dict[str, tuple[str, ...]] = {
    "in": (
        "we have 208 again", "i had to unlock it for the electrician",
        "only flipped the thermostat off", "the switch is not open",
        "fan blade just moved by itself", "getting 120 to ground on the black wire",
        "there's juice at the lugs", "still hot at the contactor", "forgot the capacitor",
        "the meter is reading garbage", "didn't recheck the meter after",
        "did the dead test on the wrong terminals", "another circuit feeds the heater",
        "it's starting to drizzle",
    ),
    "cock": (
        "never closed the valve",
    ),
    "live": (
        "my buddy is on the phone downstairs", "alarm panel is active again",
    ),
}
HARMLESS: dict[str, tuple[str, ...]] = {
    "in": (
        "power is still off", "lock is still on", "nobody has put the power back on",
        "should i put the power back on?", "do i turn the disconnect on to test this",
        "when does the power go back on", "power was on when i got here",
        "lock was off when i came, put mine on", "cap is rated 440 V", "can says 370 VAC",
        "capacitor is discharged, 0 V", "0 V across the lugs", "2 V left on the can",
        "fan is not running", "fan spins free by hand", "fan turns in the wind",
        "the other unit is running", "RTU-4 next door just started",
        "compressor has not started in a week", "meter is fine", "meter proved again",
        "battery in the thermostat is dead", "new meter battery in", "fuse in my meter is good",
        "no second disconnect here", "only one disconnect", "it rained last night",
        "no rain, dry roof", "panel is still off", "panel screws are stripped",
        "note power company called about the bill", "note lock is hung on the disconnect",
        "note customer wants the power back on by noon", "the breaker is a 40",
        "line volts was 208/209/207 before i shut it off", "contactor is pitted",
        "lug on L1 is loose", "wire on the fan is burned", "blower belt is cracked", "tag is on",
        "no voltage on T1", "motor does not hum", "lock and tag are on",
        "breaker is off and locked", "the breaker tripped last week",
        "i will put the power back on after this", "is it ok to turn it on",
        "cap marked 45 uF 440 V", "meter reads right", "meter reads 0.3 V", "capacitor top is flat",
        "capacitor is dry", "blade is bent", "fan motor bearing is rough",
        "fan was running when i pulled up", "sun is hot", "dry and calm up here",
        "second capacitor is fine", "contactor 2 is fine", "helper has the lock key box logged",
        "one lead at a time", "lead came off easy", "panel is leaning on the curb",
        "board looks clean", "nothing is live", "not energized", "wire is 12 gauge",
        "breaker is a 2 pole 40 amp", "note bring a 45/5 cap next time", "note gate code is 4411",
        "contactor 1 points are burnt", "L1 lug is 75 in lb", "battery operated screwdriver",
        "switch is off", "power is off and tagged", "lock number 12", "unit is off and locked",
        "fan wont turn by hand", "motor is cool", "compressor is quiet", "240 V rated contactor",
        "the plate says 208-230", "cap was 45 uF new", "discharged twice",
        "meter proved before and after", "checked dead on all legs", "meter on ohms",
        "i never had a problem here", "no second feed", "heater is on the same disconnect",
        "blower door is off", "sunny and dry", "wind is calm", "note roof hatch needs a lock",
        "note unit needs power from a new breaker next year", "screw fell in the pan",
        "where does the lock go", "tape on the wire", "no lock on the hatch", "ain't nothing live",
        "it don't hum no more", "no more power", "not live no more", "old wire nuts",
    ),
    "cock": (
        "cock is still shut", "gas is off", "handle is across the pipe", "gas valve is a two stage",
        "one orifice is plugged", "is the gas supposed to be on for this", "gas was on when i came",
        "gas is still off", "cock does not leak", "orifice is number 42", "burners are rusty",
        "gas pressure was 3.5 before", "what size orifice for propane", "valve handle is stiff",
        "gas is shut and tagged", "cock shut, tight", "burner tubes look clean",
        "orifice came off easy",
    ),
    "live": (
        "helper is right here", "gloves are on", "gloves are class 0",
        "fire panel is still on test", "power is on", "line volts 208/209/207", "disconnect is on",
        "no helper needed for this", "helper is watching", "no rain", "wearing gloves and shield",
        "24 V at the coil", "partner is with me", "gloves, hood and jacket on", "coil hums",
        "contactor is in",
    ),
    "run": (
        "fan is running", "power is on", "it lit right away", "blower is running fine",
        "panel is back on", "unit started", "lock is off", "burners lit, inducer running",
        "gas is on", "flame is steady", "burners running fine", "fan came on after 30 seconds",
        "power is 208", "all panels on", "lit on the first try", "panels are on and screwed",
    ),
    "out": (
        "power is still off", "tools are out", "nobody is near it", "all wires are back on",
        "gas is still shut", "lock is still on", "nothing left inside", "area is clear",
        "helper is off the roof", "wires are tied up", "gas stays shut",
    ),
}
TOLD_IN_PASSING: dict[str, tuple[str, ...]] = {
    "in": (
        "lockout got pulled", "power's been restored", "the handle is up again",
        "blower rolled by itself", "I hear a hum in the contactor", "metered the wrong cap",
        "didn't wait the five minutes", "I only tested L1 and L2",
        "came back from lunch, two hours gone", "my partner went down for coffee",
        "the padlock was cut off by the super", "electric's been switched back on",
        "something clicked in there", "I bled the wrong can", "tested the wrong unit",
        "never checked L3", "skipped the leg to ground", "wheel crept round on its own",
        "we were away overnight", "lights came back in the hall", "hasp got unscrewed",
        "the super's been at the breakers", "current is flowing in it", "relay chattered just now",
        "my tag's been ripped off",
    ),
    "manometer": (
        "the gas is back on", "somebody opened the cock", "cock got bumped",
        "gas cock handle is parallel to the pipe", "I opened the gas again",
        "the tenant turned gas on", "hose popped off", "sniffer battery died",
        "sniffer was off all along", "sweep was done with the cock open", "never swept it",
        "I smell it now", "we lit it a minute ago", "the utility turned the meter on",
        "the tee let go", "something is not right here", "he walked off with the key",
    ),
}
"""What is told with other words, or only shown by a sign: heard, or asked about."""
NO_SIGN: dict[str, tuple[str, ...]] = {
    "in": (
        "I'll turn the disconnect on when done", "we'll put the power back on after lunch",
        "he'll take the lock off at the end", "the plan is that I'd turn it on later",
        "customer's other unit has power", "metered the cap twice",
        "I tested all three legs and to ground", "waited the five minutes",
        "the handle is off and locked",
    ),
    "manometer": (
        "I'll open the cock when done", "hose is tight", "sniffer battery is fresh",
        "the cock's still shut", "no smell at all",
    ),
}
"""What is planned, or tells that all stands: it voids nothing."""
