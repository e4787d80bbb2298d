"""The end of a visit: a repair that is proved, and the unit that is back as it was."""

from __future__ import annotations

import re
from collections.abc import Iterator

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.command_words import is_command
from troubleshoot.dialogue.hearing import Listener, hear_among
from troubleshoot.dialogue.in_danger import ask_if_hinted
from troubleshoot.dialogue.on_round import go_on
from troubleshoot.dialogue.prompts import AskProof, Caution
from troubleshoot.dialogue.proof_dangers import (
    called_up_by,
    end_the_proofs,
    of_before,
    own_words,
    proof_read,
)
from troubleshoot.dialogue.proof_facts import fact_told, how_told, lacks
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_back import take_back
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk, words_or_back
from troubleshoot.dialogue.unit_facts import ask_fact, ask_plate
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no_in_words
from troubleshoot.knowledge.model import Fault, Proof, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.at_the_flue import as_asked
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.needs import HEAT_IS_ON, ONE_CALL
from troubleshoot.safety.steps import RESTART, STOP_BY_CONTROLS
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.tags import gas_tag, tag_lines
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.judging_proofs import facts_to_judge, judged_by
from troubleshoot.visit.deciding.left_off import (
    THE_UNIT,
    gas_left,
    heat_stays_off,
    left_for,
    left_off_at,
    what_lifts,
)
from troubleshoot.visit.deciding.nameplate import plate_to_ask
from troubleshoot.visit.deciding.no_lock import SWITCH_LEFT, has_no_lock, stopped_by, switch_tag
from troubleshoot.visit.deciding.proving import left_to_prove
from troubleshoot.visit.events import Closing, Repaired, VisitEnded, after
from troubleshoot.visit.hearing.proof_computed import computed_since
from troubleshoot.visit.hearing.proof_read import (
    NOT_RIGHT,
    is_read_bad,
    lacking_lines,
    lacking_of,
    not_proved_before,
    not_proved_earlier,
)
from troubleshoot.visit.hearing.proofs_wanted import still_to_read

STILL_THERE = YesNo("Is the complaint still there?")
FOUND = YesNo("Is what was found on the round still there?")
NOT_REPAIRED = "Taken back: no repair is kept."
BESIDE_A_PROOF = frozenset({"because", "causes", "repaired", "what", "why"})
A_READING_FIRST = "That is no reading. What was read, or Enter where it was not; u goes back."
JUDGED_LATER = "Kept. It is judged by what is asked for on the way out:"
ONCE_MORE = "What did you read? Enter leaves it as said."
NO_WAY = "No safe way leads there as the unit stands, so it stays not proved:"
BACK_TO_THE_TESTS = "So it is not put right, whatever the complaint does: back to the tests."
NOT_TRIED = (
    "It is not asked whether the complaint has gone: the unit stays off, so nobody tried it."
)
NOT_ASKED_OFF = "not asked: the unit stays off"
AS_IT_WAS = "The unit is back as it was."
AFTER_A_REPAIR = "The unit is put back, with what was repaired."
CONTROL_BACK = (
    "Put mode, setpoint and schedule of the thermostat or building control back as you found them."
)
HEAT_LEFT_OFF = (
    "Leave the heat off at the thermostat or building control, and say so there; put the rest of "
    "mode, setpoint and schedule back as you found it."
)
_TURNS_THE_CONTROL = frozenset({STOP_BY_CONTROLS, RESTART, *HEAT_IS_ON, *ONE_CALL})


def prove(
    book: VisitBook,
    voice: Voice,
    reasoner: Reasoner,
    decision: Decision,
    cautions: tuple[Caution, ...] = (),
) -> Talk[None]:
    """Take one proof of a repair, or whether the complaint has gone with the one that was begun.

    `u` takes back what was said before: a proof is read once more, and a repair of which nothing
    has been said yet is not kept. Raises Leave, DangerCalled.
    """
    begun, before = book.state.repair_begun, decision.of_before
    fault = book.knowledge.faults[before or (begun.fault if begun else "")]
    try:
        if decision.proof is None:
            yield from _whether_it_helped(book, voice, reasoner, fault)
        elif (yield from _plate_known(book, voice, decision.test)):
            prompt = AskProof(
                fault, decision.proof.text, cautions, decision.test, is_of_before=bool(before)
            )
            yield from _read(book, voice, reasoner, prompt, decision.proof)
    except Back:
        take_back(book, voice, reasoner)
        if begun is not None and book.state.repair_begun is None:
            voice.say(NOT_REPAIRED)


def _plate_known(book: VisitBook, voice: Voice, test: Test | None) -> Talk[bool]:
    """Ask what judges the proof, of facts and the nameplate; False where more comes before it.

    A proof does not know where on the unit it is read: a value told for any place serves.
    """
    state = book.state
    for fact in facts_to_judge(book.knowledge, state, test):
        yield from ask_fact(book, voice, fact)
        return False
    told = {name for name, _ in state.unit.plate}
    wanted = plate_to_ask(book.knowledge, state.unit, test, None, state.not_known) if test else ()
    for value in wanted:
        if value.id not in told:
            answered = yield from ask_plate(book, voice, value, None)
            if not answered or book.state.work != state.work:
                return False
    return True


def _read(
    book: VisitBook, voice: Voice, reasoner: Reasoner, prompt: AskProof, proof: Proof
) -> Talk[None]:
    """Take what is read for one proof.

    What tells no reading is asked for once more. A fact that is told first is kept, and what comes
    next is decided anew.
    """
    reading = yield from _told(book, voice, reasoner, prompt, proof)
    if reading is None:
        return
    if judging := _judged_later(book, prompt, reading):
        book.add(proof_read(prompt, reading))
        voice.say(f"{JUDGED_LATER} {judging}.", strong=True)
        return
    if (why := _why_unproved(book, prompt, reading)) not in ("", NOT_RIGHT):
        voice.say(f"Not proved: {why}. {ONCE_MORE}", strong=True)
        if how := how_told(lacks(book, proof)):
            voice.say(how)
        try:
            again = yield from _told(book, voice, reasoner, prompt, proof)
        except Back:
            return  # to the same proof, of which nothing is kept yet
        except (Leave, DangerCalled):
            book.add(proof_read(prompt, reading))
            raise
        if again is None:
            return
        reading = again or reading
    book.add(proof_read(prompt, reading))
    if why := _why_unproved(book, prompt, reading):
        voice.say(f"Not proved: {why}. Kept as said; u goes back to it.", strong=True)


def _told(
    book: VisitBook, voice: Voice, reasoner: Reasoner, prompt: AskProof, proof: Proof
) -> Talk[str | None]:
    """What is typed for a proof; None where a fact was told, readings of other tests alone, or a
    danger that ends the proofs.

    Raises Back, Leave, DangerCalled.
    """
    begun = book.state.repairs
    while True:
        reading = yield from words_or_back(prompt)
        if fact_told(book, voice, reasoner, proof, reading):
            return None
        if not _is_for_elsewhere(reading):
            break
        if not (yield from _served(voice, reading)):
            voice.say(A_READING_FIRST)
        elif book.state.repairs != begun:
            return None
    called_up = called_up_by(book, reasoner, prompt, proof, reading)
    asked = book.knowledge.read_by(proof)
    said = as_asked(asked, reading)
    if called_up is None or spoken_of(book.knowledge, said, read=False):
        hear_among(book.knowledge, said)
    if _why_unproved(book, prompt, reading) not in ("", NOT_RIGHT):
        own = yield from voice.reads(reading, asked)
        if own == "":  # other readings alone, that may give what is asked for
            own = computed_since(book.knowledge, book.state, prompt.fault, proof)
            if not own:
                return None
        reading = own or reading
        called_up = called_up_by(book, reasoner, prompt, proof, reading)
    if called_up is not None:
        end_the_proofs(book, voice, prompt, reading, called_up)
        return None
    yield from _others_beside(voice, asked, reading)
    said = as_asked(asked, reading)
    yield from ask_if_hinted(book.knowledge, voice, said, own_words(prompt, proof))
    return reading


def _others_beside(voice: Voice, asked: Test | None, reading: str) -> Talk[None]:
    """Take readings of other tests that are told in clauses of their own: 5 of 5, flame 3.8 uA."""
    clauses = re.split(r"[,;] ", reading)
    for clause in clauses if len(clauses) > 1 else ():
        yield from voice.reads(clause, asked)


def _is_for_elsewhere(typed: str) -> bool:
    """Whether it is a command, and no reading; what is told of the unit may be either."""
    said = typed.lower()
    return said == "over" or (is_command(said) and not said.startswith("unit "))


def _served(voice: Voice, typed: str) -> Talk[bool]:
    """Serve what may be done beside a proof: tell of another repair, or see why a cause is likely.

    What leads elsewhere waits: the proofs come first.
    """
    word = typed.lower().partition(" ")[0]
    return word in BESIDE_A_PROOF and (yield from voice.serves(typed))


def _why_unproved(book: VisitBook, prompt: AskProof, reading: str) -> str:
    """Why an answer would not prove it; empty where it would, or where nothing was read."""
    if not reading:
        return ""
    then = after(book.knowledge, book.state, proof_read(prompt, reading))
    return lacking_of(book.knowledge, then, of_before(prompt)).get(prompt.text, "")


def _judged_later(book: VisitBook, prompt: AskProof, reading: str) -> str:
    """What is read once the unit is back and judges a number read now; empty where nothing is."""
    if not reading or prompt.is_of_before:
        return ""
    then = after(book.knowledge, book.state, proof_read(prompt, reading))
    judging = judged_by(book.knowledge, then, prompt.text) if then.repair_begun else ()
    return ", ".join(dict.fromkeys(test.name.lower() for test, _ in judging))


def _whether_it_helped(
    book: VisitBook, voice: Voice, reasoner: Reasoner, fault: Fault
) -> Talk[None]:
    """Whether the complaint has gone with it, and what was not proved. Raises Back."""
    if left := "; ".join(proof.text for proof in left_to_prove(book.knowledge, book.state)):
        voice.say(f"{NO_WAY} {left}.", strong=True)
    conclusions = conclude_visit(reasoner, book.state)
    off = left_off_at(book.knowledge, book.state, conclusions)
    work = book.state.work
    if off.unit and not (work.power == "on" and work.calls == "on"):
        voice.say(NOT_TRIED)
        voice.say_all(what_lifts(book.knowledge, conclusions, off))
        book.add(Repaired(fault.id, NOT_ASKED_OFF), Closing())
        return
    listener = Listener(book.knowledge, voice)
    on_round = book.state.round is not None
    still, said = yield from yes_or_no_in_words(listener, FOUND if on_round else STILL_THERE)
    book.add(Repaired(fault.id, said))
    for line in lacking_lines(book.knowledge, book.state):
        voice.say(f"Not proved, {line}.", strong=True)
    if is_read_bad(book.knowledge, book.state):
        voice.say(BACK_TO_THE_TESTS, strong=True)
    elif not still:
        if on_round:
            go_on(book, conclude_visit(reasoner, book.state))
        else:
            book.add(Closing(cured=True))


def close(book: VisitBook, voice: Voice, decision: Decision, conclusions: Conclusions) -> None:
    """Close the visit, which ends it. One whose way back is beyond this person is kept.

    Raises Leave.
    """
    off = left_off_at(book.knowledge, book.state, conclusions)
    for part, fired in off.tags:
        what = "" if part == THE_UNIT else part
        voice.say("Write on the tag:")
        voice.say_all(tag_lines(book.knowledge, book.state, conclusions, fired, what), 1)
        voice.say(f"Hand over to: {fired.hazard.defer_to}")
    if (tag := gas_tag(book.state)) and not off.heat:
        voice.say("Write on the tag of the gas cock:")
        voice.say_all(tag, 1)
    if switch := switch_tag(book.knowledge, book.state):
        voice.say("Write on the tag of the switch:")
        voice.say_all(switch, 1)
        voice.say(f"Hand over to: {stopped_by(book.knowledge).defer_to}")
    for step, phrase in decision.handed_over:
        voice.say(f"{book.knowledge.tests[step].name} is beyond you: {phrase}.")
        raise Leave
    book.add(VisitEnded("closed", left_off=left_for(off, book.state.work)))
    voice.say_all(off.lines)
    voice.say_all(what_lifts(book.knowledge, conclusions, off))
    lacking = lacking_lines(book.knowledge, book.state)
    for line in lacking:
        voice.say(f"The repair is not proved, {line}.", strong=True)
    voice.say_all(not_proved_earlier(book.knowledge, book.state))
    voice.say_all(not_proved_before(book.knowledge, book.state))
    voice.say_all(still_to_read(book.knowledge, book.state))
    not_so = (*gas_left(off, book.state.work), *_not_as_it_was(book))
    voice.say_all(not_so)
    if heat_stays_off(off, book.state.work) and not off.unit:
        voice.say(HEAT_LEFT_OFF, strong=True)
    elif any(each.test in _TURNS_THE_CONTROL and not each.nobody for each in book.state.asked):
        voice.say(CONTROL_BACK, strong=True)
    as_it_was = not (off.all or lacking or not_so)
    is_back = AFTER_A_REPAIR if book.state.mended_here else AS_IT_WAS
    voice.say(f"{is_back} The visit is closed." if as_it_was else "The visit is closed.")
    voice.say(f"Report: troubleshoot report {book.visit_id}")


def _not_as_it_was(book: VisitBook) -> Iterator[str]:
    """In what the unit is not back as it was, whatever was confirmed: a sentence each."""
    state = book.state
    calls = (each for each in reversed(state.asked) if each.test == RESTART and each.valid)
    last = next(calls, None)
    if state.work.power == "on" and last is not None and last.outcome != CONFIRMED[RESTART]:
        outcomes = book.knowledge.tests[RESTART].outcomes
        means = "; ".join(o.means for o in outcomes if o.id in (last.outcome or "").split(", "))
        yield f"When it was called for last: {means}."
    if has_no_lock(state):
        yield SWITCH_LEFT
