"""JSON from outside, and the bounds that all plain data from outside keeps."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Final

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, first_refused

MOST_DEPTH: Final = 24
"""Levels inside each other, in JSON and in YAML; people write four or five."""

MOST_ENTRIES: Final = 2_000
"""Entries of one list or mapping; a long visit has a few hundred readings."""


def from_json(text: str | bytes, where: str) -> object:
    """The plain data of a JSON text, at most MOST_DEPTH levels deep. Raises NotUsable."""
    data = parsed(text, where)
    level = _inside([data])
    for _ in range(MOST_DEPTH):
        if not level:
            return data
        level = [each for node in level for each in _inside(node)]
    if level:
        raise _too_deep(where)
    return data


def parsed(text: str | bytes, where: str) -> object:
    """The plain data of a JSON text that this program wrote itself. Raises NotUsable."""
    try:
        data: object = json.loads(text)
    except RecursionError:
        raise _too_deep(where) from None
    except json.JSONDecodeError as error:
        raise NotUsable(where, f"not JSON: {error}", "fix the file") from None
    except ValueError:  # Python reads no whole number of thousands of digits
        what = "a number of more digits than any meter shows"
        raise NotUsable(where, what, "write it as it was read") from None
    return data


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


def _inside(node: Mapping[str, object] | list[object]) -> list[Mapping[str, object] | list[object]]:
    """The lists and mappings that stand in one of them."""
    values = node if isinstance(node, list) else node.values()
    return [each for each in values if isinstance(each, dict | list)]


def _too_deep(where: str) -> NotUsable:
    return NotUsable(where, f"more than {MOST_DEPTH} levels inside each other", "flatten it")
