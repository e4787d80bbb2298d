"""A meter that fails its proof takes its readings with it.

Every reading that needs a proved meter and was taken since the meter last passed is withdrawn, and
so is every later one until a meter passes again. A proof that is not valid proves nothing. A stated
`valid: true` (another meter, proved elsewhere) wins.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer

METER_PROOF = "tester-proof"
METER_NEEDED = "meter-proved"
WITHDRAWN = "withdrawn: the meter failed its proof"
SAID_WRONG = "said to be wrong beside another reading"
ASKED_ANEW = frozenset({WITHDRAWN, SAID_WRONG})
"""Why a reading does not count and is asked again like one that was never taken."""


def withdraw(knowledge: Knowledge, answers: Sequence[Answer]) -> tuple[Answer, ...]:
    """The answers in the order given, those of a failed meter marked as not valid."""
    kept: list[Answer] = []
    passed_at = 0
    failed = False
    for answer in answers:
        if answer.test == METER_PROOF and answer.outcomes:
            if not set(answer.outcomes) <= set(knowledge.tests[METER_PROOF].healthy):
                failed = True
                kept[passed_at:] = [_withdrawn(knowledge, each) for each in kept[passed_at:]]
            elif answer.valid is not False:
                failed, passed_at = False, len(kept)
            kept.append(answer)
        else:
            kept.append(_withdrawn(knowledge, answer) if failed else answer)
    return tuple(kept)


def _withdrawn(knowledge: Knowledge, answer: Answer) -> Answer:
    test = knowledge.tests[answer.test]
    by_meter = METER_NEEDED in test.needs_state or (
        test.kind == "measurement" and test.exposes != "none"
    )
    if answer.valid is not None or test.kind == "step" or not by_meter:
        return answer
    return replace(answer, valid=False, why_invalid=WITHDRAWN)
