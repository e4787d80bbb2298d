"""How a class of the model says how it is written in rule files. Light: this loads at every start.

A class is decorated with `written`, and each field that an author fills in is annotated with what
it means to them and, where its type does not tell, with its shape:

    @written("stop")
    @dataclass(frozen=True)
    class Stop:
        scope: Annotated[StopScope, "how much stops"]
        covers: Annotated[str, "what stops, and until when"]

The key is the field's name with hyphens; it is required where the field has no default. A field
that is not annotated so is no key. `forms.declared.form_of` makes the form of it. Annotations stay
text until rule files are read as YAML, checked or formatted, so that a start pays nothing for them.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

_Class = TypeVar("_Class", bound=type)


def written(
    name: str, *, some_of: tuple[str, ...] = (), block: bool = False
) -> Callable[[_Class], _Class]:
    """Mark a dataclass as what an entry called `name` becomes; the rest as in `shapes.Record`."""

    def mark(thing: _Class) -> _Class:
        thing.WRITTEN = (name, some_of, block)  # type: ignore[attr-defined]
        return thing

    return mark
