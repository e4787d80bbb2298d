"""A play: the same visit as the engine's, and the guards that stop what could hurt someone."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest

from tests.practice.playing import (
    TO_OPEN_AND_RUN,
    answers_file,
    do_steps,
    follow,
    lead_to,
    path_of,
    reasoner_of,
    scenario_named,
    session_of,
)
from troubleshoot.knowledge.model import Knowledge, Stop
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import ExpertPath, expert_path
from troubleshoot.practice.played import Done, Partly, Stopped, Unavailable
from troubleshoot.practice.session import HINT_MINUTES, Session
from troubleshoot.practice.slips import GRAVE_NEEDS, gravest_need
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.telling.whole_visit import visit_account

PLAYED = ("castle-street", "elm-parade", "church-field")
NAMED_AT_ONCE = ("mews-end", "cobblers-row")
"""Where the file holds no danger that the expert does not come to: a file speaks of every one."""


def by_the_engine(shipped: Knowledge, name: str) -> tuple[Session, ExpertPath]:
    """A play, and the engine's own visit, where no way is written down."""
    reasoner, scenario = reasoner_of(shipped), replace(scenario_named(shipped, name), way=())
    return Session(reasoner, scenario), expert_path(
        reasoner, scenario, AnsweringUnit(reasoner, scenario)
    )


@pytest.mark.parametrize("name", PLAYED)
def test_the_experts_choices_come_to_the_experts_visit(shipped: Knowledge, name: str) -> None:
    session, path = by_the_engine(shipped, name)
    follow(session, path)
    wanted = dict(path.account)
    offered = wanted["would_separate"] != []
    account = visit_account(
        shipped,
        session.state,
        session.conclusions,
        ending=path.ending,
        stop=session.standing_stop(),
        candidates=session.decider.candidates(session.state, session.conclusions)
        if offered
        else (),
    )
    assert without_hours(account) == without_hours(wanted)
    assert not session.slips


def without_hours(account: Mapping[str, Any]) -> dict[str, Any]:
    """An account without the hours of its readings: each was played by a clock of its own."""
    asked = [{k: v for k, v in row.items() if k != "time"} for row in account["asked"]]
    return {**account, "asked": asked}


def without_who(account: dict[str, Any]) -> dict[str, Any]:
    """An account without who says so: a file certifies no step, whoever plays has done them."""
    of_a_file = ("certifies", "standing", "unread", "left_before")
    kept = {k: v for k, v in account.items() if k not in of_a_file}
    who = ("said_by", "valid", "time")
    kept["asked"] = [{k: v for k, v in row.items() if k not in who} for row in kept["asked"]]
    return kept


@pytest.mark.parametrize("name", NAMED_AT_ONCE)
def test_a_play_by_the_expert_equals_diagnose_with_its_answers(
    shipped: Knowledge,
    name: str,
    command: Callable[..., tuple[int, str, str]],
    case_file: Callable[[dict[str, Any]], str],
) -> None:
    session, path = by_the_engine(shipped, name)
    follow(session, path)
    code, out, _ = command("diagnose", "--answers", case_file(answers_file(session)), "--json")
    assert code == 0
    assert without_who(json.loads(out)) == without_who(json.loads(json.dumps(path.account)))
    assert path.ending == "named"


def test_hands_in_without_lockout_is_stopped_and_fails_the_second_time(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, "roof-conditions", "tell-occupants", "tester-proof")
    result = session.choose(
        shipped.tests["capacitance-out-of-circuit"], Place("condenser-fan-capacitor", 1)
    )
    assert isinstance(result, Stopped) and result.slip.grave and not session.failed
    said = " ".join(result.slip.missing)
    assert "locked" in said and "dead" in said and "discharged" in said
    assert result.slip.gravest == "the power switched off, locked and tagged"
    assert result.slip.read == "lockout-and-verify-dead"
    assert session.state.answers[-1].test == "tester-proof"
    for other in (shipped.tests["contactor-contacts"], shipped.tests["air-filters"]):
        session.choose(other, session.places(other)[0])
    assert session.failed


def test_an_unproved_meter_is_a_grave_slip(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, "roof-conditions", "tell-occupants", "stop-by-controls")
    do_steps(session, "combustible-gas-sweep", "arc-clothing-on", "panels-off-energised")
    result = session.choose(shipped.tests["transformer-secondary-volts"], None)
    assert isinstance(result, Stopped) and result.slip.grave
    assert result.slip.gravest is not None
    assert result.slip.gravest.startswith("the meter proved")
    assert result.slip.read == "tester-failed-proof"


@pytest.mark.parametrize("step", ["panels-off-energised", "panels-off"])
def test_a_panel_opened_without_arc_rated_clothing_fails_the_play(
    step: str, shipped: Knowledge
) -> None:
    """The supply of this unit is on no record, so that it counts as 480 V."""
    session = session_of(shipped, "pump-square")
    do_steps(session, "roof-conditions", "tell-occupants", "combustible-gas-sweep", "tester-proof")
    do_steps(session, "stop-by-controls", *(["lockout"] if step == "panels-off" else []))
    result = session.step(shipped.tests[step])
    assert isinstance(result, Stopped) and result.slip.grave
    assert any(words.startswith("arc-rated clothing") for words in result.slip.missing)


def test_to_be_without_arc_rated_clothing_behind_a_live_panel_is_a_grave_lack(
    shipped: Knowledge,
) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, *TO_OPEN_AND_RUN[:-2], "second-person")
    undressed = replace(session.state.work, arc_clothing=False)
    test, unit = shipped.tests["transformer-secondary-volts"], session.state.at_work
    assert gravest_need(session.state.work, test, None, unit) is None
    assert gravest_need(undressed, test, None, unit) == (
        "arc-rated clothing, face shield and rated gloves on",
        "arc-flash-480-volt",
    )


def test_what_a_test_needs_is_told_in_the_order_of_work(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    result = session.choose(shipped.tests["blower-belt"], None)
    assert isinstance(result, Stopped)
    needs = result.slip.missing
    told = (
        "the roof",
        "the occupants",
        "the meter",
        "the power",
        "dead",
        "discharged",
        "the panel",
    )
    assert [next(i for i, n in enumerate(needs) if n.startswith(t)) for t in told] == list(range(7))


def test_what_a_computed_test_lacks_is_told_with_what_it_is_for(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    do_steps(session, *TO_OPEN_AND_RUN)
    result = session.choose(shipped.tests["subcooling"], Place("circuit", 1))
    assert isinstance(result, Stopped)
    assert result.slip.tried.endswith(f" (for {shipped.tests['subcooling'].name})")


def test_every_hazard_to_read_about_after_a_slip_is_in_the_rules(shipped: Knowledge) -> None:
    assert {hazard for hazard in GRAVE_NEEDS.values() if hazard} <= set(shipped.hazards)


def test_a_charged_capacitor_fails_the_play(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, "roof-conditions", "tell-occupants", "tester-proof", "stop-by-controls")
    do_steps(session, "lockout", "arc-clothing-on", "panels-off", "verified-dead")
    result = session.choose(shipped.tests["condenser-fan-hand-spin"], Place("condenser-fan", 1))
    assert isinstance(result, Stopped) and result.slip.grave
    assert any(words.startswith("discharged") for words in result.slip.missing)


def test_a_forgotten_panel_is_stopped_but_fails_nothing(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, *TO_OPEN_AND_RUN)
    result = session.choose(shipped.tests["drain-pour-test"], None)
    assert isinstance(result, Stopped) and not result.slip.grave
    assert not session.failed and session.slips


def test_a_dangerous_step_out_of_turn_is_a_grave_slip(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    do_steps(session, "roof-conditions")
    result = session.step(shipped.tests["panels-off"])
    assert isinstance(result, Stopped) and result.slip.grave
    assert session.state.work.panels == "on"


def test_going_on_past_a_stop_fails_and_stopping_ends_the_job(shipped: Knowledge) -> None:
    session = session_of(shipped, "church-field")
    past = session.choose(shipped.tests["visit-history"], None)
    assert isinstance(past, Stopped) and past.slip.grave and past.slip.read == "gas-odour"
    assert isinstance(session.choose(shipped.tests["all-clear"], None), Done)
    assert session.standing_stop() is None
    assert isinstance(session.choose(shipped.tests["combustible-gas-sweep"], None), Stopped)
    do_steps(session, "roof-conditions")
    assert isinstance(session.choose(shipped.tests["combustible-gas-sweep"], None), Done)
    obeyed = session.declare_stop()
    assert obeyed is not None and obeyed.hazard.id == "gas-odour"
    assert session.state.ended == "stopped"


def test_calling_a_stop_where_none_stands_costs_a_minute(shipped: Knowledge) -> None:
    session = session_of(shipped, "pump-square")
    assert session.declare_stop() is None
    assert session.minutes == 1 and not session.failed


def test_a_hint_is_the_engines_next_and_costs(shipped: Knowledge) -> None:
    scenario = replace(scenario_named(shipped, "pump-square"), way=())
    session = Session(reasoner_of(shipped), scenario)
    decision = session.hint()
    assert decision == session.decider.decide(session.state, session.conclusions)
    assert session.minutes == HINT_MINUTES


def test_a_computed_test_reads_its_inputs_and_waits_for_another_state(shipped: Knowledge) -> None:
    session = session_of(shipped, "quarry-road")
    lead_to(session, "superheat")
    superheat, at = shipped.tests["superheat"], Place("circuit", 1)
    result = session.choose(superheat, at)
    assert isinstance(result, Partly | Done)
    if isinstance(result, Partly):
        assert not session.slips
        assert {shown.test for shown in result.done.shown} <= {
            "suction-pressure", "suction-line-temperature",
        }  # fmt: skip


def test_a_doubted_reading_counts_for_nothing_and_is_read_afresh(shipped: Knowledge) -> None:
    session = session_of(shipped, "elm-parade")
    lead_to(session, "suction-line-temperature")
    line, at = shipped.tests["suction-line-temperature"], Place("circuit", 1)
    first = session.choose(line, at)
    assert isinstance(first, Done) and first.shown[0].text == "65.7 F"
    assert session.state.answers[-1].valid is None
    assert session.doubt("one against four")
    assert session.state.answers[-1].valid is False
    second = session.choose(line, at)
    assert isinstance(second, Done) and second.shown[0].text == "51.5 F"


def test_a_test_that_cannot_be_done_costs_a_minute(shipped: Knowledge) -> None:
    scenario = replace(
        scenario_named(shipped, "quarry-road"), unavailable={"visit-history": "nobody is in"}
    )
    session = Session(reasoner_of(shipped), scenario)
    result = session.choose(shipped.tests["visit-history"], None)
    assert isinstance(result, Unavailable) and result.why == "nobody is in"
    assert session.minutes == 1 and not session.slips


def test_dead_work_goes_on_under_a_stop_until_made_safe_and_live_work_does_not(
    shipped: Knowledge,
) -> None:
    # The rules stop only the step for a dead leg; here the same finding halts until made safe.
    hazard = shipped.hazards["motor-on-bad-supply"]
    stricter = replace(hazard, stop=Stop("until-made-safe", "live work"))
    knowledge = replace(shipped, hazards={**shipped.hazards, hazard.id: stricter})
    session = Session(Reasoner(knowledge), scenario_named(shipped, "alderbrook"))
    do_steps(session, "roof-conditions", "tell-occupants", "second-person", "arc-clothing-on")
    do_steps(session, "combustible-gas-sweep", "tester-proof")
    do_steps(session, "stop-by-controls", "panels-off-energised", "tools-clear")
    do_steps(session, "restart-and-watch")
    amps = session.choose(shipped.tests["compressor-amps"], Place("compressor", 2))
    assert isinstance(amps, Done) and session.standing_stop() is not None
    do_steps(session, "stop-by-controls", "lockout")
    do_steps(session, "tester-proof", "verified-dead", "tester-proof")
    do_steps(session, "capacitor-discharge", "verified-dead", "tester-proof")
    assert session.state.work.energy == "proved-dead"
    look = session.choose(shipped.tests["contactor-contacts"], Place("contactor", 2))
    assert isinstance(look, Done)
    live = session.choose(shipped.tests["contactor-pole-drop"], Place("contactor", 2))
    assert isinstance(live, Stopped) and live.slip.grave


@pytest.mark.parametrize("name", ["quarry-road", "mill-bridge"])
def test_the_expert_reads_nothing_before_it_may(shipped: Knowledge, name: str) -> None:
    """Regression: it read the suction pressure for whose sake another was asked, without gauges."""
    session = session_of(shipped, name)
    follow(session, path_of(shipped, name))
    assert not session.slips


@pytest.mark.parametrize("first", [(), ("tester-proof",)])
def test_to_stop_somebody_who_is_about_to_reach_in_is_right(
    first: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: "Nothing found so far stops the job. A minute lost; go on." """
    session = session_of(shipped, "canal-wharf")
    for name in first:
        session.step(shipped.tests[name])
    before = session.minutes
    for _ in range(2):
        assert session.declare_stop() is None
    assert session.called_back and session.minutes == before
    assert session.stopped is None
