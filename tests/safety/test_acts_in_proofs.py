"""No proof asks in its bare words for an act that exposes somebody, nor for fuses unwarned."""

from __future__ import annotations

import re

from troubleshoot.knowledge.model import Knowledge, Proof
from troubleshoot.visit.deciding.proving import test_of as read_by
from troubleshoot.visit.state import VisitState

ACTS = re.compile(
    r"held back|hold(?:s|ing)? (?:the )?air|seen to (?:open|trip)|(?:lift|pull|push|block)ing\b"
    r"|covering\b|stops with|on test\b|starved|choked|bridged|jumpered|smoke",
    re.IGNORECASE,
)
"""Words of what somebody would do to a unit for a reading (common practice, no source)."""

FUSES = re.compile(r"\b(?:new fuses|the fuses of|a full set|size and class)\b")


def needs_hands(proof: Proof, knowledge: Knowledge) -> bool:
    """Whether its test says how the act is done, with what is warned of before."""
    test = read_by(knowledge, VisitState(), proof)
    return test is not None and bool(test.hazards) and test.work_state != "any"


def test_an_act_in_a_proof_is_that_of_a_test_with_its_cautions(shipped: Knowledge) -> None:
    acts = [p for fault in shipped.faults.values() for p in fault.proof if ACTS.search(p.text)]
    assert [p.text for p in acts if p.finding is not None]
    assert [p.text for p in acts if not needs_hands(p, shipped)] == []


def test_where_fuses_are_fitted_their_clips_are_tested_first(shipped: Knowledge) -> None:
    texts = {f.id: f.repair.what for f in shipped.faults.values() if FUSES.search(f.repair.what)}
    assert len(texts) >= 4
    assert [name for name, text in texts.items() if "clips of every fuse" not in text] == []
