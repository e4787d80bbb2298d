"""`rules pack`: a site's own folder of rules, begun, looked over, signed and listed."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from troubleshoot.cli import clock
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, RULES_INVALID, USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, rules_of, takes_rules
from troubleshoot.cli.workshop.checking import check_rules_command
from troubleshoot.cli.workshop.new_card import write_new
from troubleshoot.knowledge.layout import PACK_MANIFEST
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.visit.telling.pack_told import pack_line


@click.group()
def pack() -> None:
    """A site's own folder of rules, used beside those of the program."""


@pack.command("init", short_help="Begin a folder of rules for a site.")
@click.argument("folder", type=click.Path(file_okay=False))
@click.option("--name", required=True, help="Whose rules these are; they are told under it.")
def init_command(folder: str, name: str) -> None:
    """Begin FOLDER with a pack.yaml that names the site; what is in it stays as it is."""
    from troubleshoot.knowledge.formatting import written

    named = _text(name, "the name")
    write_new(Path(folder), {PACK_MANIFEST: written("pack", {"format": 1, "name": named})})
    tell(f"These are the rules of {named}.")
    tell(f"The first card: troubleshoot rules new {in_a_line(folder)}")


@pack.command("check", short_help="Check a site's folder beside the program's rules.")
@click.argument("folder", type=click.Path(exists=True, file_okay=False))
@click.pass_context
def check_command(ctx: click.Context, folder: str) -> None:
    """Check FOLDER beside the program's rules, as `rules check` does."""
    ctx.invoke(check_rules_command, pack=(folder,), against=None, one_line=False, as_json=False)


@pack.command("list", short_help="The site's folders in use, and who answers for them.")
@takes_rules
def list_command() -> None:
    """List the folders of --rules and of the environment: version, hash, who signed."""
    packs = rules_in_force().packs
    for each in packs:
        tell(pack_line(each))
    if not packs:
        tell("No site's rules are in use. To use some: --rules FOLDER, or TROUBLESHOOT_RULES")


@pack.command("sign", short_help="Answer for a site's rules as they are.")
@click.argument("folder", type=click.Path(exists=True, file_okay=False))
@click.option("--by", required=True, metavar="ROLE", help="Who answers: senior technician, S.T.")
def sign_command(folder: str, by: str) -> None:
    """Write into FOLDER's pack.yaml who has gone over its rules, on which day, and their hash.

    Rules with something to put right are not signed.
    """
    from troubleshoot.knowledge.comments import top_comments
    from troubleshoot.knowledge.formatting import written
    from troubleshoot.knowledge.located import read_located
    from troubleshoot.knowledge.nodes import plain

    role, path = _text(by, "the role"), Path(folder) / PACK_MANIFEST
    knowledge = rules_of([Path(folder)])
    _refuse_to_fix(folder)
    (own,) = knowledge.packs
    text = _formatted(path)
    data: Any = plain(read_located(text, str(path)))
    data["signed"] = {"by": role, "on": f"{clock.now():%Y-%m-%d}", "rules": own.digest}
    try:
        path.write_text(written("pack", data, top_comments(text)), "utf-8", newline="\n")
    except OSError as error:
        said = f"{in_a_line(str(path))} could not be written ({error.strerror})"
        raise Failure([said], USAGE) from None
    tell(pack_line(rules_of([Path(folder)]).packs[0]))


def _formatted(path: Path) -> str:
    """The text of a manifest as it is written. Raises Failure rather than lose a comment in it."""
    from troubleshoot.knowledge.formatting import format_file
    from troubleshoot.knowledge.problems import RuleFileError

    try:
        return format_file(read_text(path), str(path), "pack")
    except (NotUsable, RuleFileError) as error:
        raise Failure(str(error).splitlines(), RULES_INVALID) from None


def _refuse_to_fix(folder: str) -> None:
    """Raises Failure where the check finds something to put right."""
    from troubleshoot.knowledge.checks import check_rules
    from troubleshoot.knowledge.load import shipped_folder

    found = check_rules([shipped_folder(), folder])
    errors = sum(problem.level == "error" for problem in found)
    if errors:
        said = f"{errors} to fix first; see: troubleshoot rules pack check {in_a_line(folder)}"
        raise Failure([said], CHECKS_FOUND)


def _text(typed: str, where: str) -> str:
    """A name or role from the command line. Raises Failure where it is none."""
    try:
        text = one_line(typed, where, MOST_NAME)
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    if not any(letter.isalpha() for letter in text):
        raise Failure([f"{where} is empty; give it in words"], USAGE)
    return text
