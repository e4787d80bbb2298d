"""Words alike that lead to two things, or to nothing.

What: in `synonyms.yaml` the same words are said for two names; words are said for a name that are
themselves a name, or idle; or a name is said for itself.
Why: which of the two counts would hang on the order of lines, and what is idle is never looked up.
Fix: leave the words with the one that people mean by them.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.nodes import Located, LocatedMapping
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.walking import texts_of, value_at
from troubleshoot.outside.text import plain_words

ID: Final = "alike-words"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for words that stand for more than one name, for another name, or nothing."""
    knowledge = base.knowledge
    names = {*map(plain_words, knowledge.alike)}
    idle = {*map(plain_words, (*knowledge.idle, *knowledge.loose))}
    stands_for: dict[str, str] = {}
    for path, name, said, node in _said(base):
        first = stands_for.setdefault(said, name)
        if said in names:
            what, instead = f'"{said}" is a name itself', "leave it out"
        elif said in idle:
            what, instead = (
                f'"{said}" counts for nothing',
                "leave it out, here or there",
            )
        elif first != name:
            what, instead = f'"{said}" is said for {first} and for {name}', "leave one of them out"
        else:
            continue
        yield Problem(path, node.line, node.column, what, instead, ID)


def _said(base: RuleBase) -> Iterator[tuple[str, str, str, Located]]:
    """(file, name, what is said for it, where that stands)."""
    for file in base.files:
        alike = value_at(file.root, "alike") if file.kind == "synonyms" else None
        for name, line in alike.entries.items() if isinstance(alike, LocatedMapping) else ():
            for said, node in texts_of(line.value):
                yield file.path, plain_words(name), plain_words(said), node
