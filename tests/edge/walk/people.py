"""What people type at a prompt, and how long they wait before it.

A person reads the question and mostly answers it; now and then they press Enter, paste a list,
change their mind, call out a danger or type what means nothing.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from random import Random

from tests.edge.walk.job import Task
from tests.edge.walk.order_of_work import CONFIRMING, MAY_BE_ENTERED
from tests.edge.walk.what_halts import halting
from tests.safety.work_state_account import SAID_GONE
from troubleshoot.knowledge.model import Knowledge, Test

# fmt: off
UNITS = ("RTU-7", "rtu 7", "Rtu_7", "RTU-8", "roof unit 9", "", "RTU–7", "étage 2")
NOTHING = (
    "", "", "", ",", " , ,", "  ", ".", "y", "n", "ok", "done", "yes", "0", "-1", "99", "²", "\t",
    "x x", "none of it", "1\n2\n3", "\x1b[A", "é", "一", "9" * 400,
)
COMMANDS = (
    "?", "how", "w", "help", "causes", "because", "because 2", "why not 1", "what if normal",
    "tests", "do 1", "do 2", "again", "round", "unit", "over", "q", "done", "repaired 1",
    "repaired 2", "note",
    "note the fan sings", "s", "s", "skip", "what if live",
)
TAKING_BACK = (
    "u", "u", "undo", "invalid", "invalid why", "invalid why",
    "invalid the leads were on the wrong terminals",
)
DANGERS = (
    "danger gas", "danger", "danger: somebody fell", "i smell gas", "smoke", "danger smoke",
    "someone is hurt", "danger lightning", "danger wet panel", "danger no rail here",
    "danger refrigerant hiss", "danger the guard is off", "no gas smell",
)
GONE = (*SAID_GONE, *(f"note {words}" for words in SAID_GONE))
PASTES = (
    "locked\ndead\ndischarged", "\n\n\n\n", "proved\n\nstopped\nlocked", "1, 2, 3\n4",
    "RTU-7\nno heat\n3\n\n\n", "safe\r\ntold\r\n", ",\n,",
)
CALLS = (
    "no cooling", "no heat", "i smell gas", "gas smell", "burning smell", "it is hot in here",
    "carbon monoxide alarm went off", "refrigerant alarm", "fails on hot afternoons",
    "heat will not stop", "", "", "noise", "water drips", "pm", "pm", "routine round",
)
ON_A_ROUND = ("now", "keep", "", "1", "2", "find the cause", "round", "tests", "q")
PROFILES = (
    "", "3", "1", "1 2", "3 4", "3 4 5 6 7 8", "3 4 5 6 7 8", "3 4 5 6 7 8", "4 5 6 7",
    "3,4,5,6,7,8",
)
HOW_IT_WAS = "how was it?"
RESULTS = {
    "Who made it safe?": ("1", "1", "2", "supervisor", "99", "", "q"),
    "What was done": ("1", "1", "2", "3", "9", "fixed it", "nothing", "", "q"),
    "What did they do": ("1", "1", "2", "3", "9", "a loose union, tightened", "", "u", "q"),
    "What did they read": ("0 % LEL", "2 ppm", "0 V", "0.2 V", "9 ppm", "0", "y y", "200 Mohm"),
    HOW_IT_WAS: ("1", "1", "2", "cleared", "waited", "sound", "fine", "", "q"),
    "Is every safety device": ("y", "y", "n", "", "y but one"),
    "Was it read": ("y", "n", "", "at the next unit", "u"),
    "Was it seen": ("y", "y", "n", "", "u"),
    "Who was told": ("the gas utility, just now", "x", "told the boss", "the boss, tomorrow"),
}
READINGS = (
    "0", "0 V", "0.2 V", "24 V", "26.1", "120", "208/209/207", "480 V", "480/481/479", "OL",
    "open", "1.2", "3.5 in w.c.", "16.2 in w.c.", "0 ppm", "35 ppm", "400 ppm", "5.12 uF",
    "7.5 A", "0.4 ohm", "72 F", "128 psig", "4 V", "1e9", "-5", "5 parsecs", "1/2/3/4", "12,5",
    "0 0", "١٢",
)
AT_A_STOP = ("over", "over", "again", "again", "again", "Over", "q", "u")
AT_AN_ENDING = (
    "again", "q", "done", "tests", "repaired", "repaired 1", "do 1", "do 2", "do 3", "own", "",
)
# fmt: on
MINUTES = (29.0, 29.5, 31.0, 45.0, 61.0, 14 * 60.0, -5.0, -120.0, 7 * 24 * 60.0)

PROOFS = (
    "", "71 F", "71 F", "12 % LEL", "18.1/2/18.3 A", "18.1/12/18.3 A", "3 kohm to ground",
)  # fmt: skip
"""What is read for a proof: some of it calls up a danger."""
_CARELESS = (
    (NOTHING, COMMANDS, TAKING_BACK, PASTES, READINGS, DANGERS, GONE),
    (18, 32, 19, 8, 9, 7, 7),
)
"""What somebody types who does not answer, and how often of a hundred."""

_CHOICES = re.compile(r"\((1 .*)\)$")


class Person:
    """Types. `careful`: how often the question is answered as it was meant."""

    def __init__(self, knowledge: Knowledge, random: Random) -> None:
        self._random = random
        self._tests = [t for t in knowledge.tests.values() if t.kind != "step"]
        stopping = {test for test, _ in halting(knowledge)}
        self._stopping = [t for t in self._tests if t.id in stopping]
        self._dead_work = [t for t in self._tests if t.work_state == "locked-out"]
        self._bad = halting(knowledge)
        self.careful = 0.9

    def wait(self, task: Task | None) -> float:
        """Minutes until the next line is typed: mostly seconds, a purge is mostly waited out."""
        random = self._random
        if random.random() < 0.03:
            return random.choice(MINUTES)
        if task is not None and task.test.id == "purge-wait" and random.random() < 0.6:
            return task.minutes
        return random.choice((0.1, 0.2, 0.5, 1.0, 3.0))

    def types(self, prompt: str, screen: Sequence[str], task: Task | None) -> str:
        """A line, or a paste of several."""
        random = self._random
        chance = random.random()
        if prompt == ">" and task is None and chance < 0.98:
            asked = self._answers(prompt, screen)
            if asked is not None:
                return asked
        if chance > self.careful:
            return self._careless()
        if prompt != ">":
            return self._says(prompt)
        if task is None:
            stopped = any("over to hand" in line or "over, or q." in line for line in screen)
            typed = random.choice(AT_A_STOP if stopped else AT_AN_ENDING)
            return self._own_choice() if typed == "own" else typed
        return self._does(task)

    def _careless(self) -> str:
        random = self._random
        (kind,) = random.choices(*_CARELESS)
        if kind is COMMANDS and random.random() < 0.3:
            return self._own_choice()
        return random.choice(kind)

    def _own_choice(self) -> str:
        """A test of one's own choice, one that may stop the visit more often than not."""
        random = self._random
        test = random.choice(self._stopping if random.random() < 0.5 else self._tests)
        return self._do(test)

    def _do(self, test: Test) -> str:
        """The line that chooses a test, mostly at a place."""
        random = self._random
        at = {None: "", "circuit": " at circuit 1"}.get(test.per, f" at {test.per} 1")
        return f"do {test.id}{at if random.random() < 0.8 else ''}"

    def _says(self, prompt: str) -> str:
        random = self._random
        for begun, words in RESULTS.items():
            if prompt.startswith(begun) or (begun == HOW_IT_WAS and begun in prompt):
                return random.choice(words if random.random() < 0.3 else words[:1])
        if prompt.startswith("When w"):
            return random.choice(("{now}", "{now}", "just now", "00:00", "noon", "q"))
        if prompt.startswith("Visit "):
            return random.choice(("y", "y", "", "n"))
        if prompt.startswith("Which unit"):
            return random.choice(UNITS)
        return random.choice(("n", "n", "n", "1", "RTU-7", "2"))  # is this one of them?

    def _answers(self, prompt: str, screen: Sequence[str]) -> str | None:
        """What the last lines ask for, where it is no task."""
        random = self._random
        for line in reversed(screen):
            if line.startswith("Which unit?"):
                return random.choice(UNITS)
            if line.startswith(("What does the caller say", "Nothing known sounds")):
                return random.choice(CALLS)
            if line.startswith("Which is nearest"):
                return random.choice(("1", "1", "2", "3", "4"))
            if line.startswith(("Who is asking", "Numbers from 1 to")):
                return random.choice(PROFILES)
            if line.startswith("From the nameplate"):
                return random.choice(("", "", "460", "208 V", "7.5", "20 A", "x"))
            if line.startswith("Is the complaint still there"):
                return random.choice(("y", "n", ""))
            if line.startswith("Proof:"):
                return random.choice(PROOFS)
            if line.startswith("Not sound: "):
                return random.choice(ON_A_ROUND)
            choices = _CHOICES.search(line)
            if choices is not None:
                last = choices[1].split(", ")[-1].partition(" ")[2]
                return random.choice(("", "1", "2", "1", last))
        return None

    def _does(self, task: Task) -> str:
        random, test = self._random, task.test
        if not task.step and test.work_state == "locked-out" and random.random() < 0.25:
            return random.choice(GONE)
        if not task.step and random.random() < 0.15:
            return self._do(random.choice(self._dead_work))
        if task.step and test.id in CONFIRMING:
            wanted = CONFIRMING[test.id].replace("-", " ")
            if test.id == "drive-discharge":
                return random.choice(("4 V", "4 V", "discharged", "120 V"))
            if test.id == "edge-protection":
                return random.choice(("tied off", "guard rail", "warning line", "on"))
            if random.random() < 0.93:
                return wanted
            said = random.choice(("it's {}", "all {} now", "its not {}", "is it {}", "was {}"))
            return random.choice((wanted[:2], wanted[:4], self._outcome(test), said.format(wanted)))
        if task.step and test.id in MAY_BE_ENTERED and random.random() < 0.7:
            return ""
        return self._outcome(test) if random.random() < 0.85 else random.choice(READINGS)

    def _outcome(self, test: Test) -> str:
        random = self._random
        if test.healthy and random.random() < 0.55:
            return random.choice(test.healthy).replace("-", " ")
        if not test.outcomes:
            return random.choice(READINGS)
        bad = [o.id for o in test.outcomes if (test.id, o.id) in self._bad]
        if bad and random.random() < 0.4:
            return random.choice(bad).replace("-", " ")
        chosen = random.choice(test.outcomes).id.replace("-", " ")
        if test.choose == "several" and random.random() < 0.3:
            return f"{chosen}, {random.choice(test.outcomes).id}"
        number = str(random.randrange(1, len(test.outcomes) + 2))
        return random.choice((chosen, chosen, number, chosen[:5]))
