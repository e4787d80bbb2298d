"""What quiets an alarm or goes by itself, another unit, who has not come: nothing is made safe."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.of_the_danger import why_another_unit
from troubleshoot.safety.stops.outright import DEVICES, WATCHERS_TOO, asked_of_what_was_done
from troubleshoot.safety.stops.reopening import NotAResult, fitting_roles, in_words, role
from troubleshoot.safety.stops.shown import as_read

ALARM, GAS, CO = "flammable-refrigerant-alarm", "gas-odour", "carbon-monoxide-evacuate"
NOTHING_DONE = [
    (ALARM, "sensor was acting up so he unplugged it and it is quiet now"),
    (ALARM, "disconnected the sensor"),
    (ALARM, "took the sensor off and it stopped"),
    (ALARM, "put tape on the sensor"),
    (ALARM, "pulled the wire off the leak sensor and it runs"),
    (ALARM, "shut the alarm up at the board"),
    (ALARM, "aired it out and reset the board"),
    (ALARM, "pulled the plug of the horn"),
    (ALARM, "bagged the detector"),
    (ALARM, "slipped a glove over the probe"),
    (ALARM, "vented the room and cleared the alarm"),
    (ALARM, "replaced the sensor that alarmed"),
    (CO, "sealed the crack with furnace cement"),
    (CO, "welded the heat exchanger"),
    (CO, "took the battery out of the co alarm"),
    (GAS, "smell went away"),
    (GAS, "taped the joint"),
    (GAS, "tightened the union and taped the joint"),
    (GAS, "joint doped over from outside"),
    (GAS, "it fixed itself"),
    (GAS, "left it bubbling slightly, replaced union"),
    (GAS, "put a ziptie on the pressure switch, replaced union"),
    (GAS, "replaced the union but reset limit held in with tape"),
    (GAS, "couldnt find anything, tightened union just in case"),
    (GAS, "replaced union yesterday... or did they"),
]
DONE = [
    (ALARM, "flare at the coil leaked, remade and pressure tested"),
    (ALARM, "sensor had failed, unplugged it and fitted a new one"),
    (ALARM, "recovered the charge, brazed the hole in the coil, nitrogen held"),
    (ALARM, "aired the room, tightened the flare, reset the board"),
    (CO, "exchanger was cracked, replaced the exchanger"),
    (GAS, "union remade with new tape on the threads, smell went away"),
    (GAS, "replaced the union and put the detector back in service"),
]
NOTHING_SHOWN = [
    (ALARM, "the alarm is quiet"),
    (GAS, "0 % LEL with the alarm muted"),
    (GAS, "0 % LEL downstairs"),
    (GAS, "0 % LEL in fresh air"),
    (GAS, "0 % LEL at the van"),
    (GAS, "0 % LEL, battery low"),
    (GAS, "0 % LEL from his report"),
    (GAS, "0 % LEL before gas back on"),
    (GAS, "0 % LEL, gas still off at street"),
]
SHOWN = [
    (GAS, "0 % LEL at the union, zeroed in fresh air"),
    (CO, "0 ppm downstairs and in the office"),
    (ALARM, "0 % LFL at the coil, alarm quiet"),
]
NOBODY = [
    "unlicensed gas fitter",
    "the gas utility will come",
    "waiting for the gas fitter",
    "the gas fitter is on his way",
    "i called the gas utility",
]


@pytest.mark.parametrize(("hazard", "typed"), NOTHING_DONE)
def test_what_makes_nothing_safe_is_no_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        in_words(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), DONE)
def test_what_was_put_right_stays_a_result(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize(("hazard", "typed"), NOTHING_SHOWN)
def test_what_was_not_read_where_the_danger_was_shows_nothing(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), SHOWN)
def test_what_was_read_there_shows_it(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert as_read(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize("typed", NOBODY)
def test_who_has_not_come_or_may_not_do_it_made_nothing_safe(
    typed: str, shipped: Knowledge
) -> None:
    names = fitting_roles(shipped.hazards[GAS])
    with pytest.raises(NotAResult, match="somebody who came"):
        role(typed, names)
    assert role("the gas utility", names) == "gas-utility"
    assert role("licensed gas fitter", names) == "gas-fitter"


@pytest.mark.parametrize(
    ("typed", "name", "another"),
    [
        ("replaced valve on RTU-4", "RTU-3", True),
        ("0 % LEL on rtu 4", "RTU-3", True),
        ("replaced the valve of RTU-3", "rtu 3", False),
        ("replaced valve on RTU-4 and RTU-3", "RTU-3", False),
        ("replaced valve on unit 4", "Bakery roof", False),
        ("tightened 2 unions", "RTU-3", False),
    ],
)
def test_another_unit_is_told_by_its_number(typed: str, name: str, another: bool) -> None:
    assert bool(why_another_unit(typed, name)) is another


@pytest.mark.parametrize("hazard", [ALARM, CO, "smoke-detector-alarm"])
def test_of_an_alarm_it_is_asked_outright_whether_its_sensor_watches(
    hazard: str, shipped: Knowledge
) -> None:
    assert asked_of_what_was_done(shipped.hazards[hazard]) == WATCHERS_TOO
    assert "plugged in, uncovered and armed" in WATCHERS_TOO.question
    assert asked_of_what_was_done(shipped.hazards[GAS]) == DEVICES
