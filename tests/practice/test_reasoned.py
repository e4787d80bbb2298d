"""A call is reasoned where what was read separates it; what is there beside it is no rival."""

from __future__ import annotations

import pytest

from tests.practice.playing import (
    conclusions_of,
    follow,
    path_of,
    reasoner_of,
    scenario_named,
    session_of,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.loading import scenario_paths
from troubleshoot.practice.reasoned import is_reasoned, lead, rivals
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, score_of


@pytest.mark.parametrize("name", sorted(scenario_paths()))
def test_no_call_is_reasoned_before_anything_is_read(shipped: Knowledge, name: str) -> None:
    start = session_of(shipped, name).start
    truth = scenario_named(shipped, name).truth.faults
    assert not is_reasoned(reasoner_of(shipped), start, start, truth, truth)


@pytest.mark.parametrize("name", ["lock-house", "mews-end", "spa-terrace", "castle-street"])
def test_the_experts_call_is_reasoned(shipped: Knowledge, name: str) -> None:
    session, path = session_of(shipped, name), path_of(shipped, name)
    follow(session, path)
    true = session.scenario.truth.faults[:1]
    score = score_of(session, Call(true), path)
    assert score.reasoned and not score.came_off


def test_a_wrong_call_is_not_made_reasoned_by_the_truth_beside_it(shipped: Knowledge) -> None:
    session = session_of(shipped, "lock-house")
    follow(session, path_of(shipped, "lock-house"))
    at = session.scenario.truth.faults[0].at
    wrong = (TrueFault("low-charge-from-leak", at),)
    truth = session.scenario.truth.faults
    now = session.conclusions
    assert not is_reasoned(reasoner_of(shipped), session.start, now, wrong, truth)
    assert truth[0].fault in {cause.fault.id for cause in rivals(now, wrong)}


def test_a_lead_is_over_every_rival_that_is_not_called(shipped: Knowledge) -> None:
    found = conclusions_of(shipped, "mews-end")
    both = scenario_named(shipped, "mews-end").truth.faults
    for fault in both:
        assert lead(found, fault, both) > lead(found, fault)
