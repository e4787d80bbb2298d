"""Why a deed makes nothing safe is said, so that whoever reads it knows what would.

Sent back with the wrong reason, a person gives the same deed again in other words; let through,
the next to light the unit stands in the gas that still escapes.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.stops.beside_the_cause import why_beside_the_cause
from troubleshoot.safety.stops.no_remedy import why_no_remedy
from troubleshoot.safety.stops.no_remedy_of_gas import why_no_remedy_of_gas
from troubleshoot.safety.stops.undone import why_undone, why_unwired

FOUND = "says what was found or told, and not what was done about it. Give both"
NOT_DONE = "was not done, or is still there. The STOP stands until it is made safe"
BACK = "was taken back again, and so nothing is made safe. Give what stays done"
NOT_NAMED = "does not say what was done. Name the part"
UNTESTED = "says that nobody tested it. Have it tested, then give what was done"
ELSEWHERE = "does nothing about where it came from. Give what was done there"
GOT_ROUND = "gets round a device or takes it out of use, and makes nothing safe: have it undone"
MAKESHIFT = "is a makeshift, and makes nothing safe: give how it was made right"
NOTHING = "says that nothing was found and nothing was done. The STOP stands until it is made safe"


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("found the union loose", FOUND),
        ("told the owner of it", FOUND),
        ("blamed the kitchen", FOUND),
        ("smeared soap on the joint", FOUND),
        ("locked nothing", NOT_DONE),
        ("tightened the union, still bubbling", NOT_DONE),
        ("meant to tighten the union", NOT_DONE),
        ("valve replaced, not leak tested", UNTESTED),
        ("second feed locked, then unlocked again", BACK),
        ("pulled the fuse and put it back", BACK),
        ("replaced some part", NOT_NAMED),
        ("locked the roof hatch", ELSEWHERE),
        ("locked the shop door at the panel", ELSEWHERE),
        ("locked the hatch over the disconnect", ELSEWHERE),
        ("locked the gate and cleaned the fan", ELSEWHERE),
        ("the main is in the shop, so we locked the shop", ELSEWHERE),
        ("moved on to a monitor that is less sensitive", ELSEWHERE),
        ("painted the union", ELSEWHERE),
        ("aired the curb and relit", ELSEWHERE),
        ("let the smell fade", ELSEWHERE),
        ("waited for the gas to clear", ELSEWHERE),
        ("the smell went by itself", ELSEWHERE),
        ("the hiss stopped", ELSEWHERE),
        ("replaced the sensor that alarmed", ELSEWHERE),
        ("cleared the alarm and aired the room", ELSEWHERE),
        ("opened the windows and the smell went", ELSEWHERE),
    ],
)
def test_each_deed_that_is_no_remedy_is_told_what_it_lacks(said: str, why: str) -> None:
    assert why in why_no_remedy(said)


@pytest.mark.parametrize(
    "said",
    [
        "locked the roof hatch and locked off the breaker",
        "locked the shop door, breaker tagged and locked",
        "switched the main off and locked the building",
        "let the smell fade; union remade",
        "the hiss stopped once the cock was shut",
        "replaced the sensor that alarmed, tightened the union",
        "opened the windows, union remade and the smell went",
        "painted the union after it was remade",
        "ventilated the machine room",
        "the electrician was here",
    ],
)
def test_a_remedy_told_beside_it_and_what_is_no_such_deed_pass(said: str) -> None:
    """What orders ask for, as fresh air, is not sent back; the finding taken afresh decides."""
    assert why_no_remedy(said) == ""


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("jumpered the limit and replaced the valve", GOT_ROUND),
        ("found the limit jumpered", GOT_ROUND),
        ("the last man had jumpered the limit", GOT_ROUND),
        ("put a lead across the limit", GOT_ROUND),
        ("unplugged the gas detector", GOT_ROUND),
        ("plugged the pinhole with epoxy", MAKESHIFT),
        ("found the union sealed with putty", MAKESHIFT),
        ("welded the heat exchanger", MAKESHIFT),
        ("the exchanger was brazed", MAKESHIFT),
        ("found nothing", NOTHING),
        ("no fault found", NOTHING),
    ],
)
def test_what_defeats_a_device_or_only_hides_the_leak_is_told_so(said: str, why: str) -> None:
    assert why in why_undone(said)


@pytest.mark.parametrize(
    "said",
    [
        "somebody had jumpered the limit; limit replaced",
        "they had put a lead across the limit; limit replaced",
        "unplugged the gas detector and put it back",
        "found the union sealed with putty, cut it out and put in a new union",
        "exchanger had been welded, replaced",
        "the exchanger was brazed, a new one fitted",
        "found nothing here, cock shut",
    ],
)
def test_what_others_left_and_is_right_again_is_a_result(said: str) -> None:
    """Who found a defeated device and put it right is not sent away for saying so."""
    assert why_undone(said) == ""


@pytest.mark.parametrize(
    ("said", "refused"),
    [
        ("pulled a wire off the gas detector", True),
        ("took the batteries from the smoke detector", True),
        ("pulled a wire off the gas detector and reconnected it", False),
        ("cut the wires off the alarm, rewired", False),
        ("never took the battery from the detector", False),
    ],
)
def test_what_watches_is_silent_until_its_wire_is_back(said: str, refused: bool) -> None:
    """With a dead detector the next leak is noticed by nobody."""
    assert (GOT_ROUND in why_unwired(said)) is refused
    assert bool(why_unwired(said)) is refused


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("waited until it had gone", "Gas that went by waiting comes again"),
        ("sat in the truck for an hour", "Gas that went by waiting comes again"),
        ("waited by the union", "Gas that went by waiting comes again"),
        ("cleaned the filter", "names no part that gas comes through. Give the part"),
        ("tightened it", "names no part that gas comes through. Give the part"),
        ("waited, then tightened the union", ""),
        ("replaced the union", ""),
        ("tightened it at the union", ""),
        ("replaced the filter and the gas valve", ""),
        ("the fitter was here", ""),
    ],
)
def test_where_gas_escaped_a_part_that_holds_it_is_named(said: str, why: str) -> None:
    """The next to come has to find the joint again, and gas that waited itself away comes back."""
    found = why_no_remedy_of_gas(said)
    assert why in found and bool(found) is bool(why)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("the owner signed a waiver", ELSEWHERE),
        ("replaced the detector battery", ELSEWHERE),
        ("replaced the detector battery, tightened the union", ""),
        ("the electrician was here", ""),
        ("tightened the union", ""),
    ],
)
def test_a_paper_or_an_alarm_seen_to_does_nothing_about_the_cause(said: str, why: str) -> None:
    found = why_beside_the_cause(said)
    assert why in found and bool(found) is bool(why)
