"""What a proof clears: a step that came speaks against all ahead of it, as the word never does."""

from __future__ import annotations

import math
from dataclasses import replace

from tests.building import base, case, fault, test_of
from troubleshoot.knowledge.model import Condition, Finding, Procedure
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer

SPARK = test_of("spark", "none")
PROOF = Procedure(
    "it-sparked",
    Condition("finding", finding=Finding("spark", ("normal",))),
    "It sparked, so the inducer ran.",
    clears=("inducer",),
)
KNOWN = base([SPARK], [fault("inducer"), fault("rod")], procedures=[PROOF])


def weights(outcome: str) -> dict[str, dict[str, float]]:
    found = Reasoner(KNOWN).conclude(case(KNOWN, Answer("spark", (outcome,))))
    return {
        cause.fault.id: {" + ".join(test for test, _ in w.tests): w.weight for w in cause.weights}
        for cause in found.causes
    }


def test_what_came_speaks_against_what_is_ahead_of_it_and_names_the_reading() -> None:
    assert weights("normal") == {"rod": {}, "inducer": {"spark": math.log(PROBABILITY["never"])}}


def test_nothing_is_cleared_where_the_step_did_not_come() -> None:
    assert weights("none") == {"inducer": {}, "rod": {}}


def test_a_whole_subsystem_is_cleared_by_its_name() -> None:
    of = KNOWN.faults["rod"].subsystem
    rule = replace(PROOF, clears=("inducer",), clears_subsystems=(of,))
    known = base([SPARK], [fault("inducer"), fault("rod")], procedures=[rule])
    found = Reasoner(known).conclude(case(known, Answer("spark", ("normal",))))
    assert {c.fault.id: [w.weight for w in c.weights] for c in found.causes} == {
        name: [math.log(PROBABILITY["never"])] for name in ("inducer", "rod")
    }
