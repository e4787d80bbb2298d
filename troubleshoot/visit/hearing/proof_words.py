"""The words of a look: whether they report what a proof asks for as right, or as not."""

from __future__ import annotations

import re
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
_JOINING: Final = frozenset({"a", "again", "and", "comes", "it", "the"})
_GOES_OUT: Final = re.compile(r"\b(?:goes|went|going|cuts|cut) (?:right |straight )?out\b|\bdies\b")
_REACH: Final = 5
"""Words that a denial in front of them denies."""
SAYS_NOTHING: Final = frozenset({
    "a", "after", "again", "all", "an", "and", "are", "as", "at", "by", "each", "every", "for",
    "from", "has", "in", "is", "it", "leg", "legs", "of", "off", "on", "or", "out", "per", "the",
    "then", "through", "to", "two", "three", "under", "unit", "up", "was", "were", "what", "with",
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


def by_words(knowledge: Knowledge, proof: Proof, said: str) -> bool | None:
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
        - SAYS_NOTHING
        - _NEGATING
        - (bad - own_good)
    )
    return frozenset(good), frozenset((bad | _UNFIT) - good - name - SAYS_NOTHING - _NEGATING)


def _own_words(text: str) -> tuple[set[str], set[str]]:
    """The words of a proof, and those that it denies: no alarm."""
    good: set[str] = set()
    bad: set[str] = set()
    for clause in _CLAUSE.split(plain_words(text)):
        words = raw_words(clause)
        is_denied = not _NEGATING.isdisjoint(words)
        (bad if is_denied else good).update(w for w in words if w.isalpha())
    return good, bad


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
