"""`troubleshoot practise`: scenarios to learn on, played, debriefed and kept in a record."""

from __future__ import annotations

from dataclasses import replace
from difflib import get_close_matches
from pathlib import Path

import click

from troubleshoot.cli.failures import CHECKS_FOUND, USAGE, Failure
from troubleshoot.cli.practice.files import show_schema, write_new
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.visiting import data_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import is_file
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import NOBODY

DIFFICULTY = click.IntRange(1, 3)


@click.command()
@click.argument("what", nargs=-1, metavar="[SCENARIO | new FILE | schema]")
@click.option(
    "--draw", metavar="SUBSYSTEM or FAULT", help="Draw a new case of a subsystem or of a fault."
)
@click.option("--seed", type=int, help="Of a drawn case: same seed, same case; 1 unless said.")
@click.option("--difficulty", type=DIFFICULTY, help="Of a drawn case; 3 misleads.")
@click.option("--apprentice", metavar="NAME", help="Whose record it is.")
@click.option("--course", is_flag=True, help="Six weeks of cases: how far you are, what is next.")
@click.option("--progress", is_flag=True, help="How you stand, and how sure you were.")
@click.option("--export", metavar="FILE.csv", help="Write all records as CSV, or one apprentice's.")
@takes_rules
@click.pass_context
def practise(
    ctx: click.Context,
    what: tuple[str, ...],
    draw: str | None,
    seed: int | None,
    difficulty: int | None,
    apprentice: str | None,
    course: bool,
    progress: bool,
    export: str | None,
) -> None:
    """Practise on units that answer, and be debriefed.

    Without a name: list the calls with season, difficulty and your first result, which counts.
    SCENARIO is a name from that list or a file of your own; `new FILE` writes one to start from,
    and `schema` prints the JSON Schema of such files, for editors.
    """
    from troubleshoot.cli.practice.playing import play_kept
    from troubleshoot.cli.practice.results import export_plays, list_scenarios, show_progress
    from troubleshoot.cli.practice.weeks import show_course

    folder = data_folder((ctx.obj or {}).get("data"))
    name = NOBODY if apprentice is None else apprentice
    if what[:1] == ("new",):
        write_new(what[1:])
    elif what[:1] == ("schema",):
        show_schema(what[1:])
    elif export is not None:
        export_plays(folder, apprentice, export)
    elif progress:
        show_progress(folder, name)
    elif course:
        show_course(folder, name)
    elif draw is None and (seed, difficulty) != (None, None):
        raise Failure(["--seed and --difficulty are of a drawn case; add --draw SUBSYSTEM"], USAGE)
    elif len(what) + (draw is not None) > 1:
        raise Failure(["one scenario at a time; troubleshoot practise lists them"], USAGE)
    elif draw is not None:
        drawn = _drawn(draw, 1 if seed is None else seed, difficulty or 1)
        ctx.exit(play_kept(drawn, folder, name))
    elif what:
        ctx.exit(play_kept(_named(rules_in_force(), what[0]), folder, name))
    else:
        list_scenarios(folder, name)


def _named(knowledge: Knowledge, name: str) -> Scenario:
    """A scenario by its name, or of a file; one that does not hold together is refused.

    A file that takes the name of a shipped scenario is another one, and never counts as it.
    """
    from troubleshoot.practice.loading import (
        ScenarioError,
        checked_scenario,
        load_scenario,
        scenario_paths,
    )
    from troubleshoot.reasoning.conclude import Reasoner

    paths = scenario_paths()
    if name not in paths and not is_file(name):
        near = get_close_matches(name, paths, n=1, cutoff=0.5)
        instead = f"did you mean {near[0]}?" if near else "troubleshoot practise lists scenarios"
        raise Failure([f"there is no scenario or file {name[:MOST_NAME]}; {instead}"], USAGE)
    try:
        if name in paths:
            return load_scenario(knowledge, paths[name])
        own = checked_scenario(Reasoner(knowledge), Path(name))
        return replace(own, id=f"own-{own.id}") if own.id in paths else own
    except ScenarioError as error:
        raise Failure([str(each) for each in error.problems], CHECKS_FOUND) from None
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None


def _drawn(subsystem: str, seed: int, difficulty: int) -> Scenario:
    from troubleshoot.practice.drawing import NothingDrawn, draw_scenario
    from troubleshoot.reasoning.conclude import Reasoner

    name = "-".join(subsystem.lower().split())
    try:
        return draw_scenario(Reasoner(rules_in_force()), name, seed, difficulty)[0]
    except NothingDrawn as error:
        raise Failure([str(error)], USAGE) from None
