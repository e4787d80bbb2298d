"""Asking for a unit's name. What hardly is one is asked back once: whoever comes next meets it."""

from __future__ import annotations

from string import digits
from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import Leave, Talk, words_or_back
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.safety.hearing.moments import names_a_time
from troubleshoot.safety.hearing.roles import roles_in
from troubleshoot.visit.kept.no_name import is_no_name

MOST_WORDS, MOST_WITH_A_NUMBER = 4, 8
"""Of a name, and of one that holds the number of a unit; more are a sentence."""
TOO_LONG: Final = f"That is more than {MOST_NAME} letters; say it in fewer."
NO_NAME: Final = "That is no unit's name; type what it is called, like RTU-4."
ANSWERS: Final = frozenset({"y", "yes", "n", "no", "ok", "none", "none of these"})


def ask_name(listener: Listener, prompt: AskWords) -> Talk[str]:
    """The unit's name; empty where none is given. Raises Back, Leave, DangerCalled."""
    name = yield from _short_name(listener, prompt)
    if not _hardly_a_name(name):
        return name
    listener.voice.say(f'"{name}" is hardly a unit\'s name. Type the name, or the same once more.')
    listener.ask_about(name)
    try:
        name = yield from _short_name(listener, prompt)
    except Leave:
        listener.voice.note(f"typed where the unit's name was asked: {name}")
        raise
    if _hardly_a_name(name):
        listener.ask_about(name)
    return name


def _short_name(listener: Listener, prompt: AskWords) -> Talk[str]:
    """What may be a name, and is no longer than one may be. Raises Back, Leave, DangerCalled."""
    while True:
        name = yield from words_or_back(prompt)
        listener.hear(name)
        if name and is_no_name(name):
            listener.not_understood(name, NO_NAME)
        elif len(name) <= MOST_NAME:
            return name
        else:
            listener.not_understood(name, TOO_LONG)


def _hardly_a_name(typed: str) -> bool:
    said = typed.lower()
    numbered = not set(said).isdisjoint(digits)
    most = MOST_WITH_A_NUMBER if numbered else MOST_WORDS
    long = len(said.split()) > most or said.endswith((".", "!", "?"))
    return long or said in ANSWERS or names_a_time(said) or bool(roles_in(said))
