"""A caution or need that the earlier rules had and these have not, and that nobody signed.

What: against an earlier version (`rules check --against FOLDER`) a test lost a hazard or a need,
was opened to more people, or asks for a laxer work state; a hazard is gone, speaks up on less, is
worded shorter or weaker, or stops less.
Why: rules can be thinned without a word, one line at a time, and nobody sees what is not shown.
Fix: put it back. Where it was right to take it away, let the senior who answers for it sign on
that test or hazard: `signed: [{drops: WHAT, by: ROLE, on: DATE, why: REASON}]`; in retired.yaml for
an entry that is gone altogether.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.caution_diff import Drop, dropped
from troubleshoot.knowledge.model import Knowledge, Signature
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "dropped-cautions"


def find_against(base: RuleBase, earlier: Knowledge) -> Iterator[Problem]:
    """Yield a problem for everything that a person would no longer see, but for what is signed."""
    for drop in dropped(earlier, base.knowledge):
        if any(drop.word in signature.drops for signature in _signatures(base.knowledge, drop)):
            continue
        if drop.kind == "retired":
            path = _retired_file(base)
            instead = f"put it back, or retire and sign it there: {_signature(drop)}"
            yield Problem(path, 1, 1, drop.what, instead, ID)
        else:
            instead = f"put it back, or sign it there: {_signature(drop)}"
            entry = (drop.kind, drop.id)
            yield base.problem(ID, entry, (drop.key,), drop.what, instead)


def _signatures(knowledge: Knowledge, drop: Drop) -> tuple[Signature, ...]:
    if drop.kind == "test":
        return knowledge.tests[drop.id].signed
    return knowledge.hazards[drop.id].signed if drop.kind == "hazard" else knowledge.signed


def _signature(drop: Drop) -> str:
    return f"signed: [{{drops: {drop.word}, by: ROLE, on: DATE, why: REASON}}]"


def _retired_file(base: RuleBase) -> str:
    """The file in which what is gone is signed: that of the first folder, or its first file."""
    shipped = [file for file in base.files if file.folder == 0]
    return next((file.path for file in shipped if file.kind == "retired"), shipped[0].path)
