"""Folders of rule files -> Knowledge. YAML is only read when the rules have changed."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from troubleshoot.knowledge.cache import cache_folder, keep, kept_name, read_kept
from troubleshoot.knowledge.layout import RuleText, read_folders
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import RulesInvalid
from troubleshoot.knowledge.site_copies import copy_of, day_of_copy, keep_copy


def load_rules(
    folders: Path | str | Sequence[Path | str], *, cache: Path | str | None = None
) -> Knowledge:
    """Load a folder of rules, or several: the shipped folder first, then packs.

    `cache` is the folder where read rules are kept; without it the environment or the user's own
    folder serves. For a site's folder that cannot be read its last good copy stands in. Raises
    RulesInvalid with every problem found.
    """
    chosen = [Path(folders)] if isinstance(folders, Path | str) else [*map(Path, folders)]
    kept_in = cache_folder(cache)
    copied: dict[Path, int] = {}

    def stand_in(folder: Path, number: int) -> Sequence[RuleText]:
        copied[folder] = number
        return copy_of(kept_in, folder, number)

    texts = read_folders(chosen, stand_in)
    digest = digest_of(texts)
    name = kept_name(digest)
    knowledge = read_kept(kept_in, name)
    if knowledge is None:
        knowledge = read_rules(texts, digest)
        keep(kept_in, name, knowledge)
    for number, folder in enumerate(chosen[1:], start=1):
        if folder not in copied:
            keep_copy(kept_in, folder, (text for text in texts if text.folder == number))
    if copied and kept_in is not None:
        days = {str(folder): day_of_copy(kept_in, folder) for folder in copied}
        knowledge = replace(knowledge, copies=days)
    return knowledge


def load_shipped(packs: Sequence[Path | str] = (), *, cache: Path | str | None = None) -> Knowledge:
    """Load the rules that come with the program, and any packs beside them."""
    return load_rules([shipped_folder(), *packs], cache=cache)


def shipped_folder() -> Path:
    """The folder of rules inside the installed package, or the checkout's own."""
    package = Path(__file__).resolve().parent.parent
    installed = package / "shipped" / "rules"
    return installed if installed.is_dir() else package.parent / "rules"


def digest_of(texts: Sequence[RuleText]) -> str:
    """A hash of the names and bytes of all rule files."""
    hashed = hashlib.sha256()
    for text in texts:
        hashed.update(f"\0{text.folder}\0{text.name}\0{len(text.data)}\0".encode())
        hashed.update(text.data)
    return hashed.hexdigest()


def read_rules(texts: Sequence[RuleText], digest: str) -> Knowledge:
    """The rules of files that were read already. Raises RulesInvalid with every problem found."""
    from troubleshoot.knowledge.assembling import build_knowledge
    from troubleshoot.knowledge.base import read_texts
    from troubleshoot.knowledge.checks import essential_problems, harm_in_packs
    from troubleshoot.knowledge.of_a_site import told_as_the_sites
    from troubleshoot.knowledge.packs_in_use import packs_in_use
    from troubleshoot.knowledge.signed_cards import changed_since_signed

    base = read_texts(texts)
    problems = [*base.problems, *essential_problems(base)] or harm_in_packs(base)
    if problems:
        raise RulesInvalid(problems)
    knowledge = build_knowledge(((file.kind, file.data) for file in base.files), digest)
    knowledge = replace(
        knowledge,
        packs=tuple(packs_in_use(base.files)),
        changed_since_signed=frozenset(changed_since_signed(base.files)),
    )
    return told_as_the_sites(knowledge, base.files)
