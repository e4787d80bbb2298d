"""What an author chooses among what the rules have: found by words, chosen by number."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from troubleshoot.authoring.finding import Kind, find_entries
from troubleshoot.cli.workshop.asker import Asker, Back
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded, Finding, Knowledge, Test
from troubleshoot.knowledge.vocabulary import GRADES, Grade, Profile
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.evidence.grades import spoken as grade_spoken
from troubleshoot.safety.profiles import spoken as spoken_profiles
from troubleshoot.visit.hearing.complaints import match_complaints

MOST_LISTED: Final = 9
WHO: Final[tuple[Profile, ...]] = (
    "technician", "electrical", "refrigerant", "gas", "combustion", "licensed-electrician",
    "fire-alarm", "building-controls", "utility", "owner",
)  # fmt: skip
"""Who may be asked to do a repair: those of whom the program hands over to."""
NO_SUCH_WORD: Final = (
    "The word for what is there. Where none of them says it, u goes back: say another look or "
    "reading. What the rules have no word for has to become an outcome of a test first."
)
JUDGED: Final = frozenset({"question", "look", "measurement", "computed"})
"""Kinds of test that come to an outcome and are no safety step."""


@frozen
class _Sought:
    """What may be chosen: by id, with how it is shown."""

    id: str
    label: str


def choose_finding(asker: Asker, knowledge: Knowledge, need: bool = False) -> Finding | None:
    """A test and one of its outcomes; None for Enter, which `need` does not take.

    u at the outcome asks for the test again. Raises Left, Back.
    """
    about = (
        "Words of a look, a reading or what it shows: belt, suction pressure, coil volts. What the "
        "rules cannot read has to become a test first."
    )
    while True:
        found = _choose(asker, knowledge, "look or reading >", about, ("test",), need)
        if found is None:
            return None
        test = knowledge.tests[found]
        asker.terminal.say(f"{test.name}: what does it show?")
        try:
            outcome = asker.choose("shows >", NO_SUCH_WORD, _outcomes(test))
        except Back:
            continue
        return Finding(test.id, (outcome,))


def _outcomes(test: Test) -> list[tuple[str, str]]:
    """The outcomes of a test to choose from, each with what it means."""
    return [
        (each.id, f"{each.spoken}: {each.means}" if each.means else each.spoken)
        for each in test.outcomes
    ]


def choose_grade(asker: Asker, question: str) -> Grade:
    """How often: one of the five words."""
    asker.terminal.say(question)
    about = "Of ten such cases: in how many would you find it? Never speaks against the fault."
    return asker.choose("how often >", about, [(word, grade_spoken(word)) for word in GRADES])


def choose_fault(asker: Asker, knowledge: Knowledge) -> str | None:
    """A fault card; None for Enter."""
    about = "Words of another fault: low charge. The case of the first is the second example."
    return _choose(asker, knowledge, "other fault >", about, ("fault",), need=False)


def choose_call(asker: Asker, knowledge: Knowledge, need: bool) -> str | None:
    """A complaint that callers bring; None for Enter, which `need` does not take."""
    about = "As the caller says it: no cooling, runs all day, water from the ceiling."
    while True:
        typed = asker.words("call >", about, 200, may_be_empty=not need)
        if not typed:
            return None
        found = match_complaints(knowledge, typed)[:MOST_LISTED]
        offered = [_Sought(call.id, call.says) for call in found]
        if (chosen := _among(asker, offered, typed)) is not None:
            return chosen


def _choose(
    asker: Asker, knowledge: Knowledge, prompt: str, about: str, kinds: Sequence[Kind], need: bool
) -> str | None:
    while True:
        typed = asker.words(prompt, about, 200, may_be_empty=not need)
        if not typed:
            return None
        found = find_entries(knowledge, typed, kinds)
        offered = [
            _Sought(entry.id, entry.name)
            for entry in found
            if entry.kind != "test" or knowledge.tests[entry.id].kind in JUDGED
        ]
        if (chosen := _among(asker, offered[:MOST_LISTED], typed)) is not None:
            return chosen


def _among(asker: Asker, offered: Sequence[_Sought], typed: str) -> str | None:
    """The one of several that is meant; None where none is, and other words are wanted."""
    if not offered:
        asker.terminal.say(f'Nothing in the rules is called "{typed}": other words.')
        return None
    asker.show([(each.id, each.label) for each in offered])
    while True:
        about = "The number of the line that you mean, or Enter to say it in other words."
        number = asker.line("which, or Enter for none of these >", about)
        if not number:
            asker.terminal.say("In other words, then.")
            return None
        if (chosen := choice(number, len(offered))) is not None:
            return offered[chosen - 1].id
        asker.terminal.say(f"A number from 1 to {len(offered)}, or Enter.")


def units_of(knowledge: Knowledge, subsystem: str) -> list[tuple[FactsNeeded, str]]:
    """On which units a fault of this part may be: what its other cards say, and any unit.

    What all of them say stands first.
    """
    said = [f.exists_when for f in knowledge.faults.values() if f.subsystem == subsystem]
    kinds: list[FactsNeeded] = []
    for each in ({}, *said):
        if each not in kinds:
            kinds.append(each)
    if said and {} not in said:
        kinds = [*kinds[1:], kinds[0]]
    return [(each, kinds_of_unit_said(knowledge, each)) for each in kinds]


def kinds_of_unit_said(knowledge: Knowledge, needed: FactsNeeded) -> str:
    if not needed:
        return "any unit"
    return "only where " + " and ".join(
        f"{knowledge.spoken(fact)} is {' or '.join(map(knowledge.spoken, words))}"
        for fact, words in needed.items()
    )


def who_may(asker: Asker) -> tuple[Profile, ...]:
    """Who may do the repair: all of those that are named."""
    asker.terminal.say("Who may do it? Where it takes several, their numbers one after the other.")
    offered = [(word, spoken_profiles((word,))) for word in WHO]
    asker.show(offered)
    about = (
        "What the law and the trade ask for: wires a qualified electrical person, gas a gas one."
    )
    while True:
        typed = asker.line("who >", about).replace(",", " ").split()
        numbers = [choice(each, len(WHO)) for each in typed]
        named = tuple(dict.fromkeys(WHO[n - 1] for n in numbers if n is not None))
        if typed and None not in numbers:
            return named
        asker.terminal.say(f"Numbers from 1 to {len(WHO)}.")
