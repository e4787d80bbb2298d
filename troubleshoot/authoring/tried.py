"""A drafted card beside all other rules: what is wrong with it, and what its examples come to.

Nothing is written for it: its text is read as if it lay in its folder already.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from troubleshoot.authoring.draft import Draft, card_text
from troubleshoot.authoring.trial import Trial, try_examples
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.checks import check_texts
from troubleshoot.knowledge.layout import RuleText, read_folders
from troubleshoot.knowledge.load import digest_of, read_rules
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import Problem


@frozen
class Tried:
    """What a drafted card comes to. `problems`: to put right; `trials`: none while there are any.

    `knowledge`: the rules with the card among them, or None with problems. `notices`: what is worth
    knowing of the card.
    """

    text: str
    problems: tuple[Problem, ...]
    trials: tuple[Trial, ...] = ()
    knowledge: Knowledge | None = None
    notices: tuple[Problem, ...] = ()


def try_draft(
    knowledge: Knowledge, draft: Draft, folders: Sequence[Path], manifest: str = ""
) -> Tried:
    """Try a card in the last of the folders, after the shipped one; `manifest`: of a new folder."""
    folder = folders[-1]
    text = card_text(knowledge, draft)
    new = {draft.file: text} | ({"pack.yaml": manifest} if manifest else {})
    texts = read_folders([each for each in folders if each != folder or not manifest])
    texts += [
        RuleText(str(folder / name), name, len(folders) - 1, told.encode())
        for name, told in new.items()
    ]
    card = str(folder / draft.file)
    found = check_texts(texts).problems
    own = tuple(problem for problem in found if problem.path == card)
    errors = tuple(problem for problem in found if problem.level == "error")
    if errors:
        return Tried(text, tuple(each for each in own if each in errors) or errors)
    with_card = read_rules(texts, digest_of(texts))
    trials = tuple(try_examples(with_card, frozenset({draft.id})))
    return Tried(text, (), trials, with_card, own)
