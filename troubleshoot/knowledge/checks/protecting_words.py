"""A pack that gives words of safety another meaning.

What: `synonyms.yaml` of a pack makes alike, idle, loose or a manner what confirms a safety step
(locked, dead), what tells of a danger (gas, smoke), or yes, no and other denials; or it takes for
"as it should be" what says one of these, or what is wrong with something that was looked at.
Why: whoever types it means what the words say, and is protected by that alone. A pack adds what
its site calls a part; it never changes what locks, proves, warns or denies.
Fix: take the words out; say another word for the part.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import LocatedMapping, LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.walking import texts_of, value_at
from troubleshoot.outside.text import plain_words

ID: Final = "protecting-words"

_YES_AND_NO: Final = frozenset(
    """yes yeah yep y ok okay sure right no nope n not never none nothing nobody without cannot
    can't don't didn't isn't won't nor neither""".split()  # noqa: SIM905
)
_DANGERS: Final = frozenset(
    """gas smell smells smelled smelling odor odour smoke smoking fire flame flames burning burnt
    arc arcing spark sparks sparking shock shocked buzz tingle monoxide co fumes leak leaking alarm
    danger hurt injured lightning thunder""".split()  # noqa: SIM905
)
_COUNTS_FOR_NOTHING: Final = ("idle", "loose", "manner")
_INSTEAD: Final = "leave it out: a pack changes no word of safety"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every word of safety to which a pack gives another meaning."""
    packs = [file for file in base.files if file.folder and file.kind == "synonyms"]
    if not packs:
        return
    kept = _kept_words(base)
    for file in packs:
        for node, what in _changed(file, kept):
            yield Problem(file.path, node.line, node.column, what, _INSTEAD, ID)


@frozen
class _Kept:
    """What a pack leaves alone: phrases -> why, single words -> why, words for what is wrong."""

    phrases: dict[str, str]
    words: dict[str, str]
    wrong: frozenset[str]


def _kept_words(base: RuleBase) -> _Kept:
    knowledge = base.knowledge
    steps = {plain_words(said) for said in _confirming(knowledge)}
    dangers = {plain_words(said) for hazard in knowledge.hazards.values() for said in hazard.words}
    words = dict.fromkeys(_DANGERS, "tells of a danger") | dict.fromkeys(
        _YES_AND_NO, "affirms or denies"
    )
    phrases = words | dict.fromkeys(dangers, "tells of a danger")
    phrases |= dict.fromkeys(steps, "confirms a safety step")
    idle = {word for file in base.files if not file.folder for word in _idle(file)}
    in_steps = {word for said in steps for word in said.split()} - idle
    words = dict.fromkeys(in_steps, "confirms a safety step") | words
    return _Kept(phrases, words, _wrong(knowledge))


def _confirming(knowledge: Knowledge) -> Iterator[str]:
    """What is typed for the sound outcomes of the safety steps."""
    for test in knowledge.tests.values():
        for outcome in test.outcomes if test.kind == "step" else ():
            if outcome.id in test.healthy:
                yield from (outcome.id, outcome.spoken, *outcome.words)


def _wrong(knowledge: Knowledge) -> frozenset[str]:
    """The words of what can be wrong with what is looked at, and of nothing that is sound."""
    said: dict[bool, set[str]] = {True: set(), False: set()}
    for test in knowledge.tests.values():
        for outcome in test.outcomes if test.kind == "look" else ():
            for text in (outcome.id, *outcome.words):
                said[outcome.id in test.healthy] |= {*plain_words(text).split()}
    return frozenset(said[False] - said[True] - {*knowledge.idle})


def _idle(file: RuleFile) -> Iterator[str]:
    for key in _COUNTS_FOR_NOTHING if file.kind == "synonyms" else ():
        for said, _ in texts_of(value_at(file.root, key)):
            yield plain_words(said)


def _changed(file: RuleFile, kept: _Kept) -> Iterator[tuple[LocatedValue, str]]:
    """Where words of safety get another meaning, and which."""
    alike = value_at(file.root, "alike")
    for name, entry in alike.entries.items() if isinstance(alike, LocatedMapping) else ():
        if plain_words(name) not in _DANGERS and (why := kept.phrases.get(plain_words(name))):
            at = LocatedValue(name, entry.line, entry.column)
            yield at, f'the pack says other words for "{name}", which {why}'
        for said, at in texts_of(entry.value):
            if why := kept.phrases.get(plain_words(said)):
                yield at, f'the pack says "{said}" for {name}, and it {why}'
    for key in _COUNTS_FOR_NOTHING:
        for said, at in texts_of(value_at(file.root, key)):
            for word in plain_words(said).split():
                if word in kept.words:
                    yield at, f'for the pack "{said}" counts for nothing, and it {kept.words[word]}'
                    break
    for said, at in texts_of(value_at(file.root, "as-it-should-be")):
        if not kept.wrong.isdisjoint(plain_words(said).split()) or _denies_or_warns(said):
            yield at, f'for the pack "{said}" says that nothing is wrong'


def _denies_or_warns(said: str) -> bool:
    words = {*plain_words(said).split()}
    return not words.isdisjoint(_DANGERS | (_YES_AND_NO - {"yes", "ok", "okay", "right", "sure"}))
