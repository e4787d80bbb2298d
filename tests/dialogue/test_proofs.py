"""At the proofs of a repair commands are served, and what was not read is said not to be proved."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cli.lines import Lines, held
from tests.dialogue.mended import at_the_open_unit, mended, proved
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import (
    A_READING_FIRST,
    AFTER_A_REPAIR,
    NOT_REPAIRED,
    ONCE_MORE,
    close,
)
from troubleshoot.dialogue.prompts import AskProof
from troubleshoot.dialogue.proof_dangers import own_words
from troubleshoot.dialogue.proof_facts import how_told
from troubleshoot.dialogue.repairing import repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.dialogue.unit_told import HOW
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import FactTold, ProofRead, Skipped, Started, StepDone

START = Started(complaint="no-cooling", profiles=("technician",))
QUALIFIED = Started(complaint="no-cooling", profiles=(*FULLY_QUALIFIED,))
GAS = Started(
    complaint="no-heat", unit={"heat": "gas", "circuits": 1}, profiles=(*FULLY_QUALIFIED,)
)
FAULT = "condenser-fan-capacitor-weak"
SECTION = "capacitance-out-of-circuit"


def say_repaired(shipped: Knowledge, *typed: str) -> tuple[VisitBook, str]:
    book = at_the_open_unit(shipped, START, test="condenser-fan-amps")
    terminal = Lines(*typed)

    def part(voice: Voice) -> Talk[None]:
        takes_notes(book, voice)
        return (yield from mended(book, voice, shipped.faults[FAULT]))

    held(shipped, terminal, part)
    return book, terminal.text


@pytest.fixture
def reads(shipped: Knowledge) -> list[str]:
    """A sound reading for each proof."""
    read = ["5.1 uF", "starts three times, full speed", "1.8 A"]
    assert len(read) == len(shipped.faults[FAULT].proof)
    return read


@pytest.mark.parametrize(
    "typed",
    ["?", "w", "how", "help", "s", "note capacitor was hot", "because", "because 2", "tests",
     "done", "again", "unit", "invalid wrong jack", "what if low", "causes", "repaired"],
)  # fmt: skip
def test_no_command_is_kept_as_a_reading(typed: str, reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, typed, *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    served = "Enter where it was not" in said or HOW in said
    assert served or book.state.notes == ("capacitor was hot",)


def test_a_danger_and_q_are_heard_there(reads: list[str], shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        say_repaired(shipped, reads[0], "danger fire")
    with pytest.raises(Leave):
        say_repaired(shipped, reads[0], "q")


def test_u_takes_the_reading_before_back(reads: list[str], shipped: Knowledge) -> None:
    book, _ = say_repaired(shipped, "9 uF", "u", *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads


def test_u_at_the_first_proof_takes_the_repair_back(shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, "u")
    assert book.state.repairs == () and not book.state.closing
    assert NOT_REPAIRED in said


def test_a_sentence_that_begins_like_a_command_is_a_reading(
    reads: list[str], shipped: Knowledge
) -> None:
    book, said = say_repaired(shipped, "unit runs, 5.2 uF", *reads[1:], "n")
    assert book.state.repairs[-1].proofs[0][1] == "unit runs, 5.2 uF"
    assert A_READING_FIRST not in said


def test_what_was_not_read_is_said_not_to_be_proved(reads: list[str], shipped: Knowledge) -> None:
    first, *more = shipped.faults[FAULT].proof
    _, said = say_repaired(shipped, "", *reads[1:], "n")
    assert f"Not proved, for want of a sound reading: {first.text}." in said
    assert "Not proved" not in say_repaired(shipped, *reads, "n")[1]
    _, said = say_repaired(shipped, *[""] * len(reads), "n")
    assert "; ".join(proof.text for proof in (first, *more)) in said


@pytest.mark.parametrize(
    "typed", ["cant yet its locked out", "n", "dunno", "tomorrow", "locked out", "28 ppm", "yes"]
)
@pytest.mark.parametrize("number", [0, 1, 2])
def test_what_says_nothing_of_it_proves_nothing(
    typed: str, number: int, reads: list[str], shipped: Knowledge
) -> None:
    """Regression: whatever had a number or two words in it counted as proved."""
    given = [*reads[:number], typed, typed, *reads[number + 1 :]]
    book, said = say_repaired(shipped, *given, "n")
    asked = shipped.faults[FAULT].proof[number].text
    assert "Not proved: that " in said
    assert f"Not proved, for want of a sound reading: {asked}." in said
    assert book.state.repairs[-1].proofs[number][1] == typed


def test_what_is_no_reading_is_asked_for_once_more(reads: list[str], shipped: Knowledge) -> None:
    """Regression: a word of the wrong form moved on at once, and left the repair unproved."""
    book, said = say_repaired(shipped, "dunno", *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    assert ONCE_MORE in said and "Not proved, " not in said


def test_enter_at_the_second_asking_leaves_it_as_said(reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, "dunno", "", *reads[1:], "n")
    assert book.state.repairs[-1].proofs[0][1] == "dunno"
    assert "Kept as said; u goes back to it." in said


def test_u_at_the_second_asking_goes_back_to_the_same_proof(
    reads: list[str], shipped: Knowledge
) -> None:
    """Regression: u after a wrong answer took the repair back."""
    book, said = say_repaired(shipped, "dunno", "u", "dunno", "u", *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    assert NOT_REPAIRED not in said


def test_whoever_leaves_at_the_second_asking_has_said_the_first(
    reads: list[str], shipped: Knowledge
) -> None:
    book = at_the_open_unit(shipped, START, test="condenser-fan-amps")
    with pytest.raises(Leave):
        held(shipped, Lines("dunno", "q"), lambda v: mended(book, v, shipped.faults[FAULT]))
    assert [text for _, text in book.state.repairs[-1].proofs] == ["dunno"]


def test_what_is_read_and_bad_is_kept_at_once(reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, "9 uF", *reads[1:], "n")
    assert book.state.repairs[-1].proofs[0][1] == "9 uF" and ONCE_MORE not in said


WASHED = "condenser-coil-dirty"
WASHED_READS = ["clean", "385 psig", "7.2 A, 8.4 before"]
COIL = (
    FactTold("refrigerant", "R-410A"),
    FactTold("compressor-rla", "9 A"),
    FactTold("compressor-lra", "60 A"),
)


@pytest.mark.parametrize("typed", ["outdoor temperature 95", "unit outdoor temperature 95 F"])
def test_what_a_proof_lacks_can_be_told_at_it(typed: str, shipped: Knowledge) -> None:
    """Regression: not judged for want of the outdoor temperature, and no way to give it.

    It is asked for before the proof, unless it was gone on without.
    """
    without = Skipped.over("outdoor-temperature", None)
    book = at_the_open_unit(shipped, QUALIFIED, *COIL, without, test="high-pressure-switch")
    first, head, amps = WASHED_READS
    held(shipped, Lines(first, amps), lambda voice: mended(book, voice, shipped.faults[WASHED]))
    decider = Decider(shipped)
    while (step := decider.decide(book.state).step) is not None:  # the panel goes on for pressures
        book.add(StepDone.of(step, (CONFIRMED[step.id],)))
    terminal = Lines(head, typed, head, "n")
    held(shipped, terminal, lambda voice: proved(book, voice))
    assert "for want of: outdoor temperature" in terminal.text
    assert how_told(("outdoor temperature",)) in terminal.text
    assert [text for _, text in book.state.repairs[-1].proofs] == [first, amps, head]
    assert "outdoor temperature is now 95" in terminal.text and book.state.cured


def test_a_fact_of_the_unit_is_put_right_at_a_proof(reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, "unit condenser fan fla 3 A", *reads, "n")
    assert "is now 3 A" in said
    assert [text for _, text in book.state.repairs[-1].proofs] == reads


def test_an_input_that_is_no_number_is_told_so(shipped: Knowledge) -> None:
    without = Skipped.over("outdoor-temperature", None)
    book = at_the_open_unit(shipped, QUALIFIED, *COIL, without, test="head-pressure")
    typed = (*WASHED_READS[:2], "outdoor temperature hot", "", *WASHED_READS[2:], "n")
    terminal = Lines(*typed)
    held(shipped, terminal, lambda voice: mended(book, voice, shipped.faults[WASHED]))
    assert "outdoor-temperature" not in {answer.test for answer in book.state.answers}


def test_what_is_read_live_is_led_to_before_the_panel_goes_on(
    reads: list[str], shipped: Knowledge
) -> None:
    """Regression: amps were asked for behind a closed panel, with no way to them."""
    book, fault = at_the_open_unit(shipped, QUALIFIED, test=SECTION), shipped.faults[FAULT]
    first = Lines(reads[0])
    held(shipped, first, lambda voice: mended(book, voice, fault))
    assert "Read live, with the panel off: Fan amps" in first.text
    done = steps_until_a_proof(book)
    assert "lock-off" in done and "restart-and-watch" in done and "panels-on" not in done
    last = Lines(*reads[1:], "n")
    held(shipped, last, lambda voice: proved(book, voice))
    (said,) = book.state.repairs
    assert [text for _, text in said.proofs] == reads and book.state.cured
    assert book.state.work.panels == "off"


LIVE = ("running", "running-open", "energised-open")
"""Work of which nothing is asked before its cautions, proof or test."""


def steps_until_a_proof(book: VisitBook) -> list[str]:
    """Do the steps that come next, each as it should be done."""
    done, decider = [], Decider(book.knowledge)
    while (decision := decider.decide(book.state)).step is not None:
        step = decision.step
        book.add(StepDone.of(step, (CONFIRMED[step.id],)))
        done.append(step.id)
    assert decision.kind == "prove"
    return done


def test_it_shows_the_cautions_of_its_test(shipped: Knowledge) -> None:
    book = at_the_open_unit(shipped, START, test="condenser-fan-amps")
    repaired(book, Voice(), shipped.faults[FAULT])
    decider = Decider(shipped)
    while (decision := decider.decide(book.state)).proof is not None:
        live = decision.test is not None and decision.test.work_state in LIVE
        assert bool(decision.cautions) is live
        book.add(ProofRead(decision.proof.text, ""))


def test_what_no_safe_way_leads_to_is_not_asked_for(reads: list[str], shipped: Knowledge) -> None:
    book = at_the_open_unit(shipped, START, test=SECTION)
    book.state = replace(book.state, profiles=frozenset())
    held(shipped, Lines(reads[0]), lambda voice: mended(book, voice, shipped.faults[FAULT]))
    assert Decider(shipped).decide(book.state).kind != "prove"


def test_a_repair_that_was_left_half_way_is_on_record(reads: list[str], shipped: Knowledge) -> None:
    """Regression: after q at the second proof neither the repair nor the proof was told."""
    book = at_the_open_unit(shipped, START, test="condenser-fan-amps")
    with pytest.raises(Leave):
        held(shipped, Lines(reads[0], "q"), lambda v: mended(book, v, shipped.faults[FAULT]))
    (said,) = book.state.repairs
    assert [text for _, text in said.proofs] == reads[:1]
    held(shipped, Lines(*reads[1:], "n"), lambda voice: proved(book, voice))
    assert [text for _, text in book.state.repairs[-1].proofs] == reads


def test_u_after_the_last_proof_goes_back_to_it_and_keeps_the_repair(
    reads: list[str], shipped: Knowledge
) -> None:
    """Regression: only y or n was left, and u had the repair taken back."""
    book, said = say_repaired(shipped, *reads[:2], "9 mikes", "u", reads[2], "u", reads[2], "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    assert "Not proved: that" in said and "Not proved, " not in said


def test_a_reading_that_is_bad_is_not_said_to_be_wanting(
    reads: list[str], shipped: Knowledge
) -> None:
    """Regression: a sound reading that was out of its limits was called no sound reading."""
    _, said = say_repaired(shipped, reads[0], "stuck, does not turn", reads[2], "n")
    assert "Not proved, read, and not as it has to be: Fan starts" in said
    assert "for want of a sound reading" not in said


def test_a_visit_is_not_closed_over_a_repair_that_is_not_proved(
    reads: list[str], shipped: Knowledge
) -> None:
    for given, is_proved in ((reads, True), ([*reads[:2], "dunno", ""], False)):
        book, _ = say_repaired(shipped, *given, "n")
        decider = Decider(shipped)
        voice, found = Voice(), conclude_visit(decider.reasoner, book.state)
        close(book, voice, decider.decide(book.state, found), found)
        said = str(voice.heard())
        assert (AFTER_A_REPAIR in said) == is_proved
        assert (
            "The repair is not proved, for want of a sound reading: Fan amps" in said
        ) != is_proved


def test_the_name_before_its_own_value_is_its_answer(reads: list[str], shipped: Knowledge) -> None:
    """Regression: sc 10 was no reading where subcooling was asked for, and 10 was."""
    told = ["cap 5.1", reads[1], "cond fan amps 1.8"]
    book, said = say_repaired(shipped, *told, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == ["5.1", reads[1], "1.8"]
    assert "Not proved" not in said


def test_a_reading_of_another_test_is_taken_as_that(reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, *reads[:2], "outdoor 95", reads[2], "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    assert "Taken: outdoor temperature: 95" in said
    assert book.state.answers[-1].test == "outdoor-temperature"


@pytest.mark.parametrize(
    "typed",
    ["held 300 psi on shop air", "pressured it to 300 with shop air", "oxygen in it, 200 psi"],
)
def test_a_pressure_test_on_air_or_oxygen_brings_its_warning(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: it was not proved, and nobody was told that air in an oily circuit explodes."""
    with pytest.raises(DangerCalled):
        say_repaired(shipped, typed)
    heard = [hazard.id for hazard in spoken_of(shipped, typed)]
    assert heard == ["nitrogen-pressure"]
    assert "explodes" in shipped.hazards[heard[0]].what_to_do


@pytest.mark.parametrize(
    "typed",
    ["300 psig on nitrogen, no drop in 60 minutes", "the shop air is warm", "oxygen sensor 8.5 %",
     "shop is hot, no air, suction 128", "blew the trap out with compressed air"],
)  # fmt: skip
def test_air_of_another_kind_brings_none(typed: str, shipped: Knowledge) -> None:
    assert not any(hazard.id == "nitrogen-pressure" for hazard in spoken_of(shipped, typed))


@pytest.mark.parametrize("typed", ["glows", "glows bright", "bright orange", "glows white in time"])
def test_the_own_word_of_a_proof_is_asked_about_as_no_danger(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: at an igniter's proof glows had it asked whether somebody is in danger."""
    fault = shipped.faults["hot-surface-igniter-cracked"]
    proof = next(each for each in fault.proof if each.text == "Bright within its warm-up time")
    test = shipped.tests["hot-surface-igniter-glow"]
    own = own_words(AskProof(fault, proof.text, (), test), proof)
    assert not Voice().hints(typed, own)


@pytest.mark.parametrize("typed", ["glows and the wires melt", "the lug glows red", "smoke"])
def test_a_danger_at_the_same_proof_is_asked_about(typed: str, shipped: Knowledge) -> None:
    fault = shipped.faults["hot-surface-igniter-cracked"]
    proof = next(each for each in fault.proof if each.text == "Bright within its warm-up time")
    test = shipped.tests["hot-surface-igniter-glow"]
    assert Voice().hints(typed, own_words(AskProof(fault, proof.text, (), test), proof))


def test_what_a_number_lacks_is_named_and_told_by_its_short_name(shipped: Knowledge) -> None:
    """Regression: 1600 cfm lay in none of its limits, and unit tons 4 was a reading in cfm."""
    book = at_the_open_unit(shipped, QUALIFIED, test="airflow-by-blower-table")
    terminal = Lines("open, marked", "0.8", "0.5", "1600 cfm", "unit tons 4", "1600 cfm", "n")

    def part(voice: Voice) -> Talk[None]:
        return (yield from mended(book, voice, shipped.faults["duct-damper-shut"]))

    held(shipped, terminal, part)
    assert "not judged, for want of: cooling tons." in terminal.text
    assert "unit cooling tons VALUE tells it." in terminal.text
    assert "cooling tons is now 4" in terminal.text
    assert dict(book.state.repairs[-1].proofs)["Airflow back in band"] == "1600 cfm"
    assert "Not proved, for want" not in terminal.text


def test_a_reading_of_another_test_beside_a_proof_is_taken(shipped: Knowledge) -> None:
    """Regression: beside five lights at the first try the flame's 3.8 uA went without a word."""
    book = at_the_open_unit(shipped, GAS, test="ignition-trials")
    terminal = Lines("5 for 5 first try, flame 3.8 uA")

    def part(voice: Voice) -> Talk[None]:
        return (yield from mended(book, voice, shipped.faults["flame-rod-dirty"]))

    held(shipped, terminal, part)
    assert "Not taken: Flame current: 3.8 uA: first" in terminal.text
    assert "typed, and not taken as a reading: flame 3.8 uA" in book.state.notes


def test_both_sides_of_the_static_are_one_reading_of_a_proof(shipped: Knowledge) -> None:
    """Regression: the two sides of the unit were taken for temperatures of the air."""
    static = "Static back under the data plate's limit"
    for typed, why in ((".45 supply -.20 return", ""), ("1.15 supply -.20 return", "not as it")):
        book = at_the_open_unit(shipped, QUALIFIED, test="airflow-by-blower-table")
        terminal = Lines("open, marked", "0.8", typed, "400 cfm/ton", "n")

        def part(voice: Voice, book: VisitBook = book) -> Talk[None]:
            return (yield from mended(book, voice, shipped.faults["duct-damper-shut"]))

        held(shipped, terminal, part)
        assert dict(book.state.repairs[-1].proofs)[static] == typed
        assert ("Not proved" in terminal.text) == bool(why) and why in terminal.text
