"""Whether what was typed for the proof of a repair says that it was read, and that it is right.

A number counts in the proof's own units, and is judged where the proof has a test with limits;
words count where they are of the sound outcome, or of the proof itself. What says neither proves
nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Fault, Knowledge, Proof
from troubleshoot.outside.text import plain_words
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.hearing.vocabulary import THINGS, stem
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.safety.stops.no_result import why_no_look
from troubleshoot.safety.stops.shown import is_in, numbers_in, own_units
from troubleshoot.visit.state import VisitState

NOT_READ: Final = "that does not say that it was read"
NOT_RIGHT: Final = "that is not as it has to be"

_NOTHING_READ: Final = re.compile(
    r"\b(?:can ?(?:no|')?t|couldn'?t|didn'?t|haven'?t|won'?t|dunno|idk|no (?:idea|clue|power)"
    r"|(?:do not|don'?t) know|not (?:sure|yet|now|read|taken|checked|measured|tested|done|able)"
    r"|unknown|later|tomorrow|tonight|tmrw?|tmw|locked ?out|panels? off|power off|n/a|forgot|skip"
    r"|i (?:think|guess))\b"
)
_CLAUSE: Final = re.compile(r"[,;:!?]+|\.(?:\s|$)|\bbut\b|\band\b")
_NEGATING: Final = frozenset({
    "no", "not", "never", "without", "doesnt", "didnt", "isnt", "wasnt", "arent", "wont",
    "cant", "dont",
})  # fmt: skip
_OFF_A_METER: Final = frozenset({
    "voltage", "current", "capacitance", "resistance", "gauge pressure", "pressure difference",
})  # fmt: skip
"""What nobody tells without the number that a meter or gauge shows."""
_JOINING: Final = frozenset({"a", "again", "and", "comes", "it", "the"})
_GOES_OUT: Final = re.compile(r"\b(?:goes|went|going|cuts|cut) (?:right |straight )?out\b|\bdies\b")
_REACH: Final = 5
"""Words that a denial in front of them denies."""
_SAYS_NOTHING: Final = frozenset({
    "a", "after", "again", "all", "an", "and", "are", "as", "at", "by", "each", "every", "for",
    "from", "has", "in", "is", "it", "of", "off", "on", "or", "out", "per", "the", "then",
    "through", "to", "two", "three", "under", "unit", "up", "was", "were", "what", "with",
})  # fmt: skip
_FIT: Final = frozenset({
    "clean", "clear", "closes", "dry", "even", "fine", "good", "held", "hold", "holds",
    "lights", "normal", "ok", "okay", "opens", "passed", "passes", "pulls", "quiet", "right",
    "runs", "smooth", "smoothly", "sound", "starts", "steady", "stops", "tight", "turns",
    "works",
})  # fmt: skip
"""Words that a look may be told sound in, whatever was looked at."""
_UNFIT: Final = frozenset({
    "bad", "blew", "blown", "blows", "broken", "burnt", "dead", "erratic", "failed", "failing",
    "fails", "failure", "leak", "leaking", "leaks", "loose", "noisy", "rough", "stuck",
    "surges", "surging", "trip", "tripped", "tripping", "trips", "uneven", "weak", "worse",
    "wrong",
})  # fmt: skip


def proofs_on(knowledge: Knowledge, on: Unit, fault: Fault) -> tuple[Proof, ...]:
    """The proofs of a repair that there are on this unit, as far as it is known."""
    return tuple(
        proof
        for proof in fault.proof
        if on.allows(proof.exists_when)
        and (not proof.finding or on.allows(knowledge.tests[proof.finding.test].exists_when))
    )


def why_unproved(
    knowledge: Knowledge, on: Unit, proof: Proof, typed: str, complaint: str | None = None
) -> str:
    """Why an answer does not prove this; empty where it does. `complaint`: what was called in."""
    said = typed.lower().replace("\u2019", "'")
    if not said.strip() or _NOTHING_READ.search(said) or why_no_look(typed):
        return NOT_READ
    units = _units(knowledge, proof)
    judged = [*_judged(knowledge, on, proof, units, typed)]
    words = _by_words(knowledge, proof, said)
    if False in judged or words is False:
        return NOT_RIGHT
    if _tells_the_complaint(knowledge, complaint, said) or _goes_out(proof, said):
        return NOT_RIGHT
    if judged or (
        words
        and not _wants_a_number(knowledge, proof, units)
        and not _is_of_other_units(knowledge, units, typed)
    ):
        return ""
    return f"that is no reading in {_spoken(units)}" if units else NOT_READ


def unproved(
    knowledge: Knowledge, state: VisitState, fault: Fault, read: Mapping[str, str]
) -> dict[str, str]:
    """What was to be read after a repair and is not proved, and why.

    `read`: what was typed for each.
    """
    on = state.unit
    found = {
        proof.text: why_unproved(knowledge, on, proof, read.get(proof.text, ""), state.complaint)
        for proof in proofs_on(knowledge, on, fault)
    }
    return {what: why for what, why in found.items() if why}


def _wants_a_number(knowledge: Knowledge, proof: Proof, units: tuple[str, ...]) -> bool:
    """Whether a proof is right by the limits of a meter or gauge alone, so that words say nothing.

    Where it is right that there is none, words may say so.
    """
    if proof.finding is None or "none" in proof.finding.outcomes:
        return False
    outcomes = knowledge.tests[proof.finding.test].outcomes
    sound = (outcome for outcome in outcomes if outcome.id in proof.finding.outcomes)
    by_limits = any(outcome.limits for outcome in sound)
    return by_limits and any(unit(each).kind in _OFF_A_METER for each in units)


def _tells_the_complaint(knowledge: Knowledge, complaint: str | None, said: str) -> bool:
    """Whether what was called in is told once more, and not denied."""
    if complaint is None:
        return False
    call = knowledge.complaints[complaint]
    words = {*raw_words(said.replace("'", ""))}
    phrases = [{*raw_words(text)} - _JOINING for text in (call.says, *call.words)]
    told = any(len(phrase) > 1 and phrase <= words for phrase in phrases)
    return told and _NEGATING.isdisjoint(words)


def _goes_out(proof: Proof, said: str) -> bool:
    """Whether what has to stay on is said to go out again; what has to go out is another matter."""
    denied = not _NEGATING.isdisjoint(raw_words(said.replace("'", "")))
    return "out" not in raw_words(proof.text) and not denied and bool(_GOES_OUT.search(said))


def _units(knowledge: Knowledge, proof: Proof) -> tuple[str, ...]:
    """The units in which a proof is read: those of its test, else those its text names."""
    if proof.finding is not None and knowledge.tests[proof.finding.test].reads:
        return own_units(knowledge, knowledge.tests[proof.finding.test])
    words = proof.text.replace(",", " ").split()
    named = [f"1 {word}" for word in words if word not in _SAYS_NOTHING]
    return tuple(u for u in _all_units(knowledge) if any(is_in(text, u) for text in named))


def _all_units(knowledge: Knowledge) -> tuple[str, ...]:
    """Every unit in which people give a number of something; counts have none."""
    known = dict.fromkeys(quantity.unit for quantity in knowledge.quantities.values())
    return tuple(each for each in known if unit(each).spoken)


def _judged(
    knowledge: Knowledge, on: Unit, proof: Proof, units: tuple[str, ...], typed: str
) -> Iterator[bool]:
    """Whether each number in the proof's own units is right; one that nothing judges is."""
    test = None if proof.finding is None else knowledge.tests[proof.finding.test]
    if test is None or proof.finding is None or not test.reads:
        if proof.finding is not None and "none" in proof.finding.outcomes:
            yield from (
                _is_nought(number) for number, _ in numbers_in(typed, _all_units(knowledge))
            )
        else:
            yield from (True for _ in numbers_in(typed, units))
        return
    try:
        read_text(test, typed, knowledge)
        texts = [typed]
    except NotUnderstood:
        texts = [number for number, _ in numbers_in(typed, units)]
    for text in texts:
        answer = Answer(test.id, text=text, places=(None,))
        try:
            seen = outcomes_of(knowledge, answer, None, Values(knowledge, on, {}))
        except NotUnderstood:
            yield False
        else:
            yield {*seen} <= {*proof.finding.outcomes}


def _is_nought(number: str) -> bool:
    """Whether a number is plainly none of what was looked for."""
    return re.fullmatch(r"0+(?:\.0+)?(?:\D.*)?", number) is not None


def _is_of_other_units(knowledge: Knowledge, units: tuple[str, ...], typed: str) -> bool:
    """Whether the only numbers are in units of another quantity, where a reading is wanted."""
    others = tuple(each for each in _all_units(knowledge) if each not in units)
    return bool(units) and any(True for _ in numbers_in(typed, others))


def _by_words(knowledge: Knowledge, proof: Proof, said: str) -> bool | None:
    """Whether the words report it as right, or as not; None where they report nothing."""
    good, bad = _words_of(knowledge, proof)
    found = set()
    for clause in _CLAUSE.split(said.replace("'", "")):
        words = ["none" if word == "nothing" else word for word in raw_words(clause)]
        for index, word in enumerate(words):
            denied = not _NEGATING.isdisjoint(words[max(0, index - _REACH) : index])
            if word in good or word in bad:
                found.add((word in good) != denied)
    return False if False in found else True if found else None


def _words_of(knowledge: Knowledge, proof: Proof) -> tuple[frozenset[str], frozenset[str]]:
    """The words that report a proof as right, and those that report it as not."""
    good, bad = _own_words(proof.text)
    own_good = good - bad
    name: set[str] = set()
    if proof.finding is None or not knowledge.tests[proof.finding.test].reads:
        good |= _FIT
    if proof.finding is not None:
        test = knowledge.tests[proof.finding.test]
        name = {*raw_words(test.name)}
        for outcome in test.outcomes:
            own = {w for text in (outcome.spoken, *outcome.words) for w in raw_words(text)}
            own |= {"none"} & {outcome.id}
            if outcome.id in proof.finding.outcomes:
                good |= own
            else:
                bad |= own
    good = (
        {w for w in good if stem(w) not in THINGS}
        - name
        - _SAYS_NOTHING
        - _NEGATING
        - (bad - own_good)
    )
    return frozenset(good), frozenset((bad | _UNFIT) - good - name - _SAYS_NOTHING - _NEGATING)


def _own_words(text: str) -> tuple[set[str], set[str]]:
    """The words of a proof, and those that it denies: no alarm."""
    good: set[str] = set()
    bad: set[str] = set()
    for clause in _CLAUSE.split(plain_words(text)):
        words = raw_words(clause)
        is_denied = not _NEGATING.isdisjoint(words)
        (bad if is_denied else good).update(w for w in words if w.isalpha())
    return good, bad


def _spoken(units: tuple[str, ...]) -> str:
    return " or ".join(dict.fromkeys(unit(each).spoken for each in units))
