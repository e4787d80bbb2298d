"""A paper, a meter, a trial run, fresh air, work of before the STOP: none of it makes safe.

A dozen of the evasions are an attacker's. The other lines were written before the rules that judge
them, or to measure these, and mended since.
"""

from __future__ import annotations

from datetime import date, datetime

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.beside_the_cause import is_before_the_stop
from troubleshoot.safety.stops.reopening import NotAResult, in_words, since_the_stop
from troubleshoot.safety.stops.shown import as_read

GAS, ALARM, CO = "gas-odour", "flammable-refrigerant-alarm", "carbon-monoxide-evacuate"
NOTHING_DONE = [
    (GAS, "rag stuffed in the pipe"),
    (GAS, "plastic bag pushed over the open end"),
    (GAS, "towel jammed into the vent"),
    (GAS, "sponge wedged in the leaking joint"),
    (GAS, "customer signed a waiver"),
    (GAS, "owner signed off on the risk"),
    (GAS, "the landlord accepted the liability"),
    (GAS, "release form filled in and signed by the manager"),
    (GAS, "vented the room"),
    (GAS, "ventilated the mechanical room with a blower"),
    (CO, "aired the whole floor for an hour"),
    (GAS, "replaced the detector battery, alarm quit"),
    (GAS, "new battery in the sniffer, reads nothing now"),
    (GAS, "swapped the meter"),
    (ALARM, "pulled a plastic bag over the detector"),
    (ALARM, "took a rag and tied it round the sensor"),
    (ALARM, "pulled a sponge on the probe of the alarm"),
    (ALARM, "took some tape over the horn"),
    (ALARM, "put a new sensor in the four gas meter"),
    (GAS, "zeroed the meter in the gas"),
    (GAS, "re-zeroed the sniffer at the union"),
    (GAS, "recalibrated the detector until it read 0"),
    (ALARM, "set the alarm point higher, cleared the board"),
    (GAS, "moved to another spot to read"),
    (GAS, "stood further away and measured"),
    (GAS, "took the reading from upwind of the unit instead"),
    (GAS, "tested by running it"),
    (GAS, "ran the burner for ten minutes and nothing happened"),
    (GAS, "fired it up, burned clean"),
    (GAS, "replaced valve, forgot to test"),
    (GAS, "new gas valve fitted, skipped the leak test"),
    (GAS, "remade the joint, did not get round to soaping it"),
    (GAS, "replaced the union but ran out of time for the test"),
    (GAS, "balled up paper in the pipe end"),
    (GAS, "wooden plug knocked into the union"),
    (GAS, "owner took it upon himself, form on file"),
    (GAS, "legal department released us"),
    (GAS, "put the exhaust fan on in the penthouse"),
    (GAS, "purged the room with fresh air"),
    (GAS, "changed the batteries of the sniffer"),
    (GAS, "put the detector in a clean bag and zeroed it"),
    (GAS, "turned the sensitivity down"),
    (GAS, "measured from the hatch this time"),
    (GAS, "checked at the other corner, cleared"),
    (GAS, "gave it a test run, cleared"),
    (GAS, "lit the burners, all four clean"),
    (GAS, "valve replaced, test still pending"),
    (GAS, "joint sealed, nobody has soaped it"),
    (GAS, "new union in, pressure test to follow"),
]
DONE = [
    (GAS, "rag found stuffed in the pipe, rag removed, pipe capped and tested"),
    (GAS, "replaced the union, leak tested, customer signed the ticket"),
    (GAS, "vented the room, tightened the flare, soaped it"),
    (GAS, "detector battery was dead, fitted a new one; union remade and tested"),
    (GAS, "tightened the valve outlet, meter zeroed in clean air, swept"),
    (GAS, "replaced the diaphragm of the regulator, set it to 3.5 in wc"),
    (GAS, "shut the cock, capped the line, tested by pressure for 15 min"),
    (GAS, "replaced gas valve, tested by running it and soaping every joint"),
    (GAS, "fitting had worked loose since last week, tightened and soaped"),
    (GAS, "cap was left off by the crew last month, refitted with dope, tested"),
    (GAS, "moved the flex off the sharp edge, replaced it, bubble tested"),
    (GAS, "gas meter swivel was leaking, utility replaced the meter and tested"),
    (GAS, "swapped the gas meter, its swivel leaked"),
    (GAS, "regulator vent was blowing gas, regulator replaced"),
    (GAS, "union tightened, forgot the wrench at first, went back and soaped it"),
    (GAS, "moved to the other side of the curb and found the leaking elbow, replaced it"),
    (GAS, "relief valve of the tank was passing, replaced by the utility"),
    (CO, "towel taken out of the flue, flue cleaned, burners checked"),
    (GAS, "pilot tube was cracked, new tube fitted and soaped, fired for ten minutes"),
    (ALARM, "charge recovered, leaking flare remade, sensor recalibrated"),
    (GAS, "took the jumper on the limit out, replaced the limit and tested it"),
    (ALARM, "took the bag off the sensor, remade the leaking flare"),
    (CO, "flue was blocked, cleared it, co alarm battery replaced"),
    (GAS, "union cracked, changed out and soaped, owner signed the sheet"),
    (GAS, "regulator vent line was open in the room, vent piped outdoors, regulator replaced"),
    (GAS, "flare remade, test run 20 minutes, no bubbles"),
    (GAS, "cock stem leaked, cock replaced by the utility, sniffer zeroed first"),
    (GAS, "valve seat passing since summer, valve replaced and lockup tested"),
    (GAS, "meter set union loose, utility tightened it and soaped"),
    (GAS, "aired the penthouse, found the drip leg cap off, refitted the cap and soaped"),
    (GAS, "bad flex replaced, batteries of the sniffer changed before the sweep"),
    (GAS, "flange gasket replaced, bolts torqued, soaped, burners lit after"),
    (GAS, "wooden plug found in the old tee, plug taken out, steel cap fitted and tested"),
]
NOTHING_SHOWN = [
    "0 ppm, shut pipe",
    "0 ppm on a closed line",
    "0 % LEL, closed cock",
    "0 ppm at the isolated line",
    "0 % LEL on a dead line",
    "0 ppm, gas isolated",
    "0 % LEL, pipe shut off",
    "0 % LEL at the shut off pipe",
    "0 ppm, no gas on",
    "0 ppm before turning the gas on",
    "0 ppm, cock still turned across the pipe",
    "0 ppm with nothing in the line",
    "0 % LEL, gas not yet on",
    "0 ppm with the meter cock closed at the street",
]
SHOWN = [
    "0 % LEL, gas on, pipe at 7 in wc",
    "0 % LEL at the shut-off cock, gas on",
    "0 % LEL at the shutoff valve",
    "0 % LEL at the capped pipe",
    "0 % LEL, cock opened, pipe under pressure",
    "0 % LEL at the union, panel shut after",
    "0 % LEL all along the pipe",
    "0 % LEL at the line and the closed panel",
    "0 % LEL at the valve and across the manifold",
]
NOW = datetime(2026, 11, 26, 15, 0)  # a Thursday
BEFORE_IT = [
    "tightened a fitting the week before",
    "replaced the regulator last month",
    "tightened the union before the call",
    "replaced the valve last week",
    "changed the flex last winter, holds",
    "the joint was remade prior to the smell",
    "replaced the union yesterday",
    "replaced the valve in the spring",
    "tightened the flare on the previous visit",
    "union was changed out during the summer PM",
]
SINCE_IT = [
    "fitting had worked loose since last week, tightened and soaped",
    "cap was left off by the crew last month, refitted with dope, tested",
    "tightened it last week, leaked again, replaced it today",
    "smelled already before the call, union replaced",
]


@pytest.mark.parametrize(("hazard", "typed"), NOTHING_DONE)
def test_what_does_nothing_where_it_came_from_is_no_result(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: a waiver, a new battery, a swapped meter and a rag were taken as results."""
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), DONE)
def test_what_stands_beside_a_remedy_takes_nothing_from_it(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize("typed", NOTHING_SHOWN)
def test_a_reading_of_a_shut_pipe_shows_nothing(typed: str, shipped: Knowledge) -> None:
    """Regression: "0 ppm, shut pipe" was taken for a sweep."""
    with pytest.raises(NotAResult, match="gas shut"):
        as_read(shipped, typed, shipped.hazards[GAS])


@pytest.mark.parametrize("typed", SHOWN)
def test_a_reading_with_the_gas_on_shows_it(typed: str, shipped: Knowledge) -> None:
    assert as_read(shipped, typed, shipped.hazards[GAS]) == typed


@pytest.mark.parametrize("typed", BEFORE_IT)
def test_what_was_done_before_the_stop_is_no_result_of_it(typed: str) -> None:
    with pytest.raises(NotAResult, match="before the STOP"):
        since_the_stop(typed, "2026-11-26 14:00", NOW)


@pytest.mark.parametrize("typed", SINCE_IT)
def test_what_was_found_to_be_older_is_told_beside_its_remedy(typed: str) -> None:
    since_the_stop(typed, "2026-11-26 14:00", NOW)


@pytest.mark.parametrize(
    ("typed", "stopped"),
    [
        ("replaced the valve last week", "2026-11-20 14:00"),
        ("replaced the regulator last month", "2026-10-30 14:00"),
        ("replaced the union yesterday", "2026-11-25 14:00"),
        ("replaced the union last week", ""),
    ],
)
def test_of_an_older_stop_last_week_may_be_after_it(typed: str, stopped: str) -> None:
    """Nor is anybody sent back over one of which no minute is known."""
    since_the_stop(typed, stopped, NOW)


@pytest.mark.parametrize(
    ("typed", "stopped", "before"),
    [
        ("replaced the union last week", date(2026, 11, 23), True),
        ("replaced the union last week", date(2026, 11, 22), False),
        ("replaced the union last month", date(2026, 11, 1), True),
        ("replaced the union last month", date(2025, 11, 10), False),
        ("replaced the union last year", date(2026, 1, 2), True),
        ("replaced the union last year", date(2025, 11, 26), False),
        ("replaced the union last week, tightened the flare", date(2026, 11, 23), False),
        ("the fitter was here last week", date(2026, 11, 23), False),
    ],
)
def test_the_days_of_a_time_that_is_over_are_those_of_its_week_month_or_year(
    typed: str, stopped: date, before: bool
) -> None:
    """Of a Thursday: what was done last week leaves the leak that was found on Monday open."""
    assert is_before_the_stop(typed, stopped, datetime(2026, 11, 26, 15, 0)) is before
