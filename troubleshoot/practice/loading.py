"""Scenario files -> scenarios. Whatever is wrong is told with its place, and all of it at once."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Final

from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import Located
from troubleshoot.knowledge.problems import Problem, RuleFileError, did_you_mean
from troubleshoot.knowledge.reading_forms import read_form
from troubleshoot.knowledge.shapes import Name
from troubleshoot.knowledge.walking import text_of, value_at, walk
from troubleshoot.outside.files import read_text
from troubleshoot.practice.advice import advice_problems
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.building import build_scenario, case_data, proof_case_data
from troubleshoot.practice.consistency import Keys, consistency_problems
from troubleshoot.practice.expert import NoWayThere, expert_path
from troubleshoot.practice.form import SCENARIO_FILE
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.worth_copying import unworthy
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.reasoning.unit.places import PlaceNotUnderstood, parse_place
from troubleshoot.visit.cases.file import read_case

KINDS: Final = ("faulty", "healthy")
"""The folders in which scenarios lie: something is wrong with the unit, or nothing is."""

_READING: Final = re.compile(r"readings\[(\d+)\](?:\.(\w[\w-]*))?")


class ScenarioError(RuleFileError):
    """A scenario file cannot be used."""


def scenarios_folder() -> Path:
    """The folder of scenarios inside the installed package, or the checkout's own."""
    return shipped_folder().parent / "scenarios"


def scenario_paths(folder: Path | None = None) -> Mapping[str, Path]:
    """Scenario id -> its file, in order of the ids; no file is opened."""
    root = folder or scenarios_folder()
    paths = [path for kind in KINDS for path in (root / kind).glob("*.yaml")]
    return {path.stem: path for path in sorted(paths, key=lambda path: path.stem)}


def load_scenario(knowledge: Knowledge, path: Path) -> Scenario:
    """Read one scenario file. Raises ScenarioError with every problem, NotUsable if unreadable."""
    return read_scenario(knowledge, read_text(path), str(path))


def load_scenarios(knowledge: Knowledge, folder: Path | None = None) -> tuple[Scenario, ...]:
    """All scenarios of a folder, in order of their ids. Raises ScenarioError with every problem."""
    scenarios: list[Scenario] = []
    problems: list[Problem] = []
    for name, path in scenario_paths(folder).items():
        try:
            scenario = load_scenario(knowledge, path)
        except ScenarioError as error:
            problems.extend(error.problems)
            continue
        if scenario.id != name:
            what = f"the scenario {scenario.id} lies in {path.name}"
            problems.append(Problem(str(path), 1, 1, what, f"name it {scenario.id}.yaml", "file"))
        scenarios.append(scenario)
    if problems:
        raise ScenarioError(problems)
    return tuple(scenarios)


def read_scenario(knowledge: Knowledge, text: str, path: str = "the file") -> Scenario:
    """Read a scenario from its text. Raises ScenarioError with every problem and its place."""
    return _read(knowledge, text, path)[0]


def _read(knowledge: Knowledge, text: str, path: str) -> tuple[Scenario, Located]:
    """A scenario, and where everything of it stands in the text."""
    try:
        root = read_located(text, path)
    except RuleFileError as error:
        raise ScenarioError(error.problems) from None
    data, problems = read_form(SCENARIO_FILE, root, path)
    if not problems:
        problems = list(_unknown_names(knowledge, root, path))
        told = {(problem.line, problem.column) for problem in problems}
        case = _case_problems(knowledge, data, root, path)
        problems += [problem for problem in case if (problem.line, problem.column) not in told]
    if problems:
        raise ScenarioError(problems)
    problems = list(_place_problems(knowledge, data, root, path))
    if problems:
        raise ScenarioError(problems)
    return build_scenario(knowledge, data), root


def checked_scenario(reasoner: Reasoner, path: Path) -> Scenario:
    """Read a scenario file that holds together: numbers, advice, and an expert worth copying.

    Raises ScenarioError with every problem, NotUsable if unreadable.
    """
    scenario, root = _read(reasoner.knowledge, read_text(path), str(path))
    problems = [
        *advice_problems(root, str(path)),
        *(
            Problem(str(path), *_place(root, each.at), each.what, each.instead, "consistency")
            for each in consistency_problems(reasoner, scenario)
        ),
    ]
    if not problems:
        problems = list(_expert_problems(reasoner, scenario, root, str(path)))
    if problems:
        raise ScenarioError(problems)
    return scenario


def _expert_problems(
    reasoner: Reasoner, scenario: Scenario, root: Located, path: str
) -> Iterator[Problem]:
    """What makes the scenario's expert a poor example."""
    try:
        expert = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
    except NoWayThere as error:
        yield Problem(path, *_place(root, ("way",)), str(error), "leave it out", "expert")
        return
    for each in unworthy(reasoner.knowledge, scenario, expert):
        key = each.key if value_at(root, each.key) is not None else "readings"
        yield Problem(path, *_place(root, (key,)), each.what, each.instead, "expert")


def _unknown_names(knowledge: Knowledge, root: Located, path: str) -> Iterator[Problem]:
    """Names of faults, hazards, complaints and quantities that the rule base does not know."""
    known: Mapping[str, Mapping[str, object]] = {
        "test": knowledge.tests,
        "fault": knowledge.faults,
        "hazard": knowledge.hazards,
        "complaint": knowledge.complaints,
        "quantity": knowledge.quantities,
        "subsystem": dict.fromkeys(fault.subsystem for fault in knowledge.faults.values()),
    }
    for step in walk(SCENARIO_FILE, root):
        names = known.get(step.shape.of) if isinstance(step.shape, Name) else None
        name = text_of(step.node)
        if names is not None and name is not None and name not in names:
            assert isinstance(step.shape, Name)
            what = f"{name} is no {step.shape.of} of the rule base"
            place = (path, step.node.line, step.node.column)
            yield Problem(*place, what, did_you_mean(name, names), "unknown-names")


def _case_problems(knowledge: Knowledge, data: Any, root: Located, path: str) -> Iterator[Problem]:
    """What a case file made of the scenario would be refused for, at its place in this file."""
    for read, keys in ((case_data(data), ()), (proof_case_data(data), ("truth", "proof-readings"))):
        try:
            read_case(knowledge, read)
        except InputRefused as error:
            for refusal in error.refusals:
                line, column = _place(root, _keys_of(refusal.key, keys))
                what = f"{refusal.key}: {refusal.problem}"
                yield Problem(path, line, column, what, refusal.instead, "case")
            return


def _place_problems(knowledge: Knowledge, data: Any, root: Located, path: str) -> Iterator[Problem]:
    """Places of true faults, and of the expert's tests, that this unit does not have."""
    layout = read_case(knowledge, case_data(data)).unit.layout
    faults = ((knowledge.faults[each["fault"]].per, each) for each in data["truth"]["faults"])
    tests = ((knowledge.tests[each["test"]].per, each) for each in data.get("way", ()))
    for keys, found in ((("truth", "faults"), faults), (("way",), tests)):
        for number, (kind, each) in enumerate(found):
            if "at" not in each or kind is None:
                continue
            try:
                parse_place(each["at"], kind, layout)
            except PlaceNotUnderstood as error:
                place = _place(root, (*keys, number, "at"))
                yield Problem(path, *place, error.problem, error.instead, "places")


def _keys_of(refused: str, readings: tuple[str, ...]) -> Keys:
    """The keys that lead to what a case's refusal speaks of.

    `readings` lead to the list of readings, where it is not the file's own.
    """
    match = _READING.match(refused)
    if match is None:
        return tuple(refused.split("."))
    return (*(readings or ("readings",)), int(match[1]), *([match[2]] if match[2] else []))


def _place(root: Located, keys: Keys) -> tuple[int, int]:
    """Line and column of a value, or of what is round it; else the top of the file."""
    for length in range(len(keys), 0, -1):
        node = value_at(root, *keys[:length])
        if node is not None:
            return node.line, node.column
    return 1, 1
