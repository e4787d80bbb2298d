"""What is said over the work and tells of nobody's danger: the price, the weather, a stiff screw.

Every word has to be one of such talk: what moves, smells, leaks or hurts is none, and one word that
is not known here makes it no small talk. All of this is common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.vocabulary import stem, stems
from troubleshoot.safety.hearing.words import raw_words

_PHRASES: Final = re.compile(
    r"\b(?:(?:no|not any|nobody|none|never|nothing) (?:\w+ )?"
    r"(?:lightnin\w*|thunder|rain|wind|hurt|ice|smell|smoking|hot|shock|spark|smoke)|"
    r"all (?:is )?(?:quiet|calm)|"
    r"(?:killed|cut|pulled|shut) (?:off )?the (?:power|breaker|disconnect)|"
    r"(?:it ?s|it is|all|power is|unit is|still) (?:dead|off|locked|tagged)|"
    r"(?:hang|hold) on(?: a (?:sec|second|min|minute|moment))?|"
    r"(?:give me )?(?:a|one) (?:sec|second|min|minute|moment)|"
    r"(?:gotta|got to|have to|need to|let me) (?:get|find|grab|fetch) (?:my|a|the) "
    r"(?:better look|flashlight|glasses|mirror|nut ?driver|pen|rag|screwdriver|scraper)|"
    r"(?:hard to see|cant see|hard to reach|cant reach(?: it)?)"
    r"(?: (?:back )?in (?:there|here)| from here)?|"
    r"(?:customer|owner|boss) wants|whoever|last guy|took me|"
    r"ladders? (?:is |are )?tied(?: off| good| well)*|"
    r"(?:sky|weather|roof) (?:is |s )?(?:clear|dry|calm|good|fine|nice|sunny)|"
    r"(?:pliers|wrench|meter|tools?|all (?:the )?tools) (?:is |are )?(?:back )?"
    r"(?:in|into) (?:my|the|his) (?:pouch|bag|pocket|toolbox|bucket|truck|van))\b"
)
"""What is denied, stands or is put away, said as such."""
_TALK: Final = stems(
    "price bill cost cheap money overtime noon schedule contract warranty "
    "paperwork pictures invoice rusty rust stripped stiff faded dusty dirty ugly shiny easy old "
    "ancient new junk lazy sloppy last did installed ready done almost finished "
    "halfway while week month year day today monday tuesday wednesday thursday friday late early "
    "pigeon bird weather sunny sun pretty coffee lunch break label sticker nameplate gasket bolt "
    "bolts screw screws nut nuts wrench hose handle panel plug box burner door unit cover "
    "snug fits fit clean neat nice good better best great fine pain tight squeeze awkward big "
    "order need needs took take find used use had wanted same third second first one ones "
    "long forever soon somewhere thing hell what this these that those was is are am "
    "be been being it its i my the a an of in on to for at with and but so as by than "
    "too very all again here up when were ok okay sure lot bit little hard designs design "
    "cottonwood from has have"
)


def is_small_talk(said: str) -> bool:
    """Whether a line is talk over the work, all of it."""
    rest, phrases = _PHRASES.subn(" ", said.lower().replace("'", ""))
    words = {stem(word) for word in raw_words(rest)}
    return bool(phrases or words) and words <= _TALK and not hints(rest)
