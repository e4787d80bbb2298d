"""Why a test is next, in one sentence: what it tells apart."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.conclusions import Conclusions

NARROWS: Final = "it narrows the causes"


def separates(conclusions: Conclusions, candidate: Candidate) -> str:
    """Why a test is next: the leading causes whose rows differ most on it."""
    names = list(dict.fromkeys(_told_apart(conclusions, candidate)))
    if len(names) >= 2:
        return f"it tells {names[0]} from {names[1]}"
    if names:
        return f"it speaks for or against {names[0]}"
    return NARROWS


def _told_apart(conclusions: Conclusions, candidate: Candidate) -> Iterator[str]:
    """The likeliest cause that the test speaks about, and the likeliest it does not favour."""
    mentions = [
        c
        for c in conclusions.causes[:8]
        if any(
            h.fault.id == c.fault.id and candidate.test.id in h.picture.cells
            for h in conclusions.hypotheses.causes
        )
    ]
    for cause in mentions[:1]:
        yield cause.fault.name
    for cause in conclusions.causes[:3]:
        if not mentions or cause.fault.id != mentions[0].fault.id:
            yield cause.fault.name
