"""A fault card in the wrong place.

What: the name of the file is not the fault's id, or the folder is not its subsystem.
Why: a stranger finds a card by its name.
Fix: rename the file or the folder, not an id that is in use.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "file-names"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every card whose path does not say what it is."""
    for fault in base.knowledge.faults.values():
        _, folder, name = base.definitions.of("fault")[fault.id].file.name.split("/")
        entry = ("fault", fault.id)
        if name != f"{fault.id}.yaml":
            what = f"the fault {fault.id} stands in {name}"
            yield base.problem(ID, entry, ("fault",), what, f"name the file {fault.id}.yaml")
        if folder != fault.subsystem:
            what = f"the subsystem {fault.subsystem} stands in the folder {folder}"
            yield base.problem(ID, entry, ("subsystem",), what, f"move it to {fault.subsystem}/")
