"""A failing example shows what it waited for: down to the first false or unknown branch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from troubleshoot.authoring.account_of_trial import account
from troubleshoot.authoring.trial import try_example
from troubleshoot.knowledge.model import Example, Knowledge
from troubleshoot.reasoning.conclude import Reasoner


def told_of(knowledge: Knowledge, card: str, example: Example) -> Sequence[str]:
    """What is told where a card has to be named on an example that is another's."""
    trial = try_example(Reasoner(knowledge), knowledge.faults[card], example)
    assert trial.failure
    return [line.strip() for line in account(knowledge, trial)]


def after(lines: Sequence[str], begin: str) -> Sequence[str]:
    """The lines from the one that begins so."""
    return lines[next(n for n, line in enumerate(lines) if line.startswith(begin)) :]


def own_case(knowledge: Knowledge, card: str, **changes: object) -> Example:
    first = next(each for each in knowledge.faults[card].examples if each.names_it)
    return replace(first, names_it=True, at_least=None, **changes)


def test_a_rule_that_has_begun_is_shown_down_to_what_was_not_read(shipped: Knowledge) -> None:
    story = own_case(shipped, "low-charge-from-leak")
    lines = told_of(shipped, "measurement-error-taken-for-fault", story)
    assert after(lines, "the rule high-superheat-nothing-else-fits")[:4] == [
        "the rule high-superheat-nothing-else-fits would let Superheat at the compressor not "
        "count, and does not hold:",
        "all of these:",
        "holds: Superheat at the compressor: high",
        "not read: Lines by a clamp probe or a hand held off: normal",
    ]


def test_the_branch_that_is_false_says_what_was_read(shipped: Knowledge) -> None:
    story = own_case(shipped, "building-control-holding-unit-off")
    lines = told_of(shipped, "schedule-or-clock-wrong", story)
    assert after(lines, "the rule cooling-call-came-through would clear")[1:3] == [
        "all of these:",
        "no: Cooling call at the board: present; it is absent",
    ]


def test_a_rule_of_which_nothing_was_read_is_not_shown(shipped: Knowledge) -> None:
    """All but one of 160 rules have not begun; a list of them would tell nobody anything."""
    story = own_case(shipped, "contactor-coil-open")
    lines = told_of(shipped, "contactor-coil-shorted", story)
    assert not any("tripped-breaker-explains" in line for line in lines)


def test_grades_of_a_kind_of_unit_that_nobody_told_are_shown(shipped: Knowledge) -> None:
    story = own_case(shipped, "compressor-internal-bypass-open")
    facts = {key: word for key, word in story.unit.items() if key != "metering"}
    lines = told_of(shipped, "compressor-pumping-weak", replace(story, unit=facts))
    assert after(lines, "the card's grades for where metering is TXV do not count:")[1] == (
        "not told: metering is TXV"
    )
    told = replace(story, unit={**facts, "metering": "txv"})
    assert not any("do not count" in line for line in told_of(
        shipped, "compressor-pumping-weak", told))  # fmt: skip


def test_a_given_whose_reading_is_missing_is_shown(shipped: Knowledge) -> None:
    story = own_case(shipped, "condenser-fan-motor-winding-failed")
    lines = told_of(shipped, "condenser-fan-capacitor-weak", story)
    begin = "what the card says of Condenser fan turning, which way: stopped or slow given"
    assert after(lines, begin)[1] == "not read: Capacitance, leads lifted: low"


@pytest.mark.parametrize("card", ["compressor-run-capacitor-weak", "compressor-start-gear-failed"])
def test_a_unit_that_cannot_have_the_fault_is_shown_by_its_fact(
    card: str, shipped: Knowledge
) -> None:
    """Regression: "cannot exist on the example's unit" did not say for which of its facts."""
    lines = told_of(shipped, card, own_case(shipped, "compressor-locked-rotor"))
    assert "the card wants compressor phase: single; the unit has three" in lines
