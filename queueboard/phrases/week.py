"""How full the days are: minutes booked against minutes there, in figures and as a bar that needs no colour."""

from datetime import date, timedelta

from queueboard.clean import cell_text
from queueboard.phrases.bars import measure
from queueboard.phrases.dates import date_words
from queueboard.shop.picture import Picture
from queueboard.shop.quoting import DayLoad, minutes_after, rush_minutes

BAR = 24
"""Cells for the day with the most bench minutes."""
WHY_ROOM = (
    "Of free minutes a rush may take what is not kept for work that may stray;",
    "on a full day it may take the place of work that is due later.",
)
"""Why the room for a rush is neither what a day has free nor nothing on a full one."""


def load_bar(load: DayLoad, most_minutes: int) -> str:
    """The day's bench as cells, booked ones first; a day with anything booked has at least one, and so one with room.

    most_minutes: those of the fullest day, which takes the whole bar.
    """
    if load.closed or not load.there_minutes:
        return ""
    return measure(load.planned_minutes, load.there_minutes, max(1, BAR * load.there_minutes // max(1, most_minutes)))


def load_words(load: DayLoad, cells: int = 0) -> str:
    """120 of 198 min booked, 78 free; full; no bench time; CLOSED · the fair; CLOSED on Sundays.

    cells: at least so many for the minutes booked, where they stand under each other.
    """
    if load.closed:
        why = cell_text(load.closed)
        return f"CLOSED {why.removeprefix('closed ')}" if why.startswith("closed ") else f"CLOSED · {why}"
    if not load.there_minutes:
        return "no bench time"
    free = load.there_minutes - load.planned_minutes
    booked = str(load.planned_minutes).rjust(cells)
    return f"{booked} of {load.there_minutes} min booked, {f'{free} free' if free else 'full'}"


def due_words(load: DayLoad) -> str:
    """40 min of work due; empty when nothing is due that day."""
    return f"{load.due_minutes} min of work due" if load.due_minutes else ""


def day_head_words(load: DayLoad, today: date) -> str:
    """Thu 26 Nov, with the word today."""
    return f"{date_words(load.day, today)}{' today' if load.day == today else ''}"


def rush_words(picture: Picture) -> str:
    """Room for a rush: 85 min today, 120 min by tomorrow."""
    today = picture.now.date()
    return room_words(rush_minutes(picture, today), rush_minutes(picture, today + timedelta(days=1)))


def room_words(today: int, tomorrow: int) -> str:
    """The same of minutes that are known already: the one wording of this room on all screens and papers."""
    return f"room for a rush: {today} min today, {tomorrow} min by tomorrow"


def later_words(picture: Picture, loads: tuple[DayLoad, ...]) -> str:
    """After these days: 90 min of work, set-ups included; after these days: nothing yet."""
    beyond = minutes_after(picture, loads[-1].day)
    return f"after these days: {f'{beyond} min of work' if beyond else 'nothing yet'}"
