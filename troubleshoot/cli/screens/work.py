"""A visit at work: a step or a test with its cautions, a STOP or an ending, above its sign."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.cli.parts import Choices, Paragraph
from troubleshoot.cli.screens.cautions import show_cautions
from troubleshoot.cli.screens.findings import show_ending
from troubleshoot.cli.screens.on_round import BACK_TO_THE_ROUND, show_progress, show_round
from troubleshoot.cli.screens.stops import show_stop, show_what_lifts
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Settled
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.declared import ENTER_CONFIRMS, STEPS
from troubleshoot.safety.hazard_words import first_orders

AT_AN_ENDING = (
    "Type repair before hands go in, to be led to what has to stand first; repaired when it has "
    "been put right and proved, tests for other tests, "
    "done to put the unit back and close, or q to keep the visit."
)

AS_BEFORE = "The same way as before; ? tells how."
MEANINGS = "? tells what each means."

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
        terminal.say_all(prompt.gone)
        show_what_lifts(terminal, prompt)
        return
    if isinstance(prompt, Settled) and prompt.points:
        show_round(terminal, knowledge, prompt)
        return
    if isinstance(prompt, Settled):
        show_ending(terminal, prompt)
        terminal.say()
        terminal.say(AT_AN_ENDING)
        if prompt.in_search:
            terminal.say(BACK_TO_THE_ROUND)
        return
    terminal.say()
    if isinstance(prompt, AskTest) and prompt.progress is not None:
        show_progress(terminal, prompt.progress)
    show_cautions(terminal, prompt.cautions)
    test = prompt.decision.test
    assert test is not None
    if isinstance(prompt, DoStep):
        folded = terminal.is_small and prompt.told and not prompt.decision.failed_before
        task = [_task(prompt)[0], Paragraph(AS_BEFORE, 2)] if folded else _task(prompt)
        terminal.say_together([*task, _step_words(test, prompt.outcomes)])
    else:
        terminal.say_together(_test_to_fit(terminal, knowledge, prompt, test))


def show_in_short(
    terminal: Terminal, knowledge: Knowledge, prompt: DoStep | AskTest | AtStop | Settled
) -> None:
    """What is asked at work, by its name and what may be typed."""
    if isinstance(prompt, AtStop):
        show_what_lifts(terminal, prompt)
        return
    test = prompt.decision.test
    if isinstance(prompt, DoStep) and test is not None:
        terminal.say_together([_task(prompt)[0], _step_words(test, prompt.outcomes)])
    elif isinstance(prompt, AskTest) and test is not None:
        answers = _answers(knowledge, test, prompt.outcomes, with_means=False)
        terminal.say_together([*_task(prompt), *answers])
    else:
        terminal.say(AT_AN_ENDING)


def _task(prompt: DoStep | AskTest) -> list[Paragraph]:
    """The step or test itself, and how a step is done."""
    decision, test = prompt.decision, prompt.decision.test
    assert test is not None
    name = with_place(test.name, prompt.where)
    kind = "Step" if isinstance(prompt, DoStep) else "Test"
    again = ", once more" if decision.step is not None and decision.step.again else ""
    takes = test.minutes + (test.wait_minutes if isinstance(prompt, DoStep) else 0.0)
    minutes = f"about {takes:.0f} min" if takes >= 1 else "moments"
    head = Paragraph(f"{kind}: {name}{again} ({minutes})", strong=True)
    if isinstance(prompt, AskTest):
        return [head]
    call = (f"The call is for {decision.call}.",) if decision.call else ()
    failed = (FAILED_BEFORE,) if decision.failed_before else ()
    return [head, *(Paragraph(sentence, 2) for sentence in (*call, *test.how, *failed))]


def _test_to_fit(
    terminal: Terminal, knowledge: Knowledge, prompt: AskTest, test: Test
) -> Sequence[Paragraph | Choices]:
    """A test with all that will do as an answer, on one page: what `w` and `?` tell may be left
    out of it, first why it comes now, then what the answers mean.
    """
    reason = prompt.decision.reason
    shown = reason and prompt.progress is None  # on a round its point says as much
    why = [Paragraph(f"Why now: {reason}", 2)] if shown else []
    answers = _answers(knowledge, test, prompt.outcomes)
    short = [*_answers(knowledge, test, prompt.outcomes, with_means=False), Paragraph(MEANINGS, 2)]
    task = _task(prompt)
    versions = [[*task, *why, *answers], [*task, *answers], [*task, *short]]
    return terminal.first_that_fits(versions)


def _answers(
    knowledge: Knowledge, test: Test, outcomes: tuple[str, ...], with_means: bool = True
) -> list[Paragraph | Choices]:
    """The answers that will do."""
    unit = _unit_to_type(knowledge, test)
    means = {o.id: o.means for o in test.outcomes}
    said: list[Paragraph | Choices] = []
    if unit:
        said.append(Paragraph(f"Type the reading ({unit}){', or a word:' if outcomes else ':'}"))
    items = []
    for number, outcome in enumerate(outcomes, start=1):
        text = f": {means[outcome]}" if means[outcome] and with_means else ""
        start = "-" if unit else f"{number}"
        items.append(f"{start} {test.spoken(outcome)}{text}")
    said.append(Choices(tuple(items)))
    if test.choose == "several":
        each = "words" if unit else "numbers"
        said.append(Paragraph(f"Several may be true: give their {each} with commas.", 2))
    return said


def _step_words(test: Test, outcomes: tuple[str, ...]) -> Paragraph:
    """What may come of a safety step, in the words that are typed."""
    words = ", ".join(map(test.spoken, outcomes))
    part = STEPS[test.id].number_says_part
    return Paragraph(
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
