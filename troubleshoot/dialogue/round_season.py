"""The season of a routine round: as the caller's words say, as it is typed, or by the date."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk, words_or_back
from troubleshoot.outside.numbers import choice
from troubleshoot.visit.round.season import SEASONS, Season, season_of, season_said

OPTIONS: Final = ("spring: cooling is made ready", "fall: heat is made ready")
WHY: Final = "Which points are walked hangs on it."


def ask_season(book: VisitBook, voice: Voice) -> Talk[Season]:
    """The season whose points are walked. Raises Back, Leave, DangerCalled."""
    said = season_said(book.state.words)
    if said is not None:
        voice.say(f"The {said} round, as was said.")
        return said
    due = season_of(book.now().month)
    prompt = Choose(f"Which season's round? Enter is {due}, by the date.", OPTIONS, why=WHY)
    listener = Listener(book.knowledge, voice)
    while True:
        typed = yield from words_or_back(prompt)
        if not typed:
            return due
        number = choice(typed, len(SEASONS))
        meant = season_said(typed) if number is None else SEASONS[number - 1]
        if meant is not None:
            return meant
        listener.not_understood(typed, "Its number, spring or fall.")
