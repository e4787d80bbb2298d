"""A site's rules that have changed since they were signed.

What: the hash under `signed` of pack.yaml is not that of what the folder's files say today, or the
day of the signature is none.
Why: whoever signed has not seen what people are led by now.
Fix: go over what has changed, and sign anew: `troubleshoot rules pack sign FOLDER --by ROLE`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.checks.signatures import is_day
from troubleshoot.knowledge.packs_in_use import packs_in_use
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.walking import value_at

ID: Final = "signed-packs"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every signature that is not of the rules as they are."""
    manifests = [file for file in base.files if file.kind == "pack"]
    for file, pack in zip(manifests, packs_in_use(base.files), strict=True):
        at = value_at(file.root, "signed")
        if pack.signed is None or at is None:
            continue
        place = (file.path, at.line, at.column)
        if not is_day(pack.signed.on):
            what = f"{pack.signed.on} is no day"
            yield Problem(*place, what, "write it as 2026-11-29", ID)
        if not pack.is_as_signed:
            what = f"the rules have changed since {pack.signed.by} signed them"
            yield Problem(*place, what, "go over them and sign anew", ID, "notice")
