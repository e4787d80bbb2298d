"""Plain data for scripts, on standard output."""

from __future__ import annotations

import json
from collections.abc import Mapping

import click

from troubleshoot.outside.text import in_json


def say_json(plain: Mapping[str, object]) -> None:
    """One JSON object, a key a line; what would drive a terminal stands there as \\u001b."""
    click.echo(in_json(json.dumps(plain, indent=1, ensure_ascii=False)))
