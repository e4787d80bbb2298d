"""A STOP whose all-clear is metered is lifted by no look or word alone."""

from __future__ import annotations

import pytest

from tests.visit.deciding.test_stops import next_of, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.stops.lifting import conclude_visit, lifting_finding
from troubleshoot.safety.stops.parts import shown_by
from troubleshoot.safety.stops.record import HandOverResult, Spot
from troubleshoot.safety.stops.reopening import what_stopped
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Halted,
    Reopened,
    Resumed,
    Started,
    StepDone,
    TakenAfresh,
    VisitEnded,
    replay,
)

RESULT = HandOverResult("gas-fitter", "union tightened", "0 % LEL", "2026-11-26 09:30")
SWEEP, LOOK = "combustible-gas-sweep", "walk-round"
CLOSED = VisitEnded("stopped", "the gas utility, 9:20", "2026-11-25 09:21")


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def smelled(*more: Event) -> list[Event]:
    """Gas was smelled at the walk round, the job handed over and given back."""
    spot: Spot = (LOOK, None)
    roof = StepDone("roof-conditions", ("safe",))
    seen = Answered(LOOK, outcomes=("gas-odour",))
    return [*start(), roof, seen, Halted.over("gas-odour", spot), CLOSED, *more]


def given_back(decider: Decider) -> list[Event]:
    events = smelled()
    state = replay(decider.knowledge, events)
    reasoner = Reasoner(decider.knowledge)
    hazard, first = what_stopped(decider.knowledge, state, conclude_visit(reasoner, state))
    assert (hazard.id, first) == ("gas-odour", (SWEEP, None))
    return [*events, Reopened.on(hazard.id, RESULT, first)]


def asked(decider: Decider, events: list[Event]) -> Decision:
    """What is asked once every safety step on the way has been confirmed."""
    while (decision := next_of(decider, events)).step is not None:
        if decision.test is not None and decision.test.id == SWEEP:
            break
        events.append(StepDone.of(decision.step, _confirmed(decision)))
    return decision


def _confirmed(decision: Decision) -> tuple[str, ...]:
    assert decision.test is not None
    return decision.test.healthy[:1]


def standing(decider: Decider, events: list[Event]) -> set[str]:
    found = conclude_visit(decider.reasoner, replay(decider.knowledge, events))
    return {fired.hazard.id for fired in found.standing_stops}


def read(test: str, outcome: str) -> Answered:
    return Answered(test, outcomes=(outcome,))


def test_the_sweep_comes_before_the_look_and_then_both_lift_it(decider: Decider) -> None:
    """Regression: the word "clean" at the walk round lifted the STOP for a smell of gas."""
    events = given_back(decider)
    decision = asked(decider, events)
    assert decision.test is not None and decision.test.id == SWEEP and decision.stop is not None
    events.append(read(SWEEP, "none"))
    assert "gas-odour" in standing(decider, events)
    decision = asked(decider, events)
    assert decision.kind == "ask" and decision.test is decider.knowledge.tests[LOOK]
    events.append(read(LOOK, "clean"))
    assert standing(decider, events) == set()
    assert next_of(decider, events).kind != "stop"


def test_the_look_alone_lifts_nothing(decider: Decider) -> None:
    events = [*given_back(decider), read(LOOK, "clean")]
    assert "gas-odour" in standing(decider, events)


@pytest.mark.parametrize("outcome", ["trace", "leak"])
def test_a_sweep_that_finds_gas_hands_it_over_again(outcome: str, decider: Decider) -> None:
    events = [*given_back(decider), read(SWEEP, outcome)]
    decision = next_of(decider, events)
    assert decision.kind == "stop" and decision.stop is not None
    assert decision.stop.hazard.id == "gas-odour"
    events.append(Halted.over("gas-odour", (SWEEP, None)))
    events += [CLOSED, Reopened.on("gas-odour", RESULT, (SWEEP, None))]
    assert asked(decider, events).test is decider.knowledge.tests[SWEEP]
    events.append(read(SWEEP, "none"))
    assert asked(decider, events).test is decider.knowledge.tests[LOOK]
    events.append(read(LOOK, "clean"))
    assert standing(decider, events) == set()


def test_after_a_call_for_gas_the_word_of_who_cleared_it_comes_first(decider: Decider) -> None:
    clear: Spot = ("all-clear", None)
    events: list[Event] = [*start("gas-smell"), Halted.over("gas-odour", clear), CLOSED]
    events.append(Reopened.on("gas-odour", RESULT, clear))
    assert next_of(decider, events).test is decider.knowledge.tests["all-clear"]
    events.append(read("all-clear", "cleared"))
    assert "gas-odour" in standing(decider, events)
    assert asked(decider, events).test is decider.knowledge.tests[SWEEP]
    events.append(read(SWEEP, "none"))
    assert standing(decider, events) == set()


@pytest.mark.parametrize(
    ("hazard", "found", "metered"),
    [
        ("rollout-tripped", ("flame-picture", "rolls-out"), "rollout-switches"),
        (
            "carbon-monoxide-in-room",
            ("supply-air-carbon-monoxide", "with-damper-shut"),
            "room-carbon-monoxide",
        ),
        (
            "carbon-monoxide-evacuate",
            ("supply-air-carbon-monoxide", "evacuate"),
            "room-carbon-monoxide",
        ),
        ("rollout-tripped", ("safety-string-walk", "rollout-open"), "rollout-switches"),
        ("heat-exchanger-breach", ("heat-exchanger-look", "crack"), None),
    ],
)
def test_it_is_so_for_every_whole_job_stop_that_anything_else_called_up(
    hazard: str, found: tuple[str, str], metered: str | None, shipped: Knowledge
) -> None:
    job = replay(shipped, start())
    spot: Spot = (found[0], None)
    wanted = ((metered, None), spot) if metered else (spot,)
    assert shown_by(shipped, job, shipped.hazards[hazard], spot) == wanted


def both(*, answered: tuple[Event, ...] = ()) -> list[Event]:
    """Gas and water in the panel were both told of; gas came back first, then the water."""
    wet: Spot = ("all-clear", None)
    told = [Halted.over("gas-odour", (LOOK, None)), CLOSED]
    return [
        *start(),
        DangerReported("wet-electrical", "wet panel", wet[0]),
        Answered(LOOK, outcomes=("gas-odour",)),
        *told,
        Reopened.on("gas-odour", RESULT, (SWEEP, None)),
        *answered,
        Halted.over("wet-electrical", wet),
        CLOSED,
        Reopened.on("wet-electrical", RESULT, wet),
        Answered(wet[0], None, ("cleared",)),
        Halted.over("gas-odour", (LOOK, None)),
    ]


def test_a_reopening_is_kept_while_another_stop_was_told_and_lifted(decider: Decider) -> None:
    """Regression: the first hand-over had to be done again, as nobody had brought it back."""
    events = both()
    assert standing(decider, events) == {"gas-odour"}
    met = replay(decider.knowledge, events).stops[-1]
    assert met.reopened and met.result == RESULT and met.answers == 2
    events.append(TakenAfresh.of((SWEEP, None)))
    assert asked(decider, events).test is decider.knowledge.tests[SWEEP]


BETWEEN = DangerReported("ladder-and-hatch", "the ladder slipped", "made-safe")


def test_a_reopening_is_kept_while_another_danger_is_told(decider: Decider) -> None:
    events = [*given_back(decider), BETWEEN, Halted.over("gas-odour", (LOOK, None))]
    met = replay(decider.knowledge, events).stops[-1]
    assert met.hazard == "gas-odour" and met.reopened and met.result == RESULT


@pytest.mark.parametrize("read_of_it", [read(SWEEP, "leak"), read(SWEEP, "none")])
def test_a_reopening_is_used_up_once_anything_of_it_was_read(
    read_of_it: Event, decider: Decider
) -> None:
    events = [*given_back(decider), read_of_it, BETWEEN, Halted.over("gas-odour", (LOOK, None))]
    met = replay(decider.knowledge, events).stops[-1]
    assert met.hazard == "gas-odour" and not met.reopened


def test_a_reopening_is_not_kept_where_nothing_else_was_told(decider: Decider) -> None:
    events = [*given_back(decider), Halted.over("gas-odour", (LOOK, None))]
    assert not replay(decider.knowledge, events).stops[-1].reopened


def test_one_that_was_reported_again_is_handed_over_again(decider: Decider) -> None:
    again = DangerReported("gas-odour", "i smell gas", SWEEP)
    met = replay(decider.knowledge, both(answered=(again,))).stops[-1]
    assert met.hazard == "gas-odour" and not met.reopened


def cleared() -> list[Event]:
    """Gas was smelt by the caller, and whoever cleared the place has said so."""
    call = Started(
        complaint="gas-smell", unit={"heat": "gas"}, profiles=tuple(sorted(FULLY_QUALIFIED))
    )
    spot: Spot = ("all-clear", None)
    return [
        call,
        Halted.over("gas-odour", spot),
        CLOSED,
        Reopened.on("gas-odour", RESULT, spot),
        Answered("all-clear", None, ("cleared",)),
    ]


def test_the_word_of_whoever_cleared_the_place_leads_on_to_the_sweep(decider: Decider) -> None:
    decision = next_of(decider, cleared())
    assert decision.kind == "step" and decision.stop is not None
    assert decision.aim == ("combustible-gas-sweep", None)


@pytest.mark.parametrize("minutes", [3.0, 45.0, 7 * 24 * 60.0])
def test_a_break_ends_the_way_to_the_rest_of_what_lifts(decider: Decider, minutes: float) -> None:
    """Regression: a week after the place was cleared the visit went on towards the sweep."""
    decision = next_of(decider, [*cleared(), Resumed(minutes, minutes < 60)])
    assert decision.kind == "stop"


@pytest.mark.parametrize(
    ("minutes", "first"), [(3.0, "combustible-gas-sweep"), (7 * 24 * 60.0, "all-clear")]
)
def test_what_was_read_in_part_before_a_long_break_is_read_anew(
    decider: Decider, minutes: float, first: str
) -> None:
    """Regression: a sweep of three weeks ago was half of what lifted the STOP."""
    state = replay(decider.knowledge, [*cleared(), Resumed(minutes, minutes < 60)])
    conclusions = conclude_visit(decider.reasoner, state)
    (stop,) = conclusions.standing_stops
    assert lifting_finding(decider.knowledge, state, conclusions, stop) == (first, None)


CO: Spot = ("room-carbon-monoxide", None)
SUPPLY: Spot = ("supply-air-carbon-monoxide", None)


def test_carbon_monoxide_in_the_supply_is_lifted_by_the_rooms_first(decider: Decider) -> None:
    """Regression: once the supply took a number, that alone lifted it, and no room was read."""
    hazard = "carbon-monoxide-in-room"
    events: list[Event] = [
        *start(), Answered(SUPPLY[0], text="38 ppm"), Halted.over(hazard, SUPPLY), CLOSED,
        Reopened.on(hazard, RESULT, CO), TakenAfresh.of(CO),
    ]  # fmt: skip
    assert hazard in standing(decider, [*events, Answered(SUPPLY[0], text="0 ppm")])
    events.append(Answered(CO[0], text="0 ppm"))
    assert hazard in standing(decider, events)
    assert standing(decider, [*events, Answered(SUPPLY[0], text="0 ppm")]) == set()


@pytest.mark.parametrize(("read", "stands"), [("8 ppm", True), ("5 ppm", False), ("0 ppm", False)])
def test_a_number_that_may_be_over_its_limit_by_the_meter_lifts_nothing(
    read: str, stands: bool, decider: Decider
) -> None:
    """Regression: 8 +/-12 ppm lifted both STOPs of carbon monoxide, whose limit is 9 ppm."""
    events: list[Event] = [
        *start(), Answered(CO[0], text="38 ppm"),
        Halted.over("carbon-monoxide-in-room", CO), CLOSED,
        Reopened.on("carbon-monoxide-in-room", RESULT, CO), TakenAfresh.of(CO),
        Answered(CO[0], text=read),
    ]  # fmt: skip
    assert bool(standing(decider, events)) is stands
    if not stands:
        return
    decision = next_of(decider, events)
    assert decision.kind == "stop" and decision.stop is not None
    found = conclude_visit(decider.reasoner, replay(decider.knowledge, events))
    state = replay(decider.knowledge, events)
    assert lifting_finding(decider.knowledge, state, found, decision.stop) == CO, "once more"
    assert standing(decider, [*events, TakenAfresh.of(CO), Answered(CO[0], text="0 ppm")]) == set()


AIR, SAID = "room-carbon-monoxide", "my monitor reads 85 ppm of co"
BOTH = ("carbon-monoxide-in-room", "carbon-monoxide-evacuate")


def given_back_by(decider: Decider, who: str, *told: str) -> list[Event]:
    """Carbon monoxide told in these words, each a danger of its own, and given back by somebody."""
    danger = (
        DangerReported(hazard, said, test=AIR) for hazard, said in zip(BOTH, told, strict=True)
    )
    over = VisitEnded("stopped", "the fire department, 9:20", "2026-11-25 09:21")
    result = HandOverResult(who, "flue put back and sealed", "0 ppm", "2026-11-26 09:30")
    return [*start(), *danger, over, Reopened.on(BOTH[1], result, (AIR, None))]


def test_two_stops_of_one_sentence_are_given_back_and_lifted_by_one_reading(
    decider: Decider,
) -> None:
    """Regression: a sound reopening was told the second of them at once, and handed over again."""
    events = given_back_by(decider, "combustion", SAID, SAID)
    stops = replay(decider.knowledge, events).stops
    assert all(met.reopened and met.result is not None for met in stops)
    assert asked(decider, events).aim == (AIR, None) and standing(decider, events) == {*BOTH}
    assert standing(decider, [*events, Answered(AIR, text="0 ppm")]) == set()
    assert standing(decider, [*events, Answered(AIR, text="85 ppm")]) == {*BOTH}


def test_of_two_that_a_word_clears_each_is_handed_over_by_itself(decider: Decider) -> None:
    """Who put the burnt lug right has tested nothing of the wet switch."""
    said, word = "water in the panel and sparks", "all-clear"
    told = (
        DangerReported(hazard, said, test=word)
        for hazard in ("wet-electrical", "smoke-or-heat-now")
    )
    over = VisitEnded("stopped", "the electrician, 9:20", "2026-11-25 09:21")
    result = HandOverResult("electrician", "lug replaced", "no smoke", "2026-11-26 09:30")
    events = [*start(), *told, over, Reopened.on("smoke-or-heat-now", result, (word, None))]
    wet, smoke = replay(decider.knowledge, events).stops
    assert smoke.reopened and not wet.reopened and wet.result is None


@pytest.mark.parametrize(
    ("who", "told"),
    [("combustion", ("the alarm sounded in the hall", SAID)), ("medical-service", (SAID, SAID))],
)
def test_one_told_by_itself_or_for_others_is_handed_over_by_itself(
    who: str, told: tuple[str, str], decider: Decider
) -> None:
    first, _ = replay(decider.knowledge, given_back_by(decider, who, *told)).stops
    assert not first.reopened and first.result is None
