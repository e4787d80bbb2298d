"""A unit that moves: it answers to what is done to it, and remembers what was done on a guess."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from tests.practice.playing import (
    TO_OPEN_AND_RUN,
    do_steps,
    lead_to,
    path_of,
    reasoner_of,
    scenario_named,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.acting import HandedOver, act
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.deeds import Acted, Deed, deeds_by_feel, repair_of
from troubleshoot.practice.drawing import draw_scenario
from troubleshoot.practice.loading import scenarios_folder
from troubleshoot.practice.moving import moved, reads_wrong
from troubleshoot.practice.played import Done, Stopped, places_of_step
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scoring import LEFT_COSTS, PART_COSTS, Call, score_of
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.steps import TELL_FIRE_PANEL

ONE = Place("circuit", 1)
DEAD = (
    "roof-conditions", "tell-occupants", "combustible-gas-sweep", "tester-proof",
    "stop-by-controls", "lockout", "arc-clothing-on", "panels-off", "verified-dead",
    "tester-proof", "capacitor-discharge", "verified-dead", "tester-proof",
)  # fmt: skip


def moving(shipped: Knowledge, name: str) -> Session:
    scenario = replace(scenario_named(shipped, name), moves=True)
    return Session(reasoner_of(shipped), scenario)


def by_feel(shipped: Knowledge, words: str) -> Deed:
    found = deeds_by_feel(shipped, scenarios_folder())
    return next(deed for deed in found if words in deed.name)


def read(shipped: Knowledge, scenario: Scenario, test: str, at: Place | None = None) -> str:
    shown = AnsweringUnit(reasoner_of(shipped), scenario).shows(shipped.tests[test], at)
    assert shown is not None
    return shown.text or shown.outcomes[0]


def test_what_mends_the_fault_takes_its_signs_away(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "market-rise")
    clean = repair_of(shipped.faults["condenser-coil-dirty"])
    after = moved(reasoner_of(shipped), scenario, clean, None)
    assert {fault.fault for fault in after.truth.faults} == {"overcharge"}
    assert read(shipped, scenario, "condenser-coil-face") != read(
        shipped, after, "condenser-coil-face"
    )


def test_mended_whole_it_reads_as_proved(shipped: Knowledge) -> None:
    """The numbers after the repair are the author's own: 125 psig and 53.5 F on circuit 2."""
    scenario = scenario_named(shipped, "lock-house")
    mend = repair_of(shipped.faults["txv-underfeeding"])
    after = moved(reasoner_of(shipped), scenario, mend, Place("circuit", 2))
    assert not after.truth.faults
    assert read(shipped, after, "suction-pressure", Place("circuit", 2)) == "125 psig"
    elsewhere = moved(reasoner_of(shipped), scenario, mend, ONE)
    assert elsewhere is scenario


@pytest.mark.parametrize(
    ("name", "words"), [("castle-street", "Add refrigerant"), ("lock-house", "Add refrigerant")]
)
def test_refrigerant_added_to_a_full_unit_is_an_overcharge(
    name: str, words: str, shipped: Knowledge
) -> None:
    reasoner, scenario = reasoner_of(shipped), scenario_named(shipped, name)
    after = moved(reasoner, scenario, by_feel(shipped, words), ONE)
    assert "overcharge" in {fault.fault for fault in after.truth.faults}
    assert list(consistency_problems(reasoner, after)) == []


def test_refrigerant_added_to_a_leaking_unit_hides_the_leak(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "quarry-road")
    after = moved(reasoner_of(shipped), scenario, by_feel(shipped, "Add refrigerant"), ONE)
    assert not after.truth.faults
    assert read(shipped, after, "sight-glass", ONE) == "clear"


def test_refrigerant_added_drives_no_air_out(shipped: Knowledge) -> None:
    """Regression: it brought the standing pressure from 267 psig down to saturation, 251 psig.

    A charge of any size stands at the saturation of its temperature, and air on top of that: what
    is added lowers neither (Dalton's law of partial pressures).
    """
    reasoner = reasoner_of(shipped)
    scenario, _ = draw_scenario(reasoner, "air-in-refrigerant", 1)
    assert [fault.fault for fault in scenario.truth.faults] == ["air-in-refrigerant"]
    after = moved(reasoner, scenario, by_feel(shipped, "Add refrigerant"), ONE)
    for test in ("standing-pressure", "head-pressure"):
        before, now = (float(read(shipped, s, test, ONE).split()[0]) for s in (scenario, after))
        assert now >= before
    assert "overcharge" in {fault.fault for fault in after.truth.faults}


@pytest.mark.parametrize("name", ["castle-street", "lock-house", "mews-end"])
def test_charge_added_lowers_no_pressure_and_charge_drawn_off_raises_none(
    name: str, shipped: Knowledge
) -> None:
    """More mass in a shut circuit of one volume stands no lower (conservation of mass); less, no
    higher. A number stays a number.
    """
    reasoner, scenario = reasoner_of(shipped), scenario_named(shipped, name)
    for words, sign in (("Add refrigerant", 1), ("Draw refrigerant", -1)):
        after = moved(reasoner, scenario, by_feel(shipped, words), ONE)
        for test in ("standing-pressure", "head-pressure"):
            was, now = (read(shipped, s, test, ONE).split()[0] for s in (scenario, after))
            assert sign * (float(now) - float(was)) >= 0, (words, test)


@pytest.mark.parametrize("name", ["castle-street", "lock-house"])
def test_no_deed_by_feel_makes_a_wrong_reading_sound(name: str, shipped: Knowledge) -> None:
    """Regression: refrigerant added brought the suction sound that an open damper kept high."""
    reasoner, scenario = reasoner_of(shipped), scenario_named(shipped, name)
    circuit = scenario.truth.faults[0].at or ONE
    before = reads_wrong(reasoner, scenario, scenario.truth.faults)
    assert before
    for deed in deeds_by_feel(shipped, scenarios_folder()):
        if {fault.fault for fault in scenario.truth.faults} & {deed.mends, *deed.hides}:
            continue
        after = moved(reasoner, scenario, deed, circuit if deed.read_by else None)
        assert before <= reads_wrong(reasoner, after, scenario.truth.faults), deed.name


def test_nothing_is_done_before_the_work_state_allows_it(shipped: Knowledge) -> None:
    session = moving(shipped, "mill-lane")
    at = Place("condenser-fan-capacitor", 1)
    result = act(session, repair_of(shipped.faults["condenser-fan-capacitor-weak"]), at)
    assert isinstance(result, Stopped) and result.slip.grave
    assert not session.deeds


def test_refrigerant_is_added_with_the_gauges_on_and_read_again(shipped: Knowledge) -> None:
    session = moving(shipped, "castle-street")
    add = by_feel(shipped, "Add refrigerant")
    lead_to(session, "head-pressure")
    before = session.choose(shipped.tests["head-pressure"], ONE)
    assert isinstance(act(session, add, ONE), Acted)
    after = session.choose(shipped.tests["head-pressure"], ONE)
    assert isinstance(before, Done) and isinstance(after, Done)
    psig = [float(str(done.shown[0].text).split()[0]) for done in (before, after)]
    assert psig[1] > psig[0]
    assert session.deeds[0].guessed and not session.deeds[0].met


@pytest.mark.parametrize("done", [(), TO_OPEN_AND_RUN[:-1], DEAD])
@pytest.mark.parametrize("words", ["Add refrigerant", "Turn the manifold"])
def test_a_deed_is_guarded_as_the_reading_it_is_done_by(
    words: str, done: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: the reading was stopped for panel, fire panel and partner; the deed was done."""
    scenario, _ = draw_scenario(reasoner_of(shipped), "air-in-refrigerant", 1)
    sessions = [Session(reasoner_of(shipped), scenario) for _ in range(2)]
    for session in sessions:
        for name in (TELL_FIRE_PANEL, *done):
            for place in places_of_step(name, session.state.work, session.state.at_work):
                session.step(shipped.tests[name], place)
    deed = by_feel(shipped, words)
    assert deed.read_by is not None
    at = ONE if deed.read_by.per == "circuit" else None
    read, acted = sessions[0].choose(deed.read_by, at), act(sessions[1], deed, at)
    assert isinstance(read, Stopped) and isinstance(acted, Stopped)
    assert acted.slip.missing == read.slip.missing
    assert (acted.slip.grave, acted.slip.read) == (read.slip.grave, read.slip.read)
    assert not sessions[1].deeds


def test_refrigerant_is_not_added_by_whoever_is_not_certified(shipped: Knowledge) -> None:
    """40 CFR 82.161: only a certified technician opens a circuit or adds to it."""
    session = moving(shipped, "castle-street")
    lead_to(session, "head-pressure")
    session.book.state = replace(session.state, profiles=frozenset({"technician"}))
    result = act(session, by_feel(shipped, "Add refrigerant"), ONE)
    assert isinstance(result, Stopped) and not session.deeds
    assert "a person certified for refrigerant" in result.slip.missing[0]


def test_hands_want_everything_that_dead_work_wants(shipped: Knowledge) -> None:
    """Regression: the meter's proof after the dead test was wanted for a look, not for a deed."""
    session = moving(shipped, "mill-lane")
    do_steps(session, *DEAD[:-2])
    part = repair_of(shipped.faults["contactor-pole-burnt-away"])
    result = act(session, part, Place("contactor", 1))
    assert isinstance(result, Stopped) and result.slip.grave


def test_a_part_changed_on_a_guess_is_remembered_and_costs(shipped: Knowledge) -> None:
    session = moving(shipped, "mill-lane")
    do_steps(session, *DEAD)
    part = repair_of(shipped.faults["contactor-pole-burnt-away"])
    result = act(session, part, Place("contactor", 1))
    assert isinstance(result, Acted) and result.guessed and not result.met
    assert session.deeds == [result]
    assert session.minutes >= part.minutes
    true = session.scenario.truth.faults
    score = score_of(
        session, Call(true, (), true[0].fault, true[0].fault), path_of(shipped, "mill-lane")
    )
    assert score.parts == 1
    other = moving(shipped, "mill-lane")
    without = score_of(
        other, Call(true, (), true[0].fault, true[0].fault), path_of(shipped, "mill-lane")
    )
    assert score.points == max(0, without.points - PART_COSTS - LEFT_COSTS)


def test_a_reasoned_repair_is_no_guess_and_the_call_stays_reasoned(shipped: Knowledge) -> None:
    session = moving(shipped, "mill-lane")
    do_steps(session, *DEAD)
    at = Place("condenser-fan-capacitor", 1)
    session.choose(shipped.tests["capacitance-out-of-circuit"], at)
    result = act(session, repair_of(shipped.faults["condenser-fan-capacitor-weak"]), at)
    assert isinstance(result, Acted) and result.met and not result.guessed
    true = session.scenario.truth.faults
    score = score_of(session, Call(true), path_of(shipped, "mill-lane"))
    assert (score.verdict, score.reasoned, score.parts) == ("right", True, 0)


def test_what_is_handed_over_is_not_done(shipped: Knowledge) -> None:
    session = moving(shipped, "ferry-green")
    cracked = shipped.faults["heat-exchanger-cracked"]
    assert cracked.repair.hand_over
    assert isinstance(act(session, repair_of(cracked), None), HandedOver)


def test_a_drawn_unit_moves(shipped: Knowledge) -> None:
    scenario, _ = draw_scenario(reasoner_of(shipped), "condensate", 2)
    assert scenario.moves


def names_of(shipped: Knowledge) -> Iterator[str]:
    for deed in deeds_by_feel(shipped, scenarios_folder()):
        yield from (deed.makes, *deed.hides)


def test_every_deed_by_feel_names_faults_of_the_rules(shipped: Knowledge) -> None:
    assert set(names_of(shipped)) <= set(shipped.faults)
    assert len(deeds_by_feel(shipped, scenarios_folder())) >= 8
