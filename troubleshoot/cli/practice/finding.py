"""Finding what the apprentice means: tests, safety steps and causes by words; a hint in a line."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches

from troubleshoot.knowledge.model import Fault, Test
from troubleshoot.outside.numbers import choice, whole_number
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.hearing.causes_by_words import heard_fault
from troubleshoot.visit.hearing.tests_by_words import heard_test

LIKENESS = 0.72
"""How like a known word a mistyped one must be, from 0 to 1, to be put right."""


SHORT = 2
"""So many letters begin too many words."""


def tests_in(session: Session, area: str) -> list[Test]:
    """The tests of the areas that begin so, or of a whole subsystem."""
    wanted = "-".join(area.lower().split())
    return [
        test for test in session.tests() if test.area.startswith(wanted) or test.subsystem == wanted
    ]


def tests_found(session: Session, words: str) -> list[Test]:
    """Every test that words find, to choose from: those that are called so first."""
    called = tests_called(session, words)
    wanted = _plain(words)
    held = (test for test in session.tests() if wanted and _holds(f"{test.name} {test.id}", wanted))
    return [*called, *(test for test in held if test not in called)]


def tests_called(session: Session, words: str) -> list[Test]:
    """The tests whose name or id holds every word, then the others of the areas that do.

    A whole id or name stands alone, and so does the only one that is called so. Where none is
    called so, the one that is meant without doubt by what people say for it.
    """
    wanted = _plain(words)
    named = _called(session.tests(), words)
    if len(named) == 1:
        return named
    around = (test for test in session.tests() if wanted and _holds(test.area, wanted))
    found = [*named, *(test for test in around if test not in named)]
    heard = heard_test(session.knowledge, session.scenario.unit, words)
    return found or [test for test in session.tests() if test.id == heard.taken]


def steps_called(session: Session, words: str) -> list[Test]:
    """The safety steps whose name or id holds every word, or the one of that number."""
    steps = session.steps()
    if whole_number(words) is not None:
        number = choice(words, len(CONFIRMED))
        return [step for step in steps if number == list(CONFIRMED).index(step.id) + 1]
    return _called(steps, words)


def idle_step(session: Session, words: str) -> Test | None:
    """The safety step that is meant where this unit does not need it; None for any other."""
    if steps_called(session, words):
        return None
    needed = session.steps()
    others = [
        session.knowledge.tests[name]
        for number, name in enumerate(CONFIRMED, start=1)
        if session.knowledge.tests[name] not in needed
        and (whole_number(words) is None or whole_number(words) == number)
    ]
    found = others if whole_number(words) is not None else _called(others, words)
    return found[0] if len(found) == 1 else None


def _called(tests: Iterable[Test], words: str) -> list[Test]:
    """By whole names first, then the name that begins so, then names that hold the words.

    Where the id of another begins so, it may be meant as well: lock is no one's alone.
    """
    wanted = _plain(words)
    found = [test for test in tests if wanted and _holds(f"{test.name} {test.id}", wanted)]
    whole = [t for t in found if wanted in (_plain(t.id), _plain(t.name))]
    begun = [t for t in found if any(_plain(n).startswith(wanted) for n in (t.name, t.id))]
    return whole or (begun if len(begun) == 1 else found)


def _plain(words: str) -> str:
    return " ".join(_words(words))


def _words(text: str) -> list[str]:
    return re.findall(r"[a-z0-9]+", text.lower())


def _holds(text: str, wanted: str) -> bool:
    """Whether every word wanted begins a word of the text; one of two letters has to be one: CO."""
    words = _words(text)
    return all(
        any(word == part if len(part) <= SHORT else word.startswith(part) for word in words)
        for part in wanted.split()
    )


def possible_causes(session: Session) -> list[Fault]:
    """The faults this unit can have, in the rules' order."""
    hypotheses = session.conclusions.hypotheses
    found = dict.fromkeys(h.fault.id for h in (*hypotheses.causes, *hypotheses.effects))
    return [session.knowledge.faults[name] for name in found]


def causes_called(session: Session, words: str) -> list[Fault]:
    """The faults this unit can have whose name or id holds every word; a whole one alone.

    Where none is called so, the one that is meant without doubt by what people say for it.
    """
    wanted = _plain(words)
    faults = possible_causes(session)
    whole = [fault for fault in faults if wanted in (_plain(fault.name), _plain(fault.id))]
    is_words = wanted and whole_number(wanted) is None  # 1 does not call the 120 V load
    held = [fault for fault in faults if is_words and _holds(f"{fault.name} {fault.id}", wanted)]
    heard = heard_fault(session.knowledge, words)
    return whole or held or [fault for fault in faults if fault.id == heard.taken]


def hinted(session: Session, decision: Decision) -> str:
    """What the engine would do next, in a line."""
    if decision.kind == "stop":
        return "A STOP stands: stop hands the job over."
    if decision.kind == "ending" or decision.test is None:
        return "The expert would test no more: call."
    place = session.scenario.unit.layout.shown(decision.test.per, decision.at)
    if decision.step is not None:
        place = decision.step.place
    kind = "Step" if decision.kind == "step" else "Test"
    why = f", since {decision.reason}" if decision.reason else ""
    return f"{kind}: {with_place(decision.test.name, place)}{why}."


def nearest(typed: str, names: Iterable[str]) -> str:
    """The typed words with each unknown one put right from the names; empty if one cannot be.

    Of those that are as near, the one said most: hed is head, not held.
    """
    often = Counter(word for name in names for word in _words(name))
    known = sorted(often)
    put_right = []
    for word in _words(typed):
        if any(each.startswith(word) for each in known):
            put_right.append(word)
            continue
        near = get_close_matches(word, known, cutoff=LIKENESS)
        if not near:
            return ""
        alike = {each: SequenceMatcher(None, each, word).ratio() for each in near}
        put_right.append(max(near, key=lambda each: (alike[each], often[each])))
    return " ".join(put_right)


def or_nearest(otherwise: str, typed: str, names: Iterable[str]) -> str:
    """What to type instead: the nearest words, or else what is given."""
    near = nearest(typed, names)
    return f"did you mean {near}?" if near and near != _plain(typed) else otherwise
