"""Writing scenarios of one's own: a file to start from, and the schema for the editor."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in_force


def write_new(words: Sequence[str]) -> None:
    """Write a scenario to start from; an existing file is left alone."""
    from troubleshoot.practice.starting import starting_scenario

    if len(words) != 1:
        raise Failure(["say which file: troubleshoot practise new FILE.yaml"], USAGE)
    path = Path(words[0])
    try:
        with path.open("x", encoding="utf-8") as stream:
            stream.write(starting_scenario(path.name))
    except FileExistsError:
        raise Failure([f"{path} is there already; name another file"], USAGE) from None
    except OSError as error:
        raise unwritable(str(path), error) from None
    tell(f"{path} is written. Change it, then: troubleshoot practise {path}")


def show_schema(words: Sequence[str]) -> None:
    """Print the JSON Schema of scenario files."""
    from troubleshoot.knowledge.schema import schema_of
    from troubleshoot.practice.form import SCENARIO_FILE

    if words:
        raise Failure(["schema takes no name: troubleshoot practise schema"], USAGE)
    schema = schema_of(SCENARIO_FILE, "scenario", rules_in_force())
    say_json(schema)


def unwritable(file: str, error: OSError) -> Failure:
    """A file that cannot be written, as a failure."""
    return Failure([f"{file}: cannot be written ({error.strerror}); name another"], USAGE)
