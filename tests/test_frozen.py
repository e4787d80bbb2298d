"""`@frozen` makes what the standard frozen dataclass makes."""

from __future__ import annotations

import copy
import pickle
from dataclasses import FrozenInstanceError, dataclass, field, fields, replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.frozen import changed, frozen, frozen_open


@frozen
class Slotted:
    """Of slots."""

    first: int
    second: str = "b"
    third: dict[str, int] = field(default_factory=dict)
    last: tuple[int, ...] = field(default=(), kw_only=True)


@frozen_open
class Open:
    """Of a dictionary."""

    first: int
    second: str = "b"
    third: dict[str, int] = field(default_factory=dict)
    last: tuple[int, ...] = field(default=(), kw_only=True)


@dataclass(frozen=True, slots=True)
class Standard:
    """What both are held to."""

    first: int
    second: str = "b"
    third: dict[str, int] = field(default_factory=dict)
    last: tuple[int, ...] = field(default=(), kw_only=True)


@frozen
class Longer(Slotted):
    """One that goes on from another, and looks at itself when it is made."""

    more: float = 0.0

    def __post_init__(self) -> None:
        if self.more < 0:
            raise ValueError("less than nothing")


@frozen
class Single:
    """Of one field."""

    only: int


@frozen
class Bare:
    """Of nothing."""


VALUES = st.fixed_dictionaries(
    {"first": st.integers()},
    optional={
        "second": st.text(max_size=2),
        "third": st.dictionaries(st.text(max_size=1), st.integers(), max_size=2),
        "last": st.tuples(st.integers()),
    },
)


@pytest.mark.parametrize("ours", [Slotted, Open])
@given(one=VALUES, other=VALUES)
def test_it_is_made_compared_shown_and_changed_alike(
    ours: type[Any], one: dict[str, Any], other: dict[str, Any]
) -> None:
    standard = Standard(**one)
    assert repr(ours(**one)) == repr(standard).replace("Standard", ours.__name__)
    assert (ours(**one) == ours(**other)) == (standard == Standard(**other))
    assert replace(ours(**one), **other) == ours(**(one | other))
    assert [f.name for f in fields(ours)] == [f.name for f in fields(standard)]


@pytest.mark.parametrize("ours", [Slotted, Open, Longer])
def test_it_does_not_change(ours: type[Any]) -> None:
    kept = ours(1)
    with pytest.raises(FrozenInstanceError, match="first"):
        kept.first = 2
    with pytest.raises(FrozenInstanceError, match="first"):
        del kept.first
    assert kept.first == 1


@pytest.mark.parametrize("ours", [Slotted, Open, Longer])
def test_it_is_kept_and_read_back(ours: type[Any]) -> None:
    kept = ours(1, third={"a": 1}, last=(3,))
    assert pickle.loads(pickle.dumps(kept)) == kept
    assert copy.deepcopy(kept) == copy.copy(kept) == kept


def test_it_is_hashed_by_its_fields() -> None:
    assert hash(Longer(1, "x", more=2.0, third=())) == hash(Longer(1, "x", more=2.0, third=()))  # type: ignore[arg-type]
    assert {Bare(), Bare()} == {Bare()}
    with pytest.raises(TypeError, match="unhashable"):
        hash(Slotted(1))


def test_classes_of_the_same_values_differ() -> None:
    assert Slotted(1) != Open(1)
    assert Slotted(1) != Longer(1)


def test_what_is_left_out_or_too_much_is_told() -> None:
    with pytest.raises(TypeError, match="first"):
        Slotted()  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="positional"):
        Slotted(1, "b", {}, (1,))  # type: ignore[misc]
    with pytest.raises(ValueError, match="less"):
        Longer(1, more=-1.0)


def test_slots_leave_no_room_for_more() -> None:
    assert not hasattr(Slotted(1), "__dict__")
    assert hasattr(Open(1), "__dict__")
    assert Slotted.__doc__ == "Of slots."


def test_a_changed_copy_is_what_replace_makes() -> None:
    whole = Slotted(1, third={"a": 1}, last=(2,))
    assert changed(whole, first=3, last=()) == replace(whole, first=3, last=())
    assert changed(Longer(1), more=2.0) == Longer(1, more=2.0)
    assert changed(Single(1), only=2) == Single(2)
    assert changed(Bare()) == Bare()
    assert whole == Slotted(1, third={"a": 1}, last=(2,))
    with pytest.raises(AttributeError, match="fourth"):
        changed(whole, fourth=1)
    with pytest.raises(ValueError, match="less than nothing"):
        changed(Longer(1), more=-1.0)
