"""A card that is trusted further than anybody has answered for, or whose reason is not told.

What: a card is signed and says other things today than what was signed, or the day of the signature
is none; its status is signed and nobody has signed, or the other way round; it is a draft and does
not say under `because` what nobody has done yet.
Why: whoever is led by a card is to know who has looked at it. A signature is of the words that were
read, and anybody may change them.
Fix: read the card's page and sign it anew: `troubleshoot rules go-over CARD`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.checks.signatures import is_day
from troubleshoot.knowledge.model import Fault
from troubleshoot.knowledge.problems import Level, Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.signed_cards import changed_since_signed

ID: Final = "signed-cards"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every card whose status does not stand on what was done."""
    changed = frozenset(changed_since_signed(base.files))
    for fault in base.knowledge.faults.values():
        for key, what, instead, level in _doubts(fault, changed):
            yield base.problem(ID, ("fault", fault.id), (key,), what, instead, level)


def _doubts(fault: Fault, changed: frozenset[str]) -> Iterator[tuple[str, str, str, Level]]:
    sign = f"sign it: troubleshoot rules go-over {fault.id}"
    if fault.signed is None:
        if fault.status == "signed":
            yield "status", f"nobody has signed {fault.id}", f"write gone-over, or {sign}", "error"
        elif fault.status == "draft" and not fault.because:
            what = f"{fault.id} is a draft and does not say why"
            yield "status", what, "say under because what nobody has done yet", "notice"
        return
    if fault.status != "signed":
        what = f"{fault.id} is signed by {fault.signed.by} and its status is {fault.status}"
        yield "status", what, "write status: signed, or delete signed", "error"
    if not is_day(fault.signed.on):
        yield "signed", f"{fault.signed.on} is no day", "write it as 2026-11-29", "error"
    if fault.id in changed:
        what = f"{fault.id} has changed since {fault.signed.by} signed it"
        yield "signed", what, f"read its page, and {sign}", "notice"
