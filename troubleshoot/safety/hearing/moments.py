"""A time as people type it: 14:30, 0840, 2:44 pm, just now, 10 min ago, yesterday 16:00."""

from __future__ import annotations

import re
from datetime import datetime, time, timedelta
from typing import Final

from troubleshoot.outside.text import as_said

_COUNT: Final = r"\d{1,3}|an?|half an|one|two|three|five|ten|fifteen|twenty|thirty"
_UNIT: Final = r"(?:min|mins|minute|minutes|h|hr|hrs|hour|hours)"
_LEAD: Final = re.compile(r"^(?:at|about|around|approx\.?|~) ?")
_DAY: Final = re.compile(r"^(?P<day>today|yesterday|\d{4}-\d{1,2}-\d{1,2})(?:,? (?:at )?|t|$)")
_CLOCK: Final = re.compile(
    r"(?P<hour>\d{1,2})(?:[:.h]?(?P<minute>[0-5]\d))?"
    r"(?: ?(?P<half>[ap])\.? ?m\.?| ?(?P<hours>h|hrs?|hours?)\.?)?"
)
_BARE: Final = re.compile(r"\d{3,4}")
"""A time without a mark between hours and minutes, which may be any number: 0840."""
_OF_OTHER_THINGS: Final = frozenset(
    {"apt", "badge", "call", "called", "code", "dial", "dialed", "dialled", "ext", "extension"}
    | {"floor", "line", "no", "number", "rm", "room", "rtu", "store", "suite", "truck", "unit"}
)
"""Straight before such figures they say that these are none."""
_CALLS_HELP: Final = frozenset({"000", "112", "911"})
_OTHER_DAY: Final = re.compile(
    r"\b(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow|last|next)\b"
)
"""Days on which a time alone says nothing."""
_TO_COME: Final = re.compile(
    r"\b(?:tomorrow|later|soon|will|gonna|going to|next (?:week|\w+day))\b"
    rf"|\bin (?:{_COUNT}) ?{_UNIT}\b|\w'll\b"
)
_NOW: Final = re.compile(r"(?:just )?now|this minute|a moment ago|right now")
_AGO: Final = re.compile(rf"(?P<count>{_COUNT}) ?(?P<unit>{_UNIT}) ago")
_NUMBERS: Final = {
    "a": 1.0, "an": 1.0, "half an": 0.5, "one": 1.0, "two": 2.0, "three": 3.0, "five": 5.0,
    "ten": 10.0, "fifteen": 15.0, "twenty": 20.0, "thirty": 30.0,
}  # fmt: skip
_LONGEST: Final = 5
"""Words of the longest time: yesterday at 3:10 p m."""
_NAMED: Final = {"noon": time(12), "midnight": time(0)}


def moment(typed: str, now: datetime) -> datetime | None:
    """The minute that was meant, on the clock of `now`; None where that is no time.

    Without am or pm an hour up to 11 may be of either half of the day: the latest that is past
    counts, and where both are to come the earlier.
    """
    text = _LEAD.sub("", " ".join(typed.lower().split()))
    minute = now.replace(second=0, microsecond=0)
    if _NOW.fullmatch(text):
        return minute
    if match := _AGO.fullmatch(text):
        count = _NUMBERS.get(match["count"]) or float(match["count"])
        return minute - timedelta(minutes=round(count * (1 if match["unit"][0] == "m" else 60)))
    day, rest = _day_of(text, minute)
    times = _times(rest)
    if day is None or not times:
        return None
    moments = [minute.replace(year=day.year, month=day.month, day=day.day, hour=each.hour,
                              minute=each.minute) for each in times]  # fmt: skip
    past = [each for each in moments if each <= minute]
    return max(past) if past else min(moments)


def moment_within(typed: str, now: datetime) -> datetime | None:
    """The time that stands somewhere in a text, as in "the boss, 3:10"; None where none does."""
    if _OTHER_DAY.search(as_said(typed)):
        return None
    words = typed.replace(",", " ").replace(";", " ").split()
    for length in range(min(len(words), _LONGEST), 0, -1):
        for start in range(len(words) - length + 1):
            end = start + length
            if _is_bare(words[start:end]) and not _may_be_time(words, start):
                continue
            found = moment(" ".join(words[start:end]), now)
            if found is not None:
                return found
    return None


def _is_bare(words: list[str]) -> bool:
    return len(words) == 1 and _BARE.fullmatch(words[0]) is not None


def _may_be_time(words: list[str], at: int) -> bool:
    """Whether figures among words are a time: at either end, and the number of nothing else."""
    before = words[at - 1].lower() if at else ""
    return at in (0, len(words) - 1) and before not in _OF_OTHER_THINGS


def names_a_time(typed: str) -> bool:
    """Whether a time stands anywhere in a text; on which day does not matter.

    Figures alone are none here: they may be the number of a unit.
    """
    marked = " ".join(word for word in typed.split() if not _BARE.fullmatch(word.strip(",;")))
    return moment_within(marked, datetime(2000, 1, 2)) is not None


def is_to_come(typed: str) -> bool:
    """Whether what is told has still to come: tomorrow, later, in ten minutes, he will."""
    return _TO_COME.search(as_said(typed)) is not None


def with_day(at: datetime, now: datetime) -> str:
    """A moment with its day, as people say it: 3:10 pm today."""
    hour, days = at.hour % 12 or 12, (now.date() - at.date()).days
    return (
        f"{hour}:{at.minute:02d} {'am' if at.hour < 12 else 'pm'} "
        f"{'today' if days == 0 else 'yesterday' if days == 1 else f'on {at.date().isoformat()}'}"
    )


def _day_of(text: str, now: datetime) -> tuple[datetime | None, str]:
    """The day that is named, else today, and what is left of the text; no day where it is none."""
    match = _DAY.match(text)
    if match is None:
        return now, text
    rest = text[match.end() :]
    if match["day"] in ("today", "yesterday"):
        return now - timedelta(days=match["day"] == "yesterday"), rest
    try:
        return datetime.strptime(match["day"], "%Y-%m-%d"), rest
    except ValueError:
        return None, rest


def _times(text: str) -> tuple[time, ...]:
    """The times of day that a text may mean."""
    if text in _NAMED:
        return (_NAMED[text],)
    match = _CLOCK.fullmatch(text)
    if match is None or text in _CALLS_HELP or (match["minute"] is None and match["half"] is None):
        return ()
    hour, minute = int(match["hour"]), int(match["minute"] or 0)
    if match["half"] is not None:
        late = 12 if match["half"] == "p" else 0
        return (time(hour % 12 + late, minute),) if 1 <= hour <= 12 else ()
    if hour > 23:
        return ()
    either = 1 <= hour <= 11 and not match["hour"].startswith("0")
    return (time(hour, minute), time(hour + 12, minute)) if either else (time(hour, minute),)
