"""After the debrief: one question to answer, which nobody marks, and two more cases alike."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from troubleshoot.cli.practice.asking import Left, ask
from troubleshoot.cli.practice.results import all_scenarios
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.outside.numbers import choice
from troubleshoot.practice.alike import cases_alike
from troubleshoot.practice.question import Question, question_of
from troubleshoot.practice.scenario import Scenario, TrueFault
from troubleshoot.practice.session import Session


def ask_afterwards(terminal: Terminal, session: Session, called: Sequence[TrueFault]) -> None:
    """Ask what a test would have shown, had it been another cause, and say what the cards say."""
    question = question_of(session, called)
    if question is None:
        return
    terminal.say()
    terminal.say(f"If it were {question.rival.name}: what would {question.test.name} show?")
    for number, outcome in enumerate(question.outcomes, start=1):
        terminal.say(f"{number} {question.test.spoken(outcome)}", 2)
    try:
        typed = ask(terminal, "number, or Enter >", "The number of one of these; not marked.")
    except (Left, EndOfInput):
        return
    terminal.say(_answered(question, typed))


def _answered(question: Question, typed: str) -> str:
    chosen = choice(typed, len(question.outcomes))
    right = chosen is not None and question.outcomes[chosen - 1] == question.answer
    said = question.test.spoken(question.answer)
    return f"{'Yes' if right else 'Most often'}: {said}."


def show_alike(terminal: Terminal, scenario: Scenario, played: Collection[str]) -> None:
    """Two more cases whose calls might have the same causes."""
    rules = rules_in_force()
    for case in cases_alike(rules, scenario, all_scenarios(rules), played):
        terminal.say(f'Alike: troubleshoot practise {case.id} ("{case.call}")')
