"""Plain good news at a step, which is no answer and no danger: told em, they're good with it.

What is good has to be said, and every word be of the step, of the work or a little one: whatever is
denied, hints at a danger or is not known here is no good news. It confirms nothing; it only spares
a question that is soon answered unread. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.text import without_apostrophes
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.vocabulary import DENYING, LOOSE, stem, stems
from troubleshoot.safety.hearing.words import raw_words

_NOTHING_SEEN: Final = re.compile(
    r"\b(?:nothin[g']?|none) (?:at all )?(?:on|at|by|from) (?:the |my )?"
    r"(?:sniffer|board|meter|detector|gauge|display|screen|unions?|joints?|valve)\b"
)
_GOOD: Final = stems(
    "good fine ok okay easy easily clear clean quiet great perfect normal solid smooth dry agreed "
    "happy alright"
)
_WORK: Final = stems(
    "told talked spoke asked know knows agree manager owner boss super customer tenant people "
    "everybody em theyre hes shes he she they swept sweep checked checks check tested test went "
    "came turned opened closed pulled tagged reads read shows showed got stayed holds held looks "
    "meter tester sniffer detector gauge board display outlet recept receptacle disconnect switch "
    "handle breaker panel panels cover door cock valve roof ladder legs leg bled bleed discharged "
    "volts volt psi amps done finished each every everything way its as so then well too"
)
_NOT_GOOD: Final = DENYING | stems(
    "nothing cannot cant wont dont isnt didnt but except start run spin move live hot leak smell "
    "smoke hum spark charge hiss still again back"
)
_DEEDS: Final = stems(
    "my our took take set laid back lock locks locked tag tags key pocket hung hooked screws screw "
    "screwed tight tightened down buttoned hands bag bucket out both hoses hose purged port ports "
    "tap crosswise slow slowly monitoring company called quit coasted blower condenser"
)
"""What was done at a step, and with what."""

_STANDS: Final = re.compile(
    r"(?:the |my |all )?(?:locks? (?:is|are) (?:still )?on|"
    r"(?:power|disconnect|breaker) is (?:still )?(?:off|locked(?: out)?)|"
    r"(?:panels?|covers?) (?:is|are) (?:still )?off)"
)


def tells_it_stands(said: str) -> bool:
    """Whether a line says that the lock-out or an open panel stands, and nothing else."""
    return _STANDS.fullmatch(" ".join(raw_words(said))) is not None


def tells_good_news(said: str, own: Iterable[str]) -> bool:
    """Whether a line says that all is well at a step, or what was done at it, and nothing else.

    `own`: the step's words and its answers'.
    """
    rest, seen = _NOTHING_SEEN.subn(" ", without_apostrophes(said.lower()))
    words = {stem(word) for word in raw_words(rest) if whole_number(word) is None}
    of_it = {stem(word) for text in own for word in raw_words(text)}
    if hints(rest) or not words.isdisjoint(_NOT_GOOD):
        return False
    known = _GOOD | _WORK | LOOSE | of_it
    is_good = bool(seen) or not words.isdisjoint(_GOOD)
    is_deed = not words.isdisjoint(_DEEDS) and not words.isdisjoint(of_it - LOOSE)
    return (is_good and words <= known) or (is_deed and words <= known | _DEEDS)
