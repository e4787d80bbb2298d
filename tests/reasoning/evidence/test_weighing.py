"""Weights: what a finding says about a hypothesis, in nats, against direct computation."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from tests.building import given as given_that
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.vocabulary import PROBABILITY, Grade
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.weighing import complaint_weight, outside_row
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place

USUAL = {"normal": 0.9, "low": 0.05, "high": 0.05}
T = test_of("t", "low", "high")
U = test_of("u", "low", "high")


def concluded(known: Knowledge, *answers: Answer, **more: Any) -> Conclusions:
    return Reasoner(known).conclude(case(known, *answers, **more))


def weights(found: Conclusions, name: str) -> dict[str, float]:
    cause = next(c for c in found.causes if c.fault.id == name)
    return {" + ".join(t for t, _ in w.tests): w.weight for w in cause.weights}


def said(row: dict[str, float], outcome: str) -> float:
    """The chance of a report of a look, wrong in 0.02."""
    wrong = 0.02 / (len(row) - 1)
    return math.fsum(p * (0.98 if o == outcome else wrong) for o, p in row.items())


def test_a_weight_is_the_log_of_how_much_likelier_the_finding_is() -> None:
    known = base([T], [fault("f", {"often": [{"t": "low"}]}), fault("g")])
    row = {"low": 0.73, "normal": 0.27 * 0.9 / 0.95, "high": 0.27 * 0.05 / 0.95}
    for outcome in USUAL:
        found = concluded(known, Answer("t", (outcome,)))
        expected = math.log(said(row, outcome) / said(USUAL, outcome))
        assert weights(found, "f")["t"] == pytest.approx(expected)
        assert weights(found, "g") == {}


@given(st.sampled_from(list(PROBABILITY)), st.sampled_from(list(USUAL)))
def test_a_hypothesis_that_does_not_mention_a_test_weighs_exactly_nothing(
    grade: str, outcome: str
) -> None:
    known = base([T, U], [fault("f", {grade: [{"t": "low"}]}), fault("g", {grade: [{"u": "low"}]})])
    found = concluded(known, Answer("u", (outcome,)))
    assert weights(found, "f") == {}


def test_signs_are_weighed_as_the_set_that_was_ticked() -> None:
    signs = test_of("face", "dirty", "bent", choose="several")
    known = base([signs], [fault("f", {"often": [{"face": "dirty"}]})])
    q = 1 - 0.9**0.5
    for ticked, own, usual in (
        (("dirty",), 0.73 * (1 - q), q * (1 - q)),
        (("dirty", "bent"), 0.73 * q, q * q),
        (("normal",), 0.27 * (1 - q), 0.9),
    ):
        found = concluded(known, Answer("face", ticked))
        # A wrong report (0.02) is as likely as without the fault.
        expected = math.log(0.98 * own / usual + 0.02)
        assert weights(found, "f")["face"] == pytest.approx(expected)


def test_a_sign_this_unit_cannot_show_weighs_nothing() -> None:
    from dataclasses import replace

    signs = test_of("face", "dirty", "bent", choose="several")
    gone = tuple(
        replace(o, exists_when={"metering": ("txv",)}) if o.id == "bent" else o
        for o in signs.outcomes
    )
    known = base([replace(signs, outcomes=gone)], [fault("f", {"often": [{"face": "dirty"}]})])
    unit = unit_of(known, metering="fixed-orifice")
    assert weights(concluded(known, Answer("face", ("bent",)), unit=unit), "f") == {}


COMPLAINT = Complaint(
    "hot",
    "It is hot",
    brought_by={"first": "almost-always", "second": "often", "also": "seldom", "no": "never"},
)


@pytest.mark.parametrize(
    ("name", "chance"),
    [("first", 0.92), ("second", 0.73), ("also", 0.14), ("no", 0.02), ("other", None)],
)
@pytest.mark.parametrize(("unlisted", "usual"), [("never", 0.02), ("seldom", 0.14)])
def test_the_complaint_is_a_finding_against_how_often_other_faults_bring_it(
    unlisted: Grade, usual: float, name: str, chance: float | None
) -> None:
    complaint = replace(COMPLAINT, unlisted=unlisted)
    expected = math.log((chance or usual) / usual)
    assert complaint_weight(complaint, name) == pytest.approx(expected)


def test_no_call_argues_away_what_one_finding_shows_but_its_card_may() -> None:
    shown = test_of("seen", "jumper", background={"jumper": 0.0005})
    faults = [fault(name, {"almost-always": [{"seen": "jumper"}]}) for name in ("other", "no")]
    known = base([shown], faults, complaints=[COMPLAINT])
    found = concluded(known, Answer("seen", ("jumper",)), complaint="hot")
    usual = PROBABILITY["never"]
    assert weights(found, "other")["complaint"] == pytest.approx(math.log(0.14 / usual))
    assert "complaint" not in weights(found, "no")


def test_something_outside_leans_a_quarter_towards_even() -> None:
    known = base([T], [fault("f")])
    found = concluded(known, Answer("t", ("low",)))
    row = outside_row(found.hypotheses, "t")
    assert row == pytest.approx({o: 0.75 * p + 0.25 / 3 for o, p in USUAL.items()})
    odds = found.ranking.outside / found.ranking.nothing_wrong
    assert odds == pytest.approx(0.07 / 0.10 * said(dict(row), "low") / said(USUAL, "low"))


def test_what_defines_a_fault_speaks_for_nothing_outside() -> None:
    rare = replace(T, background={"low": 0.0005})
    row = outside_row(concluded(base([rare], [fault("f")])).hypotheses, "t")
    assert row["low"] == pytest.approx(0.0005)
    assert math.fsum(row.values()) == pytest.approx(1.0)


def both(one: dict[str, float], other: dict[str, float]) -> dict[str, float]:
    """Leaky noisy-OR written out (Henrion 1989); the leak counts once in bad outcomes too."""
    normal = min(one["normal"] * other["normal"] / 0.9, max(one["normal"], other["normal"]))
    ill = {
        o: min(one[o], other[o]) + max(0.0, max(one[o], other[o]) - USUAL[o])
        for o in ("low", "high")
    }
    total = sum(ill.values())
    return {"normal": normal, **{o: (1 - normal) * p / total for o, p in ill.items()}}


def row_of(grade: float, outcome: str) -> dict[str, float]:
    left = 1 - USUAL[outcome]
    rest = {o: (1 - grade) * p / left for o, p in USUAL.items() if o != outcome}
    return {o: rest.get(o, grade) for o in USUAL}


@pytest.mark.parametrize("outcome", list(USUAL))
def test_after_a_repair_an_old_answer_weighs_what_a_fault_adds_to_the_repaired_one(
    outcome: str,
) -> None:
    cards = [
        fault("mended", {"often": [{"t": "low"}]}),
        fault("f", {"almost-always": [{"t": "high"}]}),
        fault("g"),
    ]
    known = base([T], cards)
    found = concluded(known, Answer("t", (outcome,)), repaired=("mended",))
    there, own = row_of(0.73, "low"), row_of(0.92, "high")
    assert [c.fault.id for c in found.causes if c.fault.id == "mended"] == []
    expected = math.log(said(both(own, there), outcome) / said(there, outcome))
    assert weights(found, "f")["t"] == pytest.approx(expected)
    assert weights(found, "g") == {}


def test_what_a_repaired_fault_explains_does_not_speak_for_something_outside() -> None:
    known = base([T], [fault("mended", {"almost-always": [{"t": "low"}]}), fault("g")])
    low = Answer("t", ("low",))
    before = concluded(known, repaired=("mended",)).ranking.outside
    after = concluded(known, low, repaired=("mended",)).ranking.outside
    plain = concluded(base([T], [fault("g")]), low).ranking.outside
    assert after == pytest.approx(before, rel=0.1) and plain > 2 * before


def test_several_repaired_faults_count_the_background_once() -> None:
    cards = [fault("one", {"often": [{"t": "low"}]}), fault("two", {"often": [{"t": "low"}]}),
             fault("f", {"often": [{"t": "low"}]})]  # fmt: skip
    known = base([T], cards)
    found = concluded(known, Answer("t", ("low",)), repaired=("one", "two"))
    single = row_of(0.73, "low")
    there = both(single, single)
    assert there["normal"] == pytest.approx(single["normal"] ** 2 / 0.9)
    expected = math.log(said(both(there, single), "low") / said(there, "low"))
    assert weights(found, "f")["t"] == pytest.approx(expected)


def test_answers_since_the_repair_count_alone() -> None:
    known = base(
        [T], [fault("mended", {"often": [{"t": "low"}]}), fault("f", {"often": [{"t": "low"}]})]
    )
    new = concluded(known, Answer("t", ("low",), repairs=1), repaired=("mended",))
    plain = concluded(base([T], [known.faults["f"]]), Answer("t", ("low",)))
    assert weights(new, "f") == pytest.approx(weights(plain, "f"))


def test_a_repaired_fault_that_cannot_exist_here_is_no_trouble() -> None:
    known = base([T], [fault("valve", exists_when={"metering": ("txv",)}), fault("f")])
    unit = unit_of(known, metering="fixed-orifice")
    found = concluded(known, Answer("t", ("low",)), unit=unit, repaired=("valve",))
    assert [c.fault.id for c in found.causes] == ["f"] and found.ranking.present == ()


def test_a_group_has_one_weight_and_its_unanswered_members_none() -> None:
    card = fault("f", {"often": [{"t": "low"}, {"u": "low"}]},
                 given=(given_that("u", "low", "almost-always", t="low"),))  # fmt: skip
    known = base([T, U], [card])
    low = (Answer("t", ("low",)), Answer("u", ("low",)))
    together, alone = weights(concluded(known, *low), "f"), weights(concluded(known, low[0]), "f")
    assert list(together) == ["u + t"]
    single = base([T, U], [fault("f", {"often": [{"t": "low"}, {"u": "low"}]})])
    assert alone["t"] == pytest.approx(weights(concluded(single, low[0]), "f")["t"])
    assert together["u + t"] < sum(weights(concluded(single, *low), "f").values()) + 0.3


def test_a_member_read_at_another_circuit_counts_singly() -> None:
    tests = [test_of("t", "low", "high", per="circuit"), test_of("u", "low", "high", per="circuit")]
    card = fault("f", {"often": [{"t": "low"}, {"u": "low"}]},
                 given=(given_that("u", "low", "never", t="low"),))  # fmt: skip
    known = base(tests, [card])
    unit = unit_of(known, circuits=2)
    here, there = Place("circuit", 1), Place("circuit", 2)
    apart = concluded(
        known, Answer("t", ("low",), places=(here,)), Answer("u", ("low",), places=(there,)),
        unit=unit,
    )  # fmt: skip
    beside = concluded(
        known, Answer("t", ("low",), places=(here,)), Answer("u", ("low",), places=(here,)),
        unit=unit,
    )  # fmt: skip
    assert set(weights(apart, "f")) == {"t", "u"} and set(weights(beside, "f")) == {"u + t"}
