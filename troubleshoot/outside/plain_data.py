"""JSON from outside, and the bounds that all plain data from outside keeps."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Final

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, first_refused

MOST_DEPTH: Final = 24
"""Levels inside each other, in JSON and in YAML; people write four or five."""

MOST_ENTRIES: Final = 2_000
"""Entries of one list or mapping; a long visit has a few hundred readings."""


def from_json(text: str | bytes, where: str) -> object:
    """The plain data of a JSON text, at most MOST_DEPTH levels deep. Raises NotUsable."""
    try:
        data: object = json.loads(text)
    except RecursionError:
        raise _too_deep(where) from None
    except ValueError as error:
        raise NotUsable(where, f"not JSON: {error}", "mend the file") from None
    level = [data]
    for _ in range(MOST_DEPTH + 1):
        level = [each for node in level for each in _inside(node)]
        if not level:
            return data
    raise _too_deep(where)


def check_plain(data: object, where: str) -> None:
    """Check that every list is short and every text is one that can be shown. Raises NotUsable."""
    waiting = [(data, where)]
    while waiting:
        node, key = waiting.pop()
        if isinstance(node, dict | list) and len(node) > MOST_ENTRIES:
            what = f"{len(node)} entries are more than one visit has"
            raise NotUsable(key, what, f"keep to {MOST_ENTRIES}")
        if isinstance(node, dict):
            for name, each in node.items():
                _check_text(str(name), f"a key of {key}")
                waiting.append((each, name if key == where else f"{key}.{name}"))
        elif isinstance(node, list):
            waiting.extend((each, f"{key}[{number}]") for number, each in enumerate(node))
        elif isinstance(node, str):
            _check_text(node, key)


def _check_text(text: str, key: str) -> None:
    if len(text) > MOST_TYPED:
        raise NotUsable(key, f"the text is over {MOST_TYPED} letters", "say it in fewer")
    refused = first_refused(text)
    if refused is not None:
        raise NotUsable(key, f"{refused.name} in the text", "delete it")


def _inside(node: object) -> Iterator[object]:
    if isinstance(node, dict):
        yield from node.values()
    elif isinstance(node, list):
        yield from node


def _too_deep(where: str) -> NotUsable:
    return NotUsable(where, f"more than {MOST_DEPTH} levels inside each other", "flatten it")
