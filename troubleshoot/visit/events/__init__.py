"""The events of a visit: one class a kind, with its effect on the state beside it.

A new kind is a class in the file of its subject, and a name here and in `codec.KINDS`.
"""

from troubleshoot.visit.events.answers import Answered, MarkedInvalid, SaysNothing, StepDone
from troubleshoot.visit.events.apart import NotUnderstood, Undone
from troubleshoot.visit.events.beginning import (
    Called,
    FactTold,
    FromRegister,
    LeftBefore,
    Named,
    Started,
)
from troubleshoot.visit.events.ending import (
    Closing,
    Noted,
    PartGiven,
    ProofRead,
    Repaired,
    RepairedBefore,
    RepairWanted,
    VisitEnded,
)
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.instruments import InstrumentsListed
from troubleshoot.visit.events.on_round import FindingsKept, RoundBegun, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.passing_time import HourPassed, Resumed
from troubleshoot.visit.events.replaying import after, replay
from troubleshoot.visit.events.state_gone import StateGone
from troubleshoot.visit.events.stops import (
    DangerReported,
    DangerTakenBack,
    Halted,
    Reopened,
    TakenAfresh,
)
from troubleshoot.visit.events.way import Aimed, Shown, Skipped
from troubleshoot.visit.events.weighed import Weighed
from troubleshoot.visit.events.withdrawn import ReadingWithdrawn

__all__ = [
    "Aimed",
    "Answered",
    "Called",
    "Closing",
    "DangerReported",
    "DangerTakenBack",
    "Event",
    "FactTold",
    "FindingsKept",
    "FromRegister",
    "Halted",
    "HourPassed",
    "InstrumentsListed",
    "LeftBefore",
    "MarkedInvalid",
    "Named",
    "NotUnderstood",
    "Noted",
    "PartGiven",
    "ProofRead",
    "ReadingWithdrawn",
    "Reopened",
    "RepairWanted",
    "Repaired",
    "RepairedBefore",
    "Resumed",
    "RoundBegun",
    "RoundGoneOn",
    "SaysNothing",
    "SearchBegun",
    "Shown",
    "Skipped",
    "Started",
    "StateGone",
    "StepDone",
    "TakenAfresh",
    "Undone",
    "VisitEnded",
    "Weighed",
    "after",
    "replay",
]
