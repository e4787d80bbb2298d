"""`rules new`: a card and its examples from a short dialogue, checked and tried, then written.

Nothing is on the disk until the author says so, and nothing that is there is ever written over.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Final

import click

from troubleshoot.authoring.account_of_trial import account
from troubleshoot.authoring.draft import Draft
from troubleshoot.authoring.tried import Tried, try_draft
from troubleshoot.cli.failures import INTERRUPTED, USAGE, Failure
from troubleshoot.cli.rule_base import rules_of, site_folders, takes_rules
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.workshop.asker import KEYS, Asker, AuthorTerminal, Back, Left
from troubleshoot.cli.workshop.card_questions import QUESTIONS
from troubleshoot.knowledge.formatting import written
from troubleshoot.knowledge.layout import PACK_MANIFEST
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import shown

NOT_WRITTEN: Final = "Nothing was written."
MOST_SITE: Final = 80


@click.command("new", short_help="Write a fault card and its examples, by answering questions.")
@click.argument("folder", required=False, type=click.Path(file_okay=False))
@takes_rules
@click.pass_context
def new_command(ctx: click.Context, folder: str | None) -> None:
    """Write a fault card with its examples into FOLDER, a site's own rules, by answering questions.

    A new FOLDER becomes one, with the site's name in its pack.yaml. Without it the first folder of
    --rules or of the environment serves.
    """
    where = Path(folder) if folder is not None else next(iter(site_folders()), None)
    if where is None:
        raise Failure(
            ["name a folder for your site's rules: troubleshoot rules new OUR-RULES"], USAGE
        )
    terminal = AuthorTerminal()
    asker = Asker(terminal)
    try:
        _write_card(asker, where)
    except Left:
        terminal.say(NOT_WRITTEN)
    except KeyboardInterrupt:
        terminal.say()
        terminal.say(NOT_WRITTEN)
        ctx.exit(INTERRUPTED)


def _write_card(asker: Asker, folder: Path) -> None:
    _refuse_other_folders(folder)
    is_new = not (folder / PACK_MANIFEST).exists()
    others = [each for each in site_folders() if each.absolute() != folder.absolute()]
    knowledge = rules_of(others if is_new else [*others, folder])
    file = shown(str(folder))
    asker.terminal.say(f"A new card for {file}.")
    asker.terminal.say(KEYS)
    manifest = _manifest(asker) if is_new else ""
    folders = [shipped_folder(), *others, folder]
    draft = _told(asker, knowledge, Draft(), 0)
    while True:
        draft = _agreed(asker, knowledge, draft)
        asker.terminal.say("Checking it beside all other rules ...")
        tried = try_draft(knowledge, draft, folders, manifest)
        if tried.problems:
            _say_problems(asker.terminal, tried.problems)
        elif _is_wanted(asker, tried):
            break
    beside = {PACK_MANIFEST: manifest} if manifest else {}
    write_new(folder, {**beside, draft.file: tried.text})
    _say_next(asker.terminal, folder, draft)


def _refuse_other_folders(folder: Path) -> None:
    if folder.exists() and folder.resolve() == shipped_folder().resolve():
        said = "these are the program's own rules; name a folder of your site beside them"
        raise Failure([f"{folder}: {said}"], USAGE)
    if folder.exists() and any(folder.iterdir()) and not (folder / PACK_MANIFEST).exists():
        said = f"this folder is no site's rules, for it has no {PACK_MANIFEST}; name a new folder"
        raise Failure([f"{folder}: {said}"], USAGE)


def _manifest(asker: Asker) -> str:
    """The manifest of a folder that is not there yet."""
    asker.terminal.say("The folder is new. Whose rules are these? They are told under this name.")
    name = asker.words("site >", "The name of the site or shop: The north shop.", MOST_SITE)
    return written("pack", {"format": 1, "name": name})


def _told(asker: Asker, knowledge: Knowledge, draft: Draft, first: int) -> Draft:
    """All questions from the first on; one that is taken back is asked again."""
    before, number = [draft], first
    while number < len(QUESTIONS):
        try:
            draft = QUESTIONS[number].ask(asker, knowledge, before[-1])
        except Back:
            if len(before) == 1:
                asker.terminal.say("This is the first question.")
            else:
                before.pop()
                number -= 1
            continue
        before.append(draft)
        number += 1
    return draft


def _agreed(asker: Asker, knowledge: Knowledge, draft: Draft) -> Draft:
    """The card as it was told, each answer of which may be given anew, until it is agreed to."""
    about = "Read it as the one who will be led by it. The number of a line asks that again."
    while True:
        asker.terminal.say("The card:", strong=True)
        for number, question in enumerate(QUESTIONS, start=1):
            asker.terminal.say(f"{number} {question.called}: {question.said(knowledge, draft)}", 2)
        try:
            typed = asker.line("Enter to check it, or the number of what is to change >", about)
            if not typed:
                return draft
            chosen = choice(typed, len(QUESTIONS))
            if chosen is None:
                asker.terminal.say(f"Enter, or a number from 1 to {len(QUESTIONS)}.")
            else:
                draft = QUESTIONS[chosen - 1].ask(asker, knowledge, draft)
        except Back:
            asker.terminal.say("Give the number of the answer that is to change.")


def _say_problems(terminal: Terminal, problems: Sequence[Problem]) -> None:
    """What is wrong with the card, each with the question that it is about."""
    terminal.say("This has to be put right first:", strong=True)
    for problem in problems:
        terminal.say(f"{problem.what}; {problem.instead}.", 2)


def _is_wanted(asker: Asker, tried: Tried) -> bool:
    """Whether the card is to be written, once its text and what its examples come to were read."""
    failed = [trial for trial in tried.trials if trial.failure]
    asker.terminal.say("Nothing is wrong with its form.")
    for notice in tried.notices:
        asker.terminal.say(f"To know: {notice.what}; {notice.instead}.", 2)
    asker.terminal.say("What its examples come to:")
    for trial in tried.trials:
        told = "holds" if not trial.failure else f"does not hold yet: {trial.failure}"
        asker.terminal.say(f"{trial.example.name}: {told}", 2)
        if trial.failure and tried.knowledge is not None:
            for line in account(tried.knowledge, trial):
                asker.terminal.say(line, 4)
    if failed:
        asker.terminal.say(
            "What else shows on this fault that the other does not show? More of what shows, or "
            "what it never shows, tells them apart. It may be written as it is: a draft."
        )
    about = "y writes the card into its folder; Enter goes back to it."
    try:
        return asker.line("Write it? y, or Enter to change it >", about).lower() in ("y", "yes")
    except Back:
        return False


def write_new(folder: Path, files: Mapping[str, str]) -> None:
    """Write files by their names in a folder. Raises Failure rather than write over one."""
    for name, text in files.items():
        path = folder / name
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            with path.open("x", encoding="utf-8", newline="\n") as file:
                file.write(text)
        except FileExistsError:
            raise Failure([f"{path} is there already, and was left as it is"], USAGE) from None
        except OSError as error:
            raise Failure([f"{path} could not be written ({error.strerror})"], USAGE) from None


def _say_next(terminal: Terminal, folder: Path, draft: Draft) -> None:
    where = shown(str(folder))
    terminal.say(f"Written: {shown(str(folder / draft.file))}", strong=True)
    terminal.say("Now:")
    terminal.say(f"troubleshoot rules check --rules {where}", 2)
    terminal.say(f"troubleshoot rules test {draft.id} --rules {where}", 2)
    terminal.say(f"troubleshoot rules explain {draft.id} --rules {where}", 2)
    terminal.say(f"troubleshoot practise --draw {draft.id} --rules {where}", 2)
    terminal.say(f"troubleshoot --rules {where}", 2)
    terminal.say(f"troubleshoot rules go-over {draft.id} --rules {where}", 2)
