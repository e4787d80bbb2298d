"""Data that does not change: `@frozen`, a frozen dataclass with slots that is quick to make.

The standard decorator compiles six methods a class, and a start makes 120 classes: a quarter of the
wait for the first question. Here only `__init__` is compiled; the rest knows the fields' names.
`fields`, `replace` and the type checker see an ordinary dataclass.
"""

from __future__ import annotations

from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from operator import attrgetter
from typing import Any, NoReturn, TypeVar, dataclass_transform

Class = TypeVar("Class", bound=type)
Same = TypeVar("Same")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def frozen(made: Class) -> Class:
    """Make a class of annotated fields frozen, with slots, equal and hashed by its fields."""
    return _finished(made, slots=True)


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def frozen_open(made: Class) -> Class:
    """The same without slots, for what is kept on disk: it is read back faster."""
    return _finished(made, slots=False)


def changed(one: Same, **news: Any) -> Same:
    """A copy of what has slots, with these fields: `replace` where it is asked for very often.

    That looks at how each field was declared, and takes twice as long.
    """
    copy: Same = one.__copy__()  # type: ignore[attr-defined]
    for name, value in news.items():
        object.__setattr__(copy, name, value)
    if hasattr(copy, "__post_init__"):
        copy.__post_init__()
    return copy


def _finished(made: Class, slots: bool) -> Class:
    made.__doc__ = made.__doc__ or ""  # else a signature is worked out for it
    whole: Class = dataclass(init=False, repr=False, eq=False, slots=slots)(made)  # type: ignore[assignment]
    for name, method in {"__init__": _initialiser(whole), **_by_fields(whole)}.items():
        if name not in whole.__dict__:
            setattr(whole, name, method)
    for name in ("__setattr__", "__delattr__"):
        setattr(whole, name, _refuse)
    return whole


def _initialiser(made: Any) -> Any:
    """`__init__`, compiled: defaults and what makes them are names it is given."""
    given: list[str] = []
    lines: list[str] = []
    known: dict[str, Any] = {"_set": object.__setattr__, "_absent": MISSING}
    has_slots = "__slots__" in made.__dict__
    for each in sorted(fields(made), key=lambda f: f.kw_only is True):
        if each.kw_only and "*" not in given:
            given.append("*")
        given.append(each.name + _default(each, known))
        value = each.name
        if each.default_factory is not MISSING:
            value = f"_make_{value}() if {value} is _absent else {value}"
        if has_slots:  # a slot is filled by itself in two thirds of the time
            known[f"_fill_{each.name}"] = getattr(made, each.name).__set__
            lines.append(f"    _fill_{each.name}(self, {value})\n")
        else:
            lines.append(f"    _set(self, {each.name!r}, {value})\n")
    if hasattr(made, "__post_init__"):
        lines.append("    self.__post_init__()\n")
    exec(f"def __init__(self, {', '.join(given)}):\n{''.join(lines) or '    pass'}", known)
    return known["__init__"]


def _default(each: Field[Any], known: dict[str, Any]) -> str:
    """What stands behind a parameter, its value put where `__init__` finds it."""
    if each.default_factory is not MISSING:
        known[f"_make_{each.name}"] = each.default_factory
        return "=_absent"
    if each.default is not MISSING:
        known[f"_default_{each.name}"] = each.default
        return f"=_default_{each.name}"
    return ""


def _by_fields(made: Any) -> dict[str, Any]:
    """Equality, hash and picture of a class, and how it is kept and read back."""
    names = tuple(each.name for each in fields(made))
    values = attrgetter(*names) if names else _nothing

    def equal(self: Any, other: object) -> bool:
        same = other.__class__ is self.__class__
        return values(self) == values(other) if same else NotImplemented

    def hashed(self: Any) -> int:
        return hash(values(self))

    def picture(self: Any) -> str:
        said = ", ".join(f"{name}={getattr(self, name)!r}" for name in names)
        return f"{self.__class__.__qualname__}({said})"

    def kept(self: Any) -> dict[str, Any]:
        return {name: getattr(self, name) for name in names}

    def copied(self: Any) -> Any:
        copy = object.__new__(self.__class__)
        for fill, read in slots:
            fill(copy, read(self))
        return copy

    methods = {"__eq__": equal, "__hash__": hashed, "__repr__": picture}
    if "__slots__" in made.__dict__:
        slots = [(each.__set__, each.__get__) for each in (getattr(made, name) for name in names)]
        methods |= {"__getstate__": kept, "__setstate__": _read_back, "__copy__": copied}
    return methods


def _nothing(_: object) -> tuple[()]:
    return ()


def _read_back(self: object, state: dict[str, Any]) -> None:
    for name, value in state.items():
        object.__setattr__(self, name, value)


def _refuse(self: object, name: str, *value: object) -> NoReturn:
    raise FrozenInstanceError(f"{type(self).__qualname__}.{name} does not change")
