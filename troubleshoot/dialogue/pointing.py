"""The word of a step beside words that only point: it's stopped, they're both locked, panel's off.

Nothing else may stand there. A denial, a doubt, a day, what is still to be done or asked, and an
order (shut it) stay beside the word, and are judged with it.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.by_word import one_word
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.text import without_apostrophes

_BEFORE: Final = re.compile(r"(?:it is|its|it|they are|theyre|all|both|now) ")
_AFTER: Final = re.compile(r" (?:all|both|now)$")
_THEM: Final = re.compile(r"(?<= )'?em\b")


def without_pointing(test: Test, confirmed: str, typed: str) -> str:
    """The word that confirms a step, where nothing but pointing words stands beside it.

    As it stands where anything else does.
    """
    outcome = next(o for o in test.outcomes if o.id == confirmed)
    own = {one_word(word): word for word in (outcome.spoken, *outcome.words)}
    said = " ".join(_THEM.sub("them", typed.lower()).rstrip(" .!").split())
    for text in (without_apostrophes(said), re.sub(r"['\u2019]s\b", " is", said)):
        if (word := own.get(one_word(_bare(text)))) is not None:
            return word
    return typed


def _bare(text: str) -> str:
    """What is left without pointing words round it; the word itself is never taken for one."""
    while (found := _BEFORE.match(text)) is not None:
        text = text[found.end() :]
    return _AFTER.sub("", text)
