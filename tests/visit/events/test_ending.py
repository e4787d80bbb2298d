"""What is written down on the way out changes this, and nothing else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import AIM, FRESH, THEN, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import Given, Spot
from troubleshoot.visit.events import (
    Closing,
    Named,
    Noted,
    PartGiven,
    ProofRead,
    Repaired,
    RepairedBefore,
    VisitEnded,
    after,
)
from troubleshoot.visit.state import RepairSaid, Round, VisitState


def test_notes_names_repairs_and_the_way_out(shipped: Knowledge, visit: VisitState) -> None:
    changed(shipped, visit, Noted("b"), notes=("a", "b"))
    changed(shipped, visit, Named("RTU-7"), name="RTU-7")
    said = RepairSaid("g", THEN, visit.proofs, answers=1)
    changed(shipped, visit, Repaired("g"), repaired=("f", "g"),
            repairs=(said,), proofs=(), mended_here=1, closing=False)  # fmt: skip
    changed(shipped, visit, Closing(cured=True), cured=True, aim=None)
    changed(shipped, replace(visit, closing=False, cured=True), Closing(), closing=True,
            cured=False, aim=None)  # fmt: skip


NOT_TAKEN = ("superheat", "")
READ = ("suction-pressure", "118 psig")


def test_what_proves_a_repair_is_kept_with_it_and_the_later_reading_counts(
    shipped: Knowledge, visit: VisitState
) -> None:
    earlier, begun = RepairSaid("f", still="gone"), RepairSaid("g", proofs=(NOT_TAKEN, READ))
    state = replace(visit, repairs=(earlier, begun))
    again = replace(begun, proofs=(NOT_TAKEN, ("suction-pressure", "121 psig")))
    changed(shipped, state, ProofRead(READ[0], "121 psig"), repairs=(earlier, again))
    taken = replace(begun, proofs=(READ, ("superheat", "12 F")))
    changed(shipped, state, ProofRead("superheat", "12 F"), repairs=(earlier, taken))
    not_any_more = replace(begun, proofs=(NOT_TAKEN, (READ[0], "")))
    changed(shipped, state, ProofRead(READ[0], None), repairs=(earlier, not_any_more))


def test_a_proof_in_front_of_its_repair_waits_for_it(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, repairs=(RepairSaid("f", still="gone"),), proofs=(READ,))
    changed(shipped, state, ProofRead("superheat", None), proofs=(READ, NOT_TAKEN))
    changed(shipped, state, ProofRead(READ[0], "121 psig"), proofs=((READ[0], "121 psig"),))


FIRST = RepairSaid("f", THEN, (NOT_TAKEN,), "still warm", 3)
BEGUN = RepairSaid("g", THEN, (READ,), answers=4)


@pytest.mark.parametrize(
    ("said_before", "said_now"),
    [
        ((), ("new",)),
        ((FIRST,), (FIRST, "new")),
        ((FIRST, BEGUN), (FIRST, "ended")),
        ((BEGUN, FIRST), (BEGUN, FIRST, "new")),
        ((FIRST, replace(BEGUN, still="no")), (FIRST, replace(BEGUN, still="no"), "new")),
        ((FIRST, replace(BEGUN, fault="h")), (FIRST, replace(BEGUN, fault="h"), "new")),
    ],
)
def test_a_repair_is_ended_where_it_was_begun_and_else_is_another(
    said_before: tuple[RepairSaid, ...], said_now: tuple[RepairSaid | str, ...],
    shipped: Knowledge, visit: VisitState,
) -> None:  # fmt: skip
    """Said once more with the answer whether the complaint is gone; no other is forgotten."""
    made: dict[RepairSaid | str, RepairSaid] = {
        "new": RepairSaid("g", THEN, (NOT_TAKEN,), "gone", answers=1),
        "ended": replace(BEGUN, proofs=(READ, NOT_TAKEN), still="gone"),
    }
    state = replace(visit, repairs=said_before, proofs=(NOT_TAKEN,))
    changed(
        shipped, state, Repaired("g", "gone"), repaired=("f", "g"), proofs=(), mended_here=1,
        closing=False, repairs=tuple(made.get(each, each) for each in said_now),
    )  # fmt: skip


def test_each_repair_is_counted_once(shipped: Knowledge, visit: VisitState) -> None:
    """What is read between the second and the third is kept apart from what was read before."""
    state = replace(visit, repairs=(FIRST, BEGUN), mended_here=2)
    assert after(shipped, state, Repaired("g", "gone")).mended_here == 2, "it had begun"
    assert after(shipped, state, Repaired("h")).mended_here == 3


def test_a_repair_of_before_is_kept_with_its_own_proofs_and_told_again_it_is_one(
    shipped: Knowledge, visit: VisitState
) -> None:
    """It proves nothing: no cause goes, and what this visit repaired keeps its own proofs."""
    fan, can = RepairSaid("fan", words="new fan"), RepairSaid("can", proofs=(NOT_TAKEN, READ))
    state = replace(visit, repairs_before=(fan, can))
    told = RepairSaid("belt", THEN, words="changed the belt")
    changed(shipped, state, RepairedBefore("belt", "changed the belt"),
            repairs_before=(fan, can, told))  # fmt: skip
    anew = RepairSaid("fan", THEN, words="swapped the fan")
    changed(shipped, state, RepairedBefore("fan", "swapped the fan"), repairs_before=(can, anew))
    again = replace(can, proofs=(NOT_TAKEN, (READ[0], "121 psig")))
    changed(shipped, state, ProofRead(READ[0], "121 psig", of_before="can"),
            repairs_before=(fan, again))  # fmt: skip


@pytest.mark.parametrize(
    ("walked", "search", "apart"),
    [
        (None, (), frozenset()),
        (Round("fall", search=(AIM,), apart=frozenset({FRESH})), (AIM,), frozenset({FRESH})),
    ],
)
def test_a_repair_keeps_whose_cause_the_round_was_looking_for(
    walked: Round | None, search: tuple[Spot, ...], apart: frozenset[Spot], shipped: Knowledge,
    visit: VisitState,
) -> None:  # fmt: skip
    """Once the round has gone on, it is known by this alone which finding was mended."""
    said = after(shipped, replace(visit, round=walked), Repaired("g")).repairs[-1]
    assert (said.search, said.apart) == (search, apart)


BY, DONE = Given("by", "gas-utility", "09:10"), Given("done", "union tightened", "09:12")


@pytest.mark.parametrize(
    ("event", "given"),
    [
        (PartGiven("when", "09:30"), (BY, DONE, Given("when", "09:30", THEN))),
        (PartGiven("by", "the owner"), (DONE, Given("by", "the owner", THEN))),
        (PartGiven("by", ""), (DONE,)),
        (PartGiven("when", ""), (BY, DONE)),
    ],
)
def test_a_part_of_a_hand_over_is_kept_until_it_is_given_anew_or_taken_back(
    event: PartGiven, given: tuple[Given, ...], shipped: Knowledge, visit: VisitState
) -> None:
    """Whoever broke off half-way is asked for the rest alone, and nothing is told twice."""
    changed(shipped, replace(visit, given=(BY, DONE)), event, given=given)


@pytest.mark.parametrize("ending", ["closed", "stopped"])
def test_no_part_of_a_hand_over_is_left_once_it_is_closed(
    ending: str, shipped: Knowledge, visit: VisitState
) -> None:
    """Else the next one would open with the answers of this."""
    changed(shipped, replace(visit, given=(BY, DONE)), VisitEnded(ending), ended=ending, given=())
