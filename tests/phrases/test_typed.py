"""What a person types: taken as it stands, or refused with a sentence that says what to type."""

from datetime import date, time, timedelta

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from queueboard.errors import TypedError
from queueboard.intake.small import read_number
from queueboard.phrases.typed import (
    Tag,
    parse_cents,
    parse_count,
    parse_day,
    parse_day_and_time,
    parse_tag,
    parse_time,
)

THURSDAY = date(2026, 11, 26)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("2026-11-27", date(2026, 11, 27)),
        ("27.11", date(2026, 11, 27)),
        ("27.11.", date(2026, 11, 27)),
        (" 27.11.2026 ", date(2026, 11, 27)),
        ("26.11", THURSDAY),
        ("3.1", date(2027, 1, 3)),
        ("fri", date(2026, 11, 27)),
        ("Friday", date(2026, 11, 27)),
        ("we", date(2026, 12, 2)),
        ("today", THURSDAY),
        ("Tomorrow", date(2026, 11, 27)),
        ("+3", date(2026, 11, 29)),
        ("+0", THURSDAY),
        ("2026-11-01", date(2026, 11, 1)),
        ("25 dec", date(2026, 12, 25)),
        ("Dec 25", date(2026, 12, 25)),
        ("december 25th", date(2026, 12, 25)),
        ("25. december", date(2026, 12, 25)),
        ("1st march", date(2027, 3, 1)),
        ("25dec", date(2026, 12, 25)),
        ("Sept. 3, 2027", date(2027, 9, 3)),
        ("3 sep 2027", date(2027, 9, 3)),
        ("29.2.2028", date(2028, 2, 29)),
    ],
)
def test_a_day_is_read_in_each_way_it_is_said(typed: str, day: date) -> None:
    """ISO dates, day and month, weekdays, today, tomorrow and days from now are read."""
    assert parse_day(typed, THURSDAY) == day


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("30.2", "There is no 30.2.2027"),
        ("2026-02-29", "There is no 29.2.2026"),
        ("2026-13-01", "There is no 1.13.2026"),
        ("thu", "Today is Thursday: type today, or [+]7"),
        ("25.11", "more than half a year away. Type it with its year: 2027-11-25"),
        ("25 nov", "more than half a year away. Type it with its year: 2027-11-25"),
        ("30 feb", "There is no 30.2.2027"),
        ("25 decem ber", "is no day. Type it like 2026-11-27, 27.11, 27 nov, fri"),
        ("25 de", "is no day"),
        ("25 deck", "is no day"),
        ("31 dec 0000", "There is no 31.12.0"),
        ("٢٥ dec", "is no day"),
        ("3/4", "day and month or month and day"),
        ("t", "is no day"),
        ("next friday", "is no day"),
        ("", "is no day"),
        ("0.0", "There is no"),
        ("2062-11-27", "too far"),
        ("+2000", "too far"),
        ("[red]x[/]", "“\\[red\\]x\\[/\\]” is no day"),
        ("２７.11", "is no day"),
    ],
)
def test_a_day_that_does_not_exist_or_is_in_doubt_is_asked_back(typed: str, says: str) -> None:
    """Impossible, doubtful and far-off days get a sentence with what to type."""
    with pytest.raises(TypedError, match=says):
        parse_day(typed, THURSDAY)


@given(st.dates(date(2026, 1, 1), date(2027, 6, 1)))
def test_an_iso_date_reads_back_as_itself(day: date) -> None:
    """What the program writes it also reads."""
    assert parse_day(day.isoformat(), THURSDAY) == day


@given(st.dates(date(2020, 1, 1), date(2040, 1, 1)), st.integers(1, 6))
def test_a_weekday_is_always_within_the_coming_six_days(today: date, ahead: int) -> None:
    """A weekday's name means the next such day, on any day of any year."""
    day = today + timedelta(days=ahead)

    name = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"][day.weekday()]

    assert parse_day(name, today) == day


@given(st.text(max_size=60))
@example("\x1b]0;title\x07")
@example("3\x1b[31m")
def test_no_text_makes_a_parser_fall_over(text: str) -> None:
    """Whatever is typed, the answer is a value or a sentence, never another error."""
    for parse in (
        parse_cents,
        parse_count,
        parse_tag,
        parse_time,
        lambda t: parse_day(t, THURSDAY),
    ):
        sentence = "Taken."
        try:
            parse(text)
        except TypedError as error:
            sentence = str(error)

        assert sentence.endswith(".")
        assert sentence.isprintable()


@pytest.mark.parametrize(
    ("typed", "cents"),
    [("12", 1200), ("12.50", 1250), ("12,50", 1250), ("12.5", 1250), ("0", 0), (" 0,05 ", 5), ("99999.99", 9999999)],
)
def test_an_amount_is_read_as_whole_cents(typed: str, cents: int) -> None:
    """Point and comma both part the cents."""
    assert parse_cents(typed) == cents


@pytest.mark.parametrize("typed", ["", "-5", "1.234", "1.234,50", "1,234.50", "12 EUR", "1e3", "100000", "12.", "¹²"])
def test_an_amount_in_doubt_is_refused(typed: str) -> None:
    """Signs for thousands, minus, words and too much money are refused."""
    with pytest.raises(TypedError):
        parse_cents(typed)


@given(st.integers(0, 9_999_999))
def test_every_amount_reads_back(cents: int) -> None:
    """An amount written with two digits of cents reads back as itself."""
    assert parse_cents(f"{cents // 100}.{cents % 100:02}") == cents


@pytest.mark.parametrize(("typed", "count"), [("1", 1), ("013", 13), (" 999 ", 999), ("0" * 6000 + "7", 7)])
def test_a_count_is_read(typed: str, count: int) -> None:
    """Counts from 1 to 999 are taken."""
    assert parse_count(typed) == count


@pytest.mark.parametrize("typed", ["0", "10000", "1000", "-3", "3.5", "", "three", "٣", "9" * 6000, "0" * 6000])
def test_a_count_that_cannot_be_is_refused(typed: str) -> None:
    """Nothing, too many and things that are no number are refused with the range."""
    with pytest.raises(TypedError, match="1 to 999"):
        parse_count(typed)


@pytest.mark.parametrize(
    ("typed", "moment"),
    [
        ("16:00", time(16)),
        ("16.30", time(16, 30)),
        ("1630", time(16, 30)),
        ("16", time(16)),
        ("4pm", time(16)),
        ("4:30 PM", time(16, 30)),
        ("12am", time(0)),
        ("12 pm", time(12)),
        ("9:15", time(9, 15)),
        ("04:00", time(4)),
        ("00:00", time(0)),
    ],
)
def test_a_time_of_day_is_read(typed: str, moment: time) -> None:
    """The 24-hour clock and am/pm are read."""
    assert parse_time(typed) == moment


@pytest.mark.parametrize("typed", ["4", "4:30", "9", "25:00", "12:60", "13pm", "0am", "noon", "", "123"])
def test_a_time_in_doubt_is_asked_back(typed: str) -> None:
    """Four o'clock may be either; what is on no clock is refused."""
    with pytest.raises(TypedError):
        parse_time(typed)


@pytest.mark.parametrize(
    ("typed", "tag"),
    [("417", Tag(box=417)), ("417-3", Tag(box=417, knife=3)), (" 417 - 13 ", Tag(box=417, knife=13))],
)
def test_a_tag_is_read(typed: str, tag: Tag) -> None:
    """A box number alone, or box and knife with a dash."""
    assert parse_tag(typed) == tag


@pytest.mark.parametrize("typed", ["", "-", "417-", "0", "417-0", "417/3", "4l7", "417-3-1", "1234567"])
def test_what_is_no_tag_is_refused(typed: str) -> None:
    """The sentence shows how a tag looks."""
    with pytest.raises(TypedError, match="417-3"):
        parse_tag(typed)


@given(st.integers(1, 999_999), st.none() | st.integers(1, 999))
def test_every_tag_reads_back(box: int, knife: int | None) -> None:
    """A tag written out reads back as itself."""
    tag = Tag(box=box, knife=knife)

    assert parse_tag(str(tag)) == tag


@pytest.mark.parametrize("figure", ["٣", "３", "३", "²"], ids=ascii)
def test_only_plain_figures_are_read_as_numbers(figure: str) -> None:
    """Figures of other scripts are asked back in every field alike, never read in one and refused in the next."""
    parsers = (parse_cents, parse_count, parse_tag, parse_time, read_number)
    for typed in (figure, f"1{figure}", f"{figure}1"):
        for parse in parsers:
            with pytest.raises(TypedError, match=typed):
                parse(typed)
        with pytest.raises(TypedError, match="is no day"):
            parse_day(f"{typed}.11", THURSDAY)


@pytest.mark.parametrize(
    ("typed", "day", "at"),
    [
        ("fri", date(2026, 11, 27), None),
        ("today 16:00", THURSDAY, time(16)),
        ("27 nov 4pm", date(2026, 11, 27), time(16)),
        ("+3  0900", date(2026, 11, 29), time(9)),
        ("nov 27", date(2026, 11, 27), None),
    ],
)
def test_a_day_with_or_without_a_time(typed: str, day: date, at: time | None) -> None:
    """A time may stand behind the day, in each way a time is read."""
    assert parse_day_and_time(typed, THURSDAY) == (day, at)


@pytest.mark.parametrize(
    ("typed", "says"), [("never", "is no day"), ("", "is no day"), ("16:00", "is no day"), ("fri 4", "two ways")]
)
def test_what_is_in_doubt_of_day_or_time_is_asked_back(typed: str, says: str) -> None:
    """What is no day, and a time that can be read two ways."""
    with pytest.raises(TypedError, match=says):
        parse_day_and_time(typed, THURSDAY)
