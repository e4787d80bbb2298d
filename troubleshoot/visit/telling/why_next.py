"""Why a test is next, in one sentence: what it tells apart."""

from __future__ import annotations

from typing import Final

from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.choosing.told_apart import best_told_apart
from troubleshoot.reasoning.conclusions import Conclusions

NARROWS: Final = "it narrows the causes"


def separates(conclusions: Conclusions, candidate: Candidate) -> str:
    """Why a test is next: the two causes that it tells apart best, as they stand now."""
    expected = conclusions.chooser.expected(
        conclusions.ranking, conclusions.seen, candidate.test.id, candidate.at
    )
    if len(expected) == 1:
        return f"it speaks for or against {expected[0].fault.name}"
    told_apart = best_told_apart(expected)
    if told_apart is None:
        return NARROWS
    one, other = told_apart
    return f"it tells {one.name} from {other.name}"
