"""Which steps lead to the finding that lifts a STOP, which STOP that is, and where no way leads."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.deciding.test_lifting import EVERYBODY, LIVE, OPENED, ROOF
from tests.visit.deciding.test_stops import start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.needs import for_dead_work
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import METER_PROOF, Step
from troubleshoot.safety.stops import afresh
from troubleshoot.safety.stops.afresh import Afresh, taken_by, way_to, way_to_lifting
from troubleshoot.safety.stops.lifting import conclude_visit, is_news
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import Answered, StepDone, TakenAfresh, replay
from troubleshoot.visit.state import VisitState

LEADS: Spot = ("leads-back", None)
GAUGES_OFF: Spot = ("gauges-off", None)
TESTED = replace(OPENED, dead="tested")


def visit(shipped: Knowledge, work: WorkState | None = None) -> VisitState:
    """A visit of somebody who may do all work, from a state of the work."""
    state = replay(shipped, start(profiles=EVERYBODY))
    return replace(state, work=work or state.work)


def way(shipped: Knowledge, finding: Spot, work: WorkState | None = None) -> list[str]:
    found = way_to(shipped, visit(shipped, work), finding)
    return [] if found is None else [step.id for step in found.steps]


def to_dead_work(shipped: Knowledge, work: WorkState | None = None) -> list[str]:
    job = visit(shipped, work)
    return [step.id for step in steps_to(job.work, for_dead_work(job.at_work), job.at_work)]


def test_a_test_for_dead_that_was_taken_needs_only_the_proof_of_its_meter(
    shipped: Knowledge,
) -> None:
    """It counts once the meter has been proved after it (NFPA 70E 120.5): not taken once more."""
    proof = Afresh(LIVE, (Step(METER_PROOF, again=True),))
    assert way_to(shipped, visit(shipped, TESTED), LIVE) == proof
    again = replace(TESTED, dead="tested-again", discharged=frozenset())
    assert way(shipped, LIVE, again) == [METER_PROOF]


@pytest.mark.parametrize("work", [None, TESTED], ids=["as it is found", "tested dead"])
def test_a_step_for_dead_work_comes_after_the_last_proof(
    work: WorkState | None, shipped: Knowledge
) -> None:
    assert way(shipped, LEADS, work) == [*to_dead_work(shipped, work), "leads-back"]
    assert len(to_dead_work(shipped, work)) > 3


def test_towards_a_step_that_has_no_turn_on_the_way_the_unit_is_made_dead_and_no_more(
    shipped: Knowledge,
) -> None:
    """No gauges are on, so that none come off."""
    steps = way(shipped, GAUGES_OFF)
    assert steps == to_dead_work(shipped) and "gauges-off" not in steps


def test_no_way_leads_past_a_guard_that_no_step_meets(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    limit: Spot = ("main-limit", None)
    assert way_to(shipped, visit(shipped), limit) is not None
    monkeypatch.setattr(afresh, "is_blocked", lambda *of: True)
    assert way_to(shipped, visit(shipped), limit) is None


def test_of_two_stops_that_one_finding_lifts_the_first_is_told(shipped: Knowledge) -> None:
    """A slick roof and a ladder that is not safe both go with the next look at the roof."""
    roof = StepDone("roof-conditions", ("unsafe-surface", "ladder-not-safe"))
    job = replay(shipped, [*start(profiles=EVERYBODY), roof, TakenAfresh.of(ROOF)])
    conclusions = conclude_visit(Reasoner(shipped), job)
    first, second = conclusions.standing_stops
    for told in (first, second):
        found = way_to_lifting(shipped, job, conclusions, told)
        assert found is not None and found[0] == first


def test_no_other_is_lifted_before_one_that_came_back_bad_is_handed_over(
    shipped: Knowledge,
) -> None:
    """The crack is there still: nobody goes on with the look at the roof instead."""
    crack = Answered("heat-exchanger-look", outcomes=("crack",))
    back = StopMet("heat-exchanger-breach", 1, (crack.test, None), reopened=True)
    roof = StepDone("roof-conditions", ("unsafe-surface",))
    events = [*start(profiles=EVERYBODY), crack, crack, roof, TakenAfresh.of(ROOF)]
    job = replace(replay(shipped, events), stops=(back,))
    conclusions = conclude_visit(Reasoner(shipped), job)
    told = {fired.hazard.id: fired for fired in conclusions.standing_stops}
    assert not is_news(shipped, job, conclusions, told["heat-exchanger-breach"])
    for name in ("heat-exchanger-breach", "wind-or-slick-roof"):
        found = way_to_lifting(shipped, job, conclusions, told[name])
        assert (found is None) is (name == "heat-exchanger-breach")


def test_one_stop_that_came_back_is_enough_for_an_apprentice_to_take_nothing_back(
    shipped: Knowledge,
) -> None:
    learner = replay(shipped, start(profiles=[*EVERYBODY, "apprentice", "supervised"]))
    back = StopMet("lightning", 0, ROOF, reopened=True)
    here = replace(back, hazard="wind-or-slick-roof", reopened=False)
    for stops in ((back, here), (here, back)):
        met = replace(learner, stops=stops)
        assert taken_by(shipped, met, ROOF) == "hand over to the supervising technician"
    assert taken_by(shipped, replace(learner, stops=(here, here)), ROOF) is None


def test_each_step_on_the_way_asks_for_its_person_when_it_is_next(shipped: Knowledge) -> None:
    tests, job = dict(shipped.tests), visit(shipped)
    job = replace(job, profiles=frozenset({"technician"}))
    tests["verified-dead"] = replace(
        tests["verified-dead"], who=(), exposes="none", work_state="any"
    )
    first, second, *_ = to_dead_work(shipped)
    for step, phrase in ((second, None), (first, "hand over to a licensed fire-alarm person")):
        named = {**tests, step: replace(tests[step], who=("fire-alarm",))}
        assert taken_by(replace(shipped, tests=named), job, LIVE) == phrase
