"""`troubleshoot rules`: check, try and explain the rule base."""

from __future__ import annotations

import os
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import Final

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, RULES_INVALID, USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in, rules_in_force, site_folders, takes_rules
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import shortened, shown

NEEDED_BY_PHYSICS: Final = ("scipy", "sklearn")


@click.group()
def rules() -> None:
    """Check, try and explain the rule base."""


@rules.command("check", short_help="Check every rule file, and packs beside them.")
@click.argument("pack", nargs=-1, type=click.Path(exists=True, file_okay=False))
@click.option(
    "--against",
    metavar="FOLDER",
    help="Earlier rules: list every caution and need that is gone and that nobody signed.",
)
@takes_rules
@click.pass_context
def check_rules_command(ctx: click.Context, pack: tuple[str, ...], against: str | None) -> None:
    """Check every rule file; PACK folders are checked beside the shipped rules.

    Each line says path:line:column, what is wrong, and what to write instead.
    """
    from troubleshoot.knowledge.checks import check_rules
    from troubleshoot.knowledge.load import shipped_folder

    earlier = rules_in(against) if against is not None else None
    problems = check_rules([shipped_folder(), *site_folders(*pack)], earlier)
    for problem in problems:
        tell(f"{shortened(str(problem))} [{problem.check}]")
    errors = sum(problem.level == "error" for problem in problems)
    tell(f"{errors} to fix, {len(problems) - errors} to know")
    ctx.exit(CHECKS_FOUND if errors else 0)


@rules.command("test")
@click.argument("only", nargs=-1, metavar="[FAULT or SUBSYSTEM]...")
@takes_rules
@click.pass_context
def test_rules_command(ctx: click.Context, only: tuple[str, ...]) -> None:
    """Try every card's examples: each must name its fault, or must not."""
    from troubleshoot.visit.cases.trial import try_examples

    knowledge = rules_in_force()
    known = set(knowledge.faults) | {fault.subsystem for fault in knowledge.faults.values()}
    for name in only:
        if name not in known:
            raise Failure([f"{name} is neither a fault nor a subsystem of the rules"], USAGE)
    tried = failed = gaps = 0
    for trial in try_examples(knowledge, frozenset(only)):
        tried += 1
        failed += bool(trial.failure) and not trial.known_gap
        gaps += trial.known_gap
        if trial.failure:
            kind = "known gap: " if trial.known_gap else ""
            tell(f"{kind}{trial.fault}: {trial.example}: {trial.failure}")
    tell(f"{tried} examples tried, {failed} failed, {gaps} known gaps in draft cards")
    ctx.exit(CHECKS_FOUND if failed else 0)


@rules.command("explain", short_help="A fault, test, hazard, call or check as a page.")
@click.argument("name", metavar="ID")
@takes_rules
def explain_command(name: str) -> None:
    """Explain a fault, test, hazard, complaint, procedure or check by its id."""
    from troubleshoot.cli.pages import page_about
    from troubleshoot.reasoning.unit.equipment import suggest

    knowledge = rules_in_force()
    lines = page_about(knowledge, name)
    if lines is None:
        names = [*knowledge.faults, *knowledge.tests, *knowledge.hazards, *knowledge.complaints]
        raise Failure([f"{name} is not in the rules; {suggest(name, names)}"], USAGE)
    for line in lines:
        tell(line)


@rules.command("format")
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


@rules.command("schema", short_help="The JSON Schema of a kind of rule file.")
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


@rules.command("texts", short_help="The catalog of every text, for another language.")
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


@rules.command("measure", short_help="How well the rules tell faults apart.")
@click.option(
    "--visits",
    default=200,
    show_default=True,
    type=click.IntRange(min=1),
    help="Simulated visits a unit.",
)
@click.option("--subsets", default=20, show_default=True, help="Subsets solved exactly, a unit.")
@click.option("--seed", default=1, show_default=True, help="Same seed, same figures.")
@click.option(
    "--physics",
    is_flag=True,
    help="Visit units that obey physics instead, one visit each, beside a trained forest.",
)
@takes_rules
def measure_command(visits: int, subsets: int, seed: int, physics: bool) -> None:
    """Measure how well the rules tell faults apart: isolation, simulated visits, the optimum.

    With --physics by readings that physics makes, right and wrong calls by fault, and every finding
    that a card contradicts.
    """
    lines = _by_physics(visits, seed) if physics else _by_themselves(visits, subsets, seed)
    for line in lines:
        tell(line)


def _by_themselves(visits: int, subsets: int, seed: int) -> Iterator[str]:
    """The figures on units drawn from the rules' own tables."""
    from troubleshoot.measure.table import measure

    yield from measure(rules_in_force(), visits, subsets, seed)


def _by_physics(visits: int, seed: int) -> Iterator[str]:
    """The figures on units that obey physics. Raises Failure without the optional extra."""
    if any(find_spec(package) is None for package in NEEDED_BY_PHYSICS):
        raise Failure(["--physics needs more packages: pip install 'troubleshoot[physics]'"], USAGE)
    from troubleshoot.measure.physics.table import measure_by_physics

    yield from measure_by_physics(rules_in_force(), visits, seed)
