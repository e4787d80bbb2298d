"""What is decided in code about one safety step, all in one place.

The words, cautions, minutes and who may do a step are the rule base's: its test of the same id.
How it is confirmed, its turn and its effect are declared here, so that no rule file can weaken
them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final, Literal

from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.work_state import WHOLE_UNIT, WorkState

Outcomes = tuple[str, ...]
Change = Callable[[WorkState, str], WorkState]
"""What becomes of the work state, once something was done at a place."""

Otherwise = Callable[[WorkState, str, Outcomes], WorkState]
Event = Literal["lock-off", "motor-ran", "hour-passed", "resumed", "reopened"]
"""What voids states."""

Moment = Literal["lock-on", "cock-shut"]
"""What a wait is counted from."""

EVENT_WORDS: Final[Mapping[Event, str]] = MappingProxyType(
    {
        "lock-off": "the lock comes off",
        "motor-ran": "a motor runs",
        "hour-passed": "an hour goes by",
        "resumed": "nobody reported for half an hour, or since another day",
        "reopened": "a stopped visit is reopened, after others worked on the unit",
    }
)

At = Literal["unit", "capacitor", "drive", "tap", "hook-up", "circuit", "jumper"]


def _as_it_was(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    return state


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyStep:
    """One safety step.

    `at`: where it is done, once for each. `sound`: the outcome that confirms it; `also_sound`:
    outcomes beside it that show no danger of the kind that stops a visit. `also_by_word`: outcomes
    that take a danger away by themselves, and want their word whole. `by`: what confirms it
    for a person: its word, or the number where its test reads one; a bare Enter only where it
    protects nobody's life. `waits_from`: its wait protects a life and is counted from this moment:
    until it is over no word confirms it. `metered`: a file, whose waits nobody sees, confirms it by
    the metered number alone. `number_says_part`: its test reads a number that says only part of
    it, so that the word is wanted beside it; `less_is_worse`: of its numbers the lower. `by_hand`:
    hands handle parts of a unit that is locked out: nobody does so in arc-rated gloves, nor needs
    watching, so that the clothing and the second person are asked for again before live work.

    `after`: what has to stand before its turn comes, in the order in which it is brought about;
    without any it may be done at any time. `brings`: what is made to stand by it, so that it is led
    to where that is wanted; `brings_again`: what the second time round does. What no step brings is
    not led to: the step is for where it stands.

    `does`: what it changes when confirmed. `otherwise`: what any other outcome changes, or takes
    away. `lost`: what becomes of it after an event. `gone`: what becomes of the state once somebody
    says that what it had confirmed has gone, or never was; it changes nothing where that is nothing
    that the work stands on. `in_other_words`: the steps whose going is told in words that answer
    this one: power is back on, where it is put on.

    `hangs_on`: the facts that say whether, or where, it is needed; `hangs_on_at`: of one place.
    `settles`: outcome -> the fact of the unit, and its value, that this outcome states.
    """

    id: str
    sound: str
    does: Change
    otherwise: Otherwise = _as_it_was
    at: At = "unit"
    by: Literal["enter", "word"] = "word"
    waits_from: Moment | None = None
    metered: bool = False
    number_says_part: bool = False
    less_is_worse: bool = False
    by_hand: bool = False
    also_sound: frozenset[str] = frozenset()
    also_by_word: frozenset[str] = frozenset()
    after: tuple[StepGuard, ...] = ()
    brings: tuple[StepGuard, ...] = ()
    brings_again: tuple[StepGuard, ...] = ()
    lost: Mapping[Event, Change] = field(default_factory=dict)
    gone: Change | None = None
    in_other_words: frozenset[str] = frozenset()
    hangs_on: tuple[str, ...] = ()
    hangs_on_at: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    settles: Mapping[str, tuple[str, str]] = field(default_factory=dict)

    def effect(self, state: WorkState, place: str | None, outcomes: Outcomes) -> WorkState:
        """The state after it was done with these outcomes, whether or not its turn had come."""
        where = place or WHOLE_UNIT
        if outcomes == (self.sound,):
            changed = self.does(state, where)
        else:
            changed = self.otherwise(state, where, outcomes)
        return changed.laid_off if self.by_hand else changed
