"""A signature that signs nothing, or does not say who, when and why.

What: under `signed` stands a word that names no hazard, need, person or key; something that is
still there; something that was not retired; no date; a reason of a word or two.
Why: a signature lets a caution go. It has to name what it lets go, and somebody has to be able to
ask why, years later.
Fix: name what was taken away as `rules check --against` names it, the day as 2026-11-29, and the
reason in a sentence. Delete a signature once the caution is back.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Final

from troubleshoot.knowledge.base import RuleFile, entries
from troubleshoot.knowledge.model import Signature, Test
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.vocabulary import NEEDS, PROFILES

ID: Final = "signatures"

OF_TESTS: Final = frozenset(
    {"work-state", "exposes", "wait-minutes", "leaves-unburnt", "gone", *NEEDS, *PROFILES}
)
_OF_STOPS: Final = frozenset({"stop", "defer-to", "tag", "all-clear", "cleared-by", "forbids"})
OF_HAZARDS: Final = frozenset({"signal", "what-to-do", "words", "when", *_OF_STOPS})
FEWEST_WORDS: Final = 4


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every signature that nobody could be asked about."""
    knowledge = base.knowledge
    on_tests = OF_TESTS | set(knowledge.hazards) | knowledge.retired
    on_hazards = OF_HAZARDS | {
        *knowledge.tests, *knowledge.complaints, *knowledge.faults, *knowledge.retired,
    }  # fmt: skip
    for test in knowledge.tests.values():
        for number, signature in enumerate(test.signed):
            for what, instead in _problems(signature, on_tests, _there(test)):
                yield base.problem(ID, ("test", test.id), ("signed", number), what, instead)
    for hazard in knowledge.hazards.values():
        for number, signature in enumerate(hazard.signed):
            for what, instead in _problems(signature, on_hazards, frozenset()):
                yield base.problem(ID, ("hazard", hazard.id), ("signed", number), what, instead)
    for file in base.files:
        if file.kind == "retired":
            yield from _of_retired(base, file)


def _of_retired(base: RuleBase, file: RuleFile) -> Iterator[Problem]:
    for node, item in zip(entries(file.root, "signed"), file.data.get("signed", ()), strict=True):
        signature = Signature(tuple(item["drops"]), item["by"], item["on"], item["why"])
        for what, instead in _problems(signature, base.knowledge.retired, frozenset()):
            yield Problem(file.path, node.line, node.column, what, instead, ID)


def _problems(
    signature: Signature, known: frozenset[str], there: frozenset[str]
) -> Iterator[tuple[str, str]]:
    for word in signature.drops:
        if word not in known:
            yield f"the signature drops {word}, which names nothing here", did_you_mean(word, known)
        elif word in there:
            yield f"the signature drops {word}, which is still there", "delete the signature"
    if not is_day(signature.on):
        yield f"{signature.on} is no day", "write it as 2026-11-29"
    if len(signature.why.split()) < FEWEST_WORDS:
        what = f"the signature for {', '.join(signature.drops)} gives no reason"
        yield what, f"say why in {FEWEST_WORDS} words or more"


def _there(test: Test) -> frozenset[str]:
    return frozenset((*test.hazards, *test.needs_state, *test.who))


def is_day(text: str) -> bool:
    """Whether a text is a day as 2026-11-29."""
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False
