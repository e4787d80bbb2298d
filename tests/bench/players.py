"""What four players' plays are worth over all shipped scenarios. Run by hand:

python -m tests.bench.players
"""

from __future__ import annotations

from statistics import mean

from tests.practice.players import PLAYERS, played
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import expert_path
from troubleshoot.practice.loading import load_scenarios
from troubleshoot.practice.scoring import Score
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclude import Reasoner


def main() -> None:
    """Print a line for each play, then the table of means."""
    reasoner = Reasoner(load_shipped())
    scores: dict[str, list[Score]] = {name: [] for name in PLAYERS}
    for scenario in load_scenarios(reasoner.knowledge):
        expert = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
        for name in PLAYERS:
            score = played(name, Session(reasoner, scenario), expert)
            scores[name].append(score)
            how = "reasoned" if score.reasoned else "not reasoned"
            print(f"{scenario.id} {name}: {score.points}, {score.verdict}, {how}", flush=True)
    print("| player | points | right | reasoned | minutes | tests |")
    print("| --- | --- | --- | --- | --- | --- |")
    for name, own in scores.items():
        right = mean(score.verdict == "right" for score in own)
        of_these = mean(score.reasoned for score in own)
        minutes = mean(score.minutes for score in own)
        tests = mean(score.tests for score in own)
        points = mean(score.points for score in own)
        shares = f"{right:.0%} | {of_these:.0%}"
        print(f"| {name} | {points:.0f} | {shares} | {minutes:.0f} | {tests:.1f} |")


if __name__ == "__main__":
    main()
