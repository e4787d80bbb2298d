"""Plain data for scripts, on standard output."""

from __future__ import annotations

import json
from collections.abc import Mapping

import click

from troubleshoot.cli.door import catalogue_in_use, told
from troubleshoot.outside.text import in_json


def say_json(plain: Mapping[str, object]) -> None:
    """One JSON object, a key a line; what would drive a terminal stands there as \\u001b."""
    said: object = plain
    if catalogue_in_use() is not None:
        from troubleshoot.cli.told_markup import told_plain

        said = told_plain(plain, told)
    click.echo(in_json(json.dumps(said, indent=1, ensure_ascii=False)))
