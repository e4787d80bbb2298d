"""Rule files as they were written before -> as they are written now, without a change of meaning.

`rules format` does this to plain data that passed its form. Each step leaves what is new as it is.
"""

from __future__ import annotations

from collections import Counter
from typing import Any

from troubleshoot.knowledge.forms import LISTINGS, has_source


def upgraded(kind: str, data: dict[str, Any]) -> dict[str, Any]:
    """The plain data of a file, as it is written now."""
    return _source_said_once(kind, data)


def _source_said_once(kind: str, data: dict[str, Any]) -> dict[str, Any]:
    """The source that more than half of the entries name stands at the top; none gains one."""
    lists = [each for each in LISTINGS.get(kind, ()) if has_source(each) and each.key in data]
    named = [tuple(item.get("source", ())) for each in lists for item in data[each.key]]
    if "source" not in data:
        if () in named or len(named) < 2:
            return data
        most, count = Counter(named).most_common(1)[0]
        if 2 * count <= len(named):
            return data
        data = {**data, "source": list(most)}
    whole = data["source"]
    for each in lists:
        items = [
            {key: value for key, value in item.items() if (key, value) != ("source", whole)}
            for item in data[each.key]
        ]
        data = {**data, each.key: items}
    return data
