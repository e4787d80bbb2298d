"""Refrigerant as it is told: its way, weight, circuit and cylinder, and what is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Layout
from troubleshoot.visit.hearing.weighed import NotWeighed, weighing_told
from troubleshoot.visit.weighing import Weighing
from troubleshoot.visit.weights import cylinder_says, pounds_of, weighing_words

ONE, TWO = Layout((("circuit", 1),)), Layout((("circuit", 2),))


@pytest.mark.parametrize(
    ("layout", "words", "weighing", "pounds"),
    [
        (ONE, "added 1 lb 4 oz from C-7", Weighing("added", "circuit 1", "1 lb 4 oz", "C-7"), 1.25),
        (
            TWO, "recovered 9.2 lb from circuit 2 into recovery cylinder R 3",
            Weighing("recovered", "circuit 2", "9.2 lb", "R 3"), 9.2,
        ),
        (
            TWO, "added 0.5 kg, circuit b, from tank C-7, before 28.4 lb, after 27.3 lb, tare 11",
            Weighing("added", "circuit 2", "0.5 kg", "C-7", "28.4 lb", "27.3 lb", "11"), 1.1023,
        ),
        (
            ONE, "ADDED before 28.4 lb after 27.2 lb",
            Weighing("added", "circuit 1", before="28.4 lb", after="27.2 lb"), 1.2,
        ),
        (TWO, "added 2 lb c2 from C7", Weighing("added", "circuit 2", "2 lb", "C7"), 2.0),
        (TWO, "added 2 lb from c2 to c1", Weighing("added", "circuit 1", "2 lb", "c2"), 2.0),
        (None, "added 2 lb to circuit 3", Weighing("added", "circuit 3", "2 lb"), 2.0),
        (ONE, "weighed in 570 g", Weighing("added", "circuit 1", "570 g"), 1.2566),
    ],
)  # fmt: skip
def test_a_weighing_is_taken_as_it_is_told(
    layout: Layout | None, words: str, weighing: Weighing, pounds: float, shipped: Knowledge
) -> None:
    """570 g and 0.5 kg by the pound of 0.45359237 kg (NIST Handbook 44, appendix C)."""
    told = weighing_told(shipped, layout, words)
    assert told == weighing
    assert pounds_of(shipped, told) == pytest.approx(pounds, abs=5e-5)


@pytest.mark.parametrize(
    ("layout", "words", "why"),
    [
        (TWO, "added 2 lb", "say which: circuit 1 or circuit 2"),
        (None, "added 2 lb", "say which circuit, as: circuit 1"),
        (TWO, "added 2 lb circuit 1 circuit 2", "two circuits"),
        (ONE, "added 2 lb circuit 3", 'this unit has no "circuit 3"'),
        (ONE, "recovered 2 lb from R-3", "what is recovered goes into one"),
        (ONE, "added lots", "number"),
        (ONE, "added", "it tells no weight"),
        (ONE, "added 2 psi", "where mass is asked for"),
        (ONE, "added -2 lb", "cannot be"),
        (ONE, "added >2 lb", "is a bound"),
        (ONE, "added 0 lb", "nothing was added"),
        (ONE, "added before 27 lb after 28 lb", "cannot be|nothing was added"),
        (ONE, "added 1 lb from", "told without what"),
        (ONE, "added 1 lb from C-1 from C-2", "told twice"),
        (ONE, "1 lb", "say added or recovered first"),
    ],
)
def test_what_is_no_weighing_is_refused_with_what_would_do(
    layout: Layout | None, words: str, why: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotWeighed, match=why):
        weighing_told(shipped, layout, words)


@given(st.text(max_size=60))
def test_any_words_are_a_weighing_or_refused_in_a_sentence(shipped: Knowledge, words: str) -> None:
    for said in (words, f"added {words}", f"recovered 2 lb {words}"):
        try:
            told = weighing_told(shipped, TWO, said)
        except NotWeighed as error:
            assert str(error)
        else:
            assert pounds_of(shipped, told) and weighing_words(shipped, told)


@given(
    st.sampled_from(["added", "recovered"]),
    st.integers(min_value=1, max_value=20_000),
    st.sampled_from(["lb", "oz", "kg", "g"]),
    st.sampled_from([1, 2]),
)
def test_whatever_is_weighed_is_read_back_from_its_words(
    shipped: Knowledge, way: str, hundredths: int, unit: str, circuit: int
) -> None:
    weight = f"{hundredths / 100:.2f} {unit}"
    where = "from" if way == "added" else "into"
    words = f"{way} {weight}, circuit {circuit}, {where} C-1"
    told = weighing_told(shipped, TWO, words)
    assert told == Weighing(way, f"circuit {circuit}", weight, "C-1")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("added 1.2 lb from C-7 before 28.4 lb after 27.2 lb", []),
        (
            "added 5 lb from C-7 before 28.4 lb after 27.2 lb",
            ["The cylinder's weights do not fit: 5.00 lb added, and by them it was 1.20 lb."],
        ),
        (
            "recovered 9.2 lb into R-3 before 24.0 lb after 33.2 lb tare 24.0 lb",
            ["Left in the cylinder: 9.20 lb."],
        ),
        (
            "added 1.2 lb from C-7 before 28.4 lb after 27.2 lb tare 28 lb",
            ["The cylinder was lighter after it than its tare: one of the two is wrong."],
        ),
        ("added 1.3 lb from C-7 before 28.4 lb after 27.2 lb", []),
    ],
)
def test_a_cylinder_that_does_not_bear_the_weight_out_is_said(
    words: str, says: list[str], shipped: Knowledge
) -> None:
    """0.1 lb of difference is what the scale itself may err (0.5 % and a count, twice)."""
    assert [*cylinder_says(shipped, weighing_told(shipped, ONE, words))] == says
