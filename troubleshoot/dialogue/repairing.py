"""A repair is begun: on record from here on, with what nobody said before it."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Fault
from troubleshoot.safety.before_repair import LIVE, not_on_record
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.made_ready import steps_to_repair
from troubleshoot.visit.deciding.proving import read_live, waiting
from troubleshoot.visit.events import Closing, Repaired, RepairWanted

WRITE_IT_DOWN = "hands out, and keep a note of how it was done."
STILL_TO_COME = "Still to come, once the unit is back and runs:"
TO_BE_REPAIRED = "First what has to stand before hands go in:"
READY = "What has to stand before hands go in stands, by the record:"
THEN_REPAIRED = "Type repaired once it is put right; u takes this back."
READ_LIVE = "Read live, with the panel off:"


def repaired(book: VisitBook, voice: Voice, fault: Fault) -> None:
    """Begin a repair: it is on record from here on, its proofs and the way back come next."""
    voice.say(f"Repaired: {fault.name}. u takes it back.")
    tell_not_on_record(book, voice, fault)
    book.add(Repaired(fault.id))
    if book.state.repairs[-1].live:
        voice.say(f"{LIVE}: {WRITE_IT_DOWN}", strong=True)
    book.add(Closing())
    for head, proofs in ((READ_LIVE, read_live), (STILL_TO_COME, waiting)):
        if texts := "; ".join(proof.text for proof in proofs(book.knowledge, book.state)):
            voice.say(f"{head} {texts}.", strong=True)


def about_to_repair(book: VisitBook, voice: Voice, fault: Fault, at: str) -> None:
    """Lead to what has to stand before hands do a repair, or say that it stands."""
    book.add(RepairWanted(fault.id, at))
    wanting = steps_to_repair(book.knowledge, book.state)
    voice.say(f"{TO_BE_REPAIRED if wanting else READY} {fault.name}. {THEN_REPAIRED}")


def tell_not_on_record(book: VisitBook, voice: Voice, fault: Fault) -> None:
    """Which of the steps that a repair wants nobody has said in this visit."""
    state = book.state
    done = {a.test for a in state.asked if a.outcome == CONFIRMED.get(a.test) and not a.nobody}
    missing = not_on_record(fault, done, state.work, state.at_work)
    if missing:
        voice.say(f"Not on record before this repair: {', '.join(missing)}.", strong=True)
