"""Asking outright, yes or no, what words alone could get past before a STOP may be lifted."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import Talk, words_or_back
from troubleshoot.dialogue.yes_no import YES, YesNo
from troubleshoot.safety.stops.outright import Outright

ALONE: Final = "y alone, or n."


def is_said_yes_to(listener: Listener, asked: Outright) -> Talk[bool]:
    """Whether it is so; after a no it is told what is missing, and nothing may be lifted.

    Enter answers neither, and a yes counts only with nothing behind it: all but one is a no. Raises
    Back, Leave, DangerCalled.
    """
    question = YesNo(asked.question)
    while True:
        typed = yield from words_or_back(question.prompt)
        listener.hear_among(typed)
        meant = question.meant(typed)
        if meant is None:
            listener.not_understood(typed, ALONE)
        elif not meant:
            listener.voice.say(asked.missing, strong=True)
            return False
        elif typed.lower().rstrip(" .!") in YES:
            return True
        else:
            listener.voice.say(ALONE)
