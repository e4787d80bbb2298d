"""`rules format`, `rules schema` and `rules texts`: rule files, their form and their texts."""

from __future__ import annotations

import os
from pathlib import Path

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, RULES_INVALID, USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import shown


@click.command("format")
@click.argument("files", nargs=-1, required=True, type=click.Path(exists=True, dir_okay=False))
@click.option("--check", is_flag=True, help="Change nothing; say which files would change.")
@click.pass_context
def format_command(ctx: click.Context, files: tuple[str, ...], check: bool) -> None:
    """Write rule files in their canonical order and style.

    A single hazards.yaml whose hazards the rules know by kind becomes one file a kind.
    """
    from troubleshoot.knowledge.formatting import format_file
    from troubleshoot.knowledge.problems import RuleFileError

    changed = 0
    for name in files:
        path = Path(name)
        try:
            text = read_text(path)
            formatted = format_file(text, name, _kind_of(path))
        except RuleFileError as error:
            raise Failure(str(error).splitlines(), RULES_INVALID) from None
        except NotUsable as error:
            raise Failure([str(error)], RULES_INVALID) from None
        becomes = _parts_of(path, formatted) or {path: formatted}
        if becomes == {path: text}:
            continue
        changed += 1
        for part, whole in becomes.items():
            tell(f"{shown(str(part))}: {'would change' if check else 'written anew'}")
            if not check:
                part.parent.mkdir(exist_ok=True)
                part.write_text(whole, "utf-8")
        if path not in becomes and not check:
            path.unlink()
    ctx.exit(CHECKS_FOUND if check and changed else 0)


def _parts_of(path: Path, text: str) -> dict[Path, str]:
    """The files by kind that a single file of hazards becomes; none where it stays as it is."""
    from troubleshoot.knowledge.splitting import kinds_of, split_by_kind

    folder = path.parent / "hazards"
    if path.name != f"{folder.name}.yaml" or os.path.lexists(folder):
        return {}
    parts = split_by_kind(text, kinds_of(rules_in_force()))
    return {folder / f"{kind}.yaml": whole for kind, whole in parts.items()}


def _kind_of(path: Path) -> str | None:
    """The kind of a rule file, by its place below a rules folder; nothing for a loose file."""
    from troubleshoot.knowledge.layout import kind_of

    parts = path.resolve().parts
    for depth in range(1, min(4, len(parts))):
        kind = kind_of("/".join(parts[-depth:]))
        if kind is not None:
            return kind
    return None


@click.command("schema", short_help="The JSON Schema of a kind of rule file.")
@click.argument("kind", required=False)
@takes_rules
def schema_command(kind: str | None) -> None:
    """The JSON Schema of a kind of rule file, for editors; without KIND, list the kinds."""
    from troubleshoot.knowledge.forms import FORMS
    from troubleshoot.knowledge.schema import json_schema

    if kind is None:
        for name in FORMS:
            tell(name)
        return
    ids = tuple(FORMS)
    if kind not in ids:
        instead = (
            "troubleshoot practise schema prints it"
            if kind == "scenario"
            else f"one of {', '.join(ids)}"
        )
        raise Failure([f"{kind} is not a kind of rule file; {instead}"], USAGE)
    say_json(json_schema(kind, rules_in_force()))


@click.command("texts", short_help="The catalog of every text, for another language.")
@click.argument("file", type=click.Path(dir_okay=False))
@click.option("--check", is_flag=True, help="Change nothing; say what is still to do.")
@takes_rules
@click.pass_context
def texts_command(ctx: click.Context, file: str, check: bool) -> None:
    """Write a catalog of every text, for another language, or bring FILE up to date.

    FILE is in the PO format of GNU gettext. TROUBLESHOOT_LANGUAGE=FILE has the program use it.
    """
    from troubleshoot.cli.texts import check_catalogue, write_catalogue

    if check:
        ctx.exit(CHECKS_FOUND if check_catalogue(Path(file)) else 0)
    write_catalogue(Path(file))
