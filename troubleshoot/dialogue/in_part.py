"""Outcomes that words may mean, though not all of the words are theirs: packed with lint.

Nothing is taken of itself by the first word that fits: what is found here is asked about, or taken
only where all else that is said tells where or how much.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.clauses import (
    FILLING,
    Clause,
    Stemmed,
    Stems,
    clauses_of,
    plainly,
    said_clauses,
    text_of,
)
from troubleshoot.dialogue.idle_words import names_nothing
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Outcome, Test
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.safety.hearing.looks import tells_of_looks
from troubleshoot.safety.hearing.words import raw_words

MOST: Final = 3
"""Outcomes that are asked about at once; more of them are no guess."""
_PLACES: Final = frozenset(
    """across along around back bottom center corner down edge end ends face front full hub inside
    four left leg low middle near one outside part parts piece rear right side sides six spot spots
    three through top two under upper way""".split()  # noqa: SIM905
)
"""Where on a thing something is so."""
_AMOUNTS: Final = frozenset(
    """big clean dead flat good hard heavy huge nasty plain plumb right serious straight thick total
    way wide""".split()  # noqa: SIM905
)
"""How much it is so: never that it is so a little, or half."""
_COUNTS: Final = frozenset({"every", "four", "one", "six", "three", "two"})
"""How many of it are so: by these alone nothing is meant."""
_DOUBTFUL: Final = re.compile(
    r"\?|\b(?:if|may|might|must|should|would|maybe|could|will|how|what)\b"
)
THINGS: Final = frozenset(
    """arm armature bearing bearings belt blade blades blower board bolt bulb can cap capacitor case
    coil compressor condenser contact contactor cups damper drain duct evaporator faces fan filter
    filters fin fins hub igniter insulation lug lugs motor orifice pan pipe plate points pole poles
    pulley relay rod rotor screw screws seal sensor shaft sheave spade spring strap terminal
    terminals transformer trap tube valve wall wheel wire wires wiring""".split()  # noqa: SIM905
)
"""They name what is looked at, and not what it is like. Work stands on no cover, lead or lock."""
_OWN: Final = frozenset({"his", "her", "mine", "my", "our", "their", "your"})
"""Beside these a thing is no part of the unit: my tagout is loose."""


@frozen
class InPart:
    """Outcomes that words may mean: all of them, or one of them.

    `others`: the words that are of none, and of no part of what is looked at.
    `is_one_matter`: no clause of its own tells something else, and nobody's own thing is told of.
    """

    outcomes: tuple[str, ...]
    are_all_meant: bool
    others: frozenset[str]
    is_one_matter: bool


def beside_words(test: Test) -> frozenset[str]:
    """What may stand beside an outcome and tells but where, how much, or of what part it is."""
    own = {w for o in test.outcomes for w in raw_words(" ".join((o.spoken, *o.words, o.means)))}
    of_it = {*raw_words(" ".join(test.how))} & THINGS
    return frozenset((_PLACES | _AMOUNTS | of_it) - own)


def names_of(knowledge: Knowledge, test: Test) -> frozenset[str]:
    """The words that name what is looked at, as they count; of what people say for it none that
    tells what came of it: swollen, of swollen capacitor.
    """
    lexicon = lexicon_of(knowledge)
    told = (" ".join((o.spoken, *o.words, o.means)) for o in test.outcomes)
    said = {*lexicon.words(" ".join(test.words))} - {*lexicon.words(" ".join(told))}
    return frozenset(said | {*lexicon.words(test.name)})


def in_part(
    knowledge: Knowledge, test: Test, typed: str, outcomes: tuple[str, ...]
) -> InPart | None:
    """What words may mean of these outcomes; None where they point at none, or at too many.

    A question and a doubt point at nothing, and what is denied speaks against what it is of.
    """
    said = plainly(typed)
    if _DOUBTFUL.search(said):
        return None
    lexicon = lexicon_of(knowledge)

    def stemmed(words: Iterable[str]) -> tuple[str, ...]:
        return lexicon.all_words(" ".join(words))

    manner = FILLING | {*knowledge.manner}
    offered = [o for o in test.outcomes if o.id in outcomes]
    things, counts = frozenset(stemmed(THINGS)), frozenset(stemmed(_COUNTS))
    texts = {o.id: _telling(test, o, manner, stemmed) - things for o in offered}
    known: Stems = frozenset().union(*texts.values())
    beside = frozenset(stemmed(beside_words(test))) | names_of(knowledge, test)
    told: list[frozenset[str]] = []
    against: set[str] = set()
    left: set[str] = set()
    is_one_matter = _OWN.isdisjoint(raw_words(said))
    for words, denies in said_clauses(said):
        for clause in clauses_of(words, denies, manner, frozenset(), stemmed):
            against |= {o for o, text in texts.items() if clause.denied & text}
            best = _nearest(clause, texts, counts)
            telling = clause.said - beside - counts
            if best:
                told.append(best)
                left |= telling - known
            elif (telling or clause.denied - known) and not tells_of_looks(" ".join(words)):
                is_one_matter = False
    told = [each - against for each in told]
    meant, are_all = _agreed(test, told)
    if not meant or not all(told):
        return None
    others = frozenset(w for w in raw_words(said) if {*stemmed([w])} & left)
    return InPart(tuple(o for o in outcomes if o in meant), are_all, others, is_one_matter)


def _telling(test: Test, outcome: Outcome, manner: frozenset[str], stemmed: Stemmed) -> Stems:
    """The words of an outcome; where a number is read, its text tells of limits and probes."""
    told = replace(outcome, means="") if test.reads else outcome
    return text_of(told, manner, stemmed).said


def _nearest(clause: Clause, texts: dict[str, Stems], counts: Stems) -> frozenset[str]:
    """The outcomes that hold words of a clause, without those that hold only part of another's."""
    hits = {o: clause.said & text for o, text in texts.items()}
    telling = {o: hit for o, hit in hits.items() if hit - counts and not names_nothing(hit)}
    return frozenset(
        o for o, hit in telling.items() if not any(hit < other for other in telling.values())
    )


def _agreed(test: Test, told: list[frozenset[str]]) -> tuple[frozenset[str], bool]:
    """What all clauses point at, or each of several alone; and whether all of that is meant."""
    none: frozenset[str] = frozenset()
    both = frozenset.intersection(*told) if told else none
    if both:
        return (both if len(both) <= MOST else none), len(both) == 1
    every = none.union(*told)
    if test.choose == "several" and all(len(each) == 1 for each in told):
        return every, not every & {*test.healthy}
    return (every if len(every) <= MOST else none), False
