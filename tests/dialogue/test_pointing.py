"""It's stopped is the word of its step, and so is all locked; whatever else stands there is not."""

from __future__ import annotations

import pytest

from tests.dialogue.test_word_of_a_step import done
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import EDGE_PROTECTION

POINTED = ("it's {}", "its {}", "it is {}", "they're {}", "all {}", "both {} now", "now {}")
OTHER = (
    "it isn't {}", "it's not {}", "is it {}", "it's {}?", "it was {}", "it will be {}",
    "i think it's {}", "it's almost {}", "should be {}", "all but one {}", "{} yesterday",
    "if it's {}", "it's un{}", "not {} now", "never {}", "both {} i hope",
)  # fmt: skip


def came(shipped: Knowledge, step: str, typed: str) -> tuple[str, ...]:
    try:
        return done(shipped, step, typed)
    except NotAnAnswer:
        return ()


@pytest.mark.parametrize("said", POINTED)
def test_the_word_of_a_step_said_of_it_is_its_word(said: str, shipped: Knowledge) -> None:
    """Regression: of "it's stopped" it was asked whether "stopped" was meant."""
    for step, confirmed in CONFIRMED.items():
        if step != EDGE_PROTECTION:  # there it is said what protects
            spoken = shipped.tests[step].spoken(confirmed)
            bare, pointed = came(shipped, step, spoken), came(shipped, step, said.format(spoken))
            assert pointed == bare, (step, said)


@pytest.mark.parametrize("said", OTHER)
def test_what_denies_doubts_asks_or_is_of_another_day_confirms_nothing(
    said: str, shipped: Knowledge
) -> None:
    for step, confirmed in CONFIRMED.items():
        outcome = next(o for o in shipped.tests[step].outcomes if o.id == confirmed)
        for word in (outcome.spoken, *outcome.words):
            typed = said.format(word)
            assert typed in outcome.words or confirmed not in came(shipped, step, typed), step


@pytest.mark.parametrize(
    ("step", "typed", "confirms"),
    [
        ("panels-off", "panel's off", True),
        ("second-person", "my helper's here", True),
        ("lock-off", "lock's off", True),
        ("tell-occupants", "told em", True),
        ("roof-conditions", "15 ft, it's safe", True),
        ("gas-cock-shut", "shut it now", False),
        ("gas-cock-open", "open it", False),
        ("tools-clear", "clear it", False),
        ("stop-by-controls", "stop it now", False),
        ("tell-occupants", "tell em", False),
        ("edge-protection", "it's on", False),
    ],
)
def test_an_apostrophe_changes_nothing_and_an_order_is_no_report(
    step: str, typed: str, confirms: bool, shipped: Knowledge
) -> None:
    assert (CONFIRMED[step] in came(shipped, step, typed)) is confirms
