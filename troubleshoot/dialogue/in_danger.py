"""Asking whether there is a danger, where words hint at one and no hazard is heard in them.

No list of phrases holds all that people say. What hints at a danger is never taken silently: it is
asked about once, and what is said to be none is not asked about again in the same words.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.said import Hinted, Voice
from troubleshoot.dialogue.talk import BACK, DangerCalled, Talk, words
from troubleshoot.dialogue.yes_no import ANSWERED_FIRST, YES, YesNo
from troubleshoot.knowledge.model import Knowledge

IN_DANGER: Final = YesNo("Is somebody or something in danger now?")


def ask_if_hinted(
    knowledge: Knowledge, voice: Voice, said: str, own: Iterable[str] = ()
) -> Talk[None]:
    """Ask before words are taken that hint at a danger. `own`: what the question itself says.

    Raises Leave, DangerCalled.
    """
    if voice.hints(said, own):
        yield from whether_in_danger(voice, Hinted(knowledge, said))


def whether_in_danger(voice: Voice, hinted: Hinted) -> Talk[None]:
    """Ask until it is yes or no; Enter is neither. Raises Leave, DangerCalled."""
    while True:
        typed = yield from words(IN_DANGER.prompt)
        hear(hinted.knowledge, typed)
        meant = IN_DANGER.meant(typed)
        if meant or {*typed.lower().split()[:1]} & YES:
            raise DangerCalled(hinted.said)
        if meant is False:
            voice.take_as_safe(hinted.said)
            return
        voice.refuse(typed)
        voice.say(
            f"{ANSWERED_FIRST} {IN_DANGER.misfit}" if typed.lower() in BACK else IN_DANGER.misfit
        )
