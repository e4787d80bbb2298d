"""`rules measure --visits FOLDER`: the cards beside what closed visits ended in, in lines."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import groupby
from pathlib import Path
from typing import Final

from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.workshop.card_said import said_finding
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.measure.closed.counting import (
    AS_MANY,
    FEWEST,
    CauseOfCall,
    Counted,
    calls_counted,
    causes_counted,
    findings_counted,
)
from troubleshoot.measure.closed.ended import ENDINGS, closed_visits
from troubleshoot.outside.refusal import in_a_line
from troubleshoot.reasoning.evidence.grades import spoken as with_band

NO_WORD: Final = "No word of a card is gainsaid."
NOTHING_CHANGED: Final = (
    "Nothing is changed by this. A test was read because the rules led to it, and a cause believed "
    "because they named it: visits that bear a word out prove little, and one that they gainsay is "
    "worth a look at them before the card is changed."
)


def closed_lines(knowledge: Knowledge, folder: Path) -> Iterator[str]:
    """The cards beside what the visits of a folder ended in. Raises Failure where it has none."""
    every = list(closed_visits(knowledge, folder))
    if not every:
        raise Failure([f"{in_a_line(str(folder))}: there is no kept visit in this folder"], USAGE)
    ended = [each.ended for each in every if each.ended is not None]
    endings = Counter(each.ending for each in every)
    yield f"Of {len(every)} visits {len(ended)} were closed with their cause put right."
    yield from (f"- {endings[why]} {words}" for why, words in ENDINGS.items() if endings[why])
    yield from (f"- {each.problem}" for each in every if each.problem)
    if not ended:
        return
    yield ""
    yield from _ended_lines(list(causes_counted(ended)))
    counted = [*findings_counted(knowledge, ended), *calls_counted(knowledge, ended)]
    gainsaid = [each for each in counted if each.becomes != each.grade]
    yield f"### Words that the visits gainsay, {len(gainsaid)} of {len(counted)} counted"
    yield ""
    yield (
        f"What a card says counts as {AS_MANY} visits; with under {FEWEST} visits nothing is said."
    )
    yield from (_gainsaid_line(knowledge, each) for each in gainsaid)
    if not gainsaid:
        yield NO_WORD
    yield NOTHING_CHANGED


def _ended_lines(causes: Sequence[CauseOfCall]) -> Iterator[str]:
    """What ended each call: how often, what the rules say, and both together."""
    yield "### What ended the calls"
    yield ""
    for call, rows in groupby(causes, key=lambda each: each.call.id):
        of_call = list(rows)
        yield f"{of_call[0].call.says} ({call}), {of_call[0].visits} visits:"
        for each in of_call:
            yield (
                f"- {each.fault.id}: {each.ended}; the rules say {_share(each.said)}, with the "
                f"visits {_share(each.together)}"
            )
        yield ""


def _gainsaid_line(knowledge: Knowledge, each: Counted) -> str:
    """A word of a card, what it might become, and why."""
    return (
        f"- {each.fault.id}: {_about(knowledge, each)}: {with_band(each.grade)} might become "
        f"{spoken(each.becomes)}: so on {each.showed} of {each.visits} visits; with what the card "
        f"says {_share(each.together)}"
    )


def _about(knowledge: Knowledge, each: Counted) -> str:
    """What a grade is of: a call, or a finding."""
    if isinstance(each.about, Complaint):
        return f'the call "{each.about.says}"'
    return said_finding(knowledge, each.about.findings[0])


def _share(chance: float) -> str:
    return f"{100 * chance:.0f} %" if chance >= 0.01 else "under 1 %"
