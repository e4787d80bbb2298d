"""`troubleshoot reopen VISIT`: go on with a stopped visit, on the hand-over's result."""

from __future__ import annotations

import click

from troubleshoot.cli.attentive import VisitTerminal
from troubleshoot.cli.failures import JOURNAL_FAILED, USAGE, Failure
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.kept_visits import unreadable_failure, visit_of
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.opening import reopened
from troubleshoot.safety.stops.reopening import NotReopened
from troubleshoot.visit.kept.journal import JournalError, JournalFailed
from troubleshoot.visit.kept.stopped import standing_in
from troubleshoot.visit.kept.unreadable import Unreadable


@click.command()
@click.argument("visit")
@takes_rules
@click.pass_context
def reopen(ctx: click.Context, visit: str) -> None:
    """Go on with a visit that a STOP ended, once it has been made safe.

    Asks who made it safe, what they found and did, and the reading that shows it. Then the finding
    that stopped the visit is taken afresh, before anything else.
    """
    path, knowledge = visit_of(visit, ctx), rules_in_force()
    try:
        with JournalShelf(knowledge, path.parent) as shelf:
            book = shelf.go_on(path.stem)
            terminal = VisitTerminal(knowledge)
            ctx.exit(hold(knowledge, terminal, lambda voice: reopened(book, voice, shelf)))
    except NotReopened as error:
        raise Failure([f"visit {path.stem} is not reopened: {error}"], USAGE) from None
    except JournalFailed as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    except JournalError as error:
        found = standing_in(knowledge, path)
        may_stop = found if isinstance(found, Unreadable) else None
        raise unreadable_failure(may_stop, str(error)) from None
