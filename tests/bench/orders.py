"""The mechanic's first five looks beside the tool's, call by call: python tests/bench/orders.py

Prints a table and the totals: how many of his five are among the tool's first five and first eight,
and how often something that he would not have stands among its first five.
"""

from __future__ import annotations

from tests.dialogue.constant import Mode
from tests.orders.driven import Call, calls, order_on
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner


def main() -> None:
    reasoner = Reasoner(load_shipped())
    modes: tuple[Mode, ...] = ("unknown", "sound")
    for mode in modes:
        print(f"## Each test answered: {mode}\n")
        print("| call | of five in five | in eight | asked, the mechanic's marked | unwanted |")
        print("| --- | --- | --- | --- | --- |")
        orders = [(call, order_on(reasoner, call, mode)) for call in calls()]
        for call, order in orders:
            print(row(reasoner, call, order))
        five, eight = (sum(c.hits(order[:n]) for c, order in orders) for n in (5, 8))
        told = [u for c, order in orders for u in unwanted(reasoner, c, order)]
        print(f"\nTotal: {five} in five, {eight} in eight of {5 * len(orders)}; unwanted "
              f"{len(told)}, of them dangers {sum('!' in u for u in told)}\n")  # fmt: skip


def row(reasoner: Reasoner, call: Call, order: tuple[str, ...]) -> str:
    """One call: its figures, and the first eight with what is whose."""
    shown = ", ".join(_marked(call, name) for name in order[:8])
    told = "; ".join(unwanted(reasoner, call, order))
    five, eight = call.hits(order[:5]), call.hits(order[:8])
    return f"| {call.complaint} | {five} | {eight} | {shown} | {told} |"


def _marked(call: Call, name: str) -> str:
    numbers = [str(n) for n, look in enumerate(call.looks, 1) if name in look]
    return f"**{name}** ({','.join(numbers)})" if numbers else name


def unwanted(reasoner: Reasoner, call: Call, order: tuple[str, ...]) -> list[str]:
    """What stands among the first five and should not; a danger with its mark."""
    return [
        f"{name}{' !' if each.danger else ''}: {each.what}"
        for each in call.unwanted
        for name in list(each.among(order[:5], reasoner.knowledge.tests))[:1]
    ]


if __name__ == "__main__":
    main()
