"""The questions of which a card is made, in the order in which a story is told.

Each takes what was told so far and returns it with its answer; how a thing is found by words is in
`card_choices`.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final, get_args

from troubleshoot.authoring.draft import NO_SOURCE, SHOWS, Draft, id_of, with_seen
from troubleshoot.authoring.finding import find_entries
from troubleshoot.cli.workshop.asker import Asker, Back, several
from troubleshoot.cli.workshop.card_choices import (
    choose_call,
    choose_fault,
    choose_finding,
    choose_grade,
    units_of,
    who_may,
)
from troubleshoot.cli.workshop.card_said import (
    said_alike,
    said_calls,
    said_finding,
    said_seen,
    said_units,
)
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Evidence, Knowledge, Proof
from troubleshoot.knowledge.model.faults import Repair
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.knowledge.vocabulary import PLACE_KINDS, Grade, HowCommon, PartCost, PlaceKind
from troubleshoot.outside.text import plain_words

WHOLE_UNIT: Final = "whole-unit"
MOST_NAME, MOST_STORY, MOST_TEXT, MOST_REPAIR = 120, 160, 600, 800
MOST_MINUTES: Final = 10_000


@frozen
class Question:
    """One question. `keys`: those of the card that its answer fills; `said`: the answer so far."""

    called: str
    keys: tuple[str, ...]
    ask: Callable[[Asker, Knowledge, Draft], Draft]
    said: Callable[[Knowledge, Draft], str]


def _name(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What do people call this fault? The part, and what is wrong with it.")
    about = "A name as it stands on a work order: Blower belt broken or off."
    while True:
        name = asker.words("name >", about, MOST_NAME)
        id_ = id_of(name)
        if not id_ or not id_[0].isalpha():
            asker.terminal.say("Begin with a word in plain letters.")
        elif id_ in _taken(knowledge):
            asker.terminal.say(f'"{name}" is in the rules already, as {id_}: give it another name.')
        else:
            _show_near(asker, knowledge, name)
            return replace(draft, name=name)


def _taken(knowledge: Knowledge) -> frozenset[str]:
    return frozenset((*knowledge.faults, *knowledge.retired))


def _show_near(asker: Asker, knowledge: Knowledge, name: str) -> None:
    """The cards that may be this one already: whoever sees theirs leaves."""
    near = find_entries(knowledge, name, kinds=("fault",), most=3)
    if near:
        asker.terminal.say("Cards that may be near it; if one of them is yours, q leaves:")
        for entry in near:
            asker.terminal.say(f"{entry.name}  ({entry.id})", 2)


def _story(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("A case of it that you remember, in a few words: it heads an example.")
    about = "As you would tell it over coffee: belt dust on the blower, low air at the far rooms."
    return replace(draft, story=asker.words("case >", about, MOST_STORY))


def _subsystem(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("In which part of the unit does it lie?")
    parts = [
        (each.id, f"{knowledge.spoken(each.id)}: {each.about}")
        for each in knowledge.subsystems.values()
    ]
    about = "Where the part sits that has failed, not where it shows."
    return replace(draft, subsystem=asker.choose("part >", about, parts))


def _how_common(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("How common is it, on a big fleet, over the years?")
    words = [(word, spoken(word)) for word in get_args(HowCommon)]
    about = "Against other faults: very common is what you meet weekly, very rare once in a career."
    return replace(draft, how_common=asker.choose("how common >", about, words, "uncommon"))


def _per(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("Where a unit has two of the part: of what does each have its own?")
    kinds: list[tuple[PlaceKind | str, str]] = [(WHOLE_UNIT, "the whole unit")]
    kinds += [(kind, plain_words(kind)) for kind in PLACE_KINDS]
    about = "A fault of compressor 2 must not accuse compressor 1: say of what each has its own."
    chosen = asker.choose("each >", about, kinds, WHOLE_UNIT)
    return replace(draft, per=next((kind for kind in PLACE_KINDS if kind == chosen), None))


def _exists_when(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("On which units can it be at all?")
    about = "Gas faults only where the heat is gas; Enter where any unit may have it."
    kinds = units_of(knowledge, draft.subsystem)
    return replace(draft, exists_when=asker.choose("units >", about, kinds, kinds[0][0]))


def _calls(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What does the caller say when it happens?")

    def one(told: tuple[tuple[Grade, str], ...]) -> tuple[tuple[Grade, str], ...] | None:
        call = choose_call(asker, knowledge, need=not told)
        if call is None:
            return None
        says = knowledge.complaints[call].says
        grade = _in_hand(asker, f'How often is that call "{says}"?')
        if grade is None:
            return told
        asker.terminal.say(f"{says}: {spoken(grade)}. Another call, or Enter when that is all.")
        return (*(each for each in told if each[1] != call), (grade, call))

    return replace(draft, calls=several(asker, draft.calls, one))


def _in_hand(asker: Asker, question: str) -> Grade | None:
    """How often; None where u takes back what is in hand, and nothing that was told before it."""
    try:
        return choose_grade(asker, question)
    except Back:
        asker.terminal.say("That one is taken back.")
        return None


def _seen(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What would you see or read on the unit when it has this fault?")

    def one(told: tuple[Evidence, ...]) -> tuple[Evidence, ...] | None:
        finding = choose_finding(asker, knowledge, need=not _shows(told))
        if finding is None:
            return None
        said = said_finding(knowledge, finding)
        grade = _in_hand(asker, f"How often does that show when the fault is there: {said}?")
        if grade is None:
            return told
        asker.terminal.say(f"{said}: {spoken(grade)}. Another thing, or Enter when that is all.")
        return with_seen(told, Evidence(grade, (finding,)))

    return replace(draft, seen=several(asker, draft.seen, one))


def _shows(seen: tuple[Evidence, ...]) -> bool:
    """Whether anything shows often, without which no reading would lead to the fault."""
    return any(item.grade in SHOWS for item in seen)


def _look_alikes(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What is it easily taken for?")

    def one(told: tuple[str, ...]) -> tuple[str, ...] | None:
        name = choose_fault(asker, knowledge)
        if name is None:
            return None
        asker.terminal.say(f"{knowledge.faults[name].name}. Another, or Enter when that is all.")
        return tuple(dict.fromkeys((*told, name)))

    return replace(draft, look_alikes=several(asker, draft.look_alikes, one))


def _why(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("Why does it fail, mostly?")
    return replace(
        draft, why=asker.words("why >", "Heat, age, a wrong part, no upkeep.", MOST_TEXT)
    )


def _if_left(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What becomes of it if nobody repairs it?")
    about = "What the customer should know: it takes the compressor with it."
    return replace(draft, if_left=asker.words("if left >", about, MOST_TEXT))


def _repair(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What is done to put it right? One or two sentences, as you would tell it.")
    about = "What is replaced or set, by which part or sheet, and what is looked at with it."
    what = asker.words("repair >", about, MOST_REPAIR)
    asker.terminal.say("How many minutes of work?")
    minutes = asker.number("minutes >", "Working time, without the trip for it.", MOST_MINUTES)
    asker.terminal.say("What does the part cost?")
    costs = [(word, spoken(word)) for word in get_args(PartCost)]
    cost = asker.choose("cost >", "As a grade: adjust is what is only set or cleaned.", costs)
    who = who_may(asker)
    return replace(draft, repair=Repair(what=what, minutes=float(minutes), part_cost=cost, who=who))


def _proof(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("What proves on the same visit that it is put right?")
    about = "A reading or a look that must be right afterwards: it pulls in clean with the call."
    text = asker.words("proof >", about, MOST_TEXT)
    asker.terminal.say("Which look or reading is that, if the rules know it?")
    return replace(draft, proof=Proof(text=text, finding=choose_finding(asker, knowledge)))


def _source(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    asker.terminal.say("Where can that be looked up?")
    about = "An id of rules/sources.yaml; Enter where the trade knows it and nobody prints it."
    while True:
        typed = asker.words("source, or Enter for none >", about, MOST_TEXT, may_be_empty=True)
        if not typed or typed == NO_SOURCE:
            return replace(draft, source=NO_SOURCE)
        if typed in knowledge.sources:
            return replace(draft, source=typed)
        near = [name for name in knowledge.sources if typed.lower() in name]
        asker.terminal.say(f'No source is called "{typed}". {_near(near)}')


def _near(names: list[str]) -> str:
    return f"Near it: {', '.join(names[:6])}." if names else "Enter for none; write it in later."


QUESTIONS: Final = (
    Question("Name", ("fault", "name"), _name, lambda k, d: d.name),
    Question("A case of it", ("examples",), _story, lambda k, d: d.story),
    Question("Part of the unit", ("subsystem",), _subsystem, lambda k, d: k.spoken(d.subsystem)),
    Question("How common", ("how-common",), _how_common, lambda k, d: spoken(d.how_common)),
    Question(
        "Of what each has its own", ("per",), _per,
        lambda k, d: "the whole unit" if d.per is None else plain_words(d.per),
    ),
    Question("On which units", ("exists-when",), _exists_when, said_units),
    Question("Calls", ("calls",), _calls, said_calls),
    Question("What shows", ("evidence",), _seen, said_seen),
    Question("Easily taken for", ("look-alikes",), _look_alikes, said_alike),
    Question("Why it fails", ("why",), _why, lambda k, d: d.why),
    Question("If left", ("if-left",), _if_left, lambda k, d: d.if_left),
    Question(
        "Repair", ("repair",), _repair, lambda k, d: d.repair.what if d.repair is not None else ""
    ),
    Question(
        "Proof", ("proof",), _proof, lambda k, d: d.proof.text if d.proof is not None else ""
    ),
    Question("Source", ("source",), _source, lambda k, d: d.source),
)  # fmt: skip
"""Every question of a new card, in order."""
