"""What is told at a proof and is not the proof: a fact of the unit, or an input that judges it."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.unit_told import list_told, put_right
from troubleshoot.knowledge.model import Knowledge, Proof, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.visit.events import Answered
from troubleshoot.visit.hearing.proof_numbers import missing_of

UNIT: Final = "unit"


def lacks(book: VisitBook, proof: Proof) -> tuple[str, ...]:
    """What would judge a proof and can be told at it by its name, in words."""
    knowledge = book.knowledge
    _, values = take_readings(knowledge, book.state.case)
    of_unit = {*map(knowledge.spoken, (*knowledge.facts, *knowledge.plate_values))}
    return tuple(
        name
        for name in missing_of(knowledge, values, proof)
        if name in of_unit or _input_named(knowledge, f"{name} 0")
    )


def how_told(names: tuple[str, ...]) -> str:
    """What is typed to tell what a proof lacks; empty where it lacks nothing that can be told."""
    return f"{UNIT} {names[0]} VALUE tells it." if names else ""


def fact_told(book: VisitBook, voice: Voice, reasoner: Reasoner, proof: Proof, typed: str) -> bool:
    """Take what is told of the unit, or what the proof lacks, by its name; False for a reading."""
    word, _, rest = typed.partition(" ")
    by_command = word.lower() == UNIT
    said = rest.strip() if by_command else typed
    if by_command and not said:
        list_told(book, voice)
        return True
    is_lacking = any(_begins_with(said, name) for name in lacks(book, proof))
    if not by_command and not is_lacking:
        return False
    read_by = _input_named(book.knowledge, said)
    if read_by is None:
        return put_right(book, voice, reasoner, said)
    _keep_input(book, voice, read_by, said)
    return True


def _keep_input(book: VisitBook, voice: Voice, test: Test, said: str) -> None:
    """Keep the number that stands behind the name of an input, or say why it is none."""
    words = len(plain_words(_name(book.knowledge, test)).split())
    value = plain_words(said.replace("=", " ").replace(":", " ")).split(maxsplit=words)[words]
    try:
        read_text(test, value, book.knowledge)
    except NotUnderstood as error:
        voice.say(str(error))
        return
    book.add(Answered(test.id, text=value))
    voice.say(f"{_name(book.knowledge, test)} is now {value}.")


def _input_named(knowledge: Knowledge, said: str) -> Test | None:
    """The input that needs nothing of the unit and whose name stands before a value."""
    inputs = (test for test in knowledge.tests.values() if test.kind == "input" and test.reads)
    free = (test for test in inputs if test.work_state == "any" and not test.per)
    return next((test for test in free if _begins_with(said, _name(knowledge, test))), None)


def _name(knowledge: Knowledge, test: Test) -> str:
    return knowledge.quantities[test.reads[0].quantity].spoken


def _begins_with(said: str, name: str) -> bool:
    """Whether something stands behind a name."""
    return plain_words(said.replace("=", " ").replace(":", " ")).startswith(f"{plain_words(name)} ")
