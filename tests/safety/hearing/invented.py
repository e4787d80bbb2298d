"""Invented hazards with words of their own, for tests of the hearing."""

from __future__ import annotations

from troubleshoot.knowledge.model import Hazard, Stop
from troubleshoot.safety.hearing.dangers import ANY_DANGER


def job(name: str, *words: str) -> Hazard:
    """A hazard that stops the whole job."""
    return Hazard(name, "DANGER", "keep off", (), Stop("whole-job", name), words=words)


def lesser(name: str, *words: str) -> Hazard:
    """A hazard that stops one step."""
    return Hazard(name, "WARNING", "mind it", (), Stop("this-step", name), words=words)


def no_stop(name: str, *words: str) -> Hazard:
    """A hazard that stops nothing: a caution."""
    return Hazard(name, "CAUTION", "mind it", (), None, words=words)


ANY = job(ANY_DANGER, "danger")
