"""Which examples held the last time, so that only those need trying that a change can affect.

What is kept are the marks of examples that held (`footing`), in the user's own cache. An example
whose mark is among them rests on what it rested on then. One that failed is never among them; where
nothing is kept, every example is tried.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from troubleshoot.authoring.footing import Footing
from troubleshoot.authoring.trial import Trial, try_example
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.cache import sources
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.outside.own_files import read_own, write_own
from troubleshoot.reasoning.conclude import Reasoner

MOST_MARKS: Final = 20_000
_FILE: Final = "examples-that-held"
_BYTES_OF_A_MARK: Final = 33


@frozen
class Run:
    """The examples that were tried, and how many were not, since nothing they rest on changed."""

    trials: tuple[Trial, ...]
    unchanged: int = 0


def run_examples(
    knowledge: Knowledge, cards: Iterable[Fault], cache: Path | None, changed: bool = False
) -> Run:
    """Try the examples of these cards, or those that a change since they held can affect.

    `cache`: the folder where the marks of those that hold are kept; None keeps nothing.
    """
    footing = Footing(knowledge, _state_of_program())
    reasoner = Reasoner(knowledge)
    before = _held_before(cache)
    trials: list[Trial] = []
    held: list[str] = []
    unchanged = 0
    for fault, example in ((card, each) for card in cards for each in card.examples):
        mark = footing.mark(fault, example)
        if changed and mark in before:
            unchanged += 1
            held.append(mark)
            continue
        trials.append(try_example(reasoner, fault, example))
        if not trials[-1].failure:
            held.append(mark)
    _keep(cache, (*held, *before))
    return Run(tuple(trials), unchanged)


def _held_before(cache: Path | None) -> dict[str, None]:
    """The marks that are kept, the newest first."""
    if cache is None:
        return {}
    kept = read_own(cache / _FILE, MOST_MARKS * _BYTES_OF_A_MARK)
    return dict.fromkeys(kept.decode("ascii", "replace").split())


def _keep(cache: Path | None, marks: Iterable[str]) -> None:
    if cache is not None:
        newest = list(dict.fromkeys(marks))[:MOST_MARKS]
        write_own(cache / _FILE, "".join(f"{mark}\n" for mark in newest).encode())


def _state_of_program() -> str:
    """Another program may rank otherwise."""
    state = sorted(sources(Path(__file__).parent.parent))
    return hashlib.sha256(repr(state).encode()).hexdigest()
