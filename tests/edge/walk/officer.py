"""The officer of a walk: reads the journals on the disk, the screen and the clock, and objects.

He has no part in deciding. What was shown he takes from the lines on the screen, what was done from
the journals of the folder, and when from the clock on the wall.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any

from tests.edge.walk.job import Job, Task
from tests.edge.walk.order_of_work import CONFIRMING, MAY_BE_ENTERED
from tests.edge.walk.unit_on_record import Units
from tests.edge.walk.what_halts import DEAD, METER_PROOF
from tests.safety.work_state_account import SAID_GONE
from troubleshoot.knowledge.model import Knowledge

ENDINGS = ("The cause is named.", "No test left is worth", "Nothing wrong has been", "Repair: ")
SAYS_NOTHING = frozenset(("", "done", "ok", "y", "yes"))
POINTING = re.compile(
    r"^(?:(?:it's|its|it is|it|they're|they are|all|both|now) )+| (?:now|all|both)$"
)
"""What takes nothing from the word beside it: it's stopped, all locked now."""
LIVE = frozenset(words for words, things in SAID_GONE.items() if "powered" in things)
"""What nobody says at a test with hands inside without being heard."""
_TASK = re.compile(r"^(Step|Test): (.*) \((?:about [0-9]+ min|moments)\)$")
_OTHER_QUESTION = re.compile(r"^From the nameplate|^Who is asking|\(1 .*\)$")
_OF_THE_TASK = ("Where?", "Which of these?")
"""Questions put beside a task, which may be in hand meanwhile."""
_LISTED = re.compile(r"^[0-9]+ .*: [0-9]+ min$")


@dataclass
class Officer:
    """Watches every visit of one data folder. `met`: what came before him, by kind."""

    knowledge: Knowledge
    now: Callable[[], datetime]
    met: Counter[str] = field(default_factory=Counter)
    objections: list[str] = field(default_factory=list)
    jobs: dict[str, Job] = field(default_factory=dict)
    task: Task | None = None
    last_shown: Task | None = None
    """It may be worked on still behind a question, after which it is shown again."""
    current: str | None = None

    def __post_init__(self) -> None:
        self._units = Units(self.knowledge)
        self._read: dict[str, int] = {}
        self._names = {t.name: t for t in self.knowledge.tests.values()}

    def look(self, visits: Path, screen: Sequence[str], typed: str, prompt: str = "") -> None:
        """What was journalled and shown since this line was typed, up to the next prompt."""
        before = self._heard()
        may_be_in = self._hands_may_be_in()
        for path in sorted(visits.glob("*.journal")):
            self._take_up(path, typed)
        if may_be_in and typed.removeprefix("note ") in LIVE and self._heard() == before:
            self._object(f"{typed!r} was not heard")
        shown = self._on(screen)
        if shown is not None:
            self._judge(shown)
        other = not prompt.startswith(_OF_THE_TASK) and (
            prompt != ">" or any(not line or _OTHER_QUESTION.search(line) for line in screen)
        )
        self.task = shown or (None if other else self.task)
        self.last_shown = shown or self.last_shown
        self._judge_words(screen)

    def _heard(self) -> Counter[str]:
        """What came before him but notes: who only writes it down has not heard it."""
        return Counter({kind: times for kind, times in self.met.items() if kind != "note"})

    def _hands_may_be_in(self) -> bool:
        """Whether a test on a locked, dead unit is on the screen, and no STOP stands."""
        job = self.jobs.get(self.current or "")
        if job is None or self.task is None or self.task.step or job.stops.standing():
            return False
        locked = self.task.test.work_state == "locked-out"
        return locked and all({"locked", "dead-first"} <= world for world in job.worlds)

    def begin(self) -> None:
        """The program was started: nothing is on the screen."""
        self.task = self.last_shown = self.current = None

    def _take_up(self, path: Path, typed: str) -> None:
        begun = self._read.get(path.name, 0)
        if path.stat().st_size <= begun:
            return
        data = path.read_bytes()
        whole = data.rfind(b"\n") + 1
        for line in data[begun:whole].splitlines():
            event = json.loads(line)["event"]
            if event["event"] != "journal":
                self._happened(path.name, event, typed)
        self._read[path.name] = whole

    def _happened(self, visit: str, event: dict[str, Any], typed: str) -> None:
        self.current = visit
        self.met[event["event"]] += 1
        job = self.jobs.setdefault(visit, Job(self.knowledge, self._units))
        if event["time"] != self.now().isoformat(timespec="seconds"):
            self._object(f"{event['event']} is dated {event['time']}")
        task = self.task or self._answered_behind_a_question(event)
        for words in (job.watch(event, task), self._confirmed_by(event, typed)):
            if words:
                self._object(words)

    def _answered_behind_a_question(self, event: dict[str, Any]) -> Task | None:
        """What was shown last, where this answers it: its prompt stands again, unsaid."""
        last = self.last_shown
        answered = event.get("step") or event.get("test")
        return last if last is not None and last.test.id == answered else None

    def _confirmed_by(self, event: dict[str, Any], typed: str) -> str:
        """Whether what was typed says that a protecting step was done."""
        step = event.get("step", event.get("test") if event["event"] == "answer" else None)
        wanted = CONFIRMING.get(str(step))
        if wanted is None or step in MAY_BE_ENTERED or event.get("outcomes") != [wanted]:
            return ""
        test = self.knowledge.tests[str(step)]
        if event["event"] == "answer" or (test.reads and any(c.isdigit() for c in typed)):
            return "" if typed.strip(" ,") else f"{typed!r} was taken for an answer to {step}"
        typed = ", ".join(dict.fromkeys(part.strip() for part in typed.split(",")))  # said twice
        own = next(outcome for outcome in test.outcomes if outcome.id == wanted)
        plain = " ".join(typed.lower().replace(",", " ").split())
        if not {plain, *_said_of_it(plain)}.isdisjoint(own.words):
            return ""
        said = {text.replace(" ", "-") for text in _said_of_it(" ".join(typed.lower().split()))}
        if plain in SAYS_NOTHING or wanted not in said:  # lock is an order, ther half a word
            return f"{typed!r} confirmed {step}"
        return ""

    def _on(self, screen: Sequence[str]) -> Task | None:
        """The latest task on the screen."""
        for line in reversed(screen):
            match = _TASK.match(line)
            if match is None:
                continue
            body = match[2].removesuffix(", once more")
            name = body
            while name not in self._names:
                name, comma, _ = name.rpartition(", ")
                assert comma, f"no test is called {body}"
            test = self._names[name]
            place = body[len(name) :].removeprefix(", ") or None
            step = match[1] == "Step"
            return Task(test, place, step, test.minutes + test.wait_minutes)
        return None

    def _judge(self, task: Task) -> None:
        self.met["asked"] += 1
        what = f"{'step' if task.step else 'test'} {task.test.id}"
        if self.current is None:
            return self._object(f"{what} before anything was said")
        job = self.jobs[self.current]
        words = job.objection(task, self.now(), self.last_shown)
        if words:
            self._object(f"{what}: {words}")
        if task.test.id == METER_PROOF and job.last_step == DEAD:
            return None
        standing = job.stops.standing()
        if standing:
            self.met["on the way to lift"] += 1
            going_for = job.stops.going_for
            if any(bad.final for bad in standing):
                self._object(f"{what} before the job came back: {standing}")
            elif going_for is None or not job.stops.leads_on():
                self._object(f"{what} while a STOP stands: {standing}, for {going_for}")
            elif not (task.step or self._serves(task.test.id, going_for[0])):
                self._object(f"{what} is not {going_for}, which lifts")
        self._judge_neighbours(what, job)
        return None

    def _serves(self, test: str, finding: str) -> bool:
        """Whether a test is the finding, or one from which a computed finding may be read."""
        return test == finding or self.knowledge.tests[finding].kind == "computed"

    def _judge_neighbours(self, what: str, job: Job) -> None:
        """No visit goes on past the STOP of another visit to the same unit.

        One that was itself handed over and came back goes for its own finding, and no further.
        """
        if job.stops.standing() or job.stops.leads_on():
            return
        for visit, other in self.jobs.items():
            if other is not job and _same(other.name, job.name) and other.stops.standing():
                self._object(f"{what} while {visit} of the same unit has {other.stops.standing()}")

    def _judge_words(self, screen: Sequence[str]) -> None:
        """No ending, no repair and no list of tests while a STOP stands."""
        job = self.jobs.get(self.current or "")
        if job is None or not job.stops.standing():
            return
        for before, line in zip(("", *screen), screen, strict=False):
            if line.startswith(ENDINGS):
                self._object(f"{line[:40]!r} while a STOP stands: {job.stops.standing()}")
            if line == "do N takes one of them." and _LISTED.match(before):
                self._object(f"{before!r} offered while a STOP stands: {job.stops.standing()}")

    def account(self) -> list[str]:
        """The latest of the current visit, to be read where he objects."""
        job = self.jobs.get(self.current or "")
        return [] if job is None else [json.dumps(said.event) for said in job.said[-40:]]

    def _object(self, words: str) -> None:
        self.objections.append(words)


def _said_of_it(typed: str) -> set[str]:
    """What is said of it or them, with the apostrophe left out or written out."""
    texts = (typed, typed.replace("'", ""), typed.replace("'s ", " is "))
    return {POINTING.sub("", text) for text in texts}


def _same(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they are spelt."""
    mine, theirs = ("".join(c for c in n.casefold() if c.isalnum()) for n in (one, other))
    return bool(mine) and mine == theirs
