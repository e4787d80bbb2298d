"""How prompts, and what is said between them, look in plain lines.

Light, since it shows the first prompts too: what shows findings is imported when there are any.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from troubleshoot.cli.parts import Choices, Paragraph
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import (
    AskFact,
    AskPlate,
    AskProof,
    AskWords,
    Choose,
    Ended,
    Prompt,
)
from troubleshoot.dialogue.said import CallCautions, FirstLooks, Said, Sentence
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.safety.hazard_words import first_orders, said_standing

if TYPE_CHECKING:
    from collections.abc import Iterable

    from troubleshoot.knowledge.model import Complaint, EquipmentFact, Knowledge
    from troubleshoot.visit.kept.stopped import Standing

SIGN = ">"


def show_prompt(terminal: Terminal, knowledge: Knowledge, prompt: Prompt) -> None:
    """What is asked, above the sign at which it is answered."""
    if isinstance(prompt, AskWords | Choose):
        question = [] if prompt.repeated else [Paragraph(prompt.question)]
        options = prompt.options if isinstance(prompt, Choose) else ()
        numbered = tuple(f"{number} {option}" for number, option in enumerate(options, start=1))
        terminal.say_together([*question, Choices(numbered)])
    elif isinstance(prompt, AskFact):
        _show_fact(terminal, knowledge, prompt.fact, prompt.why)
    elif isinstance(prompt, AskPlate):
        where = f", {prompt.at}" if prompt.at else ""
        asked = f"{prompt.plate.meaning} ({prompt.plate.unit})"
        terminal.say(f"From the nameplate{where}: {asked}. Enter if it cannot be read.")
    elif isinstance(prompt, AskProof):
        if prompt.cautions:
            from troubleshoot.cli.screens.cautions import show_cautions

            show_cautions(terminal, prompt.cautions)
        of = f" of what was repaired before ({prompt.fault.name})" if prompt.is_of_before else ""
        terminal.say(f"Proof{of}: {prompt.text}. What did you read?")
    elif not isinstance(prompt, Ended):
        from troubleshoot.cli.screens.work import show_at_work

        show_at_work(terminal, knowledge, prompt)


def show_again(terminal: Terminal, knowledge: Knowledge, prompt: Prompt) -> None:
    """What is still asked, in short, once something else was asked in between."""
    if isinstance(prompt, AskWords | Choose | AskFact | AskPlate):
        show_prompt(terminal, knowledge, prompt)
    elif isinstance(prompt, AskProof):
        terminal.say(f"Proof: {prompt.text}. What did you read?")
    elif not isinstance(prompt, Ended):
        from troubleshoot.cli.screens.work import show_in_short

        show_in_short(terminal, knowledge, prompt)


def sign_of(prompt: Prompt) -> str:
    """What stands before the answer: a question that is repeated at each try, or the sign alone."""
    if not isinstance(prompt, AskWords | Choose) or not prompt.repeated:
        return SIGN
    question = prompt.question
    return question if question.endswith(("?", ")")) else f"{question} {SIGN}"


def show_said(terminal: Terminal, knowledge: Knowledge, said: Iterable[Said]) -> None:
    """What was said since the last answer."""
    for each in said:
        if isinstance(each, Sentence):
            text = each.text.lstrip()
            terminal.say(text, 2 * each.level + len(each.text) - len(text), each.strong)
        elif isinstance(each, CallCautions):
            terminal.hold(first_of_call(knowledge, each.call))
            show_call_cautions(terminal, knowledge, each.call)
        elif isinstance(each, FirstLooks):
            terminal.say(f"First looks: {each.looks}")
        else:
            from troubleshoot.cli.screens.findings import show_finding

            show_finding(terminal, knowledge, each)


def show_call_cautions(terminal: Terminal, knowledge: Knowledge, call: Complaint) -> None:
    """The hazards of such a call, the gravest first; a call that is itself a STOP says so."""
    for hazard in gravest_first(knowledge.hazards[name] for name in call.hazards_first):
        stops = any(trigger.complaint == call.id for trigger in hazard.triggers)
        head, *more = said_standing(hazard, stops)
        terminal.say(head, strong=True)
        for line in more:
            terminal.say(line, 2)


def first_of_call(knowledge: Knowledge, call: Complaint) -> str:
    """The first orders of a call that is itself a STOP; empty for any other."""
    for hazard in gravest_first(knowledge.hazards[name] for name in call.hazards_first):
        if hazard.stop and any(trigger.complaint == call.id for trigger in hazard.triggers):
            return first_orders(hazard)
    return ""


def show_standing_visits(terminal: Terminal, standing: Iterable[Standing]) -> None:
    """Every STOP that stands over a unit, before anything else, where nothing is asked."""
    for each in standing:
        head, *more = each.lines
        terminal.say(head, strong=True)
        terminal.say_all(f"  {line}" for line in more)
        terminal.say()


def _show_fact(terminal: Terminal, knowledge: Knowledge, fact: EquipmentFact, why: str) -> None:
    if why:
        terminal.say(why)
    values = map(knowledge.spoken, fact.values)
    choices = ", ".join(f"{n} {v}" for n, v in enumerate(values, start=1))
    terminal.say(f"{fact.asks} ({choices})")
