"""What becomes of a sentence that somebody types: taken, asked about, heard as a danger, missed.

`sentences.tsv` was written by a mechanic who had seen none of the rules: what he would type, and
after him what that means in ids, by somebody who knows them; several where any would do, none where
the rules hold nothing of the kind. The words of the rules were written after it had been read; they
were tuned on the half marked so, and the other half was only counted.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Literal, get_args

from tests.cli.lines import book_of
from troubleshoot.dialogue.complaint import ask_complaint
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.matching.matcher import Heard
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.reasoning.unit.places import Layout, PlaceNotUnderstood
from troubleshoot.reasoning.unit.places_said import places_said
from troubleshoot.visit.events import Started
from troubleshoot.visit.hearing.causes_by_words import heard_fault
from troubleshoot.visit.hearing.tests_by_words import heard_test

Kind = Literal["complaint", "test", "cause", "fact", "place"]
DANGER, NONE, ALL = "danger", "none", "all"
BIG_UNIT = Layout(
    (
        ("circuit", 2), ("compressor", 2), ("contactor", 2), ("compressor-capacitor", 2),
        ("condenser-fan", 3), ("condenser-fan-capacitor", 3), ("blower-capacitor", 1),
        ("heat-stage", 3),
    )
)  # fmt: skip


@frozen
class Sentence:
    """What is said, and the ids any one of which it may mean."""

    kind: str
    half: str
    said: str
    meant: tuple[str, ...]


@frozen
class Reply:
    """What the program made of a sentence: what it took it for, or which it asks about."""

    taken: str | None
    which: tuple[str, ...] = ()


def sentences(path: Path) -> Iterator[Sentence]:
    """The sentences of a table, but for its head."""
    for line in path.read_text("utf-8").splitlines()[1:]:
        kind, half, said, meant = line.split("\t")
        assert kind in get_args(Kind), line
        yield Sentence(kind, half, said, tuple(meant.split("|")))


def reply_to(knowledge: Knowledge, sentence: Sentence) -> Reply:
    """What the program makes of a sentence where its kind is asked for."""
    said = sentence.said
    if sentence.kind == "complaint":
        return _complaint(knowledge, said)
    if sentence.kind == "test":
        return _heard(heard_test(knowledge, Unit(), said))
    if sentence.kind == "cause":
        return _heard(heard_fault(knowledge, said))
    if sentence.kind == "fact":
        return _facts(knowledge, sentence)
    return _place(knowledge, sentence)


def judged(sentence: Sentence, reply: Reply) -> str:
    """How well that is: understood, asked about with the right one among others or without it
    (astray), missed, heard as a danger, or taken for a wrong thing."""
    if reply.taken == DANGER and DANGER not in sentence.meant:
        return "danger"
    if sentence.meant == (NONE,):
        return "wrong" if reply.taken else "understood"
    if reply.taken:
        return "understood" if reply.taken in sentence.meant else "wrong"
    if not reply.which:
        return "missed"
    if reply.which[0] in sentence.meant:
        return "understood"
    return "astray" if {*reply.which}.isdisjoint(sentence.meant) else "asked"


def counted(knowledge: Knowledge, kind: str, half: str, path: Path) -> Counter[str]:
    """How many sentences of a kind came to what."""
    chosen = (s for s in sentences(path) if (s.kind, s.half) == (kind, half))
    return Counter(judged(s, reply_to(knowledge, s)) for s in chosen)


def _heard(heard: Heard) -> Reply:
    return Reply(heard.taken, heard.which)


def _complaint(knowledge: Knowledge, said: str) -> Reply:
    """The caller's words at the prompt for them."""
    book = book_of(knowledge, [Started(complaint="no-cooling", profiles=("technician",))])
    talk = ask_complaint(book, Voice())
    next(talk)
    try:
        prompt = talk.send(said)
    except StopIteration as end:
        return Reply(end.value[1])
    except DangerCalled:
        return Reply(DANGER)
    ids = {complaint.says: name for name, complaint in knowledge.complaints.items()}
    options = prompt.options if isinstance(prompt, Choose) else ()
    return Reply(None, tuple(ids[option] for option in options if option in ids))


def _facts(knowledge: Knowledge, sentence: Sentence) -> Reply:
    """An answer to the question for the first fact that it tells."""
    asked = sentence.meant[0].partition("=")[0]
    told = facts_said(knowledge, asked if asked in knowledge.facts else "", sentence.said)
    return Reply(" ".join(f"{fact}={told[fact]}" for fact in sorted(told)) or None)


def _place(knowledge: Knowledge, sentence: Sentence) -> Reply:
    """A place where its kind is asked for; several are asked about, unless all are meant."""
    kind = sentence.meant[0].rpartition(" ")[0].replace(" ", "-") or "circuit"
    try:
        places = places_said(knowledge, sentence.said, kind, BIG_UNIT)
    except PlaceNotUnderstood:
        return Reply(None)
    if len(places) == 1:
        return Reply(str(places[0]))
    is_all = places == BIG_UNIT.places(kind)
    return Reply(None, (ALL if is_all else str(places[0]),))
