"""Reading a case file for `assess` and `--answers`; what is not understood refuses it whole."""

from __future__ import annotations

import sys

from troubleshoot.cli.failures import NOT_UNDERSTOOD, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import read_stream, read_text
from troubleshoot.outside.plain_data import check_plain, from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.unit.equipment import InputRefused, Refusal
from troubleshoot.visit.cases.file import read_case


def read_plain(path: str) -> object:
    """The plain data of a YAML or JSON file, by the strict loader the rule files use.

    A file that cannot be read fails with exit code 2; what it holds is refused by its place.
    """
    try:
        text = read_stream(sys.stdin, path) if path == "-" else read_text(path)
    except NotUsable as error:
        raise Failure(
            [f"{path}: cannot be read: {error.what}; name a YAML or JSON file"], 2
        ) from None
    try:
        data = from_json(text, "file") if path.endswith(".json") else _from_yaml(text, path)
        check_plain(data, "file")
    except NotUsable as error:
        raise InputRefused((Refusal(error.where, error.what, error.instead),)) from None
    return data


def _from_yaml(text: str, path: str) -> object:
    from troubleshoot.knowledge.located import read_located
    from troubleshoot.knowledge.nodes import plain
    from troubleshoot.knowledge.problems import RuleFileError

    if all(line.lstrip().startswith("#") for line in text.splitlines() if line.strip()):
        raise InputRefused((Refusal(path, "the file is empty", "write complaint and readings"),))
    try:
        return plain(read_located(text, path))
    except RuleFileError as error:
        problems = [
            Refusal(f"{p.path}:{p.line}:{p.column}", p.what, p.instead) for p in error.problems
        ]
        raise InputRefused(tuple(problems)) from None


def case_from(path: str, knowledge: Knowledge, as_json: bool) -> Case:
    """The case in a file; fails with exit code 3, as an error object where JSON was asked for."""
    try:
        return read_case(knowledge, read_plain(path))
    except InputRefused as error:
        raise refusal_failure(error, as_json) from None


def refusal_failure(error: InputRefused, as_json: bool) -> Failure:
    """Every refusal, as sentences on standard error, and as JSON on standard output if asked."""
    if as_json:
        rows = [{"key": r.key, "problem": r.problem, "instead": r.instead} for r in error.refusals]
        say_json({"error": rows})
    return Failure([f"{r.key}: {r.problem}; {r.instead}" for r in error.refusals], NOT_UNDERSTOOD)
