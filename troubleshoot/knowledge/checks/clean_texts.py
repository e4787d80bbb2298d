"""Text that holds code or markup, or says nothing.

What: a text for people holds angle brackets, back quotes, braces, links or emphasis marks, or
stands for something that was never written.
Why: texts are shown on a terminal, in pages and in reports; markup would show as such or be
executed somewhere.
Fix: say it in words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.nodes import LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.shapes import Text
from troubleshoot.knowledge.walking import text_of, walk

ID: Final = "clean-texts"

_MARKUP: Final = (
    (re.compile(r"</?[A-Za-z][^>]*>"), "a tag in angle brackets"),
    (re.compile(r"`"), "a back quote"),
    (re.compile(r"\$?\{\{?|\}"), "a brace"),
    (re.compile(r"\]\(|\[/?[a-z]+\]"), "a link or mark in brackets"),
    (re.compile(r"\*\*|__"), "emphasis marks"),
    (re.compile(r"https?://|www\."), "an address"),
)
_NOTHING_SAID: Final = re.compile(r"(?:todo|tbd|tba|fixme|xxx+|\?+|-+|\.+|n/a)", re.IGNORECASE)


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every text that is no plain text."""
    for path, text, node in texts(base):
        for pattern, name in _MARKUP:
            if pattern.search(text):
                yield Problem(path, node.line, node.column, f"{name} in a text", "use words", ID)
        if _NOTHING_SAID.fullmatch(text):
            what = f"the text {text} says nothing"
            yield Problem(path, node.line, node.column, what, "write it, or delete the key", ID)


def texts(base: RuleBase) -> Iterator[tuple[str, str, LocatedValue]]:
    """Yield (path, text, value) for every text for people in the rule base."""
    for file in base.files:
        for step in walk(FORMS[file.kind], file.root):
            if isinstance(step.shape, Text) and isinstance(step.node, LocatedValue):
                text = text_of(step.node)
                if text is not None:
                    yield file.path, text, step.node
