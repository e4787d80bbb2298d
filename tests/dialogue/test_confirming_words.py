"""The word of a step among plain words that confirm the same thing is that word, and no other.

The first of each step were typed by a mechanic; all else was written beside them. A lock is
one's own, and whoever is in charge is told: 29 CFR 1910.147(d) and (c)(9), from memory.
"""

from __future__ import annotations

import pytest

from tests.dialogue.test_pointing import came
from troubleshoot.dialogue.confirming_words import (
    among_confirming,
    confirms_some_step,
    tells_how_long,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED

SAID = (
    ("lockout", "locked out, my lock on it"),
    ("lockout", "locked off, tagged, tried it"),
    ("lockout", "disconnect is locked out and my tag is on it"),
    ("lockout", "locked out and tried it"),
    ("lockout", "locked out and tagged it out"),
    ("lockout", ", locked out, my lock on it"),
    ("second-source-locked", "both locked, my lock on it"),
    ("tell-occupants", "told the super"),
    ("tell-occupants", "told them and all agreed"),
    ("tell-occupants", "told them, they're ok with it"),
    ("tell-occupants", "told em, they're good with it"),
    ("tell-occupants", "told the store manager, she knows"),
    ("tell-occupants", "told em, ok for an hr"),
    ("tell-occupants", "told them, ok for an hour"),
    ("tell-occupants", "told the manager, they are fine until noon"),
    ("tell-occupants", "told the chef and she's ok with it for 20 min"),
    ("tester-proof", "proved 121v at the outlet"),
    ("tester-proof", "meter proved, 240 V"),
    ("doors-shut", "all doors shut and latched"),
    ("doors-shut", "all shut, screws in"),
    ("doors-shut", "every door closed and latched"),
    ("panels-on", "panels on, screws in"),
    ("panels-on", "all the panels are back on, all screws tight"),
    ("panels-on", "closed up, screwed tight"),
    ("gauges-on", "gauges are on"),
    ("gauges-on", "hoses are on, purged"),
    ("gauges-off", "gauges are off, caps on"),
    ("tools-clear", "tools all out and counted, clear"),
    ("tools-clear", "everybody clear, tools out"),
    ("panels-off", "panel is open"),
    ("panels-off-energised", "the panel is open"),
    ("tester-proof", "proved ok"),
    ("lock-off", "lock off, switch closed, restored"),
    ("restart-and-watch", "everything runs"),
    ("restart-and-watch", "runs fine, blower cond fan and comp all going"),
    # a second mechanic's, and more beside them
    ("lockout", "locked and tagged, tried it dead"),
    ("lockout", "switch pulled, locked, tagged"),
    ("lockout", "i locked it out"),
    ("lockout", "locked it, key in my pocket"),
    ("tell-occupants", "told him"),
    ("tell-occupants", "told the store manager and the kitchen, they're fine"),
    ("tester-proof", "meter is proved on the receptacle, 121 V"),
    ("tester-proof", "proved again"),
    ("panels-off", "took the blower panel off, set it flat"),
    ("panels-off", "panels are off and laid down"),
    ("panels-on", "both panels back on and screwed down"),
    ("doors-shut", "everything's closed up tight"),
    ("gauges-on", "gauges hooked on both ports, hoses purged"),
    ("gauges-off", "off, caps on, no bubbles"),
    ("tools-clear", "hands out, tools in the bag, clear"),
    ("tools-clear", "nothing left in there, all clear"),
    ("lock-off", "lock off, unit's on"),
    ("gas-cock-shut", "cock is shut"),
    ("gas-cock-shut", "turned it crosswise, shut"),
    ("gas-cock-shut", "shut, handle is across the pipe"),
    ("gas-cock-shut", "cock is shut, handle crosswise"),
    ("charge-put-back", "weighed in 9 lb 4 oz"),
    ("restart-and-watch", "runs, everything is turning"),
    ("restart-and-watch", "came right up, running"),
    ("tell-fire-panel", "panel is on test, talked to the monitoring company"),
    ("restart-and-watch", "runs good, air everywhere"),
    ("stop-by-controls", "stat is off, everything stopped"),
    ("stop-by-controls", "it all stopped, fan coasted down"),
    ("charge-put-back", "9 lb 4 oz weighed in"),
    ("charge-put-back", "charged, 9 lb 4 oz, same as the plate"),
    ("circuit-held", "held at 150 for half an hour, no drop"),
    ("combustible-gas-sweep", "0 ppm all around"),
    ("combustible-gas-sweep", "0 ppm all the way round"),
)
NOT_SAID = (
    ("lockout", "locked out, his lock on it"),
    ("lockout", "locked out, my lock off"),
    ("lockout", "locked out, not tagged"),
    ("lockout", "locked out on the other unit"),
    ("lockout", "locked out, still hums"),
    ("lockout", "my lock on it"),
    ("lockout", "locked, but the handle is broken"),
    ("lockout", "locked out?"),
    ("tell-occupants", "told the super to call me"),
    ("tell-occupants", "told the super, he wants air"),
    ("tell-occupants", "told my helper"),
    ("tell-occupants", "told nobody"),
    ("tell-occupants", "they're not ok with it, told them"),
    ("doors-shut", "all doors shut but one"),
    ("doors-shut", "all shut, one latch missing"),
    ("panels-on", "panels on, screws missing"),
    ("panels-on", "panels on, two screws in"),
    ("panels-on", "screws in"),
    ("gauges-on", "gauges are on the truck"),
    ("tools-clear", "tools out, one missing"),
    ("tools-clear", "counted"),
    ("panels-off", "panel is half open"),
    ("tester-proof", "proved ok, i think"),
    ("lock-off", "lock off, switch trips"),
    ("restart-and-watch", "everything runs but the comp"),
    ("restart-and-watch", "runs, fan hums"),
    ("restart-and-watch", "blower runs"),
    ("lockout", "he locked it out"),
    ("lockout", "i will lock it out"),
    ("lockout", "locked it, i guess"),
    ("lockout", "switch pulled"),
    ("lockout", "locked, key in the switch"),
    ("lockout", "locked the other one out"),
    ("tell-occupants", "told him to tell them"),
    ("tell-occupants", "the kitchen"),
    ("tell-occupants", "told him, he is not fine"),
    ("tell-occupants", "ok for an hour"),
    ("tell-occupants", "told them, not before noon"),
    ("tell-occupants", "told them to wait for an hour"),
    ("tester-proof", "proved 12 V at the outlet"),
    ("tester-proof", "proved at the wrong outlet"),
    ("tester-proof", "meter is proved on the receptacle, 12 V"),
    ("tester-proof", "proved yesterday"),
    ("tester-proof", "121 v"),
    ("panels-off", "took one panel off"),
    ("panels-off", "they took the panels off"),
    ("panels-on", "screwed down"),
    ("doors-shut", "everything but the end door is shut"),
    ("gauges-on", "gauges hooked to the truck"),
    ("gauges-off", "off, caps on, bubbles"),
    ("gauges-off", "caps on"),
    ("tools-clear", "hands out"),
    ("tools-clear", "clear, nothing left in there but a rag"),
    ("tools-clear", "clear, tools in the unit"),
    ("lock-off", "unit's on"),
    ("gas-cock-shut", "turned it crosswise"),
    ("gas-cock-shut", "valve is shut"),
    ("tell-fire-panel", "talked to the monitoring company"),
    ("tell-fire-panel", "panel is on test, they want it back"),
    ("restart-and-watch", "air everywhere"),
    ("restart-and-watch", "runs, no air anywhere"),
    ("stop-by-controls", "stat is off"),
    ("stop-by-controls", "everything stopped but the blower"),
    ("stop-by-controls", "condenser fan stopped"),
    ("charge-put-back", "9 lb 4 oz"),
    ("charge-put-back", "9 lb 4 oz weighed out"),
    ("circuit-held", "held at 150 for half an hour, one bubble"),
    ("combustible-gas-sweep", "0 ppm all around but the union"),
    ("combustible-gas-sweep", "0 ppm around the valve, not all"),
)


@pytest.mark.parametrize(("step", "said"), SAID)
def test_it_is_taken_as_the_word(step: str, said: str, shipped: Knowledge) -> None:
    """Regression: each was refused, with the step's own word in it."""
    assert came(shipped, step, said) == (CONFIRMED[step],)


@pytest.mark.parametrize(("step", "said"), NOT_SAID)
def test_what_denies_doubts_or_tells_of_another_is_not(
    step: str, said: str, shipped: Knowledge
) -> None:
    assert CONFIRMED[step] not in came(shipped, step, said)


@pytest.mark.parametrize(
    ("step", "said"),
    [("gas-cock-shut", "shut, cock across the pipe"), ("lockout", "Locked out, his lock on it")],
)
def test_what_is_not_foreseen_is_judged_as_it_was_typed(
    step: str, said: str, shipped: Knowledge
) -> None:
    assert among_confirming(shipped.tests[step], CONFIRMED[step], said) == said


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("told them, ok for an hour", True),
        ("Told them, OK UNTIL NOON", True),
        ("told them, up to 20 min", True),
        ("told them", False),
        ("told them, ok", False),
        ("told them before noon", False),
    ],
)
def test_for_how_long_people_agreed_is_told_by_a_time(said: str, told: bool) -> None:
    assert tells_how_long(said) is told


@pytest.mark.parametrize(
    ("said", "confirms"),
    [
        ("locked out, my lock on it", True),
        ("lock off, power back on", True),
        ("locked out, his lock on it", False),
        ("the fan hums", False),
    ],
)
def test_a_report_of_any_step_is_one_typed_early_or_late(said: str, confirms: bool) -> None:
    assert confirms_some_step(said) is confirms


@pytest.mark.parametrize("said", ["9 lb 4 oz weighed in", "charged, 9.2 lbs"])
def test_a_weight_may_stand_beside_the_word(said: str, shipped: Knowledge) -> None:
    step = shipped.tests["charge-put-back"]
    word = CONFIRMED["charge-put-back"]
    assert among_confirming(step, word, said) == step.spoken(word)
