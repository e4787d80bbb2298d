"""A hazard whose place among the cautions nobody has settled.

What: a file of hazards says no kind, or one that order-of-cautions.yaml does not list; a file in
hazards/ has another name than its kind; a listed kind of which there is no hazard.
Why: of two cautions as grave, the one whose kind stands first in order-of-cautions.yaml is read
first, and a kind is one file: what is read first must never hang on how files are called.
Fix: write the kind at the top of the file and name the file after it; move a hazard to the file
of its kind. A pack's file that says no kind is only told of: its cautions are read after all that
are as grave.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.nodes import LocatedMapping
from troubleshoot.knowledge.problems import Level, Problem, did_you_mean
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "hazard-kinds"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every file without its place in the order, and for every empty kind."""
    kinds = base.knowledge.hazard_kinds
    for file in base.files:
        if file.kind != "hazards" or not kinds:
            continue
        kind = file.data.get("kind")
        if kind is None:
            level: Level = "notice" if file.folder else "error"
            what = "this file does not say what kind its hazards are of"
            yield _problem(file, what, f"add kind: one of {', '.join(kinds)}", level)
        elif kind not in kinds:
            what = f"order-of-cautions.yaml has no kind {kind}"
            yield _problem(file, what, did_you_mean(kind, kinds))
        elif "/" in file.name and file.name != f"hazards/{kind}.yaml":
            what = f"hazards of the kind {kind} stand in {file.name}"
            yield _problem(file, what, f"name the file hazards/{kind}.yaml")
    used = {hazard.kind for hazard in base.knowledge.hazards.values()}
    for kind in kinds:
        if kind not in used:
            what = f"there is no hazard of the kind {kind}"
            yield base.problem(ID, ("hazard kind", kind), ("id",), what, "take the kind out")


def _problem(file: RuleFile, what: str, instead: str, level: Level = "error") -> Problem:
    root = file.root
    at = root.entries.get("kind") if isinstance(root, LocatedMapping) else None
    line, column = (1, 1) if at is None else (at.line, at.column)
    return Problem(file.path, line, column, what, instead, ID, level)
