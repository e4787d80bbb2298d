"""What an answer costs at the full rule base, by hand: python tests/bench/bench_reasoning.py

Plays visits with answers drawn at random and times each turn: concluding, and choosing what comes
next. Prints median and 95th percentile in milliseconds.
"""

from __future__ import annotations

import random
import statistics
import time
from collections.abc import Mapping
from typing import Any

from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import AskTest, DoStep, Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import Started

VISITS = 20
PROMPTS = 40


class RandomVisit(DrivenVisit):
    """Answers whatever comes to mind, and keeps the time from one prompt to the next."""

    def __init__(self, reasoner: Reasoner, start: Mapping[str, Any], dice: random.Random) -> None:
        super().__init__(reasoner, start)
        self.dice = dice
        self.turns: list[float] = []
        self._answered = 0.0

    def reply(self, prompt: Prompt) -> Reply | None:
        if self._answered:
            self.turns.append(1000 * (time.perf_counter() - self._answered))
        reply = self._reply(prompt) if len(self.turns) < PROMPTS else None
        self._answered = time.perf_counter()
        return reply

    def _reply(self, prompt: Prompt) -> Reply | None:
        if isinstance(prompt, DoStep):
            assert prompt.decision.step is not None
            step = prompt.decision.step.id
            return "4 V" if step == "drive-discharge" else CONFIRMED[step].replace("-", " ")
        if isinstance(prompt, AskTest):
            outcomes = prompt.outcomes
            return self.dice.choice(outcomes).replace("-", " ") if outcomes else "s"
        return None if hasattr(prompt, "conclusions") or hasattr(prompt, "fired") else ""


def main() -> None:
    knowledge = load_shipped()
    reasoner, dice = Reasoner(knowledge), random.Random(1)
    turns: list[float] = []
    start = Started(
        unit=dict(knowledge.typical_units["measured-two-circuits"].unit), complaint="no-cooling"
    )
    for _ in range(VISITS):
        visit = RandomVisit(reasoner, start, dice)
        visit.drive()
        turns += visit.turns
    turns.sort()
    late = turns[int(0.95 * len(turns))]
    median = statistics.median(turns)
    print(f"{len(turns)} turns: median {median:.1f} ms, 95th percentile {late:.1f} ms")


if __name__ == "__main__":
    main()
