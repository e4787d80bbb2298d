"""The next test: gain against a direct computation, minutes, exposure, and when to stop."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from tests.building import given as given_that
from tests.reasoning.evidence.test_ranking import OUTCOMES, answers_for, random_base
from troubleshoot.knowledge.model import Complaint, Knowledge, Test
from troubleshoot.knowledge.vocabulary import TestKind
from troubleshoot.reasoning.choosing.choice_of_test import choose
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.choosing.stopping import entropy, least_rate_on
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.outcome_chances import Row, background, cells_of, reported, row
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place


def itself(test: Test, place: Place | None) -> tuple[Test, ...]:
    return (test,)


def no_switch(test: Test, place: Place | None) -> float:
    return 0.0


def candidates(found: Conclusions) -> tuple[Candidate, ...]:
    done = frozenset((r.test, r.at) for r in found.readings)
    return found.chooser.candidates(found.ranking, found.seen, done, itself, no_switch)


def weighted_rows(found: Conclusions, test: Test) -> list[tuple[float, Row]]:
    """The chance of every hypothesis with its row of reports, with look error 0.02.

    Something outside the rules has a row of its own, three parts background and one part even.
    """
    usual = background(test, OUTCOMES)
    rows = {
        c.fault.id: row(test, cells_of(test, c.fault.evidence, OUTCOMES), usual)
        for c in found.causes
    }
    weighted = [(c.probability, reported(rows[c.fault.id], 0.02)) for c in found.causes]
    beyond = {o: 0.75 * p + 0.25 / len(usual) for o, p in usual.items()}
    weighted.append((found.ranking.nothing_wrong, reported(usual, 0.02)))
    weighted.append((found.ranking.outside, reported(beyond, 0.02)))
    return weighted


def direct_gain(found: Conclusions, test: Test) -> float:
    """H(sum p P(r|h)) - sum p H(r|h), over all hypotheses."""
    weighted = weighted_rows(found, test)
    mixed = [math.fsum(p * r[o] for p, r in weighted) for o in OUTCOMES]
    return entropy(mixed) - math.fsum(p * entropy(r.values()) for p, r in weighted)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_the_gain_is_the_expected_drop_in_doubt(seed: int, answering: int) -> None:
    knowledge = random_base(seed)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers_for(answering)[:2]))
    for candidate in candidates(found):
        expected = direct_gain(found, candidate.test)
        assert candidate.gain == pytest.approx(expected, abs=1e-4)


def one_question(**more: dict[str, Any]) -> Knowledge:
    """Two faults and tests that separate them equally well; `more` changes single tests."""
    names = ["slow", "quick"]
    tests = [test_of(name, "low", **more.get(name, {})) for name in names]
    low = {"almost-always": [{name: "low"} for name in names]}
    never = {"never": [{name: "low"} for name in names]}
    return base(tests, [fault("a", low), fault("b", never)])


def test_of_two_that_tell_the_same_the_quicker_is_next() -> None:
    knowledge = one_question(slow={"minutes": 20}, quick={"minutes": 5})
    found = Reasoner(knowledge).conclude(case(knowledge))
    chosen = choose(candidates(found), found.ranking)
    assert chosen is not None and chosen.test.id == "quick"


def test_changing_the_work_state_costs_its_minutes() -> None:
    knowledge = one_question(slow={"minutes": 8}, quick={"minutes": 5})
    found = Reasoner(knowledge).conclude(case(knowledge))

    def switch(test: Test, place: Place | None) -> float:
        return 30.0 if test.id == "quick" else 0.0

    offered = found.chooser.candidates(found.ranking, found.seen, frozenset(), itself, switch)
    assert offered[0].test.id == "slow"


def on_two_circuits(change: float) -> tuple[Candidate, ...]:
    """A test at two circuits that tells as much at each, and the minutes to its work state."""
    knowledge = base(
        [test_of("gauge", "low", per="circuit"), test_of("look", "low", minutes=30)],
        [
            fault(
                "a",
                {"almost-always": [{"gauge": "low"}], "often": [{"look": "low"}]},
                per="circuit",
            ),
            fault("b", {"never": [{"gauge": "low"}, {"look": "low"}]}),
        ],
    )
    found = Reasoner(knowledge).conclude(case(knowledge, unit=unit_of(knowledge, circuits=2)))

    def switch(test: Test, place: Place | None) -> float:
        return change if test.id == "gauge" else 0.0

    return found.chooser.candidates(found.ranking, found.seen, frozenset(), itself, switch)


def test_one_change_of_work_state_is_shared_by_the_places_that_it_serves() -> None:
    gauges = [each for each in on_two_circuits(40.0) if each.test.id == "gauge"]
    assert [each.share for each in gauges] == pytest.approx([0.5, 0.5])
    assert gauges[0].cost == pytest.approx(gauges[0].minutes + 20.0 + 1.0)
    assert gauges[0].switch_minutes == 40.0


def test_where_nothing_changes_nothing_is_shared() -> None:
    assert {each.share for each in on_two_circuits(0.0)} == {1.0}


def test_among_nearly_equal_rates_the_less_exposed_wins() -> None:
    knowledge = one_question(slow={"minutes": 10.5}, quick={"minutes": 10, "exposes": "line"})
    found = Reasoner(knowledge).conclude(case(knowledge))
    chosen = choose(candidates(found), found.ranking)
    assert chosen is not None and chosen.test.id == "slow"


def test_a_test_that_no_live_cause_mentions_is_not_offered() -> None:
    knowledge = base([test_of("t", "low")], [fault("a"), fault("b")])
    found = Reasoner(knowledge).conclude(case(knowledge))
    assert candidates(found) == ()


def test_it_stops_when_a_test_costs_more_than_it_can_save() -> None:
    cheap = one_question(slow={"minutes": 1}, quick={"minutes": 1})
    dear = one_question(slow={"minutes": 900}, quick={"minutes": 900})
    for knowledge, going_on in ((cheap, True), (dear, False)):
        found = Reasoner(knowledge).conclude(case(knowledge))
        assert (choose(candidates(found), found.ranking) is not None) == going_on


def test_the_change_of_work_state_counts_in_whether_a_test_pays() -> None:
    knowledge = one_question(slow={"minutes": 1}, quick={"minutes": 1})
    found = Reasoner(knowledge).conclude(case(knowledge))
    offered = found.chooser.candidates(
        found.ranking, found.seen, frozenset(), itself, lambda test, place: 2000.0
    )
    assert offered and choose(offered, found.ranking) is None


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 10_000))
def test_how_much_surer_the_best_call_becomes(seed: int, answering: int) -> None:
    """The sum over reports of the best joint chance, less the best chance now; by plain sums."""
    knowledge = random_base(seed)
    found = Reasoner(knowledge).conclude(case(knowledge, *answers_for(answering)[:2]))
    for candidate in candidates(found):
        weighted = weighted_rows(found, candidate.test)
        now = max(p for p, _ in weighted)
        after = math.fsum(max(p * r[o] for p, r in weighted) for o in OUTCOMES)
        assert candidate.surer == pytest.approx(max(0.0, after - now), abs=1e-4)


def test_the_gain_of_a_member_is_reckoned_given_what_the_others_of_its_place_read() -> None:
    tests = [test_of("a", "high", per="circuit"), test_of("b", "hot", per="circuit")]
    joined = fault("f", {"sometimes": [{"a": "high"}, {"b": "hot"}]},
                   given=(given_that("b", "hot", "almost-always", a="high"),))  # fmt: skip
    knowledge = base(tests, [joined, fault("g")])
    unit = unit_of(knowledge, circuits=2)
    answer = Answer("a", ("high",), places=(Place("circuit", 2),))
    found = Reasoner(knowledge).conclude(case(knowledge, answer, unit=unit))
    gains = {c.at: c.gain for c in candidates(found) if c.test.id == "b"}
    chance = found.causes[0].probability
    assert found.causes[0].fault.id == "f"
    # P(b hot | f): at circuit 1 on its own, at circuit 2 given the report "high" there.
    high = 0.41 * 0.98 / (0.41 * 0.98 + 0.59 * 0.02)
    alone = 0.41 * 0.92 + 0.59 * 0.41
    for number, hot in ((1, alone), (2, high * 0.92 + (1 - high) * 0.41)):
        rows = [
            (chance, hot), (found.ranking.outside, 0.75 * 0.1 + 0.25 / 2),
            (1 - chance - found.ranking.outside, 0.1),
        ]  # fmt: skip
        said = [(p, x * 0.98 + (1 - x) * 0.02) for p, x in rows]
        mixed = sum(p * x for p, x in said)
        expected = entropy([mixed, 1 - mixed]) - sum(p * entropy([x, 1 - x]) for p, x in said)
        assert gains[Place("circuit", number)] == pytest.approx(expected, abs=1e-4)


def test_a_test_at_a_place_tells_nothing_about_its_twin() -> None:
    knowledge = base(
        [test_of("t", "low", per="contactor")],
        [fault("f", {"often": [{"t": "low"}]}, per="contactor"), fault("g")],
    )
    unit = unit_of(knowledge, circuits=2)
    found = Reasoner(knowledge).conclude(case(knowledge, unit=unit))
    offered = {c.at: c.gain for c in candidates(found)}
    assert offered[Place("contactor", 1)] == pytest.approx(offered[Place("contactor", 2)])
    twin = Place("contactor", 2)
    others = tuple(r for r in found.ranking.hypotheses if r.hypothesis.at != twin)
    rest = replace(found.ranking, hypotheses=others)
    chooser, seen = found.chooser, found.seen
    assert chooser.gain(rest, "t", Place("contactor", 1), seen) == pytest.approx(
        offered[Place("contactor", 1)]
    )


def test_after_a_repair_old_readings_do_not_colour_what_a_new_one_would_tell() -> None:
    tests = [test_of("a", "high"), test_of("b", "hot")]
    joined = fault("f", {"sometimes": [{"a": "high"}, {"b": "hot"}]},
                   given=(given_that("b", "hot", "never", a="high"),))  # fmt: skip
    knowledge = base(tests, [joined, fault("mended"), fault("g")])
    answer = Answer("a", ("high",))
    found = Reasoner(knowledge).conclude(case(knowledge, answer, repaired=("mended",)))
    by_itself = found.chooser.gain(found.ranking, "b", None, ())
    assert found.chooser.gain(found.ranking, "b", None, found.seen) == by_itself
    fresh = replace(answer, repairs=1)
    after = Reasoner(knowledge).conclude(case(knowledge, fresh, repaired=("mended",)))
    assert after.chooser.gain(after.ranking, "b", None, after.seen) != pytest.approx(by_itself)


def test_safety_steps_and_inputs_are_never_chosen_by_gain() -> None:
    kinds: list[TestKind] = ["step", "input", "look"]
    tests = [test_of(kind, "low", kind=kind) for kind in kinds]
    low = {"almost-always": [{t.id: "low"} for t in tests]}
    knowledge = base(tests, [fault("f", low), fault("g")])
    found = Reasoner(knowledge).conclude(case(knowledge))
    assert [c.test.id for c in candidates(found)] == ["look"]


def test_a_test_already_done_is_not_offered_again() -> None:
    knowledge = one_question()
    found = Reasoner(knowledge).conclude(case(knowledge, Answer("slow", ("low",))))
    assert [c.test.id for c in candidates(found)] == ["quick"]


def test_ties_go_to_fewer_minutes_then_the_safer_state_then_the_name() -> None:
    names = ["d", "c", "b", "a"]
    states = {"d": "any", "c": "any", "b": "running", "a": "energised-open"}
    tests = [test_of(n, "low", work_state=states[n], minutes=5) for n in names]
    low = {"almost-always": [{n: "low"} for n in names]}
    knowledge = base(tests, [fault("f", low), fault("g")])
    found = Reasoner(knowledge).conclude(case(knowledge))
    assert [c.test.id for c in candidates(found)] == ["c", "d", "b", "a"]


def test_without_causes_nothing_is_chosen() -> None:
    knowledge = base([test_of("t", "low")])
    found = Reasoner(knowledge).conclude(case(knowledge))
    assert choose(candidates(found), found.ranking) is None and least_rate_on(found.ranking) > 0


def test_what_means_nothing_on_such_a_call_is_not_offered() -> None:
    round_ = Complaint(
        "round",
        "Nothing wrong",
        brought_by={"a": "almost-always", "b": "often"},
        pointless_tests=("slow",),
    )
    knowledge = replace(one_question(), complaints={"round": round_})
    for complaint, offered in ((None, ["quick", "slow"]), ("round", ["quick"])):
        found = Reasoner(knowledge).conclude(case(knowledge, complaint=complaint))
        assert [c.test.id for c in found.candidates(frozenset(), itself, no_switch)] == offered


def test_what_the_call_leads_to_comes_first_unless_another_tells_far_more() -> None:
    for minutes, expected in ((10, "slow"), (60, "quick")):
        knowledge = one_question(slow={"minutes": minutes}, quick={"minutes": 5})
        found = Reasoner(knowledge).conclude(case(knowledge))
        chosen = choose(candidates(found), found.ranking, ("elsewhere", "slow"))
        assert chosen is not None and chosen.test.id == expected


def test_first_tests_are_taken_in_the_order_of_the_call() -> None:
    knowledge = one_question(slow={"minutes": 6}, quick={"minutes": 5})
    found = Reasoner(knowledge).conclude(case(knowledge))
    for first in (("slow", "quick"), ("quick", "slow")):
        chosen = choose(candidates(found), found.ranking, first)
        assert chosen is not None and chosen.test.id == first[0]


def test_what_is_better_done_before_a_test_comes_before_it_if_it_pays() -> None:
    """Regression: `after` was filled in by authors, and nothing read it."""
    for minutes, expected in ((10, "slow"), (2000, "quick")):
        quick = {"minutes": 5, "after": ("slow",)}
        knowledge = one_question(slow={"minutes": minutes}, quick=quick)
        found = Reasoner(knowledge).conclude(case(knowledge))
        chosen = choose(candidates(found), found.ranking)
        assert chosen is not None and chosen.test.id == expected


def test_what_comes_before_a_test_is_taken_at_the_same_place() -> None:
    tests = [test_of("gauge", "low", per="circuit"), test_of("heat", "low", per="circuit")]
    tests[0] = replace(tests[0], after=("heat",), minutes=1)
    tests[1] = replace(tests[1], minutes=2)
    shows = {"almost-always": [{"gauge": "low"}, {"heat": "low"}]}
    knowledge = base(tests, [fault("f", shows, per="circuit"), fault("g")])
    unit = unit_of(knowledge, circuits=2)
    done = Answer("heat", ("low",), places=(Place("circuit", 1),))
    found = Reasoner(knowledge).conclude(case(knowledge, done, unit=unit))
    offered = candidates(found)
    two = [c for c in offered if c.at == Place("circuit", 2)]
    one = [c for c in offered if c.at == Place("circuit", 1)]
    assert [c.test.id for c in one] == ["gauge"]
    for part, expected in ((one, "gauge"), (two, "heat")):
        chosen = choose(part, found.ranking)
        assert chosen is not None and chosen.test.id == expected
