"""What a reading is called where gauges are read out: suction 128, sl 62, 128 over 340."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written

if TYPE_CHECKING:
    from troubleshoot.knowledge.shapes import ListOf, Name, Text
    from troubleshoot.knowledge.vocabulary import PlaceKind


@written("short words")
@frozen_open
class ShortWords:
    """Words beside which a typed number is the reading of this test.

    The same words may stand at several tests: the unit typed and what the number can be tell which
    is meant, or it is asked. `over` and `out` are of two numbers, the second of the test that they
    name: 128 over 340, 75 in 57 out. Without words the two numbers alone are enough.
    """

    words: Annotated[tuple[str, ...], ListOf(Text(longest=40), most=40), "in small letters"] = ()
    at: Annotated[PlaceKind | None, "the kind of place that the words name"] = None
    with_unit: Annotated[bool, "only where the number has its unit with it"] = False
    over: Annotated[str | None, Name("test"), "the test of the second number, behind over"] = None
    out: Annotated[
        str | None, Name("test"), "the test of the second number, where one goes in and one out"
    ] = None
