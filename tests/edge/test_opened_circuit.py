"""A circuit that a repair has opened is run only once it held nitrogen, vacuum and its charge.

The order is that of the trade: nitrogen, a vacuum that holds, the charge by weight (40 CFR 82.156
and 82.157 for recovery and leaks; the rest common practice, no source). A compressor that runs in a
circuit without charge burns out (common practice, no source).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, careful, task

FACTS = "480/3/60, electric heat, TXV, one circuit, one fan"
OPENED = "Say whether the circuit was opened"
NITROGEN = "Hold what was opened on nitrogen"
ZERO = "Bring the circuit to zero gauge"
VACUUM = "Evacuate, and see the vacuum hold"
CHARGE = "Weigh the charge in"
SWEEP = "Sweep for flammable refrigerant"
LOCK_OFF = "Take your own lock off and switch on"
CALL = "Call for the unit and watch it start"
WORDS = {
    OPENED: "opened",
    NITROGEN: "held",
    ZERO: "at zero",
    VACUUM: "held",
    CHARGE: "charged",
    "Take the gauges off": "off",
    LOCK_OFF: "switched on",
    "Outdoor temperature": "85 F",
}
OPENS = [
    "low-charge-from-leak",
    "liquid-line-restriction",
    "txv-underfeeding",
    "compressor-winding-grounded",
    "circuit-empty",
]
"""A leak, a drier, a valve, a compressor, an empty circuit."""


def steps_after(
    person: Person, said: str, words: dict[str, str], until: str = CALL, most: int = 90
) -> list[str]:
    """The safety steps that come after what is said, in their order, each done as `words` say."""
    person.types(said)
    done: list[str] = []
    for _ in range(most):
        now = task(person).removeprefix("Step: ").partition(" (about")[0].partition(", circuit")[0]
        asked = " ".join(person.last.split()).rpartition("Proof: ")[2]
        is_proof, is_question = "What did you read?" in asked, asked.endswith("(y/n)")
        if now and not is_proof and not is_question:
            done.append(now)
        if until in now or "The visit is closed" in person.last:
            return done
        typed = next((word for step, word in words.items() if step in now), careful(person))
        person.types("n" if is_question else "" if is_proof else typed)
    return done


def visit(data: Path, clock: Clock, refrigerant: str = "R-410A") -> Person:
    person = begin(data, clock, words="weak-cooling")
    person.types(f"{FACTS}, {refrigerant}")
    return person


@pytest.mark.parametrize("fault", OPENS)
def test_what_was_opened_holds_nitrogen_vacuum_and_charge_before_power(
    fault: str, tmp_path: Path, clock: Clock
) -> None:
    """Regression: after a leak was said to be repaired the unit was started, nothing weighed in."""
    with visit(tmp_path, clock) as person:
        done = steps_after(person, f"repaired {fault}", WORDS)
    wanted = [OPENED, NITROGEN, ZERO, VACUUM, CHARGE, LOCK_OFF, CALL]
    assert [step for step in done if step in wanted] == wanted


@pytest.mark.parametrize("short", [NITROGEN, VACUUM, CHARGE])
def test_what_did_not_hold_leads_to_no_start(short: str, tmp_path: Path, clock: Clock) -> None:
    failing = {NITROGEN: "not held", VACUUM: "not held", CHARGE: "not charged"}
    with visit(tmp_path, clock) as person:
        done = steps_after(
            person, "repaired low-charge-from-leak", {**WORDS, short: failing[short]}, most=30
        )
    assert short in done
    assert LOCK_OFF not in done and CALL not in done


@pytest.mark.parametrize("word", ["nothing opened", "core tool", "cap only", "charge only"])
def test_what_opened_nothing_is_said_in_words(word: str, tmp_path: Path, clock: Clock) -> None:
    with visit(tmp_path, clock) as person:
        done = steps_after(person, "repaired access-valve-leaking", {**WORDS, OPENED: word})
    assert OPENED in done
    assert {NITROGEN, ZERO, VACUUM, CHARGE}.isdisjoint(done)


@pytest.mark.parametrize("word", ["", "n", "no", "noth", "nothing opned", "yes", "open", "opene"])
def test_no_less_says_either(word: str, tmp_path: Path, clock: Clock) -> None:
    with visit(tmp_path, clock) as person:
        steps_after(person, "repaired access-valve-leaking", {**WORDS, OPENED: ""}, OPENED)
        for _ in range(3):
            person.types(word)
            assert not (task(person) and OPENED not in task(person)), person.said[-500:]


def test_after_a_repair_the_air_is_swept_again_before_power(tmp_path: Path, clock: Clock) -> None:
    """Regression: power came back on a brazed R-454B joint without a sweep.

    UL 60335-2-40, from memory: what burns is looked for before whatever may light it.
    """
    for word in ("opened", "core tool"):
        with visit(tmp_path / word[:4], clock, "R-454B") as person:
            done = steps_after(person, "repaired low-charge-from-leak", {**WORDS, OPENED: word})
        last_sweep = max(n for n, step in enumerate(done) if step == SWEEP)
        assert done.index(OPENED) < last_sweep < done.index(CALL)
        assert LOCK_OFF not in done or last_sweep < done.index(LOCK_OFF)
