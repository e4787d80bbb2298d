"""Every hazard that one finding calls up is said first, and what it forbids is not advised.

What is forbidden is worked out here from the rule files alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Ban, Finding, Hazard, Knowledge, Trigger
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case

SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")


def single_findings(knowledge: Knowledge) -> Iterator[tuple[str, str, str]]:
    """(hazard, test, outcome) for every hazard that a single finding calls up."""
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers:
            if len(trigger.findings) == 1 and _only_finds(trigger):
                for outcome in trigger.findings[0].outcomes:
                    yield hazard.id, trigger.findings[0].test, outcome


def _only_finds(trigger: Trigger) -> bool:
    others = (trigger.complaint, trigger.fault, trigger.test, trigger.work_state, trigger.exposes)
    return not any(others) and trigger.profile is None and not trigger.equipment


def unit_for(knowledge: Knowledge, test: str, outcome: str) -> dict[str, Any]:
    """The least unit on which the test has that outcome."""
    known = knowledge.tests[test]
    own = next(each for each in known.outcomes if each.id == outcome)
    needed = {**known.exists_when, **own.exists_when}
    return {fact: words[0] for fact, words in needed.items() if fact in knowledge.facts}


def bans(hazard: Hazard) -> tuple[Ban, ...]:
    wide = hazard.stop is not None and hazard.stop.scope in ("whole-job", "until-made-safe")
    return hazard.forbids or ((Ban(),) if wide else ())


def fits(knowledge: Knowledge, ban: Ban, row: dict[str, Any]) -> bool:
    """Whether a line advises what a ban speaks of, on a unit with one circuit."""
    test = knowledge.tests[row["test"]]
    ends = any(finding.test == test.id for finding in ban.until)
    return (
        not ends
        and test.area in (ban.areas or (test.area,))
        and test.work_state in (ban.work_states or (test.work_state,))
        and test.id in (ban.tests or (test.id,))
        and (not ban.places or test.per in ban.places)
    )


CASES = sorted(single_findings(load_shipped()))


@pytest.mark.parametrize(("hazard", "test", "outcome"), CASES)
def test_whatever_one_finding_calls_up_is_said_first_and_obeyed(
    hazard: str, test: str, outcome: str, shipped: Knowledge
) -> None:
    case = {"unit": {"circuits": 1, **unit_for(shipped, test, outcome)},
            "readings": [{"test": test, "outcome": outcome}]}  # fmt: skip
    account, lines = assess_case(shipped, read_case(shipped, case))
    plain: dict[str, Any] = dict(account)
    text = "\n".join(lines)
    standing = [row for row in plain["cautions"] if row.get("stands")]
    assert hazard in [row["id"] for row in standing]
    assert plain["cautions"][: len(standing)] == standing
    signals = [SIGNALS.index(row["signal"]) for row in standing]
    assert signals == sorted(signals) and text.startswith(SIGNALS[signals[0]])
    head = text.partition("\n\n")[0]
    assert shipped.hazards[standing[0]["id"]].what_to_do in head
    for row in standing:
        for ban in bans(shipped.hazards[row["id"]]):
            assert not any(fits(shipped, ban, each) for each in plain["would_separate"])


def test_some_ban_narrows_every_kind_there_is(shipped: Knowledge) -> None:
    """So that the test above means something: bans by area, state, place, test and circuit."""
    every = [ban for hazard in shipped.hazards.values() for ban in hazard.forbids]
    for part in ("areas", "work_states", "places", "tests", "until"):
        assert any(getattr(ban, part) for ban in every), part
    assert {ban.at for ban in every} == {"unit", "circuit"}
    found = Finding("compressor-insulation", ("normal",))
    assert any(found in ban.until for ban in shipped.hazards["repeated-breaker-resets"].forbids)
