"""What was told of a card so far, as people say it."""

from __future__ import annotations

from troubleshoot.authoring.draft import Draft
from troubleshoot.cli.workshop.card_choices import kinds_of_unit_said
from troubleshoot.knowledge.model import Finding, Knowledge
from troubleshoot.knowledge.spoken import spoken


def said_finding(knowledge: Knowledge, finding: Finding) -> str:
    """A finding as people say it."""
    test = knowledge.tests[finding.test]
    return f"{test.name}: {' or '.join(map(test.spoken, finding.outcomes))}"


def said_seen(knowledge: Knowledge, draft: Draft) -> str:
    """What shows, with how often."""
    told = (f"{said_finding(knowledge, i.findings[0])}, {spoken(i.grade)}" for i in draft.seen)
    return "; ".join(told)


def said_calls(knowledge: Knowledge, draft: Draft) -> str:
    """The calls that it brings, with how often."""
    told = (f"{knowledge.complaints[call].says}, {spoken(grade)}" for grade, call in draft.calls)
    return "; ".join(told)


def said_units(knowledge: Knowledge, draft: Draft) -> str:
    """On which units it can be."""
    return kinds_of_unit_said(knowledge, draft.exists_when or {})


def said_alike(knowledge: Knowledge, draft: Draft) -> str:
    """What it is easily taken for."""
    return ", ".join(knowledge.faults[name].name for name in draft.look_alikes) or "nothing"
