"""The refrigerant of a unit in sentences: each weighing, the totals, the leak rate by both ways."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import begun, markdown
from troubleshoot.records.refrigerant.account import SOURCE, TWICE, CircuitAccount, MadeUp, Rate
from troubleshoot.records.refrigerant.moved import Moved
from troubleshoot.visit.telling.wording import counted
from troubleshoot.visit.weights import in_pounds, weighing_words

JUDGED: Final = "Judged by the owner's responsible person."
NOTHING: Final = "No refrigerant is on record as added or recovered."
_ALARM: Final = "refrigerant-added-twice"


def entry_lines(knowledge: Knowledge, each: Moved) -> Iterator[str]:
    """One weighing with its day and where it was told, then what its cylinder says of it."""
    said = weighing_words(knowledge, each.weighing, where=False)
    whence = f"visit {each.visit}" if each.visit else f"entry {each.number}"
    yield f"{each.day}  {said} ({whence})"
    yield from each.says


def total_line(account: CircuitAccount) -> str:
    """What was added and recovered in all, and the full charge it is compared with."""
    not_told = counted(account.not_told, "weight", "weights")
    missing = f"; {not_told} not told" if account.not_told else ""
    charge = "not on record"
    if account.full_charge is not None:
        charge = f"{in_pounds(account.full_charge)} by the register"
    added, recovered = (_in_all(each) for each in (account.added, account.recovered))
    return f"In all {added} added, {recovered} recovered{missing}; full charge {charge}."


def _in_all(pounds: float) -> str:
    return in_pounds(pounds) if pounds else "none"


def rate_lines(knowledge: Knowledge, account: CircuitAccount) -> Iterator[str]:
    """The leak rate by both methods with what each is computed of, or why it is not known."""
    last = account.last
    if last is None:
        return
    yield f"Leak rate, annualizing: {_rate(account.annualized)}{_of_last(account, last)}."
    within = account.last_year
    made_up = in_pounds(sum(each.pounds or 0.0 for each in within))
    yield (
        f"Leak rate, rolling average: {_rate(account.rolling)} ({made_up} made up on "
        f"{counted(len(within), 'day', 'days')} in the 365 to {last.day})."
    )
    real = [each for each in within if each.pounds is None or each.pounds > 0]
    alarm = knowledge.drift_alarms.get(_ALARM)
    if alarm is not None and len(real) >= TWICE:
        yield f"{alarm.text}."
    yield f"Source: {SOURCE}. {JUDGED}"


def _rate(rate: Rate) -> str:
    return f"not known, {rate.why_not}" if rate.percent is None else f"{rate.percent:.0f} % a year"


def _of_last(account: CircuitAccount, last: MadeUp) -> str:
    """What the annualizing method took: the pounds, and the days since the addition before."""
    if last.pounds is None or len(account.made_up) < TWICE:
        return ""
    before = account.made_up[-2].day
    back = f" beyond {in_pounds(last.put_back)} put back" if last.put_back else ""
    return f" ({in_pounds(last.pounds)}{back} on {last.day}, the last before on {before})"


def short_lines(account: CircuitAccount) -> tuple[str, ...]:
    """A circuit in short: its totals, and the annualized rate or why it is not known."""
    if account.last is None:
        return (total_line(account),)
    return total_line(account), f"Leak rate, annualizing: {_rate(account.annualized)}."


def refrigerant_section(knowledge: Knowledge, accounts: Sequence[CircuitAccount]) -> Iterator[str]:
    """The refrigerant of a unit in Markdown; nothing where none was moved."""
    moved = [account for account in accounts if account.moved]
    if not moved:
        return
    yield "## Refrigerant added and recovered"
    yield ""
    for account in moved:
        yield f"{markdown(begun(account.circuit))}:  "
        yield ""
        for each in account.moved:
            head, *more = entry_lines(knowledge, each)
            yield f"- {markdown(' '.join((f'{head}.', *more)))}"
        yield from (
            f"- {markdown(line)}" for line in (total_line(account), *rate_lines(knowledge, account))
        )
        yield ""
