"""What a visit waits for, as data. How it is shown is the affair of whoever shows it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Literal

from troubleshoot.frozen import frozen

if TYPE_CHECKING:  # the first prompts come before all that reasons is imported
    from troubleshoot.dialogue.said import OtherTest
    from troubleshoot.knowledge.model import EquipmentFact, Fault, Hazard, PlateValue, Test
    from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
    from troubleshoot.safety.stops.record import Spot
    from troubleshoot.visit.deciding.decision import Decision
    from troubleshoot.visit.round.found import PointFound


@frozen
class AskWords:
    """Words of the person's own; `repeated`: asked whole at each try. `why`: what hangs on it."""

    question: str
    repeated: bool = False
    why: str = ""


@frozen
class Choose:
    """One of the options, or several where `several`, by number or in words.

    `why`: what hangs on it, where that is not plain.
    """

    question: str
    options: tuple[str, ...] = ()
    several: bool = False
    repeated: bool = False
    why: str = ""


@frozen
class AskFact:
    """An equipment fact of the unit; `why` where that needs saying. Empty: nobody knows."""

    fact: EquipmentFact
    why: str = ""


@frozen
class AskPlate:
    """A value from the nameplate, of one place where there are several. Empty: not to be read."""

    plate: PlateValue
    at: str | None = None


@frozen
class Caution:
    """A hazard to be told before something is done; `told`: since the panels were opened."""

    hazard: Hazard
    told: bool


def cautions_of(hazards: Iterable[Hazard], told: set[str]) -> tuple[Caution, ...]:
    """The cautions of these hazards; `told`, the ids of those that were told, is added to."""
    cautions = tuple(Caution(hazard, hazard.id in told) for hazard in hazards)
    told.update(caution.hazard.id for caution in cautions)
    return cautions


@frozen
class AskProof:
    """A reading that proves a repair; with cautions where it is read live.

    `read_by`: the test that it is a reading of, where it is one. `is_of_before`: the repair was
    made before the visit.
    """

    fault: Fault
    text: str
    cautions: tuple[Caution, ...] = ()
    read_by: Test | None = None
    is_of_before: bool = False


@frozen
class DoStep:
    """A safety step, and what may come of it. `where`: its place, where there are several.

    `told`: how it is done was told before, and nothing has made it new.
    """

    decision: Decision
    where: str | None
    outcomes: tuple[str, ...]
    cautions: tuple[Caution, ...]
    told: bool = False


@frozen
class Progress:
    """How far a routine round has come: the point that a test is for, of how many; those done.

    `point` and `limit`: what it says, empty where that has been shown just before. `before`: the
    last numbers of this test here, the latest first.
    """

    number: int
    of: int
    done: int
    point: str
    limit: str = ""
    before: str = ""


@frozen
class AskTest:
    """A test, and its outcomes on this unit. `where`: its place, where there are several.

    `progress`: where it is asked on a routine round.
    """

    decision: Decision
    where: str | None
    outcomes: tuple[str, ...]
    cautions: tuple[Caution, ...]
    progress: Progress | None = None


@frozen
class AtStop:
    """A STOP stands. `tag`: what is written on it.

    `others`: those that stand beside it, a line each. `lifted_by`: the finding that lifts it when
    it is taken afresh; with `beyond` it is for others. `gone`: what the words that told of it took
    away besides, a line each.
    """

    fired: FiredHazard
    tag: tuple[str, ...]
    others: tuple[str, ...] = ()
    lifted_by: str | None = None
    beyond: str | None = None
    gone: tuple[str, ...] = ()


@frozen
class Settled:
    """The search has come to an ending: what was found, and what is done about it.

    `before_repair`: what is not known to stand before hands do the repair; empty for nothing.
    `points`: of a routine round, as they stand; `kept`: its findings whose cause may be looked for
    from here, by their number. `in_search`: the round goes on from here. `left`: of a shortlist,
    what would tell most for its minutes, though it is not held to be worth them.
    """

    decision: Decision
    conclusions: Conclusions
    before_repair: str = ""
    points: tuple[PointFound, ...] = ()
    kept: tuple[Spot, ...] = ()
    in_search: bool = False
    left: tuple[OtherTest, ...] = ()


@frozen
class Ended:
    """Nothing more is asked. A visit that is `kept` can be gone on with."""

    how: Literal["closed", "handed-over", "kept"]


Prompt = (
    AskWords | Choose | AskFact | AskPlate | DoStep | AskTest | AskProof | AtStop | Settled | Ended
)
