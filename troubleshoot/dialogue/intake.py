"""The beginning of a visit: who is asking, the caller's words, the facts that matter."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.prompts import AskWords, Choose
from troubleshoot.dialogue.said import CallCautions, FirstLooks, Voice
from troubleshoot.dialogue.talk import Talk, words
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.outside.numbers import choice
from troubleshoot.visit.case_file import ROUTINE
from troubleshoot.visit.complaints import match_complaints
from troubleshoot.visit.dangers import reported
from troubleshoot.visit.event_shapes import danger_event
from troubleshoot.visit.nameplate import facts_to_ask
from troubleshoot.visit.profiles import PROFILES, TECHNICIAN

WHO_IS_ASKING = Choose(
    "Who is asking? Give the numbers of all that hold. Enter is a technician, no licence.",
    tuple(profile.replace("-", " ") for profile in PROFILES),
    several=True,
)
WHAT_THEY_SAY = AskWords("What does the caller say? Their own words, or Enter for a routine round.")
SAY_IT_AGAIN = AskWords("What does the caller say?")


def begin(
    book: VisitBook, voice: Voice, name: str, profiles: tuple[str, ...], routine: bool
) -> Talk[None]:
    """Ask what every visit to a unit of this name starts from, and put it into the book."""
    knowledge = book.knowledge
    said, complaint = "", ROUTINE
    if not routine:
        said, complaint = yield from _ask_complaint(book, voice)
    call = knowledge.complaints.get(complaint)
    if call is not None:
        voice.tell(CallCautions(call))
        if complaint != ROUTINE and call.looks:
            voice.tell(FirstLooks(call.looks))
    held = profiles or (yield from ask_profiles(voice))
    book.add(
        {
            "event": "start",
            "name": name,
            "complaint": complaint,
            "words": said,
            "routine": complaint == ROUTINE,
            "profiles": sorted(held),
        }
    )
    yield from _ask_facts(book, voice)


def report_danger(book: VisitBook, name: str, said: str) -> None:
    """Put a danger into the book, which may have nothing in it yet."""
    if not book.begun:
        book.add({"event": "start", "name": name, "profiles": [TECHNICIAN]})
    book.add(danger_event(reported(book.knowledge, said), said))


def ask_profiles(voice: Voice) -> Talk[tuple[str, ...]]:
    """Who is asking: every profile that holds. Enter is a technician without any licence."""
    while True:
        typed = (yield from words(WHO_IS_ASKING)).replace(",", " ").split()
        if not typed:
            return (TECHNICIAN,)
        if all(choice(part, len(PROFILES)) for part in typed):
            return tuple(dict.fromkeys(PROFILES[int(part) - 1] for part in typed))
        voice.say(f"Numbers from 1 to {len(PROFILES)}, with spaces between them.")


def _ask_complaint(book: VisitBook, voice: Voice) -> Talk[tuple[str, str]]:
    """The caller's words, kept as they are typed, and the complaint that they are taken for."""
    knowledge, prompt = book.knowledge, WHAT_THEY_SAY
    if book.state.words:
        voice.say(f'Before it broke off, the caller\'s words were: "{book.state.words}"')
    while True:
        said = yield from words(prompt)
        if not said:
            return "", ROUTINE
        book.add({"event": "call", "words": said})
        if said in knowledge.complaints:
            return said, said
        found = match_complaints(knowledge, said)
        if not found:
            voice.say("Nothing known sounds like that. Say it in other words, or Enter.")
            continue
        typed = yield from words(
            Choose("Which is nearest?", (*(c.says for c in found), "none of these: say it again"))
        )
        if (chosen := choice(typed, len(found))) is not None:
            return said, found[chosen - 1].id
        prompt = SAY_IT_AGAIN


def _ask_facts(book: VisitBook, voice: Voice) -> Talk[None]:
    """The equipment facts on which most of the listed causes depend; Enter for not known."""
    facts = facts_to_ask(book.knowledge, book.state.unit, book.state.complaint)
    if facts:
        voice.say("A few facts from the nameplate. Enter where it is not known.")
    for fact in facts:
        if fact.id not in book.state.unit.facts:
            yield from ask_fact(book, voice, fact)
