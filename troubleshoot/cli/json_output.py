"""Plain data for scripts, on standard output."""

from __future__ import annotations

import json
from collections.abc import Mapping

import click


def say_json(plain: Mapping[str, object]) -> None:
    """One JSON object, a key a line."""
    click.echo(json.dumps(plain, indent=1, ensure_ascii=False))
