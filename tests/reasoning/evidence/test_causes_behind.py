"""What lies behind a repaired fault: likelier, and its evidence its own."""

from __future__ import annotations

import pytest

from tests.building import base, case, fault, test_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer


def damper(*behind: str, grade: str = "sometimes") -> Knowledge:
    """A damper that stands open, at times for a dead actuator; and a third fault."""
    tests = [test_of("damper", "open"), test_of("actuator", "dead"), test_of("other", "bad")]
    return base(
        tests,
        [
            fault(
                "damper-open",
                {"almost-always": [{"damper": "open"}], grade: [{"actuator": "dead"}]},
                behind=behind,
            ),
            fault("actuator-dead", {"almost-always": [{"actuator": "dead"}]}),
            fault("third", {"often": [{"other": "bad"}]}),
        ],
    )


def concluded(known: Knowledge, *answers: Answer) -> Conclusions:
    return Reasoner(known).conclude(case(known, *answers, repaired=("damper-open",)))


def odds(found: Conclusions) -> float:
    """The actuator against the third fault."""
    chances = {c.fault.id: c.probability for c in found.causes}
    return chances["actuator-dead"] / chances["third"]


def test_what_lies_behind_a_repaired_fault_is_eight_times_as_likely() -> None:
    assert odds(concluded(damper())) == pytest.approx(1.0)
    assert odds(concluded(damper("actuator-dead"))) == pytest.approx(8.0)


def test_before_any_repair_what_lies_behind_counts_for_nothing() -> None:
    chances = [
        {c.fault.id: c.probability for c in Reasoner(known).conclude(case(known)).causes}
        for known in (damper(), damper("actuator-dead"))
    ]
    assert chances[0] == chances[1]


def test_the_repaired_fault_does_not_explain_away_what_lies_behind_it() -> None:
    """A dead actuator speaks for itself: 0.92 against the usual tenth, look error 0.02."""
    dead = Answer("actuator", ("dead",))
    told = odds(concluded(damper("actuator-dead"), dead)) / odds(concluded(damper("actuator-dead")))
    expected = (0.92 * 0.98 + 0.08 * 0.02) / (0.1 * 0.98 + 0.9 * 0.02)
    assert told == pytest.approx(expected)
    explained = odds(concluded(damper(), dead)) / odds(concluded(damper()))
    assert explained < told / 2


def test_what_the_repaired_card_says_as_strongly_it_does_explain() -> None:
    dead = Answer("actuator", ("dead",))
    known = damper("actuator-dead", grade="almost-always")
    assert odds(concluded(known, dead)) / odds(concluded(known)) < 2


def test_what_lies_behind_is_named_once_the_repair_has_not_helped() -> None:
    known = damper("actuator-dead")
    answers = Answer("damper", ("open",)), Answer("actuator", ("dead",))
    before = Reasoner(known).conclude(case(known, *answers)).causes[0]
    after = concluded(known, *answers)
    assert (before.fault.id, after.causes[0].fault.id) == ("damper-open", "actuator-dead")
    assert [reading.test for reading in after.unexplained] == []
