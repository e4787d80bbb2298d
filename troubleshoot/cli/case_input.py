"""Reading a case file for `assess` and `--answers`; what is not understood refuses it whole."""

from __future__ import annotations

import sys

from troubleshoot.cli.failures import NOT_UNDERSTOOD, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import read_stream, read_text
from troubleshoot.outside.plain_data import check_plain, from_json
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.outside.text import shortened
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.unit.equipment import InputRefused, Refusal
from troubleshoot.visit.cases.file import read_case


def read_text_of(path: str) -> str:
    """The text of a YAML or JSON file. One that cannot be read fails with exit code 2."""
    try:
        return read_stream(sys.stdin, path) if path == "-" else read_text(path)
    except NotUsable as error:
        raise Failure(
            [f"{in_a_line(str(path))}: cannot be read: {error.what}; name a YAML or JSON file"], 2
        ) from None


def plain_of(text: str, path: str) -> object:
    """The plain data of a file's text, by the strict loader the rule files use.

    Raises InputRefused for what it holds, by its place.
    """
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
    return data_and_case(path, knowledge, as_json)[1]


def data_and_case(path: str, knowledge: Knowledge, as_json: bool) -> tuple[object, Case]:
    """The plain data of a file, and its case; fails in the same way."""
    data: object = read_text_of(path)
    try:
        data = plain_of(str(data), path)
        return data, read_case(knowledge, data)
    except InputRefused as error:
        from troubleshoot.visit.cases.told_all_the_same import dangers_all_the_same

        raise _refusal_failure(error, dangers_all_the_same(knowledge, data), as_json) from None


def _refusal_failure(error: InputRefused, dangers: tuple[str, ...], as_json: bool) -> Failure:
    """The dangers that are told all the same, then every refusal, as sentences on standard error;
    and as JSON on standard output if asked."""
    if as_json:
        rows = [
            {"key": shortened(r.key), "problem": shortened(r.problem), "instead": r.instead}
            for r in error.refusals
        ]
        say_json({"dangers": list(dangers), "error": rows} if dangers else {"error": rows})
    refused = [f"{r.key}: {r.problem}; {r.instead}" for r in error.refusals]
    return Failure([*dangers, *refused], NOT_UNDERSTOOD)
