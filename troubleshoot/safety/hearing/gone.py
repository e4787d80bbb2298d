"""Words that say a state has gone on which work stands, or never was: power is back on.

The words are the safety steps' own (`gone` in the rules): said in their order, with little words
between. What is asked, planned, long past or said of another unit tells nothing of this one now,
nor does what is denied. Whether the work stands on it is not weighed here (`safety/gone.py`).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import as_said
from troubleshoot.reasoning.unit.unit_numbers import said_numbers
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.hearing.another_unit import (
    ANOTHER,
    as_done,
    joined,
    may_be_of_own,
    names_another,
    only_another,
    told_of_own,
)
from troubleshoot.safety.hearing.happenings import happens
from troubleshoot.safety.hearing.mending import RULE_BASES, ordinary_words
from troubleshoot.safety.hearing.typing_errors import Mend, mender
from troubleshoot.safety.hearing.volts_before import read_before
from troubleshoot.safety.hearing.words import raw_words

_GAP: Final = "..."
_ASKS: Final = "? "
_ALWAYS_ASKS: Final = "?? "
"""Before an entry that has it asked whether the state still stands; and, where nothing stands on
it, whether there is a danger.
"""
_WIDEST_GAP: Final = 5
"""Words of any kind that may stand in a gap."""

_LITTLE: Final = frozenset(
    """a about actually again all already am an and are at back be been being came come coming did
    each every for from get gets getting got had has have here i in is it its just kind me my now of
    oh on one only our out over really right so some still that the their them then there they this
    to too turned up us very was we well went were you your""".split()  # noqa: SIM905
)
"""Words that may stand between those of an entry."""
_DENYING: Final = frozenset(
    """aint arent cannot cant couldnt didnt doesnt dont hasnt havent isnt neither never no nobody
    none nor not nothing wasnt werent without wont wouldnt""".split()  # noqa: SIM905
)
_PARTED: Final = re.compile(r"[,.;:!?()]+(?:\s|$)|\s[-/]+\s|\b(?:and|but|because|so|then|though)\b")
_PLANNED: Final = re.compile(
    r"\b(?:if|when|whenever|before|until|till|unless|once|should|shall|might|will|gonna|want|wants|"
    r"wanted|need|needs|must|let|lets|do (?:i|we|you|they)|can (?:i|we|you|he|she|they)|"
    r"(?:i|we|you|he|she|they) (?:can|could|would|may)|how|why|what|where|which|ready to|about to|"
    r"supposed to|going to|trying to|waiting|wait for|ask|asks|asked|please|says? to|said to)\b"
)
"""Behind these nothing is told as done: should i put the power back on."""
_QUESTION: Final = re.compile(
    r"\s*(?:is|are|was|were|does|do|did|has|have|should|can|could|will|would|may|shall|am) "
    r"(?:the|it|he|she|they|we|i|you|my|this|that|there|any|somebody|anybody|a|power|gas|lock)\b"
)
_PAST: Final = re.compile(
    r"\b(?:yesterday|last (?:night|week|month|year|time|visit|summer|winter|fall|spring)|"
    r"(?:days?|weeks?|months?|years?|hours?) ago|used to|on arrival|to begin with|"
    r"(?:was|were|had|been|ran|read) .*\b(?:earlier|this morning|before)|"
    r"when (?:i|we|he|she|they) (?:came|got|arrived|started|opened|walked|pulled up)|"
    r"in (?:a|the last) (?:day|week|month|year))\b"
)
_RUN_TOGETHER: Final = (
    (re.compile(r"(?<=\w)'ll\b|(?<=\bi)ll\b|(?<=\bthey)ll\b|(?<=\byou)ll\b"), " will"),
    (re.compile(r"(?<=\w)'d\b"), " would"),
    (re.compile(r"(?<=\w)(?<!\blet)'s\b"), " is"),
    (
        re.compile(
            r"(?<=\bpower)s(?= (?:back|on|up|restored)\b)"
            r"|(?<=\b(?:fan|gas))s(?= (?:back|on)\b)"
        ),
        " is",
    ),
)
"""I'll turn it on is a plan; power's been restored tells of power."""
_DENIED_TWICE: Final = (
    (re.compile(r"\bno more\b"), "anymore"),
    (re.compile(r"\bno longer\b"), "not"),
    (re.compile(r"\b(?:aint|isnt|dont|havent|hasnt) (?:got |have )?(?:no|none|nothing)\b"), "no"),
)
"""Denied twice is denied once: it ain't locked no more, there ain't no lock on it."""
_NOTHING_OF_IT: Final = re.compile(
    r"\b(?:nothing|none|not) (?:is |was )?(?:hot|smoking|live|running|energi[sz]ed)\b"
    r"|\bno (?:shock|spark|arc|smoke|buzz|hum)s?\b"
)
"""What tells that something is not so hints at nothing: nothing smoking nothing hot."""
_FEW_VOLTS: Final = re.compile(r"(?<!\d[.,])\b\d(?:[.,]\d+)?\s*(?:v|vac|vdc|volts?)\b")
"""Under 10 V nothing is live."""
_THOUSANDS: Final = re.compile(r"(?<![\d.,])(\d{1,3}),(\d{3})(?![\d.,]\d|\d)")
"""Three figures behind a comma are thousands."""
_NUMBER_AND_UNIT: Final = re.compile(r"(\d)\s*(?:v|vac|vdc|volt)\b")
_DECIMALS: Final = re.compile(r"(\d)[.,]\d+")


@frozen
class _Said:
    """An entry of the rules: what is said in order, and what lets a part go that holds it.

    `asks`: it only hints, and has it asked; `always`: whatever stands.
    """

    step: str
    groups: tuple[frozenset[str], ...]
    unless: frozenset[str]
    asks: bool
    always: bool

    def is_said(self, words: tuple[str, ...]) -> bool:
        named = {word for group in self.groups for word in group}
        denied = not self.asks and not _DENYING & {*words} <= named
        if denied or not self.unless.isdisjoint(words):
            return False
        return any(self._goes_on(words, start, 0) for start in range(len(words)))

    def _goes_on(self, words: tuple[str, ...], at: int, number: int) -> bool:
        """Whether the rest of it is said from there on, its next word first."""
        if not _meets(words[at], self.groups[number]):
            return False
        number += 1
        if number == len(self.groups):
            return True
        if self.groups[number] == {_GAP}:
            return any(
                self._goes_on(words, start, number + 1)
                for start in range(at + 1, min(at + 2 + _WIDEST_GAP, len(words)))
            )
        for start in range(at + 1, len(words)):
            if self._goes_on(words, start, number):
                return True
            if words[start] not in _LITTLE:
                return False
        return False


def told_gone(knowledge: Knowledge, typed: str, name: str = "") -> tuple[str, ...]:
    """The safety steps of which words say that what they confirmed has gone, in order of work.

    `name`: the unit's, by whose number it is known that another is spoken of.
    """
    told = _words_of(knowledge, _told_as_so(typed, name))
    own = said_numbers(name)
    elsewhere = (part for part in _done_parts(typed) if told_of_own(part, own))
    said = (*told, *_at_another(knowledge, elsewhere))
    found = {e.step for e in _entries(knowledge) if not e.asks and any(map(e.is_said, said))}
    return tuple(step for step in STEPS if step in found)


def quotes_the_past(typed: str) -> bool:
    """Whether it tells how things stood on another day, or as somebody came."""
    return _PAST.search(typed.lower()) is not None


def hinted_gone(knowledge: Knowledge, typed: str, name: str = "") -> tuple[str, ...]:
    """The safety steps of whose matter words speak that nobody can tell the meaning of."""
    own = said_numbers(name)
    said = _NOTHING_OF_IT.sub(" ", _in_volts(typed))
    parts = (part for part in _PARTED.split(said) if not only_another(part, own))
    words = tuple(word for each in _words_of(knowledge, parts) for word in each)
    named = (part for part in _done_parts(typed) if may_be_of_own(part, name))
    doubtful = (*_at_another(knowledge, named), *_words_of(knowledge, _parts_before(typed)))
    found = {
        e.step
        for e in _entries(knowledge)
        if (e.asks and e.is_said(words)) or any(map(e.is_said, doubtful))
    }
    return tuple(step for step in STEPS if step in found)


def told_in_passing(knowledge: Knowledge, typed: str, name: str = "") -> bool:
    """Whether words tell what is asked about whatever stands: it is never let pass at work."""
    told = _words_of(knowledge, _told_as_so(typed, name))
    return any(e.always and any(map(e.is_said, told)) for e in _entries(knowledge))


def something_happened(typed: str, name: str = "") -> bool:
    """Whether words tell of a happening here and now, whatever it is."""
    return any(map(happens, _told_as_so(typed, name)))


def may_name_a_state(knowledge: Knowledge, words: Iterable[str]) -> bool:
    """Whether one of these words is of an entry, whatever stands beside it: lid, buddy, lock."""
    named = {word for e in _entries(knowledge) for group in e.groups for word in group}
    return not (named - _LITTLE).isdisjoint(words)


def _words_of(knowledge: Knowledge, parts: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    mend = _mend(knowledge)
    return tuple(filter(None, (tuple(map(mend, raw_words(part))) for part in parts)))


def _at_another(knowledge: Knowledge, parts: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    """The words of entries for what is told of another unit, that behind them in every order."""
    of_another = [e for e in _entries(knowledge) if {ANOTHER} in e.groups]
    known = {word for e in of_another for words in (*e.groups, e.unless) for word in words}
    said = _words_of(knowledge, map(as_done, parts))
    return tuple((*(w for w in words if w in known | _DENYING), ANOTHER) for words in said)


def _told_as_so(typed: str, name: str) -> Iterator[str]:
    """The parts of what was typed that tell how this unit stands now."""
    own = said_numbers(name)
    return (part for part in _parts(_in_volts(typed)) if not names_another(part, own))


def _done_parts(typed: str) -> Iterator[str]:
    """The parts that tell of something done, at whatever unit."""
    return _parts(joined(_in_volts(typed)))


def _parts(said: str) -> Iterator[str]:
    """What is told as so now, without what is asked, planned or long past."""
    if said.rstrip().endswith("?"):
        return
    for part in _PARTED.split(said):
        if not (_QUESTION.match(part) or _PAST.search(part) or read_before(said, part)):
            yield _PLANNED.split(part)[0]


def _parts_before(typed: str) -> Iterator[str]:
    """The parts that tell what was read before the lock."""
    said = _in_volts(typed)
    for part in _PARTED.split(said):
        if read_before(said, part):
            yield _PLANNED.split(part)[0]


def _in_volts(typed: str) -> str:
    """In small letters, run together apart, denied twice once, and volts as a number of them."""
    said = as_said(typed)
    for short, long in _RUN_TOGETHER:
        said = short.sub(long, said)
    said = said.replace("'", "")
    for twice, once in _DENIED_TWICE:
        said = twice.sub(once, said)
    said = _FEW_VOLTS.sub("few", _THOUSANDS.sub(r"\1\2", said))
    return _NUMBER_AND_UNIT.sub(r"\1 volts", _DECIMALS.sub(r"\1", said))


def _meets(said: str, group: frozenset[str]) -> bool:
    """A number is met by one as high or higher."""
    if said in group:
        return True
    read = whole_number(said)
    least = (whole_number(word) for word in group)
    return read is not None and any(each is not None and read >= each for each in least)


@lru_cache(maxsize=RULE_BASES)
def _entries(knowledge: Knowledge) -> tuple[_Said, ...]:
    tests = (knowledge.tests[step] for step in STEPS if step in knowledge.tests)
    return tuple(_entry(test.id, words) for test in tests for words in test.gone)


def _entry(step: str, words: str) -> _Said:
    always = words.startswith(_ALWAYS_ASKS)
    asks = always or words.startswith(_ASKS)
    said, _, unless = words.removeprefix(_ALWAYS_ASKS).removeprefix(_ASKS).partition(" - ")
    groups = tuple(frozenset(each.split("/")) for each in said.split())
    return _Said(step, groups, frozenset(raw_words(unless)), asks, always)


@lru_cache(maxsize=RULE_BASES)
def _mend(knowledge: Knowledge) -> Mend:
    known = frozenset(
        word for entry in _entries(knowledge) for group in entry.groups for word in group
    )
    own = mender(known, lambda: ordinary_words(knowledge))
    return lambda word: word if word in _LITTLE | _DENYING else own(word)
