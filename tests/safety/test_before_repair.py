"""What must stand before hands do a repair, told with it wherever it is shown."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.mended import mended
from troubleshoot.cli.screens.findings import show_repair
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.safety.before_repair import LOCK_IS_OFF, NOT_OURS, caution_before, not_on_record
from troubleshoot.safety.work_state import UnitAtWork, WorkState
from troubleshoot.visit.events import Started, StepDone

UNIT = UnitAtWork(capacitors=("capacitor condenser fan 1",), circuits=("circuit 1", "circuit 2"))
DEAD = WorkState(
    power="locked-out", dead="proved", meter="proved", discharged=frozenset(UNIT.capacitors)
)
START = Started(complaint="no-cooling", profiles=("technician",))
ELECTRICAL = "condenser-fan-capacitor-weak"
BLED = ("capacitor-discharge", "discharged")
INSIDE = "before hands go in: locked and tagged, proved dead, capacitors discharged and metered"


def test_every_repair_inside_the_unit_is_cautioned_on_a_unit_as_found(shipped: Knowledge) -> None:
    for fault in shipped.faults.values():
        said = caution_before(fault)
        assert (INSIDE in said) is not ({*fault.repair.who} <= NOT_OURS), fault.id
        assert ("gas cock shut" in said) or "gas" not in fault.repair.who, fault.id
        assert ("its charge recovered" in said) or "refrigerant" not in fault.repair.who, fault.id


def test_only_what_is_missing_is_said(shipped: Knowledge) -> None:
    fault = shipped.faults[ELECTRICAL]
    assert caution_before(fault, DEAD, UNIT) == ""
    for part, words in (
        ({"dead": "tested"}, "before hands go in: proved dead, capacitors discharged and metered."),
        ({"discharged": frozenset()}, "before hands go in: capacitors discharged and metered."),
        ({"power": "unsure"}, "before hands go in: locked and tagged, proved dead."),
    ):
        assert caution_before(fault, replace(DEAD, **part), UNIT) == f"WARNING - {words}"


def test_the_charge_is_out_of_the_circuit_that_is_opened(shipped: Knowledge) -> None:
    fault = next(f for f in shipped.faults.values() if f.repair.who == ("refrigerant",))
    empty = DEAD.with_circuit("circuit 1", "charge-recovered")
    assert caution_before(fault, empty, UNIT, "circuit 1") == ""
    want = "WARNING - before the circuit is opened: its charge recovered."
    assert caution_before(fault, empty, UNIT, "circuit 2") == want
    assert caution_before(fault, empty, UNIT) == want


def test_a_gas_cock_that_is_shut_is_not_asked_for(shipped: Knowledge) -> None:
    fault = next(f for f in shipped.faults.values() if f.repair.who == ("gas",))
    assert (
        caution_before(fault, DEAD, UNIT) == "WARNING - before a gas part is opened: gas cock shut."
    )
    assert caution_before(fault, replace(DEAD, gas="shut"), UNIT) == ""


def test_on_the_screen_the_caution_comes_before_the_repair(shipped: Knowledge) -> None:
    """Regression: "Spin the fan first" stood there with the unit running and nothing before it."""
    terminal, fault = Lines(), shipped.faults[ELECTRICAL]
    show_repair(terminal, fault, fault.proof, caution_before(fault))
    assert terminal.text.index(INSIDE) < terminal.text.index(f"Repair: {fault.repair.what}")


def test_what_a_repair_costs_is_said_in_words(shipped: Knowledge) -> None:
    """Regression: "part: 50-to-250" was read as a size."""
    for fault in shipped.faults.values():
        terminal = Lines()
        show_repair(terminal, fault, (), "")
        assert f"part: {spoken(fault.repair.part_cost)}" in terminal.text


def test_a_page_of_a_fault_says_it_before_the_repair(
    command: Callable[..., tuple[int, str, str]],
) -> None:
    lines = command("rules", "explain", ELECTRICAL)[1].splitlines()
    joined = " ".join(line.strip() for line in lines)
    assert joined.index(INSIDE) < joined.index("Repair: ")


def say_repaired(shipped: Knowledge, fault: Fault, *steps: StepDone) -> str:
    terminal = Lines(*[""] * len(fault.proof), "n")
    book = book_of(shipped, [START, *steps])
    held(shipped, terminal, lambda voice: mended(book, voice, fault))
    return terminal.text


@pytest.mark.parametrize(
    ("steps", "missing"),
    [
        ((), "locked and tagged, proved dead, capacitors discharged and metered"),
        ((("lockout", "locked"),), "proved dead, capacitors discharged and metered"),
        (
            (("lockout", "locked"), ("verified-dead", "live")),
            "proved dead, capacitors discharged and metered",
        ),
        (
            (
                ("lockout", "locked"),
                ("verified-dead", "dead"),
                ("capacitor-discharge", "discharged"),
            ),
            "",
        ),
    ],
)
def test_whoever_says_repaired_is_told_what_is_not_on_record(
    steps: tuple[tuple[str, str], ...], missing: str, shipped: Knowledge
) -> None:
    done = [StepDone(step=name, outcomes=(outcome,)) for name, outcome in steps]
    said = say_repaired(shipped, shipped.faults[ELECTRICAL], *done)
    assert ("Not on record" in said) is bool(missing)
    assert f"Not on record before this repair: {missing}." in said or not missing


@pytest.mark.parametrize(("work", "missing"), [(WorkState(), (LOCK_IS_OFF,)), (DEAD, ())])
def test_a_lock_that_was_taken_off_again_is_told(
    work: WorkState, missing: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: the list said nothing of the lock, though the record had the unit running."""
    done = {"lockout", "verified-dead", "capacitor-discharge", "drive-discharge"}
    assert not_on_record(shipped.faults[ELECTRICAL], done, work, UNIT) == missing
