"""Loading the rule base for a command, and saying so where it is broken."""

from __future__ import annotations

from troubleshoot.cli.failures import RULES_INVALID, Failure
from troubleshoot.knowledge.model import Knowledge


def shipped_rules() -> Knowledge:
    """The shipped rule base; a broken one fails with every problem, exit code 5."""
    from troubleshoot.knowledge.load import load_shipped
    from troubleshoot.knowledge.problems import RulesInvalid

    try:
        return load_shipped()
    except RulesInvalid as error:
        raise Failure(str(error).splitlines(), RULES_INVALID) from None
