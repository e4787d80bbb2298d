"""The folders of a site that are in use, with a hash of what each says.

The hash is of what the files say, not of their layout: formatting takes no signature away.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Final

from troubleshoot.knowledge.model import Pack, SignOff

if TYPE_CHECKING:  # whoever only tells of packs reads no YAML
    from troubleshoot.knowledge.base import RuleFile

LETTERS: Final = 16
"""Of the hash, which is for telling versions apart and keeps nobody out."""


def packs_in_use(files: Iterable[RuleFile]) -> Iterator[Pack]:
    """The packs among these files, in the order of their folders."""
    told = list(files)
    for manifest in told:
        if manifest.kind == "pack":
            own = [each for each in told if each.folder == manifest.folder and each is not manifest]
            data = manifest.data
            signed = SignOff(**data["signed"]) if "signed" in data else None
            yield Pack(data["name"], data.get("version", ""), _digest(own), signed)


def _digest(files: Iterable[RuleFile]) -> str:
    said = json.dumps({file.name: file.data for file in files}, sort_keys=True)
    return hashlib.sha256(said.encode()).hexdigest()[:LETTERS]
