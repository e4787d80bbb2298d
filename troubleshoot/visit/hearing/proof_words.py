"""The words of a look: whether they report what a proof asks for as right, or as not."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.vocabulary import THINGS, stem
from troubleshoot.safety.hearing.words import raw_words

_CLAUSE: Final = re.compile(r"[,;:!?]+|\.(?:\s|$)|\bbut\b|\band\b")
_NEGATING: Final = frozenset({
    "no", "not", "never", "without", "doesnt", "didnt", "isnt", "wasnt", "arent", "wont",
    "cant", "dont",
})  # fmt: skip
_SPELT: Final = {"nothing": "none", "thru": "through", "zero": "no"}
_CIRCUMSTANCE: Final = frozenset({
    "across", "after", "as", "at", "in", "left", "of", "on", "past", "round", "under", "with",
})  # fmt: skip
"""Words behind which a denial tells where or when there is none: no bubbles with the caps off."""
_JOINING: Final = frozenset({"a", "again", "and", "comes", "it", "the"})
_GOES_OUT: Final = re.compile(r"\b(?:goes|went|going|cuts|cut) (?:right |straight )?out\b|\bdies\b")
_NUMBER: Final = re.compile(r"(?<![\w.,-])(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?![\w.,%/])")
_COUNTED: Final = re.compile(
    r"\b(?:an?|one|two|three|four|five|ten|fifteen|twenty|[0-9]+) ([a-z]+)(?: ([a-z]+))?"
)
"""What a proof counts: five cold starts, fifteen minutes."""
_REACH: Final = 5
"""Words that a denial in front of them denies."""
SAYS_NOTHING: Final = frozenset({
    "a", "after", "again", "all", "an", "and", "are", "as", "at", "by", "each", "every", "for",
    "from", "has", "in", "is", "it", "leg", "legs", "of", "off", "on", "or", "out", "per", "the",
    "then", "through", "to", "two", "three", "under", "unit", "up", "was", "were", "what", "with",
})  # fmt: skip
_FIT: Final = frozenset({
    "clean", "clear", "closes", "dry", "even", "held", "hold", "holds", "lights", "opens",
    "pulls", "quiet", "runs", "smooth", "smoothly", "sound", "starts", "steady", "stops",
    "tight", "turns",
})  # fmt: skip
"""Words that a look may be told sound in, whatever was looked at."""
_APPROVING: Final = frozenset({
    "alright", "fine", "good", "great", "normal", "ok", "okay", "passed", "passes", "perfect",
    "right", "works",
})  # fmt: skip
"""Words that approve of something: a look only beside a word of what was looked at."""
_NO_PART: Final = frozenset({"hot", "its", "over", "set"})
"""Words said of parts that name none."""
_UNFIT: Final = frozenset({
    "bad", "blew", "blown", "blows", "broken", "burnt", "dead", "erratic", "failed", "failing",
    "fails", "failure", "leak", "leaking", "leaks", "loose", "noisy", "rough", "stuck",
    "surges", "surging", "trip", "tripped", "tripping", "trips", "uneven", "weak", "worse",
    "wrong",
})  # fmt: skip

_OF_A_CAUSE: Final = frozenset({"cause", "killed", "opened"})
"""Words of a proof that asks what was wrong, so that its answer names it."""
_MENDED: Final = frozenset({
    "adjusted", "changed", "cleaned", "cleared", "corrected", "fixed", "mended", "removed",
    "repaired", "replaced", "secured", "sealed", "strapped", "tightened",
})  # fmt: skip
_STILL_SO: Final = frozenset({
    "again", "are", "is", "isnt", "keeps", "later", "needs", "now", "remains", "still", "tomorrow",
})  # fmt: skip
"""Words of a clause that tells what is so now, and not what was found."""


def by_words(knowledge: Knowledge, proof: Proof, said: str) -> bool | None:
    """Whether the words report it as right, or as not; None where they report nothing."""
    good, bad = _words_of(knowledge, proof)
    phrases, in_text = _phrases(knowledge, proof), _pairs(proof.text)
    own, text = _names(knowledge, proof), {stem(word) for word in raw_words(proof.text)}
    found = set()
    mended = _tells_what_was_mended(proof, said)
    for clause in _CLAUSE.split(said.replace("'", "")):
        words = [_SPELT.get(word, word) for word in raw_words(clause)]
        if mended and not _UNFIT.isdisjoint(words) and _STILL_SO.isdisjoint(words):
            continue
        found |= {right for phrase, right in phrases if _stands_in(phrase, words)}
        stems = {stem(word) for word in words}
        of_another = bool(stems & _parts(knowledge)) and stems.isdisjoint(own)
        for index, word in enumerate(words):
            denied = _is_denied(words, index)
            is_own = not denied and _pair_at(words, index) in in_text
            if word not in good and (word not in bad or is_own):
                continue
            right = (word in good) != denied
            says_nothing = of_another and stem(word) not in text
            if word in _APPROVING:
                says_nothing = stems.isdisjoint(own - {stem(word)})
            if not right or not says_nothing:
                found.add(right)
    return False if False in found else True if found else None


def _is_denied(words: list[str], index: int) -> bool:
    """Whether a word is denied by one in front of it, or by none right behind it: bubbles none."""
    before = words[max(0, index - _REACH) : index]
    return not _NEGATING.isdisjoint(before) or words[index + 1 : index + 2] == ["none"]


def _pairs(text: str) -> frozenset[tuple[str, ...]]:
    """Each word of a proof with the next, in stems, so that an ending is no other word: closed by
    spring where it has to close by spring.
    """
    clauses = ([*raw_words(clause)] for clause in _CLAUSE.split(text.lower()))
    return frozenset(_pair_at(words, at) for words in clauses for at in range(len(words)))


def _pair_at(words: list[str], index: int) -> tuple[str, ...]:
    """The stem of a word and of the next that says something; of it alone none that is met."""
    telling = [word for word in words[index + 1 :] if word not in SAYS_NOTHING]
    return (stem(words[index]), stem(telling[0])) if telling else (words[index], "")


def _tells_what_was_mended(proof: Proof, said: str) -> bool:
    """Whether a proof asks for the cause and the answer says that it is mended: what it was may be
    named then. Found and fixed, the bulb was loose.
    """
    words = raw_words(said.replace("'", ""))
    asks = not _OF_A_CAUSE.isdisjoint(raw_words(proof.text.lower()))
    return asks and not _MENDED.isdisjoint(words) and _NEGATING.isdisjoint(words)


def _names(knowledge: Knowledge, proof: Proof) -> frozenset[str]:
    """The stems of the words that name what a proof is about."""
    name = "" if proof.finding is None else knowledge.tests[proof.finding.test].name
    words = {*raw_words(proof.text), *raw_words(name)}
    return frozenset(stem(word) for word in words - SAYS_NOTHING - _NEGATING)


@lru_cache(maxsize=2)
def _parts(knowledge: Knowledge) -> frozenset[str]:
    """The stems of the words that the rules have for the parts of a unit, and name faults by."""
    parts = {word for part in knowledge.subsystems.values() for word in raw_words(part.about)}
    faults = {stem(word) for fault in knowledge.faults.values() for word in raw_words(fault.name)}
    fit = {stem(word) for word in _FIT}
    named = {stem(word) for word in parts - SAYS_NOTHING - _NEGATING - _NO_PART}
    return frozenset(named & faults - fit)


def _words_of(knowledge: Knowledge, proof: Proof) -> tuple[frozenset[str], frozenset[str]]:
    """The words that report a proof as right, and those that report it as not."""
    good, own_bad = _own_words(proof.text)
    own_good, bad = good - own_bad, {*own_bad}
    name: set[str] = set()
    if proof.finding is None or not knowledge.tests[proof.finding.test].reads:
        good |= _FIT | _APPROVING
    if proof.finding is not None:
        test = knowledge.tests[proof.finding.test]
        bounds = (b for o in test.outcomes for line in o.limits for b in line.bounds)
        judged = (knowledge.quantities[bound.quantity].spoken for bound in bounds)
        name = {word for text in (test.name, *judged) for word in raw_words(text)}
        for outcome in test.outcomes:
            said = [raw_words(text) for text in outcome.words]
            own = {word for words in said if len(words) == 1 for word in words}
            own |= {*raw_words(outcome.spoken)} | ({"none"} & {outcome.id})
            (good if outcome.id in proof.finding.outcomes else bad).update(own)
    good = (
        {w for w in good if stem(w) not in THINGS}
        - name
        - SAYS_NOTHING
        - _NEGATING
        - (bad - own_good)
    )
    denied = own_bad - own_good
    bad = (bad | _UNFIT) - good - (name - denied)
    return frozenset(good), frozenset(bad - SAYS_NOTHING - _NEGATING)


def _phrases(knowledge: Knowledge, proof: Proof) -> tuple[tuple[list[str], bool], ...]:
    """What people say for an outcome in several words, of which one says nothing, and whether it
    is right."""
    if proof.finding is None:
        return ()
    right, outcomes = proof.finding.outcomes, knowledge.tests[proof.finding.test].outcomes
    said = ((raw_words(text), o.id in right) for o in outcomes for text in o.words)
    return tuple((words, is_right) for words, is_right in said if len(words) > 1)


def _stands_in(phrase: list[str], words: list[str]) -> bool:
    """Whether a phrase was said as it is, and nothing before it denies it."""
    size = len(phrase)
    return any(
        words[at : at + size] == phrase and _NEGATING.isdisjoint(words[max(0, at - _REACH) : at])
        for at in range(len(words) - size + 1)
    )


def bare_reading(knowledge: Knowledge, proof: Proof, said: str) -> str | None:
    """The only number that is told beside words of the proof itself alone: 3.1 steady.

    None where it stands for something else that the proof counts: 5 starts.
    """
    numbers = [*_NUMBER.finditer(said)]
    if len(numbers) != 1:
        return None
    words = raw_words(said[: numbers[0].start()] + " " + said[numbers[0].end() :])
    counted = {stem(word) for pair in _COUNTED.findall(proof.text.lower()) for word in pair}
    own = _names(knowledge, proof)
    is_own = all(word in SAYS_NOTHING or stem(word) in own - counted for word in words)
    return numbers[0][0] if is_own else None


def _own_words(text: str) -> tuple[set[str], set[str]]:
    """The words of a proof, and those that it denies: no alarm."""
    good: set[str] = set()
    bad: set[str] = set()
    for clause in _CLAUSE.split(plain_words(text)):
        words = raw_words(clause)
        is_denied = not _NEGATING.isdisjoint(words)
        (bad if is_denied else good).update(w for w in _without_circumstance(words) if w.isalpha())
    return good, bad


def _without_circumstance(words: list[str]) -> list[str]:
    """The words of a clause, without when it is so, and without where what it denies is not."""
    at = next((n for n, word in enumerate(words) if word in _NEGATING), len(words))
    ends = (n for n, w in enumerate(words) if w == "when" or (n > at and w in _CIRCUMSTANCE))
    return words[: next(ends, len(words))]


def tells_the_complaint(knowledge: Knowledge, complaint: str | None, said: str) -> bool:
    """Whether what was called in is told once more, and not denied."""
    if complaint is None:
        return False
    call = knowledge.complaints[complaint]
    words = {*raw_words(said.replace("'", ""))}
    phrases = [{*raw_words(text)} - _JOINING for text in (call.says, *call.words)]
    told = any(len(phrase) > 1 and phrase <= words for phrase in phrases)
    return told and _NEGATING.isdisjoint(words)


def goes_out(proof: Proof, said: str) -> bool:
    """Whether what has to stay on is said to go out again; what has to go out is another matter."""
    denied = not _NEGATING.isdisjoint(raw_words(said.replace("'", "")))
    return "out" not in raw_words(proof.text) and not denied and bool(_GOES_OUT.search(said))
