"""Makes mutants of the modules that keep people safe and says which of them no test kills.

By hand: `python -m tests.mutation.mutate [MODULE ...]`, with `--map` first and after tests were
added. A killed mutant is not tried again while its name stands; `--again` tries survivors with more
tests. Takes about a second for each mutant on one core.
"""

from __future__ import annotations

import argparse
import fcntl
import json
import os
import time
from collections import Counter, defaultdict
from pathlib import Path

from tests.mutation.operators import Mutant, mutants_of
from tests.mutation.trying import (
    IN_ALL_AT_FIRST,
    Map,
    copy_of,
    function_of,
    kept_results,
    map_of,
    ready,
    seconds_for,
    tests_for,
    tried,
)

CHECKOUT = Path(__file__).resolve().parents[2]
FOLDER = CHECKOUT / ".mutants"
EQUIVALENT = Path(__file__).parent / "equivalent.txt"
MODULES = (
    "safety/guards", "safety/step_guards", "safety/declaration", "safety/changes",
    "safety/declared/__init__", "safety/declared/air", "safety/declared/dead",
    "safety/declared/gas", "safety/declared/panels", "safety/declared/power",
    "safety/declared/refrigerant", "safety/declared/roof_and_people", "safety/needs",
    "safety/way", "safety/stages", "safety/bringing", "safety/transitions", "safety/work_state",
    "safety/route", "safety/profiles", "safety/unit_at_work", "safety/cautions",
    "visit/events/beginning", "visit/events/answers", "visit/events/way", "visit/events/stops",
    "visit/events/ending", "visit/events/passing_time", "visit/events/apart",
    "visit/events/places", "visit/events/replaying", "visit/events/undoing",
    "visit/deciding/lifting", "visit/absence", "safety/reaching", "safety/closed_ways",
    "safety/stops/afresh",
    "safety/stops/lifting", "safety/stops/parts", "safety/stops/reopening", "safety/stops/standing",
    "safety/stops/outright", "safety/stops/tags", "safety/stops/left", "safety/stops/shown",
    "safety/stops/alone", "safety/stops/put_right", "safety/stops/told", "safety/stops/record",
    "safety/stops/remedies", "safety/stops/numbers_shown", "safety/stops/given_back",
    "visit/deciding/no_lock", "visit/kept/lock_before", "dialogue/new_person",
    "dialogue/word_and_number", "dialogue/which_lock", "dialogue/by_digit",
    "safety/hearing/new_people",
    "visit/events/called", "visit/events/known", "visit/events/on_round",
    "visit/events/withdrawn", "visit/events/state_gone",
    "safety/hearing/dangers", "safety/hearing/reporting", "safety/hearing/unit_words",
    "safety/hearing/gone", "safety/hearing/left_in", "safety/hearing/another_unit",
    "safety/hearing/at_the_flue", "safety/hearing/small_talk", "safety/hearing/happenings",
    "safety/hearing/moments", "safety/hearing/manner_of_speaking", "safety/hearing/other_numbers",
    "safety/hearing/told_numbers", "safety/hearing/nets", "safety/hearing/netted",
    "dialogue/answering", "dialogue/standing", "dialogue/stopped", "dialogue/hand_over_result",
    "dialogue/who_was_told",
    "dialogue/reopening", "dialogue/beside_work", "dialogue/state_gone",
    "safety/hearing/not_here_and_now", "safety/hearing/looks", "safety/hearing/good_answers",
    "safety/hearing/call_words",
    "safety/hearing/burner_lit", "safety/hearing/volts_before", "safety/at_ports",
    "safety/hearing/hinting", "safety/hearing/roles", "safety/hearing/typing_errors",
    "safety/hearing/mending",
    "dialogue/confirming_words", "dialogue/told_unsound", "dialogue/other_words",
    "dialogue/other_looks", "dialogue/in_part", "dialogue/verdict_beside",
    "reasoning/unit/unit_numbers", "reasoning/unit/facts_untold", "reasoning/unit/beyond_said",
    "reasoning/chaining/on_record", "reasoning/chaining/clearing",
)  # fmt: skip
TESTS = (
    "tests/safety",
    "tests/visit",
    "tests/dialogue",
    "tests/mutation",
    "tests/cli/test_reopen.py",
    "tests/cli/test_work_state_page.py",
    "tests/cli/test_standing_in_a_visit.py",
    "tests/reasoning/test_hazards.py",
)
LONG_WALKS = (
    "tests/visit/kept/test_understanding.py::test_any_spoilt_visit_opens_is_decided_on_and_reported",
    "tests/safety/test_work_state_walk.py",
    "tests/visit/hearing/test_complaints.py",
    "tests/visit/events/test_replaying.py::test_no_sequence_of_answers_skips_and_undos_breaks_a_visit",
    "tests/visit/test_stop_walk.py",
    "tests/visit/kept/test_journal.py",
    "tests/mutation/test_mutants.py",
    "tests/dialogue/test_every_ending.py",
)
"""Not run against mutants: minutes each, and drawn at random."""


def all_mutants(modules: tuple[str, ...] = MODULES) -> tuple[Mutant, ...]:
    """Every mutant of the modules, in their order."""
    package = CHECKOUT / "troubleshoot"
    paths = [f"{module}.py" for module in modules]
    return tuple(m for path in paths for m in mutants_of(path, (package / path).read_bytes()))


def equivalent() -> dict[str, str]:
    """The mutants that change nothing anybody can see: name -> why.

    In the file a paragraph of `#` lines says why, for the names below it.
    """
    reasons: dict[str, str] = {}
    why: list[str] = []
    named = False
    for line in EQUIVALENT.read_text("utf-8").splitlines():
        if line.startswith("#"):
            why = [*([] if named else why), line[1:].strip()]
            named = False
        elif line:
            reasons[line] = " ".join(why)
            named = True
    return reasons


def run(mutants: list[Mutant], known: Map, tested: float, results: Path, workers: int) -> None:
    """Try the mutants in as many copies as there are workers, and note each result."""
    children = []
    for number in range(workers):
        child = os.fork()
        if not child:
            copy = copy_of(CHECKOUT, FOLDER / f"copy-{number}")
            ready(copy)
            kills: dict[str, Counter[str]] = defaultdict(Counter)
            for name, killer in kept_results(results).items():
                kills[name.partition(":")[0]][function_of(killer)] += bool(killer)
            for mutant in mutants[number::workers]:
                tests = tests_for(mutant, known, tested, kills[mutant.module])
                most = seconds_for(tests, known)
                killer = tried(mutant, copy, tests, most) if tests else ""
                kills[mutant.module][function_of(killer)] += bool(killer)
                with results.open("a", encoding="utf-8") as file:
                    file.write(json.dumps([mutant.name, killer]) + "\n")
            os._exit(0)
        children.append(child)
    for child in children:
        os.waitpid(child, 0)


def make_map(path: Path, tests: list[str]) -> None:
    """Note which tests enter which functions; what is known of other tests stays."""
    child = os.fork()
    if not child:
        copy = copy_of(CHECKOUT, FOLDER / "copy-for-map")
        found = map_of(copy, tests, LONG_WALKS)
        known = json.loads(path.read_text("utf-8")) if path.exists() else {}
        for name, by in known.get("entered", {}).items():
            found["entered"][name] = sorted({*by, *found["entered"].get(name, ())})
        found["seconds"] = known.get("seconds", {}) | found["seconds"]
        path.write_text(json.dumps(found), "utf-8")
        os._exit(0)
    os.waitpid(child, 0)


def say(mutants: tuple[Mutant, ...], results: Path) -> None:
    """The figures of each module, and the survivors by name."""
    kept, spared = kept_results(results), equivalent()
    made, killed = Counter(m.module for m in mutants), Counter[str]()
    for mutant in mutants:
        killed[mutant.module] += bool(kept.get(mutant.name))
    for module, number in made.items():
        print(f"{module:28} {number:5} made {killed[module]:5} killed")
    print(f"{'in all':28} {made.total():5} made {killed.total():5} killed")
    for mutant in mutants:
        if not kept.get(mutant.name) and mutant.name not in spared:
            said = "survived" if mutant.name in kept else "not tried"
            print(f"{said}, line {mutant.line}: {mutant.name} => {mutant.new[:70]}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("modules", nargs="*", default=MODULES)
    parser.add_argument("--map", nargs="*", help="note which tests enter what, of these or of all")
    parser.add_argument("--again", action="store_true", help="try survivors with all tests")
    parser.add_argument("--show", action="store_true", help="only say what is known")
    parser.add_argument("--workers", type=int, default=2)
    given = parser.parse_args()
    FOLDER.mkdir(exist_ok=True)
    alone = (FOLDER / "lock").open("w")  # workers hold it too, so that none is left of a run before
    try:
        fcntl.flock(alone, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        raise SystemExit("another run is still at work in these copies; wait for it") from None
    seen, results = FOLDER / "map.json", FOLDER / "results.jsonl"
    mutants = all_mutants(tuple(given.modules))
    if given.map is not None or not seen.exists():
        make_map(seen, given.map or list(TESTS))
    if not given.show:
        known = json.loads(seen.read_text("utf-8"))
        kept, spared = kept_results(results), equivalent()
        todo = [m for m in mutants if not (kept.get(m.name) if given.again else m.name in kept)]
        todo = [m for m in todo if m.name not in spared]
        begun = time.monotonic()
        run(todo, known, 1e9 if given.again else IN_ALL_AT_FIRST, results, given.workers)
        print(f"{len(todo)} tried in {time.monotonic() - begun:.0f} s")
    say(mutants, results)


if __name__ == "__main__":
    main()
