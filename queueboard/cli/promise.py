"""The command that answers at the counter: when could these knives be ready, and can it be done by a day."""

import argparse

from queueboard.cli.common import FINE, NO, Add, Clock, picture_of, say, say_json
from queueboard.errors import RuleError, TypedError
from queueboard.intake.lines import read_lines
from queueboard.intake.small import read_number
from queueboard.papers.promise import promise_facts, promise_sheet
from queueboard.phrases.dates import date_words
from queueboard.phrases.typed import parse_day, parse_time
from queueboard.shop.picture import Picture
from queueboard.shop.receiving import MOST_CARRIER_DAYS, MOST_KNIVES
from queueboard.shop.wishing import Wish, advise
from queueboard.words import GoesBy, PromiseKind


def add_commands(add: Add) -> None:
    """Add it to the command line, with what can be said about the knives and the day."""
    asked = add("promise", promise, "when these knives could be ready, and whether by a day (code 4: no)")
    asked.add_argument("knives", nargs="+", help="as at receiving, with commas between: 4 chef 8, 1 bread")
    way = asked.add_mutually_exclusive_group()
    way.add_argument("--by-mail", action="store_true", help="goes back as a parcel, in hand by the day told")
    way.add_argument("--pick-up", action="store_true", help="is fetched at the counter (as when nothing is said)")
    asked.add_argument("--carrier-days", metavar="N", help="of a parcel, else those of the settings")
    asked.add_argument("--on", metavar="DAY", help="can it be done by this day: fri, +3, 25 dec, 2026-12-31")
    asked.add_argument("--at", metavar="TIME", help="and by this time of that day: 16:00")
    asked.add_argument("--json", action="store_true", help="the same as JSON, for scripts")


def promise(args: argparse.Namespace, clock: Clock) -> int:
    """The earliest day with its sum, and yes or no to the day asked about; a no ends with a code of its own."""
    picture = picture_of(args, clock)
    advice = advise(picture, _wish(args, picture))
    if advice is None:
        raise RuleError(
            "There is no bench time in the days planned ahead, so no day can be told; `queueboard settings` says why."
        )
    if args.json:
        say_json(promise_facts(advice, picture))
    else:
        say(promise_sheet(advice, picture))
    asked = advice.offer is not None if args.on is None else advice.answer is not None and advice.answer.yes
    return FINE if asked else NO


def _wish(args: argparse.Namespace, picture: Picture) -> Wish:
    """What was asked on the command line; TypedError for what does not hold together."""
    if args.at is not None and (args.on is None or args.by_mail):
        raise TypedError("A time of day goes with --on and a pick-up; when a parcel comes is the carrier's business.")
    if args.carrier_days is not None and not args.by_mail:
        raise TypedError("Carrier days go with --by-mail; a pick-up has none.")
    usual = picture.settings.parcels.carrier_days
    carrier_days = usual if args.carrier_days is None else read_number(args.carrier_days)
    if carrier_days > MOST_CARRIER_DAYS:
        raise TypedError(f"{carrier_days} carrier days is outside 0 to {MOST_CARRIER_DAYS}.")
    today = picture.now.date()
    day = None if args.on is None else parse_day(args.on, today)
    if day is not None and day < today:
        raise TypedError(
            f"{date_words(day, today)} is past: today is {date_words(today, today)}. Ask for a day to come."
        )
    lines = read_lines(", ".join(args.knives), picture.settings)
    knives = tuple(line.knife for line in lines for _ in range(line.count))
    if len(knives) > MOST_KNIVES:
        raise TypedError(f"{len(knives)} knives in one box? A box holds at most {MOST_KNIVES}.")
    return Wish(
        knives=knives,
        goes_by=GoesBy.PARCEL if args.by_mail else GoesBy.PICK_UP,
        carrier_days=carrier_days if args.by_mail else 0,
        kind=PromiseKind.DAY if args.at is None else PromiseKind.BY_TIME,
        day=day,
        at=None if args.at is None else parse_time(args.at),
    )
