"""Readings as evidence: whom they speak about, and which of them a card joins."""

from __future__ import annotations

import itertools
from typing import Any

import pytest

from tests.building import base, case, fault, test_of, unit_of
from tests.building import given as given_that
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.reading_evidence import (
    as_seen,
    by_test,
    circuits_of,
    joined_readings,
    likelihood,
    members_at,
    share_of,
)
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place

ONE, TWO = Place("circuit", 1), Place("circuit", 2)
BOTH: tuple[Place | None, ...] = (ONE, TWO)
JOINED = fault(
    "joined", {"often": [{"a": "high"}, {"b": "hot"}]},
    given=(given_that("b", "hot", "almost-always", a="high"),),
)  # fmt: skip
KNOWLEDGE = base(
    [test_of("a", "high", per="circuit"), test_of("b", "hot", per="circuit"), test_of("c", "bad")],
    [JOINED, fault("at-circuit", {"often": [{"a": "high"}, {"c": "bad"}]}, per="circuit")],
)


def concluded(*answers: Answer, known: Knowledge = KNOWLEDGE, **more: Any) -> Conclusions:
    unit = unit_of(known, circuits=2)
    return Reasoner(known).conclude(case(known, *answers, unit=unit, **more))


def at(test: str, outcome: str, *places: Place | None, **more: Any) -> Answer:
    return Answer(test, (outcome,), places=places or (None,), **more)


def test_a_reading_is_about_its_place_or_shared_over_those_it_may_belong_to() -> None:
    found = concluded(at("a", "high", TWO), at("b", "hot", *BOTH, shared=True), at("c", "bad"))
    shares = {
        (one.reading.test, h.at): share_of(found.hypotheses, h, one)
        for one in found.seen
        for h in found.hypotheses.causes
        if h.fault.id == "at-circuit"
    }
    assert shares == {
        ("a", ONE): 0, ("a", TWO): 1, ("b", ONE): 0.5, ("b", TWO): 0.5,
        ("c", ONE): 1, ("c", TWO): 1,
    }  # fmt: skip
    layout = found.hypotheses.unit.layout
    assert [sorted(circuits_of(layout, one)) for one in found.seen] == [[2], [1, 2], [1, 2]]


def test_a_void_reading_says_nothing_about_the_faults_named() -> None:
    found = concluded(at("a", "high", TWO))
    void = as_seen(found.hypotheses, found.seen[0].reading, frozenset({"joined"}))
    shares = {h.fault.id: share_of(found.hypotheses, h, void) for h in found.hypotheses.causes
              if h.at != ONE}  # fmt: skip
    assert shares == {"joined": 0, "at-circuit": 1}


def test_a_hard_report_is_right_in_all_but_the_error() -> None:
    found = concluded(at("a", "high", TWO))
    (one,) = found.seen
    assert one.column == pytest.approx({"normal": 0.02, "high": 0.98})
    assert one.usual == pytest.approx(0.9 * 0.02 + 0.1 * 0.98)
    assert likelihood({"normal": 0.3, "high": 0.7}, one.column) == pytest.approx(0.692)


def test_reports_of_repeats_multiply_for_each_truth() -> None:
    found = concluded(at("a", "high", TWO), at("a", "normal", TWO))
    (one,) = found.seen
    assert one.column == pytest.approx({"normal": 0.02 * 0.98, "high": 0.98 * 0.02})


def joined(*answers: Answer, **more: Any) -> tuple[dict[str, Place | None], list[Place | None]]:
    found = concluded(*answers, **more)
    hypothesis = next(h for h in found.hypotheses.causes if h.fault.id == "joined")
    (group,) = hypothesis.picture.groups
    together, apart = joined_readings(
        found.hypotheses, hypothesis, group, by_test(found.seen), found.ranking.present
    )
    return {t: one.reading.at for t, one in together.items()}, [o.reading.at for o in apart]


def test_a_group_joins_the_readings_of_one_circuit_whatever_their_order() -> None:
    answers = [at("a", "high", ONE), at("a", "high", TWO), at("b", "hot", TWO)]
    for order in itertools.permutations(answers):
        assert joined(*order) == ({"a": TWO, "b": TWO}, [ONE])
    assert joined(at("a", "high", ONE), at("b", "hot", TWO)) == ({"a": ONE}, [TWO])


def test_the_order_of_answers_at_several_circuits_does_not_change_a_bit() -> None:
    answers = [at("a", "high", ONE), at("a", "normal", TWO), at("b", "hot", TWO),
               at("b", "normal", ONE), at("c", "bad")]  # fmt: skip
    results = {
        tuple(
            (c.fault.id, str(c.at), c.probability.hex(), tuple(w.weight.hex() for w in c.weights))
            for c in concluded(*order).causes
        )
        for order in itertools.permutations(answers)
    }
    assert len(results) == 1


def test_beside_a_fault_already_there_readings_stand_single() -> None:
    present = fault("there", {"often": [{"a": "high"}]})
    known = base(list(KNOWLEDGE.tests.values()), [JOINED, present])
    answers = (at("a", "high", ONE), at("b", "hot", ONE))
    assert joined(*answers, known=known, repaired=("there",)) == ({}, [ONE, ONE])
    new = [at("a", "high", ONE, repairs=1), at("b", "hot", ONE, repairs=1)]
    assert joined(*new, known=known, repaired=("there",)) == ({"a": ONE, "b": ONE}, [])


def test_the_other_members_are_those_read_where_the_test_is_done() -> None:
    found = concluded(at("a", "high", ONE), at("a", "normal", TWO))
    hypothesis = next(h for h in found.hypotheses.causes if h.fault.id == "joined")
    (group,) = hypothesis.picture.groups
    for place, outcome in ((ONE, "high"), (TWO, "normal")):
        columns = members_at(found.hypotheses, hypothesis, group, "b", place, by_test(found.seen))
        assert max(columns["a"], key=lambda o: columns["a"][o]) == outcome
