"""`troubleshoot practise`: scenarios to learn on, played, debriefed and kept in a record."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path

import click

from troubleshoot.cli import clock
from troubleshoot.cli.attentive import AttentiveTerminal
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, INTERRUPTED, NOT_UNDERSTOOD, USAGE, Failure
from troubleshoot.cli.practice.files import show_schema, unwritable, write_new
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.cli.visiting import data_folder
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import is_file
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import NOBODY, Play

NO_PRACTICE = (
    "Practice is only practice, and it stops here: a real danger comes first. Get clear of it and "
    "call for help; for what to do then, type troubleshoot, and danger with what is wrong."
)
DIFFICULTY = click.IntRange(1, 3)


@click.command()
@click.argument("what", nargs=-1, metavar="[SCENARIO | new FILE | schema]")
@click.option("--draw", metavar="SUBSYSTEM", help="Draw a new case of a subsystem.")
@click.option("--seed", type=int, help="Of a drawn case: same seed, same case; 1 unless said.")
@click.option("--difficulty", type=DIFFICULTY, help="Of a drawn case; 3 misleads.")
@click.option("--apprentice", metavar="NAME", default=NOBODY, help="Whose record it is.")
@click.option("--progress", is_flag=True, help="How each subsystem stands, and what comes next.")
@click.option("--export", metavar="FILE.csv", help="Write the record as CSV.")
@takes_rules
@click.pass_context
def practise(
    ctx: click.Context,
    what: tuple[str, ...],
    draw: str | None,
    seed: int | None,
    difficulty: int | None,
    apprentice: str,
    progress: bool,
    export: str | None,
) -> None:
    """Practise on units that answer, and be debriefed.

    Without a name: list the scenarios by subsystem and difficulty with your best result. SCENARIO
    is a name from that list or a file of your own; `new FILE` writes one to start from, and
    `schema` prints the JSON Schema of such files, for editors.
    """
    folder = data_folder((ctx.obj or {}).get("data"))
    if what[:1] == ("new",):
        write_new(what[1:])
    elif what[:1] == ("schema",):
        show_schema(what[1:])
    elif export is not None:
        _export(folder, apprentice, export)
    elif progress:
        _progress(folder, apprentice)
    elif draw is None and (seed, difficulty) != (None, None):
        raise Failure(["--seed and --difficulty are of a drawn case; add --draw SUBSYSTEM"], USAGE)
    elif len(what) + (draw is not None) > 1:
        raise Failure(["one scenario at a time; troubleshoot practise lists them"], USAGE)
    elif draw is not None:
        drawn = _drawn(draw, 1 if seed is None else seed, difficulty or 1)
        ctx.exit(_play(drawn, folder, apprentice))
    elif what:
        ctx.exit(_play(_named(rules_in_force(), what[0]), folder, apprentice))
    else:
        _list(folder, apprentice)


def _plays(folder: Path, apprentice: str) -> tuple[Play, ...]:
    from troubleshoot.practice.scores import RecordDamaged, read_plays

    try:
        return read_plays(_record(folder, apprentice))
    except RecordDamaged as error:
        raise Failure([str(error)], NOT_UNDERSTOOD) from None


def _record(folder: Path, apprentice: str) -> Path:
    from troubleshoot.practice.scores import record_path

    try:
        return record_path(folder, apprentice)
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None


def _all(knowledge: Knowledge) -> tuple[Scenario, ...]:
    from troubleshoot.practice.loading import ScenarioError, load_scenarios

    try:
        return load_scenarios(knowledge)
    except ScenarioError as error:
        raise Failure([str(each) for each in error.problems], CHECKS_FOUND) from None


def _named(knowledge: Knowledge, name: str) -> Scenario:
    """A scenario by its name, or of a file; one that does not hold together is refused."""
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
        return checked_scenario(Reasoner(knowledge), Path(name))
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


def _play(scenario: Scenario, folder: Path, apprentice: str) -> int:
    """Play one scenario; returns the exit code."""
    from troubleshoot.cli.practice.play import Left, Play
    from troubleshoot.practice.session import Session
    from troubleshoot.reasoning.conclude import Reasoner

    _record(folder, apprentice)
    terminal = AttentiveTerminal()
    play = Play(terminal, Session(Reasoner(rules_in_force()), scenario))
    try:
        call = play.run()
    except DangerCalled:
        terminal.say(NO_PRACTICE, strong=True)
        return 0
    except (Left, EndOfInput):
        terminal.say("You left; nothing is kept of this play.")
        return 0
    except KeyboardInterrupt:
        terminal.say()
        terminal.say("You left; nothing is kept of this play.")
        return INTERRUPTED
    _debrief(terminal, play, call, folder, apprentice)
    return 0


def _debrief(terminal: Terminal, play: object, call: object, folder: Path, apprentice: str) -> None:
    """Show the debrief, and keep the play."""
    from troubleshoot.cli.practice.play import Play
    from troubleshoot.practice.debrief import debrief
    from troubleshoot.practice.expert import expert_path
    from troubleshoot.practice.scores import keep_play, play_of
    from troubleshoot.practice.scoring import Call, score_of

    assert isinstance(play, Play) and isinstance(call, Call)
    session = play.session
    expert = expert_path(session.decider.reasoner, session.scenario, session.unit)
    score = score_of(session, call, expert)
    terminal.say()
    terminal.say("DEBRIEF", strong=True)
    terminal.say_all(debrief(session, call, score, expert, play.expected))
    guesses = [each.nearness == "close" for each in play.expected if each.nearness != "not-said"]
    today = f"{clock.now():%Y-%m-%d}"
    kept = play_of(session.scenario, score, apprentice, today, guesses)
    try:
        keep_play(_record(folder, apprentice), kept)
    except (OSError, NotUsable) as error:
        reason = error.what if isinstance(error, NotUsable) else error.strerror
        terminal.say(f"The result could not be kept ({reason}); see --data.")


def _list(folder: Path, apprentice: str) -> None:
    """Every scenario by subsystem and difficulty, with the best result so far."""
    from troubleshoot.practice.scores import best_of

    terminal, rules = Terminal(), rules_in_force()
    scenarios = _all(rules)
    best = best_of(_plays(folder, apprentice))
    for subsystem in sorted({scenario.subsystem for scenario in scenarios}):
        terminal.say(rules.spoken(subsystem), strong=True)
        own = [scenario for scenario in scenarios if scenario.subsystem == subsystem]
        for scenario in sorted(own, key=lambda s: (s.difficulty, s.id)):
            result = best.get(scenario.id)
            points = "" if result is None else f": {_result(result)}"
            terminal.say(f"{scenario.difficulty} {scenario.id}{points}", 2)
    terminal.say(f"{len(scenarios)} scenarios; 1 plain, 3 misleads. practise NAME plays one.")


def _result(play: Play) -> str:
    return "failed on safety" if play.failed else f"{play.points} points"


def _progress(folder: Path, apprentice: str) -> None:
    from troubleshoot.practice.scores import progress, propose
    from troubleshoot.visit.telling.wording import bar, counted

    terminal, rules = Terminal(), rules_in_force()
    plays = _plays(folder, apprentice)
    for each in sorted(progress(plays), key=lambda each: each.mean_best):
        failures = f", {each.failures} failed" if each.failures else ""
        terminal.say(
            f"{bar(each.mean_best / 100)} {each.mean_best:.0f} {rules.spoken(each.subsystem)}: "
            f"{counted(each.scenarios, 'scenario', 'scenarios')}, "
            f"{counted(each.plays, 'play', 'plays')}{failures}"
        )
    if not plays:
        terminal.say("Nothing has been played yet.")
    _say_guesses(terminal, plays)
    following = propose(plays, _all(rules))
    if following is not None:
        terminal.say(f"Next: troubleshoot practise {following.id}")


def _say_guesses(terminal: Terminal, plays: Sequence[Play]) -> None:
    guesses = sum(play.guesses for play in plays)
    if guesses:
        close = sum(play.guesses_close for play in plays)
        terminal.say(f"Sound readings known: {close} of {guesses}.")


def _export(folder: Path, apprentice: str, file: str) -> None:
    from troubleshoot.practice.scores import as_csv
    from troubleshoot.visit.telling.wording import counted

    plays = _plays(folder, apprentice)
    try:
        Path(file).write_text(as_csv(plays), "utf-8", newline="")
    except OSError as error:
        raise unwritable(file, error) from None
    tell(f"{counted(len(plays), 'play', 'plays')} in {file}")
