"""What is done about the findings of a round changes this of it, and nothing else."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import pytest

from tests.visit.events.effects import AIM, FRESH, ONE, TWO, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.events import Event, FindingsKept, RoundBegun, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.on_round import FindingAt
from troubleshoot.visit.state import Round, VisitState

HEAD: Spot = ("head-pressure", TWO)
KEPT, SEARCHED = frozenset({AIM, FRESH}), frozenset({HEAD})
WALKED = Round("fall", KEPT, SEARCHED, (HEAD,), frozenset({AIM}))
LOOK, SUCTION = FindingAt(FRESH[0], None), FindingAt(AIM[0], "circuit 1")


@pytest.mark.parametrize(
    ("spots", "named"),
    [
        ((), ()),
        ((FRESH, AIM), (("heat-exchanger-look", None), ("suction-pressure", "circuit 1"))),
        ((AIM, FRESH), (("heat-exchanger-look", None), ("suction-pressure", "circuit 1"))),
        ((("a", TWO), ("a", ONE)), (("a", "circuit 1"), ("a", "circuit 2"))),
        ((("a", TWO), ("a", None)), (("a", None), ("a", "circuit 2"))),
        ((("b", None), ("a", TWO)), (("a", "circuit 2"), ("b", None))),
    ],
)
def test_findings_are_written_in_the_order_of_their_names(
    spots: Iterable[Spot], named: tuple[tuple[str, str | None], ...]
) -> None:
    """They are kept as a set: a journal written twice would else not say the same."""
    assert FindingAt.all_of(spots) == tuple(FindingAt(test, at) for test, at in named)


@pytest.mark.parametrize("season", ["spring", "fall"])
def test_a_round_begins_with_nothing_found(
    season: Any, shipped: Knowledge, visit: VisitState
) -> None:
    changed(shipped, visit, RoundBegun(season), round=Round(season))


@pytest.mark.parametrize(
    "event", [FindingsKept((LOOK,)), SearchBegun((LOOK,), (SUCTION,)), RoundGoneOn((LOOK,))]
)
def test_where_no_round_is_walked_nothing_is_done_about_its_findings(
    event: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """A visit that is no round, or whose round nobody understands any more, goes on as it was."""
    assert visit.round is None
    changed(shipped, visit, event)


@pytest.mark.parametrize(
    ("event", "now"),
    [
        (FindingsKept((FindingAt("head-pressure", "circuit 2"),)), {"kept": KEPT | {HEAD}}),
        (FindingsKept((LOOK,)), {}),
        (FindingsKept(()), {}),
    ],
)
def test_what_is_kept_for_the_end_joins_what_was(
    event: Event, now: dict[str, Any], shipped: Knowledge, visit: VisitState
) -> None:
    changed(shipped, replace(visit, round=WALKED), event, round=replace(WALKED, **now))


@pytest.mark.parametrize(
    ("event", "now"),
    [
        (SearchBegun((LOOK,)),
         {"kept": {AIM}, "searched": {HEAD, FRESH}, "search": (FRESH,), "apart": set()}),
        (SearchBegun((LOOK, SUCTION)),
         {"kept": set(), "searched": {HEAD, FRESH, AIM}, "search": (FRESH, AIM), "apart": set()}),
        (SearchBegun((SUCTION,), (LOOK, FindingAt("head-pressure", "circuit 2"))),
         {"kept": {FRESH}, "searched": {HEAD, AIM}, "search": (AIM,), "apart": {FRESH, HEAD}}),
        (RoundGoneOn(), {"search": (), "apart": set()}),
        (RoundGoneOn((SUCTION,)), {"searched": {HEAD, AIM}, "search": (), "apart": set()}),
    ],
)  # fmt: skip
def test_a_search_takes_its_findings_off_the_round_and_leaves_the_others_apart(
    event: Event, now: dict[str, Any], shipped: Knowledge, visit: VisitState
) -> None:
    """One that is forgotten is searched for again, or weighs in a search that is not its own."""
    whole = {key: v if isinstance(v, tuple) else frozenset(v) for key, v in now.items()}
    changed(
        shipped, replace(visit, round=WALKED), event, round=replace(WALKED, **whole), aim=None
    )  # fmt: skip
