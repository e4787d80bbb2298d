"""Loading the rule base for a command, and saying so where it is broken."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli.failures import RULES_INVALID, Failure
from troubleshoot.knowledge.model import Knowledge


def shipped_rules() -> Knowledge:
    """The shipped rule base; a broken one fails with every problem, exit code 5."""
    from troubleshoot.knowledge.load import load_shipped

    return _loaded(load_shipped)


def rules_in(folder: str) -> Knowledge:
    """The rules of any folder; what cannot be read as rules fails with exit code 5."""
    from troubleshoot.knowledge.load import load_rules

    knowledge = _loaded(lambda: load_rules(folder))
    if not knowledge.tests and not knowledge.hazards:
        said = f"{folder} holds no tests and no hazards; name a folder of rules"
        raise Failure([said], RULES_INVALID)
    return knowledge


def _loaded(load: Callable[[], Knowledge]) -> Knowledge:
    from troubleshoot.knowledge.problems import RulesInvalid

    try:
        return load()
    except RulesInvalid as error:
        raise Failure(str(error).splitlines(), RULES_INVALID) from None
