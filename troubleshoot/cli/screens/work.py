"""A visit at work: a step or a test with its cautions, a STOP or an ending, above its sign."""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.cli.screens.findings import show_ending
from troubleshoot.cli.screens.stops import show_stop, show_what_lifts
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import AskTest, AtStop, Caution, DoStep, Settled
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.declared import ENTER_CONFIRMS, STEPS
from troubleshoot.safety.hazard_words import first_orders, said_hazard

AT_AN_ENDING = (
    "Type repaired when it has been put right and proved, tests for other tests, "
    "done to put the unit back and close, or q to keep the visit."
)

FAILED_BEFORE = (
    "It failed before. Once more, if something has changed; if not, say so again, and what needs "
    "it is left out."
)


def show_at_work(
    terminal: Terminal, knowledge: Knowledge, prompt: DoStep | AskTest | AtStop | Settled
) -> None:
    """A step, a test, a STOP or an ending, above the sign at which it is answered."""
    terminal.hold()
    if isinstance(prompt, AtStop):
        terminal.hold(first_orders(prompt.fired.hazard))
        show_stop(terminal, prompt.fired, prompt.tag, prompt.others)
        show_what_lifts(terminal, prompt)
        return
    if isinstance(prompt, Settled):
        show_ending(terminal, prompt)
        terminal.say()
        terminal.say(AT_AN_ENDING)
        return
    terminal.say()
    show_cautions(terminal, prompt.cautions)
    _show_task(terminal, prompt)
    test = prompt.decision.test
    assert test is not None
    if isinstance(prompt, DoStep):
        _show_step_words(terminal, test, prompt.outcomes)
        return
    if prompt.decision.reason:
        terminal.say(f"Why now: {prompt.decision.reason}", 2)
    _show_choices(terminal, knowledge, test, prompt.outcomes)


def show_cautions(terminal: Terminal, cautions: Iterable[Caution]) -> None:
    """Cautions before a step: in full the first time a panel is opened, by name after that."""
    cautions = tuple(cautions)
    before = [caution.hazard.spoken for caution in cautions if caution.told]
    if before:
        terminal.say(f"Cautions as before: {', '.join(before)}.")
    for hazard in (caution.hazard for caution in cautions if not caution.told):
        terminal.say(said_hazard(hazard), strong=True)
        if hazard.stop is not None:
            terminal.say(f"Stop if: {hazard.stop.covers}", 2)


def _show_task(terminal: Terminal, prompt: DoStep | AskTest) -> None:
    """The step or test itself."""
    decision, test = prompt.decision, prompt.decision.test
    assert test is not None
    name = with_place(test.name, prompt.where)
    kind = "Step" if isinstance(prompt, DoStep) else "Test"
    again = ", once more" if decision.step is not None and decision.step.again else ""
    takes = test.minutes + (test.wait_minutes if isinstance(prompt, DoStep) else 0.0)
    minutes = f"about {takes:.0f} min" if takes >= 1 else "moments"
    terminal.say(f"{kind}: {name}{again} ({minutes})", strong=True)
    if isinstance(prompt, DoStep):
        for sentence in test.how:
            terminal.say(sentence, 2)
        if decision.failed_before:
            terminal.say(FAILED_BEFORE, 2)


def _show_choices(
    terminal: Terminal, knowledge: Knowledge, test: Test, outcomes: tuple[str, ...]
) -> None:
    """The answers that will do."""
    unit = _unit_to_type(knowledge, test)
    means = {o.id: o.means for o in test.outcomes}
    if unit:
        terminal.say(f"Type the reading ({unit}){', or a word:' if outcomes else ':'}")
    for number, outcome in enumerate(outcomes, start=1):
        text = f": {means[outcome]}" if means[outcome] else ""
        start = "-" if unit else f"{number}"
        terminal.say(f"{start} {test.spoken(outcome)}{text}", 2)
    if test.choose == "several":
        each = "words" if unit else "numbers"
        terminal.say(f"Several may be true: give their {each} with commas.", 2)


def _show_step_words(terminal: Terminal, test: Test, outcomes: tuple[str, ...]) -> None:
    """What may come of a safety step, in the words that are typed."""
    words = ", ".join(map(test.spoken, outcomes))
    part = STEPS[test.id].number_says_part
    terminal.say(
        f"{'Enter when done; or' if test.id in ENTER_CONFIRMS else 'Type'} "
        f"{'the number on the meter, or ' if test.reads and not part else ''}what came of it"
        f"{', with or without the number' if part else ''}: {words}",
        2,
    )


def _unit_to_type(knowledge: Knowledge, test: Test) -> str:
    """The unit of the number a test reads; a difference of temperatures is typed in plain ones."""
    if not test.reads:
        return ""
    one = test.reads[0]
    return (one.unit or knowledge.quantities[one.quantity].unit).removesuffix("-diff")
