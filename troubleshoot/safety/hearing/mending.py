"""Which mistyped words are put right: those of danger, and none that the rule base speaks in."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import chain
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.nets import is_net
from troubleshoot.safety.hearing.typing_errors import Mend, mender, two_errors
from troubleshoot.safety.hearing.words import alike, raw_words

RULE_BASES: Final = 2
"""Whose words are kept ready: as a rule there is one."""


@lru_cache(maxsize=RULE_BASES)
def mender_of(knowledge: Knowledge) -> Mend:
    """What puts mistyped words of danger right; words of the rule base are never mistyped."""
    stopping = (hazard for hazard in knowledge.hazards.values() if hazard.stop is not None)
    phrases = (words for hazard in stopping for words in hazard.words if not is_net(words))
    known = {word for phrase in phrases for word in raw_words(phrase)}
    return mender(frozenset(known | alike()), lambda: ordinary_words(knowledge))


@lru_cache(maxsize=RULE_BASES)
def ordinary_words(knowledge: Knowledge) -> frozenset[str]:
    """The words in which the rule base speaks of what is sound and of what is wrong."""
    texts = [*knowledge.words.values(), *_words_alike(knowledge)]
    texts += [text for c in knowledge.complaints.values() for text in (c.says, *c.words)]
    for test in knowledge.tests.values():
        texts += [test.name, test.area, *test.how, *test.words]
        for outcome in test.outcomes:
            texts += [f"{outcome.id} {outcome.means}", *outcome.words]
    for fact in knowledge.facts.values():
        texts += [fact.asks, *fact.values, *chain(*fact.words.values())]
    for fault in knowledge.faults.values():
        texts += [fault.name, fault.why, fault.if_left, fault.repair.what, *fault.words]
    texts += [text for h in knowledge.hazards.values() for text in (h.what_to_do, h.tag)]
    return frozenset(word for text in texts for word in raw_words(text))


def _words_alike(knowledge: Knowledge) -> Iterator[str]:
    """What is said for a word of the rules, and the word; not how it is misspelt."""
    for word, others in knowledge.alike.items():
        yield word
        yield from (other for other in others if not two_errors(other, word))
