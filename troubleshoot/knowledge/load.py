"""Folders of rule files -> Knowledge. YAML is only read when the rules have changed."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.building import build_knowledge
from troubleshoot.knowledge.cache import KeptFiles, cache_folder, keep, read_kept
from troubleshoot.knowledge.layout import RuleText, read_folders
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import RulesInvalid

FORM_OF_DATA: Final = 14
"""Counts up whenever forms, checks or plain data change, so that what was kept is not used."""


def load_rules(
    folders: Path | str | Sequence[Path | str], *, cache: Path | str | None = None
) -> Knowledge:
    """Load a folder of rules, or several: the shipped folder first, then packs.

    `cache` is the folder where read rules are kept; without it the environment or the user's own
    folder serves. Raises RulesInvalid with every problem found.
    """
    chosen = [folders] if isinstance(folders, Path | str) else list(folders)
    texts = read_folders(chosen)
    digest = digest_of(texts)
    kept_in = cache_folder(cache)
    files = read_kept(kept_in, digest)
    if files is None:
        files = _read_files(texts)
        keep(kept_in, digest, files)
    return build_knowledge(files, digest)


def load_shipped(packs: Sequence[Path | str] = (), *, cache: Path | str | None = None) -> Knowledge:
    """Load the rules that come with the program, and any packs beside them."""
    return load_rules([shipped_folder(), *packs], cache=cache)


def shipped_folder() -> Path:
    """The folder of rules inside the installed package, or the checkout's own."""
    package = Path(__file__).resolve().parent.parent
    installed = package / "shipped" / "rules"
    return installed if installed.is_dir() else package.parent / "rules"


def digest_of(texts: Sequence[RuleText]) -> str:
    """A hash of the names and bytes of all rule files and of the form of the data."""
    hashed = hashlib.sha256(f"{FORM_OF_DATA}".encode())
    for text in texts:
        hashed.update(f"\0{text.folder}\0{text.name}\0{len(text.data)}\0".encode())
        hashed.update(text.data)
    return hashed.hexdigest()


def _read_files(texts: Sequence[RuleText]) -> KeptFiles:
    from troubleshoot.knowledge.base import read_texts
    from troubleshoot.knowledge.checks import essential_problems

    base = read_texts(texts)
    problems = [*base.problems, *essential_problems(base)]
    if problems:
        raise RulesInvalid(problems)
    return [(file.kind, file.data) for file in base.files]
