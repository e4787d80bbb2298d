"""Text that is no answer, or could mean two things, is refused with the reason."""

import pytest

from troubleshoot.quantities.typed import Expected, NotUnderstood, read

AMPS = Expected("A")
THREE_VOLTS = Expected("V", legs=True, names=("AB", "BC", "CA"))


def refusal(text: str, expected: Expected) -> NotUnderstood:
    with pytest.raises(NotUnderstood) as refused:
        read(text, expected)
    assert refused.value.text == text
    assert refused.value.instead
    return refused.value


@pytest.mark.parametrize(
    ("text", "unit", "why"),
    [
        ("45 mohm", "Mohm", "milliohms or megohms"),
        ("45 MOHM", "Mohm", "milliohms or megohms"),
        ("45 m\u2126", "Mohm", "milliohms or megohms"),
        ("45m", "Mohm", "milli, mega"),
        ("5 m", "min", "milli, mega, minutes or months"),
        ("9.8 mF", "uF", "millifarads or microfarads"),
        ("9.8 MF", "uF", "millifarads or microfarads"),
        ("1,5", "A", "a comma that could be a decimal point"),
        ("0,350", "A", "a comma that could be a decimal point"),
        ("5,0000", "A", "a comma that could be a decimal point"),
        ("5,", "A", "a comma"),
        ("1:30", "min", "minutes and seconds or hours and minutes"),
        ("12/24", "A", "could be two values"),
        ("5/2", "A", "could be two values"),
        ("1/0", "A", "could be two values"),
        ("12-14", "A", "more than one number"),
        ("5 000", "A", "more than one number"),
        ("3x", "percent", "could be in times or ratio"),
        ("5 %", "percent-LEL", "is given as ratio where share of explosive limit is asked for"),
    ],
)
def test_text_with_two_meanings_is_refused(text: str, unit: str, why: str) -> None:
    assert why in refusal(text, Expected(unit)).why


@pytest.mark.parametrize(
    ("text", "unit", "kinds"),
    [
        ("12 V", "A", "voltage where current"),
        ("46 F", "uF", "temperature where capacitance"),
        ("118 psia", "psig", "absolute pressure where gauge pressure"),
        ("118 psig", "psi", "gauge pressure where pressure difference"),
        ("46 deg F", "A", "temperature where current"),
    ],
)
def test_a_unit_of_another_kind_is_refused(text: str, unit: str, kinds: str) -> None:
    assert refusal(text, Expected(unit)).why == f"is given as {kinds} is asked for"


@pytest.mark.parametrize(
    ("text", "instead"),
    [
        ("10 inHg", "write 10 in Hg vacuum where it is ten inches below the air outside"),
        ("-10 inHg vac", "write the vacuum without a minus"),
    ],
)
def test_mercury_at_a_gauge_is_asked_for_in_words_that_do(text: str, instead: str) -> None:
    """A minus before inches of vacuum made it a pressure above zero."""
    assert refusal(text, Expected("psig")).instead == instead


@pytest.mark.parametrize(
    "text",
    [
        "",
        "   ",
        "five",
        "V",
        ".",
        "-",
        "±2",
        "--6",
        "- 6",
        "1.2.3",
        "1..2",
        "1e5",
        "1e999",
        "9E+3 A",
        "10**10**10",
        "inf",
        "infinity",
        "nan",
        "\u221e",
        "0x10",
        "1_000",
        "$5",
        "12 A running",
        "12 furlongs",
        "OL",
        "open",
        "5\u00b2",
        "\u0661\u0662",
        "\uff15",
        "12\x00",
        "12\x1b[2J A",
        "12\u202e A",
        "12\ud800",
        "1234567890123456",
        "9" * 5000,
        "12 ± -2",
        "12 ± 2 ± 3",
        ">12 ± 2",
        ">>12",
        "1/2/3",
        "208/209/207",
        "L1 6.7",
        "8 lb 4 oz",
        "(12)",
        "12-",
        "12 A-6",
        "12 -A-",
        "\u00bd\u00bd",
        "1\u00bd/2",
    ],
)
def test_nonsense_is_refused_in_one_sentence(text: str) -> None:
    sentence = str(refusal(text, AMPS))
    assert sentence.endswith(".")
    assert sentence.isprintable()
    assert len(sentence) < 350


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("1/2", "could be a fraction or two legs"),
        ("208,209,207", "could part thousands or legs"),
        ("5,000", "could part thousands or legs"),
        ("208/209 / 207", "with and without blanks"),
        ("208/209, 207", "in two ways"),
        ("1/2, 3", "in two ways"),
        ("208 209", "more than one number"),
        ("480 mV/481/479", "leaves open the unit"),
        ("480 mV/481/479 V", "leaves open the unit"),
        ("208/209/207 ± 2", "leaves open which legs"),
        ("AB 208 AB 209", "names one leg twice"),
        ("AB 208 BA 209", "names one leg twice"),
        ("208 BC 209", "before its first name"),
        ("XY 208", "does not begin with a number"),
        ("AB", "does not begin with a number"),
        ("208/209/", "no unit I know"),
    ],
)
def test_legs_that_could_be_read_two_ways_are_refused(text: str, why: str) -> None:
    assert why in refusal(text, THREE_VOLTS).why


@pytest.mark.parametrize("text", ["1/2/3/4", "\u00bd\u00bd", "1/2 in 3/4", "1 1/2/1 3/4"])
def test_fractions_run_together_are_refused(text: str) -> None:
    assert refusal(text, Expected("in", legs=True)).why
    assert refusal("\u00bd\u00bd", THREE_VOLTS).why


@pytest.mark.parametrize(
    ("text", "why"),
    [("8 lb 17 oz", "more oz than one lb"), ("8 oz 4 lb", "more than one number")],
)
def test_pounds_and_ounces_must_fit_together(text: str, why: str) -> None:
    assert why in refusal(text, Expected("lb")).why


def test_two_named_values_are_refused_where_one_is_asked_for() -> None:
    single = Expected("psig", names=("suction", "head"))
    assert "several values" in refusal("suction 118 head 300", single).why


def test_an_open_capacitor_is_not_taken_for_over_range() -> None:
    refused = refusal("open", Expected("uF", allow_over_range=True))
    assert "does not begin with a number" in refused.why


def test_over_range_of_another_kind_is_refused() -> None:
    refused = refusal("OL V", Expected("Mohm", allow_over_range=True))
    assert "voltage where resistance" in refused.why


def test_the_sentence_says_what_was_typed_why_not_and_what_to_write() -> None:
    assert str(refusal("12 V", AMPS)) == (
        "'12 V' is given as voltage where current is asked for; "
        "write a number and its unit, like 12 A."
    )
    assert str(refusal("1,5", AMPS)) == (
        "'1,5' has a comma that could be a decimal point or a slip between thousands; "
        "write 1.5 or leave the comma out."
    )


@pytest.mark.parametrize(
    ("expected", "example"),
    [
        (AMPS, "like 12 A"),
        (Expected("in-wc"), "like 12 in. w.c."),
        (Expected("ratio"), "like 12"),
        (Expected("V", legs=True), "like 12/13/12 V"),
        (THREE_VOLTS, "like AB 12, BC 12, CA 12 V"),
        (Expected("Mohm", allow_over_range=True), "like 12 Mohm or OL"),
    ],
)
def test_the_example_fits_the_question_and_can_be_read(expected: Expected, example: str) -> None:
    instead = refusal("?", expected).instead
    assert instead.endswith(example)
    assert read(example.removeprefix("like ").removesuffix(" or OL"), expected).values
