"""Which hazards' nets catch what was said, by words alone or by a reading told among them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.hearing.mending import RULE_BASES, mender_of
from troubleshoot.safety.hearing.nets import Net, is_net, net_of, sentences
from troubleshoot.safety.hearing.told_numbers import is_doubtful, shows
from troubleshoot.safety.hearing.vocabulary import FIRE, ON_FIRE


def netted(knowledge: Knowledge, words: str, *, read: bool) -> tuple[Hazard, ...]:
    """Those whose nets catch a sentence, whatever else it says. `read`: by their readings too."""
    return tuple(
        hazard
        for hazard, net, said in _caught(knowledge, words)
        if not net.reading or (read and not is_doubtful(said))
    )


def read_in_doubt(knowledge: Knowledge, words: str) -> tuple[Hazard, ...]:
    """Those that a reading would call up which may be none: it was so, or it should not be."""
    caught = _caught(knowledge, words)
    return tuple(h for h, net, said in caught if net.reading and is_doubtful(said))


def _caught(knowledge: Knowledge, words: str) -> Iterator[tuple[Hazard, Net, str]]:
    """Each net that catches a sentence, and the sentence."""
    knit = _nets(knowledge)
    for text, said in sentences(words, mender_of(knowledge)):
        also = (FIRE,) if ON_FIRE in said else ()
        near = dict.fromkeys(each for word in (*said, *also) for each in knit.get(word, ()))
        for hazard_id, net in near:
            hazard = knowledge.hazards[hazard_id]
            is_caught = net.catches(said)
            if is_caught and (not net.reading or shows(knowledge, hazard, net.reading, text)):
                yield hazard, net, text


@lru_cache(maxsize=RULE_BASES)
def _nets(knowledge: Knowledge) -> Mapping[str, tuple[tuple[str, Net], ...]]:
    """The nets by the words of one of their groups, each with the id of its hazard."""
    found: dict[str, tuple[tuple[str, Net], ...]] = {}
    for hazard in knowledge.hazards.values():
        for net in map(net_of, filter(is_net, hazard.words if hazard.stop else ())):
            for word in dict.fromkeys(net.shortest_group):
                found[word] = (*found.get(word, ()), (hazard.id, net))
    return found
