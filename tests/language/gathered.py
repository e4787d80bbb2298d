"""Every text of the program and of folders of rules, gathered once a process: it takes 3 s."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from pathlib import Path

from troubleshoot.language.catalogue_file import Entry
from troubleshoot.language.upkeep import texts_of_today


def gathered(folders: Sequence[Path]) -> tuple[Entry, ...]:
    """What `texts_of_today` gathers from these folders."""
    return _gathered(tuple(folders))


_gathered = cache(texts_of_today)
