"""At a step, words that tell how it stands before it is done, or once it is, answer that step.

Elsewhere the same words say that a state has gone on which the work stands, and void it.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.hearing.gone import told_gone

ANSWERS = [
    ("tester-proof", "208 V between L1 and L2"),  # the known live source that it is proved on
    ("tester-proof", "reading 240 across the lugs"),
    ("capacitor-discharge", "cap still holding 90 V"),
    ("capacitor-discharge", "still 118 V L2 to ground"),
    ("capacitor-discharge", "the drive still holds a charge"),
    ("drive-discharge", "the drive still shows 300 V"),
    ("drive-discharge", "cap still holding 90 V"),
    ("gas-cock-look", "the cock is open"),
    ("gas-cock-open", "gas is back on"),
    ("panels-off", "took the panel off again"),
    ("panels-off-energised", "the panel is off again"),
    ("panels-on", "panel is back on"),
    ("lock-off", "power is back on"),
    ("lock-off", "blower is turning"),
    ("restart-and-watch", "power is back on"),
    ("restart-and-watch", "the unit is running"),
    ("fire-panel-back", "fire panel is back in service"),
]


@pytest.mark.parametrize(("step", "said"), ANSWERS)
def test_what_a_step_is_about_is_its_answer_there(step: str, said: str, shipped: Knowledge) -> None:
    told = set(told_gone(shipped, said))
    assert told and told <= {step} | STEPS[step].in_other_words


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ("tester-proof", "power is back on"), ("verified-dead", "power is back on"),
        ("verified-dead", "panel is back on"), ("capacitor-discharge", "power is back on"),
        ("gas-cock-open", "power is back on"), ("gas-cock-look", "the fan is running now"),
        ("panels-off", "power is back on"), ("panels-on", "power is back on"),
        ("panels-on", "the fan is running now"), ("fire-panel-back", "power is back on"),
        ("tools-clear", "took the panel off again"), ("lock-off", "took the panel off again"),
        ("lock-off", "gas is back on"), ("lock-off", "fire panel is back in service"),
    ],
)  # fmt: skip
def test_what_puts_hands_at_risk_is_no_answer_to_a_step_about_something_else(
    step: str, said: str, shipped: Knowledge
) -> None:
    told = set(told_gone(shipped, said))
    assert told - {step} - STEPS[step].in_other_words
