"""Two versions of the rules -> every caution and need that a person would no longer see.

Pure: nothing here reads files or knows where an entry stands. What is only worded otherwise is not
seen, nor a limit that was moved; a caution that got shorter is.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Finding, Hazard, Knowledge, Test, Trigger
from troubleshoot.knowledge.shown_cautions import Shown, calls_up, cautions_of
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.knowledge.vocabulary import EXPOSURES, SIGNALS, STOP_SCOPES

_NAMED: Final = 3
"""So many tests are named where one hazard is gone from many."""


@frozen
class Drop:
    """One thing that is gone. It belongs to an entry that is still there, or to what was retired.

    `kind`: test, hazard or retired. `key`: where it stood. `word`: what a signature for it drops.
    """

    kind: str
    id: str
    key: str
    word: str
    what: str


@frozen
class _Kept:
    """A test by both versions, and the cautions that no longer come before it."""

    was: Test
    now: Test
    unseen: tuple[Shown, ...]


def dropped(earlier: Knowledge, now: Knowledge) -> Iterator[Drop]:
    """Yield what a person saw by the earlier rules and would no longer see by those of now."""
    kept = tuple(_kept(earlier, now))
    for test in kept:
        yield from _of_test(test.was, test.now)
        yield from _unseen_for_the_test(now, test)
    still = {test.was.id for test in kept}
    for gone in (test for test in earlier.tests.values() if test.id not in still):
        if gone.needs_state or any(True for _ in cautions_of(earlier, gone)):
            yield _retired("test", gone.id)
    for hazard in earlier.hazards.values():
        same = now.hazards.get(hazard.id)
        if same is None:
            yield _retired("hazard", hazard.id)
        else:
            yield from _of_hazard(hazard, same)
            yield from _unseen_for_the_hazard(now, same, kept)
            yield from _not_called_up(now, hazard, same)
    yield from _before_a_complaint(earlier, now)


def _kept(earlier: Knowledge, now: Knowledge) -> Iterator[_Kept]:
    renamed = {old: new for (old, _), (new, _) in now.aliases.items()}
    for was in earlier.tests.values():
        is_ = now.tests.get(was.id) or now.tests.get(renamed.get(was.id, ""))
        if is_ is not None:
            seen = tuple(cautions_of(now, is_))
            lost = (s for s in cautions_of(earlier, was) if not any(e.covers(s) for e in seen))
            yield _Kept(was, is_, tuple(lost))


def _retired(kind: str, id_: str) -> Drop:
    return Drop("retired", id_, "signed", id_, f"the {kind} {id_} and its cautions are gone")


def _of_test(was: Test, is_: Test) -> Iterator[Drop]:
    """Needs, people, state and exposure that ask for less; any state but locked out may do so."""

    def drop(key: str, word: str, what: str) -> Drop:
        return Drop("test", is_.id, key, word, f"{is_.id} {what}")

    for need in was.needs_state:
        if need not in is_.needs_state:
            yield drop("needs-state", need, f"no longer needs {need}")
    for profile in was.who:
        if profile not in is_.who:
            yield drop("who", profile, f"may be done by others than {profile}")
    if is_.work_state not in (was.work_state, "locked-out"):
        changed = f"was {was.work_state} work and is {is_.work_state} work now"
        yield drop("work-state", "work-state", changed)
    if EXPOSURES.index(is_.exposes) < EXPOSURES.index(was.exposes):
        yield drop("exposes", "exposes", f"exposed {was.exposes} parts and says {is_.exposes} now")
    if is_.wait_minutes < was.wait_minutes:
        waits = f"waited {was.wait_minutes:g} min and waits {is_.wait_minutes:g} now"
        yield drop("wait-minutes", "wait-minutes", waits)
    burnt = [outcome for outcome in was.leaves_unburnt if outcome not in is_.leaves_unburnt]
    if burnt:
        what = f"no longer leaves gas unburnt with {', '.join(burnt)}"
        yield drop("leaves-unburnt", "leaves-unburnt", what)
    unheard = [words for words in was.gone if words not in is_.gone]
    if unheard:
        yield drop("gone", "gone", f"no longer hears gone {', '.join(unheard[:_NAMED])}")


def _unseen_for_the_test(now: Knowledge, test: _Kept) -> Iterator[Drop]:
    """Cautions lost because the test no longer names them, or is no longer what calls them up."""
    hazards = (shown.hazard for shown in test.unseen if _by_the_test(now, test, shown))
    for hazard in dict.fromkeys(hazards):
        what = f"{test.now.id} no longer shows {hazard} before it"
        yield Drop("test", test.now.id, "hazards", hazard, what)


def _unseen_for_the_hazard(
    now: Knowledge, hazard: Hazard, kept: tuple[_Kept, ...]
) -> Iterator[Drop]:
    """Tests before which a hazard is gone because it no longer calls itself up there."""
    tests = [
        test.now.id
        for test in kept
        if any(s.hazard == hazard.id and not _by_the_test(now, test, s) for s in test.unseen)
    ]
    if tests:
        more = f" and {len(tests) - _NAMED} more" if len(tests) > _NAMED else ""
        what = f"{hazard.id} no longer comes before {', '.join(tests[:_NAMED])}{more}"
        yield Drop("hazard", hazard.id, "when", "when", what)


def _by_the_test(now: Knowledge, test: _Kept, lost: Shown) -> bool:
    """Whether a caution was lost by the test's own change, its hazard being what it was."""
    if lost.hazard not in now.hazards:
        return False
    return not lost.by_trigger or any(
        calls_up(trigger, test.was)
        and Shown(lost.hazard, trigger.equipment, trigger.profile).covers(lost)
        for trigger in now.hazards[lost.hazard].triggers
    )


def _of_hazard(was: Hazard, is_: Hazard) -> Iterator[Drop]:
    """A weaker signal word, STOP or text, or less of what a person may say and must wait for."""

    def drop(word: str, what: str) -> Drop:
        return Drop("hazard", is_.id, word, word, f"{is_.id} {what}")

    if SIGNALS.index(is_.signal) > SIGNALS.index(was.signal):
        yield drop("signal", f"was a {was.signal} and is a {is_.signal} now")
    if _words(is_.what_to_do) < _words(was.what_to_do):
        shorter = f"{_words(was.what_to_do)} words and says {_words(is_.what_to_do)} now"
        yield drop("what-to-do", f"said {shorter}")
    if _scope(is_) > _scope(was):
        yield drop("stop", f"stopped {_spoken(was)} and stops {_spoken(is_)} now")
    if was.keeps_off not in (None, "nothing", is_.keeps_off) and is_.keeps_off != "unit":
        yield drop("keeps-off", f"no longer keeps the {was.keeps_off} off")
    for word, had, has in (
        ("defer-to", was.defer_to, is_.defer_to),
        ("tag", was.tag, is_.tag),
        ("all-clear", was.all_clear, is_.all_clear),
    ):
        if had and not has:
            yield drop(word, f"says nothing under {word} any more")
    if other := [each for each in is_.remedies if was.remedies and each not in was.remedies]:
        yield drop("remedies", f"takes for a remedy now: {'; '.join(other)}")
    if was.remedies and not is_.remedies:
        yield drop("remedies", "says no more what takes it away")
    if was.tested and not is_.tested:
        yield drop("tested", "is no longer shown gone by a test alone")
    if any(finding not in is_.put_right for finding in was.put_right):
        yield drop("put-right", "no longer wants all seen put right that it did")
    unheard = [each for each in was.words if each not in is_.words]
    if unheard:
        yield drop("words", f"no longer hears {', '.join(unheard[:_NAMED])}")
    if not _forbids_all(is_):
        if any(ban not in is_.forbids for ban in was.forbids):
            yield drop("forbids", "no longer forbids all that it did")
        elif _forbids_all(was) and _scope(is_) <= _scope(was):
            yield drop("forbids", "no longer forbids everything")
    more = [role for role in is_.cleared_by if role not in was.cleared_by]
    if was.cleared_by and (more or not is_.cleared_by):
        yield drop("cleared-by", f"may be cleared by {', '.join(more) or 'anybody'} now")


def _forbids_all(hazard: Hazard) -> bool:
    """A STOP of a wider scope than a step forbids every test where it says nothing narrower."""
    return not hazard.forbids and hazard.stop is not None and hazard.stop.scope != "this-step"


def _words(text: str) -> int:
    return len(text.split())


def _scope(hazard: Hazard) -> int:
    return len(STOP_SCOPES) if hazard.stop is None else STOP_SCOPES.index(hazard.stop.scope)


def _spoken(hazard: Hazard) -> str:
    return "nothing" if hazard.stop is None else spoken(hazard.stop.scope)


def _not_called_up(now: Knowledge, was: Hazard, is_: Hazard) -> Iterator[Drop]:
    """Findings, complaints and faults on which a hazard no longer speaks up."""
    for trigger in was.triggers:
        for single in _singles(now, trigger):
            named = _named_in(single)
            if named is not None and not any(_as_wide(each, single) for each in is_.triggers):
                word, said = named
                yield Drop(
                    "hazard", is_.id, "when", word, f"{is_.id} no longer speaks up on {said}"
                )


def _singles(now: Knowledge, trigger: Trigger) -> Iterator[Trigger]:
    """The trigger with one outcome a finding, under the names of now; none if a test is gone."""
    alternatives = []
    for finding in trigger.findings:
        outcomes = []
        for outcome in finding.outcomes:
            test, word = now.aliases.get((finding.test, outcome), (finding.test, outcome))
            if test in now.tests:
                outcomes.append(Finding(test, (word,)))
        alternatives.append(outcomes)
    for findings in product(*alternatives):
        yield Trigger(
            findings=findings,
            as_taken=trigger.as_taken,
            complaint=trigger.complaint,
            fault=trigger.fault,
            test=trigger.test,
            work_state=trigger.work_state,
            exposes=trigger.exposes,
            profile=trigger.profile,
            equipment=trigger.equipment,
        )


def _named_in(trigger: Trigger) -> tuple[str, str] | None:
    """(what a signature names, how it is said) of a trigger that hangs on more than the test."""
    if trigger.findings:
        said = " and ".join(f"{f.test}: {f.outcomes[0]}" for f in trigger.findings)
        return trigger.findings[0].test, said
    word = trigger.complaint or trigger.fault
    return (word, word) if word else None


def _as_wide(now: Trigger, single: Trigger) -> bool:
    """Whether a trigger of now speaks up wherever the other one did."""
    shown = Shown("", now.equipment, now.profile)
    return (
        shown.covers(Shown("", single.equipment, single.profile))
        and now.complaint in (None, single.complaint)
        and now.fault in (None, single.fault)
        and now.test in (None, single.test)
        and now.work_state in (None, single.work_state)
        and now.exposes in (None, single.exposes)
        and now.as_taken <= single.as_taken
        and all(
            any(f.test == g.test and set(g.outcomes) <= set(f.outcomes) for g in single.findings)
            for f in now.findings
        )
    )


def _before_a_complaint(earlier: Knowledge, now: Knowledge) -> Iterator[Drop]:
    """Cautions that came before the first question of a call, or that went with the call."""
    for complaint in earlier.complaints.values():
        kept = now.complaints.get(complaint.id)
        for hazard in complaint.hazards_first:
            if hazard in now.hazards and (kept is None or hazard not in kept.hazards_first):
                what = f"{hazard} no longer comes first on a call of {complaint.id}"
                yield Drop("hazard", hazard, "when", complaint.id, what)
